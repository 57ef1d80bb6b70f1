#include "core/plan/infeasible.h"

#include <algorithm>

#include "core/plan/availability.h"
#include "core/plan/candidates.h"
#include "core/plan/duration_words.h"

namespace lanework::plan {
namespace {

constexpr int kNoCeiling = 1'000'000'000;
constexpr int kNoHurry = 7200;

// One demand that can be lifted to see whether the rest becomes possible.
struct Demand {
  enum class Kind { kCeiling, kPin, kSlot } kind;
  int index = 0;  // of the load, or of the problem drill
};

void lift(Problem& problem, const Demand& demand) {
  switch (demand.kind) {
    case Demand::Kind::kCeiling:
      problem.ceiling[static_cast<std::size_t>(demand.index)] = kNoCeiling;
      return;
    case Demand::Kind::kPin:
      problem.drills[static_cast<std::size_t>(demand.index)].pinned = false;
      return;
    case Demand::Kind::kSlot:
      problem.budget = kNoHurry;
      return;
  }
}

class ConflictFinder {
 public:
  ConflictFinder(const Problem& problem, Seconds margin, const catalogue::Catalogue& catalogue,
                 const session::Evening& evening, KernelWorkspace& workspace)
      : problem_(problem), margin_(margin), catalogue_(catalogue), evening_(evening), workspace_(workspace) {}

  Conflict find() {
    Conflict conflict;
    if (barred_pins(conflict)) return conflict;
    const std::vector<Demand> needed = irreducible();
    for (const Demand& demand : needed) conflict.demands.push_back(words(demand));
    conflict.way_out = way_out(needed);
    return conflict;
  }

 private:
  const Problem& problem_;
  Seconds margin_;
  const catalogue::Catalogue& catalogue_;
  const session::Evening& evening_;
  KernelWorkspace& workspace_;

  [[nodiscard]] const catalogue::Drill& drill_at(int index) const {
    return catalogue_.drills[static_cast<std::size_t>(problem_.drills[static_cast<std::size_t>(index)].drill)];
  }

  // Pins on drills that cannot be done here at all need no search.
  bool barred_pins(Conflict& conflict) const {
    std::string lifts;
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      if (!problem_.drills[i].pinned || !problem_.drills[i].options.empty()) continue;
      const catalogue::Drill& drill = drill_at(static_cast<int>(i));
      std::string reason = barred_because(drill, evening_);
      if (reason.empty() && new_eccentric_too_late(catalogue_, evening_, drill)) {
        reason = "no eccentric work is new this close to a match";
      }
      if (reason.empty()) reason = "its pinned step cannot be done tonight";
      conflict.demands.push_back(drill.name + " is pinned, but " + reason);
      lifts += (lifts.empty() ? "lift the pin on " : " and on ") + drill.name;
    }
    conflict.way_out = lifts;
    return !conflict.demands.empty();
  }

  bool possible(const Problem& problem) { return solve(problem, workspace_).has_value(); }

  // Strikes each demand that is not needed for the conflict; what stays is irreducible.
  std::vector<Demand> irreducible() {
    std::vector<Demand> all;
    for (int l = 0; l < kLoads; ++l) all.push_back({Demand::Kind::kCeiling, l});
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      if (problem_.drills[i].pinned) all.push_back({Demand::Kind::kPin, static_cast<int>(i)});
    }
    all.push_back({Demand::Kind::kSlot, 0});
    Problem rest = problem_;
    std::vector<Demand> needed;
    for (const Demand& demand : all) {
      Problem without = rest;
      lift(without, demand);
      if (possible(without)) {
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
      const int budget = least_budget(problem_, workspace_, [](const Solution&) { return true; });
      if (budget > 0) {
        const std::int64_t slot = budget + problem_.gathering + margin_.count;
        out = "a slot of " + in_words(slot) + " would do; one second less would not";
      }
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
      if (possible(without)) single += (single.empty() ? "" : " or ") + drill_at(static_cast<int>(i)).name;
    }
    if (!single.empty() || all.empty() || !possible(lifted)) return single;
    std::string several;
    for (const int i : all) {
      Problem with = lifted;
      with.drills[static_cast<std::size_t>(i)].pinned = true;
      if (possible(with)) {
        lifted = std::move(with);
      } else {
        several += (several.empty() ? "" : " and ") + drill_at(i).name;
      }
    }
    return several;
  }
};

}  // namespace

Conflict find_conflict(const Problem& problem, Seconds margin, const catalogue::Catalogue& catalogue,
                       const session::Evening& evening, KernelWorkspace& workspace) {
  return ConflictFinder(problem, margin, catalogue, evening, workspace).find();
}

}  // namespace lanework::plan
