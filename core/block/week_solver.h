// The sessions of one week, its set given: the best and a proof. Prices between the sessions' side and the families',
// lists of the sessions that are near the best at those prices, and every way of putting them together that could be
// better.
#pragma once

#include <cstdint>
#include <vector>

#include "core/block/bundle.h"
#include "core/block/problem.h"
#include "core/block/session_lister.h"
#include "core/block/week_families.h"
#include "core/block/week_prices.h"

namespace lanework::block {

struct WeekEffort {
  int rounds = 40;                  // of prices
  int splits = 2;                   // of what the lists leave open, each into two halves
  int worth_splitting = 8;          // points: less left open is left so
  int rounds_of_a_half = 12;        // of prices
  std::int64_t list_steps = 5'000;  // of each session's list
  std::int64_t joins = 5'000;       // sessions put together
};

struct WeekAnswer {
  Points value = 0;             // of the best; worth of the week's credits, fixed ones included, less all costs
  std::int64_t bound_fine = 0;  // no choice is worth more
  std::vector<std::vector<int>> choice;  // [session of the week][drill of the problem]
};

class WeekSolver {
 public:
  explicit WeekSolver(const Problem& problem);

  // done: drills that are known by then though Drill::unknown says not. light: the week's first session may not be
  // hard.
  WeekAnswer solve(std::size_t week, const std::vector<char>& set, const std::vector<char>& done, bool light,
                   const WeekEffort& effort);
  // Only a bound: so many rounds of prices. Keeps them for the next call of the same week.
  std::int64_t bound(std::size_t week, const std::vector<char>& set, int rounds);

  [[nodiscard]] const std::vector<int>& sessions_of(std::size_t week) const { return sessions_[week]; }

 private:
  const Problem& p_;
  SessionLister lister_;
  WeekFamilies families_;
  std::vector<std::vector<int>> sessions_;               // by week
  std::vector<std::vector<std::pair<int, int>>> close_;  // by week, positions in sessions_
  std::vector<KnownPrices> known_;                       // by week: the best of the last call
  std::vector<std::vector<char>> solved_;                // by week: the set that was solved last

  // Ways of a member in a session: about half of what the prices choose is among them.
  struct Doubt {
    std::size_t session = 0;
    std::size_t member = 0;
    std::uint64_t lower = 0;  // none: the prices are sure of all
  };
  // A part of the week's choices.
  struct Part {
    std::vector<Loads> ceilings;  // [session]
    std::vector<Ways> ways;       // [session]
    Prices prices;
    std::int64_t proven;  // none of them is worth more
    Doubt doubt;          // where to split
  };
  std::vector<Part> parts_;
  std::int64_t closed_ = 0;  // the most of parts that cannot be split

  // The week that is being solved.
  std::size_t week_ = 0;
  std::vector<int> members_;
  std::uint32_t unknown_ = 0;
  int new_left_ = 0;          // drills that may be done for the first time
  std::vector<Session> now_;  // its sessions, some of them made light
  std::vector<Ways> ways_;    // [session]
  using Options = std::array<std::int16_t, kMostMembers>;
  std::vector<Options> chosen_;                         // [round x session]: by the best session at the prices
  std::vector<std::vector<std::vector<double>>> lean_;  // [session][member][option + 1]: how often each is chosen
  WeekLayout at_;                                       // of its prices
  Prices start_;                                        // where the part's prices start
  Prices prices_;
  std::int64_t bound_ = 0;
  WeekPrices whole_prices_;                                   // of the prices last set
  std::vector<std::array<std::int64_t, kLoads>> load_price_;  // [session], likewise
  std::vector<int> family_choice_;                            // [session x member]
  WeekAnswer best_;
  std::vector<std::vector<ListedSession>> lists_;
  std::int64_t joins_left_ = 0;
  std::vector<std::int32_t> nearest_;  // [session]: none that keeps its ceilings falls less short
  std::vector<std::int32_t> listed_to_;
  std::vector<std::int64_t> to_come_;  // [session]: sum of those from it on
  struct Joined {
    std::array<int, catalogue::kFamilies> credits{};
    Loads loads{};
    std::uint32_t fresh = 0;
    int fresh_count = 0;
    Points cost = 0;
  };
  std::vector<const ListedSession*> joining_;

  void begin(std::size_t week, const std::vector<char>& set, const std::vector<char>& done);
  void take_nothing();
  void make_light(std::size_t session);
  void start_new_drills(const WeekEffort& effort);
  void start_lights(std::size_t pair, const WeekEffort& effort);
  void leave_out_too_heavy();
  void look_at_part(const WeekEffort& effort, int rounds);
  bool split_highest(const WeekEffort& effort);
  std::int64_t work_out(const WeekEffort& effort, int rounds);
  [[nodiscard]] Doubt most_doubtful() const;
  [[nodiscard]] Doubt heaviest() const;
  [[nodiscard]] double share_of_ceilings(std::size_t session, std::size_t member) const;
  void lean(const Bundle& bundle);
  void forget_leaning();
  void leave_out(std::size_t session, std::uint32_t members);
  void find_prices(int rounds, bool join);
  std::int64_t price_sessions(const Prices& prices);
  std::int64_t session_at_prices(std::size_t i);
  std::int64_t evaluate(const Prices& prices, Prices& gradient, bool join);
  void slope_of_families(Prices& gradient) const;
  bool list(std::int32_t further, const WeekEffort& effort);
  void join(std::size_t i, std::int64_t left, const Joined& so_far);
  bool add(const ListedSession& one, Joined& sums) const;
  void join_last(std::int64_t left, const Joined& so_far);
  void look(const Joined& sums);
};

}  // namespace lanework::block
