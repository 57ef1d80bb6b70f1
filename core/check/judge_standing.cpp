// Against the answer that stood before: what is over stays as it was planned, sets stand, and every change is told.
#include <algorithm>
#include <set>

#include "core/check/squad_ledger.h"

namespace lanework::check {
namespace {

std::string item_words(const StatedItem& item) {
  return item.named.drill + ", " + item.named.rung + ", " + std::to_string(item.named.step.sets) + " x " +
         std::to_string(item.named.step.amount);
}

const StatedSession* session_at(const StatedBlock& block, Date date, int start_minutes) {
  for (const StatedSession& session : block.sessions) {
    if (session.date == date && session.start_minutes == start_minutes) return &session;
  }
  return nullptr;
}

// Drills in, drills out, and other rungs or doses.
std::int64_t changes_between(const StatedSession& before, const StatedSession& after) {
  std::set<std::string> then;
  std::set<std::string> now;
  for (const StatedItem& item : before.items) then.insert(item_words(item));
  std::set<std::string> changed;
  for (const StatedItem& item : after.items) {
    now.insert(item_words(item));
    if (then.count(item_words(item)) == 0) changed.insert(item.named.drill);
  }
  for (const StatedItem& item : before.items) {
    if (now.count(item_words(item)) == 0) changed.insert(item.named.drill);
  }
  return static_cast<std::int64_t>(changed.size());
}

class StandingJudge {
 public:
  StandingJudge(const StatedBlock& block, const StatedBlock& before, int weeks, const SquadLedger& ledger,
                SquadFaults& faults)
      : block_(block), before_(before), spell_of_(spells_of(weeks)), ledger_(ledger), faults_(faults) {}

  void judge() {
    for (const EveningLedger& evening : ledger_.evenings) {
      if (evening.over) judge_past(evening);
    }
    judge_sets();
    if (block_.rolling) judge_changes();
  }

 private:
  const StatedBlock& block_;
  const StatedBlock& before_;
  std::vector<int> spell_of_;
  const SquadLedger& ledger_;
  SquadFaults& faults_;

  void judge_past(const EveningLedger& evening) {
    const std::string where = words_of(evening.wish->date, evening.wish->start_minutes);
    const StatedSession* stood = session_at(before_, evening.wish->date, evening.wish->start_minutes);
    if (stood == nullptr) {
      faults_.add(where, "past-changed", "a session", "none: the answer before has none");
      return;
    }
    const auto words = [](const StatedSession& session) {
      std::string out;
      for (const StatedItem& item : session.items)
        out += (out.empty() ? "" : "; ") + item_words(item) + ", " + std::to_string(item.steps.value_or(0)) + " steps";
      return out;
    };
    const std::string now = words(*evening.stated);
    const std::string then = words(*stood);
    if (now != then) faults_.add(where, "past-changed", now, then);
  }

  [[nodiscard]] bool open_in(std::size_t spell, const std::string& drill) const {
    return std::any_of(ledger_.evenings.begin(), ledger_.evenings.end(), [&](const EveningLedger& evening) {
      return !evening.over && spell_of_[static_cast<std::size_t>(evening.wish->week)] == static_cast<int>(spell) &&
             evening.open.count(drill) > 0;
    });
  }

  // A drill leaves only where no session to come of its spell is open to it, or for one that the lead has fixed; as
  // many come in, or more where those have places of their own.
  void judge_sets() {
    for (std::size_t p = 0; p < std::min(block_.spells.size(), before_.spells.size()); ++p) {
      const std::string where = "spell " + std::to_string(p + 1);
      const std::vector<std::string>& now = block_.spells[p].drills;
      const std::vector<std::string>& then = before_.spells[p].drills;
      std::size_t came = 0;
      std::size_t fixed = 0;
      for (const std::string& drill : now) {
        if (holds(then, drill)) continue;
        ++came;
        fixed += is_fixed(p, drill) ? 1 : 0;
      }
      std::size_t left = 0;
      std::size_t for_fixed = 0;
      for (const std::string& drill : then) {
        if (holds(now, drill)) continue;
        ++left;
        if (has_left_before(p, drill) || (has_session(p) && !open_in(p, drill))) continue;
        if (!has_session(p) || ++for_fixed > fixed)
          faults_.add(where, "set-changed", drill + " has left", "the set that stood");
      }
      if (came < left || came > left + fixed)
        faults_.add(where, "set-changed", std::to_string(came) + " drills came in", std::to_string(left));
    }
  }

  [[nodiscard]] bool is_fixed(std::size_t spell, const std::string& drill) const {
    return std::any_of(ledger_.evenings.begin(), ledger_.evenings.end(), [&](const EveningLedger& evening) {
      return !evening.over && spell_of_[static_cast<std::size_t>(evening.wish->week)] == static_cast<int>(spell) &&
             evening.pinned.count(drill) > 0 && evening.open.count(drill) > 0;
    });
  }

  // Closed in an earlier spell to come: it leaves all later sets with that one.
  [[nodiscard]] bool has_left_before(std::size_t spell, const std::string& drill) const {
    for (std::size_t p = 0; p < spell; ++p) {
      if (has_session(p) && !open_in(p, drill) && holds(before_.spells[p].drills, drill) &&
          !holds(block_.spells[p].drills, drill))
        return true;
    }
    return false;
  }

  [[nodiscard]] bool has_session(std::size_t spell) const {
    return std::any_of(ledger_.evenings.begin(), ledger_.evenings.end(), [&](const EveningLedger& evening) {
      return !evening.over && !evening.match_day() &&
             spell_of_[static_cast<std::size_t>(evening.wish->week)] == static_cast<int>(spell);
    });
  }

  // The coming session, then every later one that is not as it stood.
  void judge_changes() {
    std::vector<StatedSessionChange> own;
    for (const EveningLedger& evening : ledger_.evenings) {
      if (evening.over || evening.match_day()) continue;
      const StatedSession* stood = session_at(before_, evening.wish->date, evening.wish->start_minutes);
      const StatedSession none;
      const bool new_session = stood == nullptr || stood->match_day;
      const std::int64_t changes = changes_between(new_session ? none : *stood, *evening.stated);
      if (own.empty() || changes > 0) own.push_back({evening.wish->date, evening.wish->start_minutes, changes});
    }
    const auto words = [](const std::vector<StatedSessionChange>& changes) {
      std::string out;
      for (const StatedSessionChange& one : changes)
        out += (out.empty() ? "" : ", ") + words_of(one.date, one.start_minutes) + ": " + std::to_string(one.changes);
      return out.empty() ? std::string("none") : out;
    };
    const std::string stated = words(block_.rolling->sessions);
    if (stated != words(own)) faults_.add("rolling", "changes-told", stated, words(own));
  }
};

}  // namespace

void judge_standing(const StatedBlock& block, const StatedBlock& before, int weeks, const SquadLedger& ledger,
                    SquadFaults& faults) {
  StandingJudge(block, before, weeks, ledger, faults).judge();
}

}  // namespace lanework::check
