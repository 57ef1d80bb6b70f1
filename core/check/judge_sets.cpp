#include <algorithm>
#include <iterator>
#include <set>

#include "core/check/block_calendar.h"
#include "core/check/squad_ledger.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kMostSwaps = 3;

std::string in_words(const std::set<std::string>& ids) {
  std::string out;
  for (const std::string& id : ids) out += (out.empty() ? "" : ", ") + id;
  return out.empty() ? "none" : out;
}

std::set<std::string> without(const std::set<std::string>& all, const std::set<std::string>& those) {
  std::set<std::string> out;
  std::set_difference(all.begin(), all.end(), those.begin(), those.end(), std::inserter(out, out.end()));
  return out;
}

class SetJudge {
 public:
  SetJudge(const Matter& matter, const StatedBlock& block, int weeks, const SquadLedger& ledger, SquadFaults& faults)
      : matter_(matter), block_(block), spell_of_(spells_of(weeks)), ledger_(ledger), faults_(faults) {}

  void judge() {
    const std::size_t spells = spell_of_.empty() ? 0 : static_cast<std::size_t>(spell_of_.back()) + 1;
    if (block_.spells.size() != spells) {
      faults_.add("spells", "spells", std::to_string(block_.spells.size()), std::to_string(spells));
      return;
    }
    std::set<std::string> before;
    for (const RoutineLine& line : ledger_.routine) before.insert(line.drill);
    for (std::size_t p = 0; p < spells; ++p) before = spell(p, before);
  }

 private:
  const Matter& matter_;
  const StatedBlock& block_;
  std::vector<int> spell_of_;
  const SquadLedger& ledger_;
  SquadFaults& faults_;

  std::set<std::string> spell(std::size_t p, const std::set<std::string>& before) {
    const StatedSpell& stated = block_.spells[p];
    const std::string where = "spell " + std::to_string(p + 1);
    judge_weeks(p, stated, where);
    std::set<std::string> now;
    for (const std::string& id : stated.drills) {
      if (matter_.drills.count(id) == 0) {
        faults_.add(where, "drill-unknown", id, "a drill of the catalogue");
      } else if (!now.insert(id).second) {
        faults_.add(where, "drill-twice", id + " twice", "each drill once");
      }
    }
    if (ledger_.anything_planned()) {
      judge_change(p, stated, before, now, where);
      // A set that is over is as it was.
      if (static_cast<int>(p) >= ledger_.begun || has_session(p)) judge_sizes(now, where);
      judge_pins(p, now, where);
    }
    judge_members(p, now);
    return now;
  }

  void judge_weeks(std::size_t p, const StatedSpell& stated, const std::string& where) {
    const auto first = std::find(spell_of_.begin(), spell_of_.end(), static_cast<int>(p));
    const auto weeks = std::count(spell_of_.begin(), spell_of_.end(), static_cast<int>(p));
    const auto from = first - spell_of_.begin() + 1;
    if (stated.first_week == from && stated.weeks == weeks) return;
    faults_.add(where, "spells", std::to_string(stated.weeks) + " weeks from week " + std::to_string(stated.first_week),
                std::to_string(weeks) + " weeks from week " + std::to_string(from));
  }

  void judge_change(std::size_t p, const StatedSpell& stated, const std::set<std::string>& before,
                    const std::set<std::string>& now, const std::string& where) {
    const std::set<std::string> in = without(now, before);
    const std::set<std::string> out = without(before, now);
    const std::set<std::string> stated_in(stated.comes_in.begin(), stated.comes_in.end());
    const std::set<std::string> stated_out(stated.leaves.begin(), stated.leaves.end());
    if (stated_in != in || stated.comes_in.size() != in.size()) {
      faults_.add(where, "comes-in", in_words(stated_in), in_words(in));
    }
    if (stated_out != out || stated.leaves.size() != out.size()) {
      faults_.add(where, "leaves", in_words(stated_out), in_words(out));
    }
    if (static_cast<int>(p) < ledger_.begun) return;  // it stands
    const auto count = static_cast<std::int64_t>(in.size());
    const bool any = p == 0 && ledger_.free_composition;
    const std::int64_t most = p == 0 ? most_in_first_spell() : most_in_later_spells();
    if (count > most && !any) {
      faults_.add_row(where, "swaps", std::to_string(count) + " drills come in", "at most " + std::to_string(most));
    }
    if (p > 0 && count == 0) faults_.add_row(where, "swaps", "no drill comes in", "at least 1");
    for (const std::string& id : in) {
      if (!is_ever_open(id)) faults_.add(where, "set-closed", id, "a drill that is open on some evening of the block");
    }
  }

  // What the squad does now is changed only for what the lead has fixed and for required families that it lacks, and,
  // up to three drills in all, where no evening of the spell is open to a drill of the routine.
  [[nodiscard]] std::int64_t most_in_first_spell() const {
    const std::set<std::string> fixed = pins_of(0);
    std::int64_t must = 0;
    std::int64_t may = 0;
    for (const Family& family : matter_.families) {
      std::int64_t closed = 0;
      for (const RoutineLine& line : ledger_.routine) {
        const auto open = [&](const EveningLedger& evening) {
          return spell_of_[static_cast<std::size_t>(evening.wish->week)] == 0 && evening.open.count(line.drill) > 0;
        };
        const bool of_it = matter_.drills.at(line.drill).family == family.key;
        closed += of_it && std::none_of(ledger_.evenings.begin(), ledger_.evenings.end(), open) ? 1 : 0;
      }
      const auto comes_in = std::count_if(fixed.begin(), fixed.end(), [&](const std::string& id) {
        return matter_.drills.at(id).family == family.key && !is_of_routine(id);
      });
      const std::int64_t must_come = std::max<std::int64_t>(comes_in, size_of(family) - in_routine(family));
      must += must_come;
      may += std::max(must_come, closed);
    }
    return std::max(must, std::min(may, kMostSwaps));
  }

  [[nodiscard]] std::int64_t most_in_later_spells() const {
    std::int64_t most = kMostSwaps;
    for (std::size_t p = 1; p < block_.spells.size(); ++p)
      most = std::max(most, static_cast<std::int64_t>(without(pins_of(p), pins_of(p - 1)).size()));
    return most;
  }

  [[nodiscard]] bool is_of_routine(const std::string& id) const {
    return std::any_of(ledger_.routine.begin(), ledger_.routine.end(),
                       [&](const RoutineLine& line) { return line.drill == id; });
  }

  [[nodiscard]] std::int64_t in_routine(const Family& family) const {
    return std::count_if(ledger_.routine.begin(), ledger_.routine.end(),
                         [&](const RoutineLine& line) { return matter_.drills.at(line.drill).family == family.key; });
  }

  [[nodiscard]] bool is_any_open(const Family& family) const {
    return std::any_of(matter_.drills.begin(), matter_.drills.end(), [&](const auto& entry) {
      return entry.second.family == family.key && is_ever_open(entry.first);
    });
  }

  [[nodiscard]] bool has_session(std::size_t p) const {
    return std::any_of(ledger_.evenings.begin(), ledger_.evenings.end(), [&](const EveningLedger& evening) {
      return !evening.match_day() && !evening.over &&
             spell_of_[static_cast<std::size_t>(evening.wish->week)] == static_cast<int>(p);
    });
  }

  [[nodiscard]] bool is_ever_open(const std::string& id) const {
    return std::any_of(ledger_.evenings.begin(), ledger_.evenings.end(),
                       [&](const EveningLedger& evening) { return evening.open.count(id) > 0; });
  }

  // As many of each family as the routine has; one of a required family that it lacks, where one is open at all; no
  // fewer than the lead has fixed for one spell.
  [[nodiscard]] std::int64_t size_of(const Family& family) const {
    std::int64_t size = in_routine(family);
    if (size == 0 && family.required && is_any_open(family)) size = 1;
    for (std::size_t p = 0; p < block_.spells.size(); ++p) {
      const std::set<std::string> fixed = pins_of(p);
      size = std::max<std::int64_t>(size, std::count_if(fixed.begin(), fixed.end(), [&](const std::string& id) {
                                      return matter_.drills.at(id).family == family.key;
                                    }));
    }
    return size;
  }

  void judge_sizes(const std::set<std::string>& now, const std::string& where) {
    for (const Family& family : matter_.families) {
      const std::int64_t wanted = size_of(family);
      const auto has = std::count_if(now.begin(), now.end(),
                                     [&](const std::string& id) { return matter_.drills.at(id).family == family.key; });
      if (has != wanted) {
        faults_.add_row(where + ", " + family.key, "size", std::to_string(has) + " drills",
                        std::to_string(wanted) + ", as in the routine");
      }
    }
  }

  // What the lead has fixed, as far as an evening to come of the spell is open to it.
  [[nodiscard]] std::set<std::string> pins_of(std::size_t p) const {
    std::set<std::string> wanted;
    for (const EveningLedger& evening : ledger_.evenings) {
      if (evening.match_day() || evening.over ||
          spell_of_[static_cast<std::size_t>(evening.wish->week)] != static_cast<int>(p)) {
        continue;
      }
      for (const std::string& id : evening.pinned) {
        if (evening.open.count(id) > 0) wanted.insert(id);
      }
    }
    return wanted;
  }

  // The routine's eccentric work of a family where that comes first stays, as far as an evening to come of the spell is
  // open to it and what the lead has fixed leaves it a place.
  [[nodiscard]] std::set<std::string> eccentric_of(std::size_t p) const {
    std::set<std::string> fixed = pins_of(p);
    std::set<std::string> stays;
    for (const RoutineLine& line : ledger_.routine) {
      const Drill& drill = matter_.drills.at(line.drill);
      const Family* family = find_family(matter_, drill.family);
      if (family == nullptr || ledger_.evenings.front().age < family->eccentric_from_age) continue;
      const auto taken = std::count_if(fixed.begin(), fixed.end(), [&](const std::string& id) {
        return matter_.drills.at(id).family == family->key;
      });
      if (drill.eccentric_thousandths == 0 || taken >= in_routine(*family) || !is_open_in(p, line.drill)) continue;
      fixed.insert(line.drill);
      stays.insert(line.drill);
    }
    return stays;
  }

  [[nodiscard]] bool is_open_in(std::size_t p, const std::string& id) const {
    return std::any_of(ledger_.evenings.begin(), ledger_.evenings.end(), [&](const EveningLedger& evening) {
      return !evening.match_day() && !evening.over && evening.open.count(id) > 0 &&
             spell_of_[static_cast<std::size_t>(evening.wish->week)] == static_cast<int>(p);
    });
  }

  void judge_pins(std::size_t p, const std::set<std::string>& now, const std::string& where) {
    for (const std::string& id : without(eccentric_of(p), now)) {
      faults_.add_row(where + ", " + id, "eccentric-left", "not of the set",
                      "of the set: eccentric work of the routine stays");
    }
    for (const std::string& id : without(pins_of(p), now)) {
      faults_.add_row(where + ", pin " + id, "pin", "not of the set", "of the set, as the lead has fixed");
    }
  }

  void judge_members(std::size_t p, const std::set<std::string>& now) {
    for (const EveningLedger& evening : ledger_.evenings) {
      if (evening.match_day() || evening.over ||
          spell_of_[static_cast<std::size_t>(evening.wish->week)] != static_cast<int>(p)) {
        continue;
      }
      for (const std::string& id : evening.done) {
        if (now.count(id) > 0) continue;
        faults_.add(words_of(evening.wish->date, evening.wish->start_minutes) + ", " + id, "member",
                    "not of the set of spell " + std::to_string(p + 1), "a drill of the set");
      }
    }
  }
};

}  // namespace

bool SquadLedger::anything_planned() const {
  return std::any_of(evenings.begin(), evenings.end(),
                     [](const EveningLedger& evening) { return !evening.match_day() && !evening.over; });
}

bool SquadLedger::first_time(const Matter& matter, const std::string& drill) const {
  const auto known = taught.find(drill);
  if (routine_position(matter, drill) >= 0 || (known != taught.end() && known->second > 0)) return false;
  return std::none_of(evenings.begin(), evenings.end(), [&](const EveningLedger& before) {
    return std::find(before.done.begin(), before.done.end(), drill) != before.done.end();
  });
}

void judge_sets(const Matter& matter, const StatedBlock& block, int weeks, const SquadLedger& ledger,
                SquadFaults& faults) {
  SetJudge(matter, block, weeks, ledger, faults).judge();
}

}  // namespace lanework::check
