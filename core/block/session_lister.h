// Every session of a set's drills that is within so much of the best at linear prices: what a week is put together
// from. Exact, in whole numbers; the way back from the end tells what a half-made session can still be worth.
//
// Work: for the way back, drills x (options + 4) x steps x covered families; for the list, sessions listed x drills.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

// Drills that a set may have at the most: a session's routine has about a dozen.
inline constexpr std::size_t kMostMembers = 32;

struct ListedSession {
  std::int32_t short_of = 0;  // fine points below the best at the prices
  Points cost = 0;            // departures, drills left out, families uncovered
  Loads loads{};
  std::uint32_t fresh = 0;  // drills taken that are not yet known, by position in the set
  std::array<std::uint8_t, catalogue::kFamilies> credits{};  // by family of the problem
  std::array<std::int16_t, kMostMembers> option{};           // by position in the set, -1: left out
};

// What a session may do with each member of the set, by position in it: bit 0: leave it out; bit o + 1: take its option
// o.
using Ways = std::vector<std::uint64_t>;
inline constexpr std::uint64_t kLeftOut = 1;
inline constexpr std::uint64_t kAnyWay = ~std::uint64_t{0};
inline constexpr std::uint64_t way_of(int option) { return std::uint64_t{2} << option; }

class SessionLister {
 public:
  static constexpr std::int64_t kDoesNotFit = INT64_MIN;

  explicit SessionLister(const Problem& problem);

  // Prices of the options of each member at one session, in fine points: credits and loads; departures, drills left out
  // and families uncovered are added here. 'price' gives that of an option of a member.
  // The most that a session within the clock is worth. members ascending, at most kMostMembers; uses of those named in
  // 'unknown', by position, are noted. kDoesNotFit where no session goes these ways: then nothing can be listed.
  template <class Price>
  std::int64_t prepare(const Session& session, std::span<const int> members, std::uint32_t unknown, const Ways& ways,
                       const Price& price) {
    begin(session, members, unknown, ways);
    for (Live& live : live_) {
      const std::vector<Option>& options = options_of(live);
      live.first = static_cast<int>(live_options_.size());
      for (int o = 0; o < static_cast<int>(options.size()); ++o) {
        if ((ways[static_cast<std::size_t>(live.member)] & way_of(o)) == 0) continue;
        const Option& option = options[static_cast<std::size_t>(o)];
        const auto departure = static_cast<std::int32_t>(option.departure * kFine);
        live_options_.push_back({o, option.steps, price(live.member, option) - departure});
      }
    }
    return sweep();
  }
  // One of the best, the session's ceilings not regarded. REQUIRES: prepare().
  ListedSession best();
  // All that fall short of the best by at most 'within' and keep the session's ceilings, of equals in credits and loads
  // the cheapest, by rising shortness. False: more than 'most' steps of work, then the list is not whole.
  bool list(std::int32_t within, std::int64_t most, std::vector<ListedSession>& out);

 private:
  struct Live {
    int member;
    int drill;
    std::size_t family;
    std::size_t formation;
    int bit;        // of its family among those that may be covered by another of its drills, or -1
    bool last;      // of the live drills of its family
    bool required;  // its family
    bool forced;
    int first;  // options in live_options_
  };
  struct LiveOption {
    int option;
    int steps;
    std::int32_t price;
  };
  // A session made as far as a drill.
  struct Made {
    std::uint32_t bits = 0;
    std::size_t form = kNothing;
    int steps_left = 0;
    std::int32_t short_of = 0;
  };
  static constexpr std::size_t kNothing = catalogue::kFormations;  // nothing taken: no change is paid
  static constexpr std::size_t kForms = kNothing + 1;

  const Problem& p_;
  const Session* session_ = nullptr;
  const Kind* kind_ = nullptr;
  std::uint32_t unknown_ = 0;
  Points always_ = 0;  // families without a drill here
  std::vector<Live> live_;
  std::vector<LiveOption> live_options_;
  std::vector<std::uint32_t> open_;  // before each live drill: families that may be covered already
  int bits_ = 0;
  std::size_t pad_ = 0;
  std::size_t stride_ = 0;
  std::vector<std::int32_t> rows_;
  std::vector<std::int32_t> take_;
  std::int32_t best_ = 0;
  std::int64_t work_left_ = 0;
  std::int32_t within_ = 0;
  bool keep_ceilings_ = true;
  ListedSession now_;
  std::vector<ListedSession>* out_ = nullptr;

  void begin(const Session& session, std::span<const int> members, std::uint32_t unknown, const Ways& ways);
  std::int64_t sweep();
  void sweep_drill(std::size_t k);
  [[nodiscard]] const std::vector<Option>& options_of(const Live& live) const {
    return kind_->options[static_cast<std::size_t>(live.drill)];
  }
  [[nodiscard]] std::size_t end_of_options(std::size_t k) const {
    return k + 1 < live_.size() ? static_cast<std::size_t>(live_[k + 1].first) : live_options_.size();
  }
  [[nodiscard]] std::int32_t* row(std::size_t k, std::uint32_t bits, std::size_t form) {
    return rows_.data() + (((k << bits_) + bits) * kForms + form) * stride_ + pad_;
  }
  [[nodiscard]] int change(std::size_t form, std::size_t to) const {
    return form == kNothing ? 0 : kind_->change[form][to];
  }
  // What leaving the drill out costs, its family uncovered by it or not; and the bits after it.
  [[nodiscard]] Points skip_cost(const Live& live, std::uint32_t bits) const;
  [[nodiscard]] static std::uint32_t bits_after(const Live& live, std::uint32_t bits, bool taken);
  void search(std::int32_t within, std::int64_t most, std::vector<ListedSession>& out);
  void go_on(std::size_t k, const Made& made);
  void skip(std::size_t k, const Made& made, std::int32_t to_go);
  void take(std::size_t k, const Made& made, const LiveOption& option, std::int32_t to_go);
};

}  // namespace lanework::block
