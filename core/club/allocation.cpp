#include "core/club/allocation.h"

#include <algorithm>
#include <cstdlib>
#include <set>
#include <tuple>
#include <utility>

#include "core/club/strip_share.h"

namespace lanework::club {
namespace {

constexpr int kStepMinutes = 5;        // of a cure that moves the start
constexpr int kSmallMoveMinutes = 10;  // is less to ask than another strip (own judgement)
constexpr int kMostMoveMinutes = 90;

struct Span {
  std::int64_t from;  // seconds of the day
  std::int64_t to;
};
Span span_of(const PlannedSlot& slot, int moved_minutes = 0) {
  const std::int64_t from = std::int64_t{60} * (slot.start.minutes + moved_minutes);
  return {from, from + slot.length.count};
}
bool overlap(const Span& a, const Span& b) { return a.from < b.to && b.from < a.to; }

// A served slot by squad and place in that squad's calendar, with what it had asked for.
struct Wish {
  std::size_t squad;
  std::size_t slot;
  std::size_t rank;  // in served_first; the others behind
  int lanes;
  session::Kit kit;
};

// What one wish went short of.
struct Shortage {
  std::size_t wish;
  Short what;
  int wished;
  int has;
};

int& amount(session::Kit& kit, Short what) {
  return what == Short::kCones ? kit.cones : what == Short::kBalls ? kit.balls : kit.mats;
}
int amount(const session::Kit& kit, Short what) {
  return what == Short::kCones ? kit.cones : what == Short::kBalls ? kit.balls : kit.mats;
}
constexpr Short kKit[] = {Short::kCones, Short::kBalls, Short::kMats};

// The lowest neighbouring lanes; where there are not enough neighbours, the lowest free ones.
std::vector<int> choose_lanes(const std::vector<int>& free, int wished) {
  const auto wanted = static_cast<std::size_t>(wished);
  for (std::size_t i = 0; i + wanted <= free.size(); ++i) {
    if (free[i + wanted - 1] - free[i] + 1 == wished) {
      return {free.begin() + static_cast<std::ptrdiff_t>(i), free.begin() + static_cast<std::ptrdiff_t>(i + wanted)};
    }
  }
  return {free.begin(), free.begin() + static_cast<std::ptrdiff_t>(std::min(wanted, free.size()))};
}

class Allocator {
 public:
  Allocator(const Club& club, Date monday, int weeks) : club_(club) {
    for (const ClubSquad& squad : club.squads) out_.calendars.push_back(expand(club, squad, monday, weeks));
  }

  Allocation run() {
    line_up();
    // Only wishes of one day meet.
    for (std::size_t first = 0; first < wishes_.size();) {
      std::size_t last = first;
      while (last < wishes_.size() && slot_of(wishes_[last]).date == slot_of(wishes_[first]).date) ++last;
      day_first_ = first;
      for (std::size_t i = first; i < last; ++i) serve(i);
      day_last_ = last;
      for (const Shortage& shortage : shortages_) tell(shortage);
      shortages_.clear();
      first = last;
    }
    take_out_laneless();
    std::stable_sort(out_.conflicts.begin(), out_.conflicts.end(), [](const Conflict& a, const Conflict& b) {
      return std::tie(a.dates.front(), a.start, a.squad, a.what) < std::tie(b.dates.front(), b.start, b.squad, b.what);
    });
    return std::move(out_);
  }

 private:
  const Club& club_;
  Allocation out_;
  std::vector<Wish> wishes_;  // in the order they are served
  std::vector<Shortage> shortages_;
  std::size_t day_first_ = 0;
  std::size_t day_last_ = 0;

  PlannedSlot& slot_of(const Wish& wish) { return out_.calendars[wish.squad].slots[wish.slot]; }
  [[nodiscard]] const PlannedSlot& slot_of(const Wish& wish) const {
    return out_.calendars[wish.squad].slots[wish.slot];
  }
  [[nodiscard]] const std::string& id_of(const Wish& wish) const { return club_.squads[wish.squad].id; }
  [[nodiscard]] const ClubStrip& strip_of(const PlannedSlot& slot) const {
    const auto& strips = club_.settings.strips;
    return *std::find_if(strips.begin(), strips.end(),
                         [&](const ClubStrip& strip) { return strip.id == slot.strip_id; });
  }

  void line_up() {
    const std::vector<std::string>& first = club_.settings.served_first;
    for (std::size_t squad = 0; squad < out_.calendars.size(); ++squad) {
      const auto rank =
          static_cast<std::size_t>(std::find(first.begin(), first.end(), club_.squads[squad].id) - first.begin());
      const std::vector<PlannedSlot>& slots = out_.calendars[squad].slots;
      for (std::size_t slot = 0; slot < slots.size(); ++slot) {
        wishes_.push_back({squad, slot, rank, slots[slot].strip.lanes, slots[slot].kit});
      }
    }
    const auto key = [this](const Wish& wish) {
      const PlannedSlot& slot = slot_of(wish);
      return std::tuple(slot.date, slot.start, wish.rank, wish.squad, wish.slot);
    };
    std::sort(wishes_.begin(), wishes_.end(), [&](const Wish& a, const Wish& b) { return key(a) < key(b); });
  }

  // Lanes of a strip that nobody but 'except' holds in the span, among the wishes of the day up to 'last'.
  [[nodiscard]] std::vector<int> free_lanes(const ClubStrip& strip, const Span& span, std::size_t except,
                                            std::size_t last) const {
    std::vector<bool> taken(static_cast<std::size_t>(strip.strip.lanes) + 1, false);
    for (std::size_t i = day_first_; i < last; ++i) {
      const PlannedSlot& other = slot_of(wishes_[i]);
      if (i == except || other.strip_id != strip.id || !overlap(span_of(other), span)) continue;
      for (const int lane : other.lanes) taken[static_cast<std::size_t>(lane)] = true;
    }
    std::vector<int> free;
    for (int lane = 1; lane <= strip.strip.lanes; ++lane) {
      if (!taken[static_cast<std::size_t>(lane)]) free.push_back(lane);
    }
    return free;
  }

  // What is left of the club's kit all through the span; kit in use at two times of it counts once, at its peak.
  [[nodiscard]] int left_of(Short what, const Span& span, std::size_t except, std::size_t last) const {
    const int all = amount(*club_.settings.kit, what);
    int peak = 0;
    const auto in_use_at = [&](std::int64_t second) {
      int sum = 0;
      for (std::size_t i = day_first_; i < last; ++i) {
        const Span other = span_of(slot_of(wishes_[i]));
        if (i != except && holds(i) && other.from <= second && second < other.to) {
          sum += amount(slot_of(wishes_[i]).kit, what);
        }
      }
      return sum;
    };
    // Use rises only where something starts.
    peak = in_use_at(span.from);
    for (std::size_t i = day_first_; i < last; ++i) {
      const std::int64_t start = span_of(slot_of(wishes_[i])).from;
      if (span.from < start && start < span.to) peak = std::max(peak, in_use_at(start));
    }
    return std::max(0, all - peak);
  }

  // A slot without a lane is not held, so it keeps no kit from others.
  [[nodiscard]] bool holds(std::size_t i) const {
    const PlannedSlot& slot = slot_of(wishes_[i]);
    return slot.elsewhere || !slot.lanes.empty();
  }

  void serve(std::size_t i) {
    const Wish& wish = wishes_[i];
    PlannedSlot& slot = slot_of(wish);
    if (!slot.elsewhere) {
      const ClubStrip& strip = strip_of(slot);
      slot.lanes = choose_lanes(free_lanes(strip, span_of(slot), i, i), wish.lanes);
      const int has = static_cast<int>(slot.lanes.size());
      if (has < wish.lanes) shortages_.push_back({i, Short::kLanes, wish.lanes, has});
      if (has == 0) return;
      slot.strip = share_of(strip.strip, has);
    }
    if (!club_.settings.kit) return;
    for (const Short what : kKit) {
      const int wished = amount(wish.kit, what);
      const int has = std::min(wished, left_of(what, span_of(slot), i, i));
      amount(slot.kit, what) = has;
      if (has < wished) shortages_.push_back({i, what, wished, has});
    }
  }

  [[nodiscard]] bool own_slots_allow(std::size_t i, const Span& span) const {
    for (std::size_t other = day_first_; other < day_last_; ++other) {
      const bool same_squad = other != i && wishes_[other].squad == wishes_[i].squad;
      if (same_squad && overlap(span_of(slot_of(wishes_[other])), span)) return false;
    }
    return true;
  }

  [[nodiscard]] bool would_fit(std::size_t i, const ClubStrip& strip, int moved) const {
    const Wish& wish = wishes_[i];
    const PlannedSlot& slot = slot_of(wish);
    const Span span = span_of(slot, moved);
    if (span.from < 0 || span.to > 24 * 3600 || !own_slots_allow(i, span)) return false;
    if (!slot.elsewhere && static_cast<int>(free_lanes(strip, span, i, day_last_).size()) < wish.lanes) return false;
    if (!club_.settings.kit) return true;
    return std::all_of(std::begin(kKit), std::end(kKit), [&](Short what) {
      return left_of(what, span, i, day_last_) >= std::min(amount(wish.kit, what), amount(*club_.settings.kit, what));
    });
  }

  // Minutes by which the start has to move, later before earlier where both are as far; empty where none helps.
  [[nodiscard]] std::optional<int> smallest_move(std::size_t i) const {
    const ClubStrip& strip = strip_of(slot_of(wishes_[i]));
    for (int minutes = kStepMinutes; minutes <= kMostMoveMinutes; minutes += kStepMinutes) {
      if (would_fit(i, strip, minutes)) return minutes;
      if (would_fit(i, strip, -minutes)) return -minutes;
    }
    return {};
  }

  [[nodiscard]] std::string other_strip(std::size_t i) const {
    for (const ClubStrip& strip : club_.settings.strips) {
      if (strip.id == slot_of(wishes_[i]).strip_id || strip.strip.lanes < wishes_[i].lanes) continue;
      if (would_fit(i, strip, 0)) return strip.id;
    }
    return {};
  }

  [[nodiscard]] std::string cure_of(const Shortage& shortage) const {
    const PlannedSlot& slot = slot_of(wishes_[shortage.wish]);
    static constexpr const char* kNames[] = {"lanes", "cones", "balls", "mats"};
    const bool lanes = shortage.what == Short::kLanes;
    const bool more_than_all = !lanes && shortage.wished > amount(*club_.settings.kit, shortage.what);
    const std::optional<int> move = more_than_all ? std::nullopt : smallest_move(shortage.wish);
    const auto moved = [&] {
      return "start " + std::to_string(std::abs(*move)) + " min " + (*move > 0 ? "later" : "earlier") + " (" +
             to_text(TimeOfDay{slot.start.minutes + *move}) + ")";
    };
    if (move && std::abs(*move) <= kSmallMoveMinutes) return moved();
    if (!lanes)
      return std::to_string(shortage.wished - shortage.has) + " more " + kNames[static_cast<int>(shortage.what)];
    if (const std::string strip = other_strip(shortage.wish); !strip.empty()) return "go to " + strip;
    if (move) return moved();
    return shortage.has > 0 ? "make do with what is free" : "another day";
  }

  [[nodiscard]] std::vector<std::string> holders(const Shortage& shortage) const {
    std::set<std::string> ids;
    const PlannedSlot& slot = slot_of(wishes_[shortage.wish]);
    for (std::size_t i = day_first_; i < shortage.wish; ++i) {
      const PlannedSlot& other = slot_of(wishes_[i]);
      if (!holds(i) || !overlap(span_of(other), span_of(slot))) continue;
      const bool lacks = shortage.what == Short::kLanes ? other.strip_id == slot.strip_id && !other.lanes.empty()
                                                        : amount(other.kit, shortage.what) > 0;
      if (lacks) ids.insert(id_of(wishes_[i]));
    }
    return {ids.begin(), ids.end()};
  }

  void tell(const Shortage& shortage) {
    const Wish& wish = wishes_[shortage.wish];
    const PlannedSlot& slot = slot_of(wish);
    Conflict conflict;
    conflict.what = shortage.what;
    if (shortage.what == Short::kLanes) conflict.strip_id = slot.strip_id;
    conflict.squad = id_of(wish);
    conflict.others = holders(shortage);
    conflict.dates = {slot.date};
    conflict.start = slot.start;
    conflict.wished = shortage.wished;
    conflict.has = shortage.has;
    conflict.cure = cure_of(shortage);
    const auto repeats = [&](const Conflict& known) {
      return std::tie(known.what, known.strip_id, known.squad, known.others, known.start, known.wished, known.has,
                      known.cure) == std::tie(conflict.what, conflict.strip_id, conflict.squad, conflict.others,
                                              conflict.start, conflict.wished, conflict.has, conflict.cure) &&
             session::weekday_of(known.dates.front()) == session::weekday_of(slot.date);
    };
    const auto known = std::find_if(out_.conflicts.begin(), out_.conflicts.end(), repeats);
    if (known != out_.conflicts.end()) known->dates.push_back(slot.date);
    if (known == out_.conflicts.end()) out_.conflicts.push_back(std::move(conflict));
  }

  void take_out_laneless() {
    for (Calendar& calendar : out_.calendars) {
      const auto laneless = [](const PlannedSlot& slot) { return !slot.elsewhere && slot.lanes.empty(); };
      for (const PlannedSlot& slot : calendar.slots) {
        if (!laneless(slot)) continue;
        calendar.missed.push_back(
            {slot.date, slot.start, Missed::kNoLane, "every lane of " + slot.strip_id + " is taken", slot.strip_id});
      }
      calendar.slots.erase(std::remove_if(calendar.slots.begin(), calendar.slots.end(), laneless),
                           calendar.slots.end());
      std::stable_sort(calendar.missed.begin(), calendar.missed.end(), [](const MissedSlot& a, const MissedSlot& b) {
        return std::tie(a.date, a.start) < std::tie(b.date, b.start);
      });
    }
  }
};

}  // namespace

Allocation allocate(const Club& club, Date monday, int weeks) { return Allocator(club, monday, weeks).run(); }

std::string to_words(const Conflict& conflict) {
  static constexpr const char* kOne[] = {"lane", "cone", "ball", "mat"};
  const std::string thing = std::string(kOne[static_cast<int>(conflict.what)]) + (conflict.wished == 1 ? "" : "s");
  const std::size_t weeks = conflict.dates.size();
  std::string out = weekday_name(conflict.dates.front()) + " " + to_text(conflict.start) + ", " +
                    (weeks == 1 ? "on " : std::to_string(weeks) + " times from ") + to_iso(conflict.dates.front()) +
                    ": " + conflict.squad + " wants " + std::to_string(conflict.wished) + " " + thing;
  if (conflict.what == Short::kLanes) out += " of " + conflict.strip_id;
  out += " and has " + (conflict.has == 0 ? "none" : std::to_string(conflict.has));
  std::string others;
  for (const std::string& id : conflict.others) others += (others.empty() ? "" : ", ") + id;
  if (!others.empty()) out += " (beside " + others + ")";
  return out + "; cure: " + conflict.cure;
}

}  // namespace lanework::club
