#include "core/plan/infeasible.h"

#include <algorithm>

#include "core/plan/availability.h"
#include "core/plan/candidates.h"
#include "core/plan/keep_slot.h"

namespace lanework::plan {
namespace {

constexpr int kNoCeiling = 1'000'000'000;
constexpr Seconds kNoHurry{7200};

// One demand that can be lifted to see whether the rest becomes possible.
struct Liftable {
  enum class Kind { kCeiling, kPin, kSlot } kind;
  int index = 0;  // of the load, or of the problem drill
};

// What is still demanded.
struct Demanded {
  Problem problem;
  Seconds slot;
};

void lift(Demanded& demanded, const Liftable& demand) {
  switch (demand.kind) {
    case Liftable::Kind::kCeiling:
      demanded.problem.ceiling[static_cast<std::size_t>(demand.index)] = kNoCeiling;
      return;
    case Liftable::Kind::kPin:
      demanded.problem.drills[static_cast<std::size_t>(demand.index)].pinned = false;
      return;
    case Liftable::Kind::kSlot:
      demanded.slot = kNoHurry;
      return;
  }
}

class ConflictFinder {
 public:
  ConflictFinder(const Problem& problem, Seconds first_margin, const catalogue::Catalogue& catalogue,
                 const session::Evening& evening, KernelWorkspace& workspace)
      : problem_(problem),
        first_margin_(first_margin),
        catalogue_(catalogue),
        evening_(evening),
        workspace_(workspace) {}

  Conflict find() {
    const std::vector<int> barred = barred_pins();
    if (!barred.empty()) return conflict_of(barred);
    const std::vector<Liftable> needed = irreducible();
    Conflict conflict;
    for (const Liftable& demand : needed) conflict.demands.push_back(told(demand));
    if (std::optional<WayOut> way = way_out(needed)) conflict.ways_out.push_back(std::move(*way));
    return conflict;
  }

 private:
  const Problem& problem_;
  Seconds first_margin_;
  const catalogue::Catalogue& catalogue_;
  const session::Evening& evening_;
  KernelWorkspace& workspace_;

  [[nodiscard]] const catalogue::Drill& drill_at(int index) const {
    return catalogue_.drills[static_cast<std::size_t>(problem_.drills[static_cast<std::size_t>(index)].drill)];
  }

  [[nodiscard]] int drill_index(int index) const { return problem_.drills[static_cast<std::size_t>(index)].drill; }

  // Pins on drills that cannot be done here at all need no search; each is a conflict by itself.
  [[nodiscard]] std::vector<int> barred_pins() const {
    std::vector<int> barred;
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      if (problem_.drills[i].pinned && problem_.drills[i].options.empty()) barred.push_back(static_cast<int>(i));
    }
    return barred;
  }

  Conflict conflict_of(const std::vector<int>& barred) {
    Conflict conflict;
    Problem rest = problem_;
    WayOut lift;
    lift.barred = true;
    for (const int i : barred) {
      conflict.demands.emplace_back(barred_pin(i));
      lift.lift.push_back(drill_index(i));
      rest.drills[static_cast<std::size_t>(i)].pinned = false;
    }
    conflict.ways_out.push_back(std::move(lift));
    if (possible(rest, evening_.slot)) return conflict;
    const Conflict then = ConflictFinder(rest, first_margin_, catalogue_, evening_, workspace_).find();
    conflict.ways_out.insert(conflict.ways_out.end(), then.ways_out.begin(), then.ways_out.end());
    return conflict;
  }

  // Where only the pinned rung is barred, that rung's reason.
  [[nodiscard]] PinDemand barred_pin(int index) const {
    const catalogue::Drill& drill = drill_at(index);
    PinDemand out{drill_index(index), -1, barred_because(drill, evening_)};
    for (const session::Pin& pin : evening_.pins) {
      const int rung = pin.drill == drill.id ? catalogue::rung_index(drill, pin.rung) : -1;
      if (rung < 0) continue;
      if (!out.bar) out.rung = rung;
      out.bar = barred_because(drill, rung, evening_);
    }
    // A drill that can be done has no option for one cause only.
    if (!out.bar) out.bar = session::NewEccentricNearMatch{};
    return out;
  }

  bool possible(const Problem& problem, Seconds slot) {
    return keep_slot(problem, slot, first_margin_, catalogue_, evening_, workspace_).kept.has_value();
  }

  // Strikes each demand that is not needed for the conflict; what stays is irreducible.
  std::vector<Liftable> irreducible() {
    std::vector<Liftable> all;
    for (int l = 0; l < kLoads; ++l) all.push_back({Liftable::Kind::kCeiling, l});
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      if (problem_.drills[i].pinned) all.push_back({Liftable::Kind::kPin, static_cast<int>(i)});
    }
    all.push_back({Liftable::Kind::kSlot, 0});
    Demanded rest{problem_, evening_.slot};
    std::vector<Liftable> needed;
    for (const Liftable& demand : all) {
      Demanded without = rest;
      lift(without, demand);
      if (possible(without.problem, without.slot)) {
        needed.push_back(demand);
      } else {
        rest = std::move(without);
      }
    }
    return needed;
  }

  [[nodiscard]] Demand told(const Liftable& demand) const {
    switch (demand.kind) {
      case Liftable::Kind::kCeiling: {
        const auto load = static_cast<Load>(demand.index);
        const int ceiling = problem_.ceiling[static_cast<std::size_t>(demand.index)];
        return CeilingDemand{load, load == Load::kNewDrills ? ceiling : ceiling / 1000, evening_.age,
                             evening_.days_to_match.has_value()};
      }
      case Liftable::Kind::kPin:
        return PinDemand{drill_index(demand.index), -1, {}};
      case Liftable::Kind::kSlot:
        break;
    }
    return SlotDemand{evening_.slot};
  }

  std::optional<WayOut> way_out(const std::vector<Liftable>& needed) {
    WayOut out = pins_to_lift();
    for (const Liftable& demand : needed) {
      if (demand.kind != Liftable::Kind::kSlot) continue;
      const int slot = least_above(static_cast<int>(evening_.slot.count),
                                   [&](int seconds) { return possible(problem_, Seconds(seconds)); });
      if (slot > 0) out.slot = Seconds(slot);
    }
    if (!out.slot && out.lift.empty()) return {};
    return out;
  }

  // One pin whose lifting is enough, any of several, or else as few as a greedy search finds, the last first.
  WayOut pins_to_lift() {
    WayOut single;
    single.any_one_of_them = true;
    Problem lifted = problem_;
    std::vector<int> all;
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      if (!problem_.drills[i].pinned) continue;
      all.push_back(static_cast<int>(i));
      Problem without = problem_;
      without.drills[i].pinned = false;
      lifted.drills[i].pinned = false;
      if (possible(without, evening_.slot)) single.lift.push_back(problem_.drills[i].drill);
    }
    if (!single.lift.empty() || all.empty() || !possible(lifted, evening_.slot)) return single;
    WayOut several;
    for (const int i : all) {
      Problem with = lifted;
      with.drills[static_cast<std::size_t>(i)].pinned = true;
      if (possible(with, evening_.slot)) {
        lifted = std::move(with);
      } else {
        several.lift.push_back(drill_index(i));
      }
    }
    return several;
  }
};

}  // namespace

Conflict find_conflict(const Problem& problem, Seconds first_margin, const catalogue::Catalogue& catalogue,
                       const session::Evening& evening, KernelWorkspace& workspace) {
  return ConflictFinder(problem, first_margin, catalogue, evening, workspace).find();
}

}  // namespace lanework::plan
