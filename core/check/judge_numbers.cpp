// What a block states of itself: weeks, value, bound, gap, shortfalls.
#include <algorithm>
#include <set>

#include "core/check/week_sums.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kFullPoints = 10;
constexpr std::int64_t kLessPoints = 4;
// Times the weight of the squad file, in quarters.
constexpr std::int64_t kLeftOutScale = 20;
constexpr std::int64_t kSwapScale = 20;

class NumberJudge {
 public:
  NumberJudge(const Matter& matter, const StatedBlock& block, int weeks, const SquadLedger& ledger, SquadFaults& faults)
      : matter_(matter),
        block_(block),
        spell_of_(spells_of(weeks)),
        sums_(week_sums(ledger, weeks)),
        ledger_(ledger),
        faults_(faults) {
    for (const Family& family : matter.families) targets_[family.key] = week_targets(family, ledger, weeks);
  }

  std::int64_t judge() {
    judge_weeks();
    const std::int64_t value = own_value();
    // What keeps no row has no value to be proud of.
    if (block_.feasible) {
      expect("value", "value", block_.value, value);
      judge_bound();
    }
    judge_shortfalls();
    return value;
  }

 private:
  const Matter& matter_;
  const StatedBlock& block_;
  std::vector<int> spell_of_;
  std::vector<WeekSums> sums_;
  std::map<std::string, std::vector<std::int64_t>> targets_;  // by family and week
  const SquadLedger& ledger_;
  SquadFaults& faults_;

  void expect(const std::string& where, const char* rule, std::int64_t stated, std::int64_t own) {
    if (stated != own) faults_.add(where, rule, std::to_string(stated), std::to_string(own));
  }

  static std::int64_t of(const std::map<std::string, std::int64_t>& sums, const std::string& family) {
    const auto found = sums.find(family);
    return found == sums.end() ? 0 : found->second;
  }

  void judge_weeks() {
    expect("weeks", "weeks", static_cast<std::int64_t>(block_.weeks.size()), static_cast<std::int64_t>(sums_.size()));
    for (std::size_t w = 0; w < std::min(block_.weeks.size(), sums_.size()); ++w) judge_week(w);
  }

  void judge_week(std::size_t w) {
    const StatedWeek& stated = block_.weeks[w];
    const std::string where = "week " + std::to_string(w + 1);
    expect(where, "weeks", stated.week, static_cast<std::int64_t>(w) + 1);
    expect(where + ", spell", "spells", stated.spell, spell_of_[w] + 1);
    for (const Family& family : matter_.families) judge_family(where + ", " + family.key, stated, w, family);
    for (const StatedFamily& row : stated.families) {
      if (find_family(matter_, row.family) == nullptr) {
        faults_.add(where, "family-unknown", row.family, "a family of the catalogue");
      }
    }
    if (ledger_.evenings.empty()) return;
    const LoadSums ceilings = week_ceilings(matter_, ledger_);
    const LoadSums& own = sums_[w].planned;
    const LoadSums& fixed = sums_[w].fixed;
    judge_load(where + ", contacts", stated.contacts, own.contacts + fixed.contacts, ceilings.contacts);
    judge_load(where + ", eccentric", stated.eccentric, own.eccentric + fixed.eccentric, ceilings.eccentric);
    judge_load(where + ", hard running", stated.hard_running, own.hard_running + fixed.hard_running,
               ceilings.hard_running);
  }

  void judge_family(const std::string& where, const StatedWeek& stated, std::size_t w, const Family& family) {
    const auto same = [&](const StatedFamily& row) { return row.family == family.key; };
    const auto count = std::count_if(stated.families.begin(), stated.families.end(), same);
    expect(where, "family-rows", count, 1);
    if (count == 0) return;
    const StatedFamily& row = *std::find_if(stated.families.begin(), stated.families.end(), same);
    expect(where, "credits", row.credits, of(sums_[w].credits, family.key));
    expect(where, "target", row.target, targets_.at(family.key)[w]);
    expect(where, "work-seconds", row.work_seconds, (of(sums_[w].work_ms, family.key) + 500) / 1000);
  }

  void judge_load(const std::string& where, const std::optional<StatedLoad>& stated, std::int64_t used,
                  std::int64_t ceiling) {
    if (!stated) {
      faults_.add(where, "load-stated", "nothing", in_units(used) + " of " + in_units(ceiling));
    } else if (stated->used_thousandths != used || 1000 * stated->ceiling != ceiling) {
      faults_.add(where, "load-stated", in_units(stated->used_thousandths) + " of " + std::to_string(stated->ceiling),
                  in_units(used) + " of " + in_units(ceiling));
    }
  }

  [[nodiscard]] std::int64_t own_value() const {
    std::int64_t value = 0;
    for (std::size_t w = 0; w < sums_.size(); ++w) {
      for (const Family& family : matter_.families)
        value += worth(family, targets_.at(family.key)[w], of(sums_[w].credits, family.key));
    }
    for (const EveningLedger& evening : ledger_.evenings) {
      if (!evening.match_day() && !evening.over) value -= lost_in(evening);
    }
    return value - kSwapScale * ledger_.weights.new_drill * drills_that_come_in();
  }

  static std::int64_t worth(const Family& family, std::int64_t target, std::int64_t credits) {
    std::int64_t points = 0;
    for (std::int64_t quarter = 1; quarter <= credits; ++quarter) {
      if (quarter <= target) points += kFullPoints;
      if (quarter > target && quarter <= target + target / 2) points += kLessPoints;
    }
    return family.weight * points;
  }

  [[nodiscard]] std::int64_t lost_in(const EveningLedger& evening) const {
    std::int64_t lost = evening.departure;
    for (const Family& family : matter_.families) {
      if (family.required && evening.credits.count(family.key) == 0) lost += kUncoveredPoints;
    }
    const auto spell = static_cast<std::size_t>(spell_of_[static_cast<std::size_t>(evening.wish->week)]);
    if (spell >= block_.spells.size()) return lost;
    for (const std::string& id : block_.spells[spell].drills) {
      if (evening.open.count(id) == 0) continue;
      if (std::find(evening.done.begin(), evening.done.end(), id) != evening.done.end()) continue;
      lost += evening.pinned.count(id) > 0 ? kPinnedPoints : kLeftOutScale * ledger_.weights.left_out;
    }
    return lost;
  }

  [[nodiscard]] std::int64_t drills_that_come_in() const {
    std::int64_t count = 0;
    std::set<std::string> before;
    for (const RoutineLine& line : ledger_.routine) before.insert(line.drill);
    for (const StatedSpell& spell : block_.spells) {
      for (const std::string& id : spell.drills) count += before.count(id) == 0 ? 1 : 0;
      before = {spell.drills.begin(), spell.drills.end()};
    }
    return count;
  }

  void judge_bound() {
    if (block_.bound < block_.value) {
      faults_.add("bound", "bound", std::to_string(block_.bound),
                  "at least the value, " + std::to_string(block_.value));
      return;
    }
    if (block_.bound <= 0) {
      expect("gap_percent", "gap", block_.gap_hundredths, 0);
      return;
    }
    const std::int64_t own = (10000 * (block_.bound - block_.value) + block_.bound - 1) / block_.bound;
    if (block_.gap_hundredths != own) {
      faults_.add("gap_percent", "gap", hundredths(block_.gap_hundredths), hundredths(own));
    }
  }

  static std::string hundredths(std::int64_t value) { return in_units(10 * value) + " %"; }

  // One sentence for every family that falls short, which begins with its name; no other.
  void judge_shortfalls() {
    for (const Family& family : matter_.families) {
      bool is_short = false;
      for (std::size_t w = 0; w < sums_.size(); ++w) {
        is_short = is_short || (sums_[w].has_session && of(sums_[w].credits, family.key) < targets_.at(family.key)[w]);
      }
      const auto told = std::count_if(block_.shortfalls.begin(), block_.shortfalls.end(), [&](const std::string& line) {
        return line.rfind(family.name + ":", 0) == 0 || line.rfind(family.key + ":", 0) == 0;
      });
      if (is_short && told == 0) faults_.add(family.key, "shortfall-missing", "no sentence", "its shortfall");
      if (!is_short && told > 0) faults_.add(family.key, "shortfall-untrue", "a shortfall", "none");
    }
    judge_unkept_pins();
  }

  // One sentence for every drill that the lead has fixed and that a session open to it goes without, or none is open
  // to.
  void judge_unkept_pins() {
    std::map<std::string, std::pair<int, int>> pins;  // sessions open to it, and those of them that have it
    for (const EveningLedger& evening : ledger_.evenings) {
      if (evening.match_day() || evening.over) continue;
      for (const std::string& id : evening.pinned) {
        auto& [open, done] = pins[id];
        open += evening.open.count(id) > 0 ? 1 : 0;
        done += std::count(evening.done.begin(), evening.done.end(), id) > 0 ? 1 : 0;
      }
    }
    for (const auto& [id, drill] : matter_.drills) {
      const auto [open, done] = pins.count(id) > 0 ? pins.at(id) : std::pair{1, 1};
      const std::string expected =
          open == 0 ? "no session" : std::to_string(open - done) + " of " + std::to_string(open) + " sessions";
      const std::string head = drill.name + ": fixed by the lead";
      const auto line = std::find_if(block_.shortfalls.begin(), block_.shortfalls.end(),
                                     [&](const std::string& one) { return one.rfind(head, 0) == 0; });
      const bool told = line != block_.shortfalls.end();
      if (open > 0 && open == done) {
        if (told) faults_.add("pin " + drill.id, "shortfall-untrue", *line, "none");
      } else if (!told || line->find(expected) == std::string::npos) {
        faults_.add("pin " + drill.id, "shortfall-missing", told ? *line : "no sentence", expected + " without it");
      }
    }
  }
};

}  // namespace

std::int64_t judge_numbers(const Matter& matter, const StatedBlock& block, int weeks, const SquadLedger& ledger,
                           SquadFaults& faults) {
  return NumberJudge(matter, block, weeks, ledger, faults).judge();
}

}  // namespace lanework::check
