#include "core/plan/infeasible.h"

#include <algorithm>

#include "core/plan/availability.h"
#include "core/plan/candidates.h"
#include "core/plan/duration_words.h"
#include "core/plan/keep_slot.h"

namespace lanework::plan {
namespace {

constexpr int kNoCeiling = 1'000'000'000;
constexpr Seconds kNoHurry{7200};

// One demand that can be lifted to see whether the rest becomes possible.
struct Demand {
  enum class Kind { kCeiling, kPin, kSlot } kind;
  int index = 0;  // of the load, or of the problem drill
};

// What is still demanded.
struct Demanded {
  Problem problem;
  Seconds slot;
};

void lift(Demanded& demanded, const Demand& demand) {
  switch (demand.kind) {
    case Demand::Kind::kCeiling:
      demanded.problem.ceiling[static_cast<std::size_t>(demand.index)] = kNoCeiling;
      return;
    case Demand::Kind::kPin:
      demanded.problem.drills[static_cast<std::size_t>(demand.index)].pinned = false;
      return;
    case Demand::Kind::kSlot:
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
    const std::vector<Demand> needed = irreducible();
    Conflict conflict;
    for (const Demand& demand : needed) conflict.demands.push_back(words(demand));
    conflict.way_out = way_out(needed);
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
    for (const int i : barred) {
      conflict.demands.push_back(barred_words(drill_at(i)));
      conflict.way_out += (conflict.way_out.empty() ? "lift the pin on " : " and on ") + drill_at(i).name;
      rest.drills[static_cast<std::size_t>(i)].pinned = false;
    }
    if (possible(rest, evening_.slot)) return conflict;
    const std::string then = ConflictFinder(rest, first_margin_, catalogue_, evening_, workspace_).find().way_out;
    if (!then.empty()) conflict.way_out += "; the rest is too much as well: " + then;
    return conflict;
  }

  // 'Wall sit is pinned, but it needs a wall'; where a rung is pinned, that rung's reason.
  [[nodiscard]] std::string barred_words(const catalogue::Drill& drill) const {
    std::string what = drill.name + " is pinned";
    std::string reason = barred_because(drill, evening_);
    for (const session::Pin& pin : evening_.pins) {
      const int rung = pin.drill == drill.id ? catalogue::rung_index(drill, pin.rung) : -1;
      if (rung < 0) continue;
      if (reason.empty()) what += " at '" + drill.rungs[static_cast<std::size_t>(rung)].change + "'";
      reason = barred_because(drill, rung, evening_);
    }
    // A drill that can be done has no option for one cause only.
    return what + ", but " + (reason.empty() ? "no eccentric work is new this close to a match" : reason);
  }

  bool possible(const Problem& problem, Seconds slot) {
    return keep_slot(problem, slot, first_margin_, catalogue_, evening_, workspace_).kept.has_value();
  }

  // Strikes each demand that is not needed for the conflict; what stays is irreducible.
  std::vector<Demand> irreducible() {
    std::vector<Demand> all;
    for (int l = 0; l < kLoads; ++l) all.push_back({Demand::Kind::kCeiling, l});
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      if (problem_.drills[i].pinned) all.push_back({Demand::Kind::kPin, static_cast<int>(i)});
    }
    all.push_back({Demand::Kind::kSlot, 0});
    Demanded rest{problem_, evening_.slot};
    std::vector<Demand> needed;
    for (const Demand& demand : all) {
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

  [[nodiscard]] std::string words(const Demand& demand) const {
    switch (demand.kind) {
      case Demand::Kind::kCeiling: {
        const auto load = static_cast<Load>(demand.index);
        const int ceiling = problem_.ceiling[static_cast<std::size_t>(demand.index)];
        if (load == Load::kNewDrills) return "at most " + std::to_string(ceiling) + " new drills in a session";
        return "at most " + std::to_string(ceiling / 1000) + " " + load_words(load) + " at age " +
               std::to_string(evening_.age) + (evening_.days_to_match ? " this close to the match" : "");
      }
      case Demand::Kind::kPin:
        return drill_at(demand.index).name + " is pinned";
      case Demand::Kind::kSlot:
        return "the slot of " + in_words(evening_.slot.count);
    }
    return "";
  }

  std::string way_out(const std::vector<Demand>& needed) {
    std::string out;
    for (const Demand& demand : needed) {
      if (demand.kind != Demand::Kind::kSlot) continue;
      const int slot = least_above(static_cast<int>(evening_.slot.count),
                                   [&](int seconds) { return possible(problem_, Seconds(seconds)); });
      if (slot > 0) out = "a slot of " + in_words(slot) + " would do; one second less would not";
    }
    const std::string pins = pins_to_lift();
    if (!pins.empty()) out += (out.empty() ? "lift the pin on " : "; or lift the pin on ") + pins;
    return out;
  }

  // One pin whose lifting is enough, any of several, or else as few as a greedy search finds, the last first.
  std::string pins_to_lift() {
    std::string single;
    Problem lifted = problem_;
    std::vector<int> all;
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      if (!problem_.drills[i].pinned) continue;
      all.push_back(static_cast<int>(i));
      Problem without = problem_;
      without.drills[i].pinned = false;
      lifted.drills[i].pinned = false;
      if (possible(without, evening_.slot))
        single += (single.empty() ? "" : " or ") + drill_at(static_cast<int>(i)).name;
    }
    if (!single.empty() || all.empty() || !possible(lifted, evening_.slot)) return single;
    std::string several;
    for (const int i : all) {
      Problem with = lifted;
      with.drills[static_cast<std::size_t>(i)].pinned = true;
      if (possible(with, evening_.slot)) {
        lifted = std::move(with);
      } else {
        several += (several.empty() ? "" : " and ") + drill_at(i).name;
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
