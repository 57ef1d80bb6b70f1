#include "core/check/lane_sharing.h"

#include <algorithm>
#include <set>
#include <string>
#include <tuple>

namespace lanework::check {
namespace {

std::string lanes_in_words(const std::vector<int>& lanes) {
  std::string out;
  for (const int lane : lanes) out += (out.empty() ? "lane " : ", ") + std::to_string(lane);
  return out.empty() ? "no lanes" : out;
}

class Sharer {
 public:
  Sharer(const ClubMatter& club, const std::vector<SquadCalendar>& calendars, const StatedAnswer& answer,
         BlockViolations& violations)
      : club_(club), calendars_(calendars), answer_(answer), violations_(violations) {}

  Sharing share() {
    for (const SquadCalendar& calendar : calendars_) out_.emplace_back(calendar.wishes.size());
    for (const Turn& turn : turns()) serve(turn);
    return std::move(out_);
  }

 private:
  struct Turn {
    std::size_t squad;
    std::size_t wish;
  };
  // What is in use over a span of seconds from midnight.
  struct Use {
    std::int64_t from;
    std::int64_t to;
    std::size_t squad;
    std::string strip;
    std::vector<int> lanes;
    Kit kit;
  };

  const ClubMatter& club_;
  const std::vector<SquadCalendar>& calendars_;
  const StatedAnswer& answer_;
  BlockViolations& violations_;
  Sharing out_;
  Date today_;
  std::vector<Use> in_use_;  // on today_

  [[nodiscard]] const Wish& wish_of(const Turn& turn) const { return calendars_[turn.squad].wishes[turn.wish]; }

  [[nodiscard]] std::vector<Turn> turns() const {
    std::vector<Turn> out;
    for (std::size_t s = 0; s < calendars_.size(); ++s) {
      for (std::size_t w = 0; w < calendars_[s].wishes.size(); ++w) out.push_back({s, w});
    }
    const std::vector<std::string>& first = club_.served_first;
    const auto key = [&](const Turn& turn) {
      const Wish& wish = wish_of(turn);
      const auto rank = std::find(first.begin(), first.end(), club_.squads[turn.squad].id) - first.begin();
      return std::tuple(wish.date, wish.start_minutes, rank, turn.squad, turn.wish);
    };
    std::sort(out.begin(), out.end(), [&](const Turn& a, const Turn& b) { return key(a) < key(b); });
    return out;
  }

  void fault(const Turn& turn, const char* rule, std::string found, std::string expected) {
    const Wish& wish = wish_of(turn);
    violations_.push_back({rule, club_.squads[turn.squad].id, words_of(wish.date, wish.start_minutes), std::move(found),
                           std::move(expected)});
  }

  [[nodiscard]] static bool together(const Use& a, const Use& b) { return a.from < b.to && b.from < a.to; }

  [[nodiscard]] std::vector<int> free_lanes(const Use& use) const {
    std::set<int> free;
    for (int lane = 1; lane <= club_.find_strip(use.strip)->strip.lanes; ++lane) free.insert(lane);
    for (const Use& other : in_use_) {
      if (other.strip != use.strip || !together(other, use)) continue;
      for (const int lane : other.lanes) free.erase(lane);
    }
    return {free.begin(), free.end()};
  }

  // For a squad that the answer leaves out: the lowest neighbours, else the lowest.
  static std::vector<int> chosen(const std::vector<int>& free, std::size_t count) {
    if (count == 0) return {};
    for (std::size_t i = 0; i + count <= free.size(); ++i) {
      const bool neighbours = free[i + count - 1] == free[i] + static_cast<int>(count) - 1;
      if (neighbours) return {free.begin() + static_cast<long>(i), free.begin() + static_cast<long>(i + count)};
    }
    return {free.begin(), free.begin() + static_cast<long>(count)};
  }

  void judge_lanes(const Turn& turn, const Use& use, const std::vector<int>& stated, std::size_t expected) {
    const int all = club_.find_strip(use.strip)->strip.lanes;
    for (const int lane : stated) {
      if (lane >= 1 && lane <= all) continue;
      fault(turn, "lane-unknown", "lane " + std::to_string(lane) + " of " + use.strip,
            "lanes 1 to " + std::to_string(all));
    }
    for (std::size_t i = 1; i < stated.size(); ++i) {
      if (stated[i] > stated[i - 1]) continue;
      fault(turn, "lane-order", lanes_in_words(stated), "each lane once, ascending");
      break;
    }
    for (const Use& other : in_use_) {
      if (other.strip != use.strip || !together(other, use)) continue;
      for (const int lane : stated) {
        if (std::find(other.lanes.begin(), other.lanes.end(), lane) == other.lanes.end()) continue;
        fault(turn, "lane-taken", "lane " + std::to_string(lane) + " of " + use.strip,
              "a lane that " + club_.squads[other.squad].id + " does not have then");
      }
    }
    if (stated.size() != expected) {
      fault(turn, "lane-count", std::to_string(stated.size()) + " lanes", std::to_string(expected) + " of those free");
    }
  }

  // What is left of the club's kit at the busiest moment of the span.
  [[nodiscard]] int left_of(int Kit::*what, const Use& use) const {
    int most = 0;
    for (const Use& moment : in_use_) {
      const std::int64_t at = std::max(moment.from, use.from);
      if (at >= use.to || at >= moment.to) continue;
      int sum = 0;
      for (const Use& other : in_use_) sum += other.from <= at && at < other.to ? other.kit.*what : 0;
      most = std::max(most, sum);
    }
    return std::max(0, (*club_.kit).*what - most);
  }

  void serve(const Turn& turn) {
    const Wish& wish = wish_of(turn);
    const SquadWeek& squad = club_.squads[turn.squad];
    if (wish.date != today_) in_use_.clear();
    today_ = wish.date;
    Share& share = out_[turn.squad][turn.wish];
    const std::int64_t from = std::int64_t{60} * wish.start_minutes;
    Use use{from, from + wish.seconds, turn.squad, wish.strip, {}, squad.kit};
    share.lanes = club_.find_strip(wish.strip)->strip.lanes;
    const StatedBlock* block = answer_.find(squad.id);
    const StatedSession* stated = block == nullptr ? nullptr : find_session(*block, wish);
    if (wish.elsewhere) {
      if (stated != nullptr && !stated->lanes.empty()) {
        fault(turn, "lane-count", lanes_in_words(stated->lanes), "no lanes: the match is away");
      }
    } else {
      const std::vector<int> free = free_lanes(use);
      const std::size_t count = std::min(free.size(), static_cast<std::size_t>(wish.lanes));
      share.takes_place = count > 0;
      use.lanes = chosen(free, count);
      if (stated != nullptr) {
        judge_lanes(turn, use, stated->lanes, count);
        use.lanes = stated->lanes;
      } else if (block != nullptr) {
        use.lanes.clear();  // dropped, or told as missed: it holds nothing
      }
      if (use.lanes.empty()) return;
      share.lanes = std::min(share.lanes, static_cast<int>(use.lanes.size()));
    }
    if (club_.kit) {
      for (int Kit::*what : {&Kit::cones, &Kit::balls, &Kit::mats}) {
        use.kit.*what = std::min(use.kit.*what, left_of(what, use));
      }
    }
    share.kit = use.kit;
    in_use_.push_back(std::move(use));
  }
};

}  // namespace

Sharing share_out(const ClubMatter& club, const std::vector<SquadCalendar>& calendars, const StatedAnswer& answer,
                  BlockViolations& violations) {
  return Sharer(club, calendars, answer, violations).share();
}

const StatedSession* find_session(const StatedBlock& block, const Wish& wish) {
  const auto same = [&](const StatedSession& session) {
    return session.date == wish.date && session.start_minutes == wish.start_minutes;
  };
  const auto found = std::find_if(block.sessions.begin(), block.sessions.end(), same);
  return found == block.sessions.end() ? nullptr : &*found;
}

}  // namespace lanework::check
