#include "core/door/replan_reasons.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <utility>

#include "core/door/reason_node.h"
#include "core/plan/duration_words.h"

namespace lanework::door {
namespace {

using block::Cause;
using Happened = block::Report::Happened;

// 'Tuesday 1 December': the year goes without saying inside a block.
std::string day_words(Date date) {
  std::string out = to_words(date);
  return out.substr(0, out.rfind(' '));
}

std::string list_words(const std::vector<std::string>& parts) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i)
    out += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
  return out;
}

Because coded(std::string words, const char* code) { return {std::move(words), Coded(code).done()}; }

struct Past {
  std::string words;  // 'the cut session of Tuesday 24 November', 'the missed week 1'
  Node coded = Node::make_array();
};

class Reasons {
 public:
  Reasons(const SquadBlock& block, std::size_t session)
      : block_(block),
        p_(block.built.problem),
        catalogue_(*block.wishes.outline.catalogue),
        rolling_(*block.wishes.outline.rolling),
        s_(session),
        slot_(block.built.evening_of[session]) {}

  std::vector<Because> all(bool changes) const {
    std::vector<Because> out;
    const std::vector<Cause>& causes = block_.replanned->causes[s_];
    const auto is_cause = [&](Cause cause) { return std::find(causes.begin(), causes.end(), cause) != causes.end(); };
    const bool closed = is_cause(Cause::kDrillClosed) || is_cause(Cause::kDrillFixed);
    for (const Cause cause : causes) {
      // That a drill cannot be done, or is fixed, says why its family is short and why other time is left.
      if (closed && (cause == Cause::kWeekBehind || cause == Cause::kSlotChanged)) continue;
      // What leaves a session as it stood need not be told, unless it is short of something.
      if (!changes && cause != Cause::kWeekBehind && cause != Cause::kTargetRaised) continue;
      Because because = reason(cause);
      if (!because.words.empty()) out.push_back(std::move(because));
    }
    return out;
  }

 private:
  const SquadBlock& block_;
  const block::Problem& p_;
  const catalogue::Catalogue& catalogue_;
  const block::Rolling& rolling_;
  std::size_t s_;
  std::size_t slot_;

  [[nodiscard]] const catalogue::Drill& known(int drill) const {
    return catalogue_.drills[static_cast<std::size_t>(drill)];
  }
  [[nodiscard]] std::string names_words(const std::vector<int>& drills) const {
    std::vector<std::string> names;
    for (const int drill : drills) names.push_back(known(drill).name);
    return list_words(names);
  }
  [[nodiscard]] const block::StandingSession* standing() const {
    return rolling_.standing.find(block_.wishes.slots[slot_].date, block_.wishes.slots[slot_].start);
  }
  [[nodiscard]] std::size_t week_of(std::size_t slot) const {
    return static_cast<std::size_t>(days_between(block_.wishes.outline.monday, block_.wishes.slots[slot].date) / 7);
  }
  [[nodiscard]] std::size_t own_week() const { return static_cast<std::size_t>(p_.sessions[s_].week); }

  [[nodiscard]] Because reason(Cause cause) const {
    switch (cause) {
      case Cause::kNewSession:
        return coded("it is a new session", "new-session");
      case Cause::kSlotChanged:
        return slot_changed();
      case Cause::kMatchMoved:
        return match_moved();
      case Cause::kTurnoutChanged:
        return turnout_changed();
      case Cause::kDrillClosed:
        return closed();
      case Cause::kDrillFixed:
        return fixed();
      case Cause::kRungConfirmed:
        return coded("another rung is confirmed", "rung-confirmed");
      case Cause::kTimesChanged:
        return times_changed();
      case Cause::kTooMuch:
        return coded("what was planned no longer fits", "too-much");
      case Cause::kWeekBehind:
        return behind();
      case Cause::kTargetRaised:
        return owed();
      case Cause::kWeekChanged:
        return coded("the other sessions of its week have changed", "week-changed");
    }
    return {};
  }

  [[nodiscard]] const session::Evening& evening() const { return block_.wishes.outline.evenings[slot_]; }

  [[nodiscard]] Because slot_changed() const {
    const std::int64_t seconds = evening().slot.count - standing()->slot.count;
    if (seconds == 0) return coded("another time is left for its drills", "other-time");
    const bool shorter = seconds < 0;
    return {"the slot is " + plan::in_words(std::abs(seconds)) + (shorter ? " shorter" : " longer"),
            Coded(shorter ? "slot-shorter" : "slot-longer").with("seconds", std::abs(seconds)).done()};
  }

  [[nodiscard]] Because match_moved() const {
    const auto in = [](int days) {
      return days == 0 ? std::string("today") : days == 1 ? "tomorrow" : "in " + std::to_string(days) + " days";
    };
    const std::optional<int> now = evening().days_to_match;
    const std::optional<int> then = standing()->days_to_match;
    if (!now) return coded("no match is near any more", "no-match");
    return {"the next match is " + in(*now) + (then ? ", not " + in(*then) : ""),
            Coded("match").with("days_to_match", now).with("days_to_match_before", then).done()};
  }

  [[nodiscard]] Because turnout_changed() const {
    const std::int64_t now = evening().turnout;
    const std::int64_t then = standing()->turnout;
    return {std::to_string(now) + " come instead of " + std::to_string(then),
            Coded("turnout").with("turnout", now).with("turnout_before", then).done()};
  }

  // 'Squat is fixed by the lead'
  [[nodiscard]] Because fixed() const {
    std::vector<int> pinned;
    std::vector<int> eccentric;
    for (const block::SetSwap& swap : block_.replanned->swapped) {
      const auto d = static_cast<std::size_t>(swap.comes_in);
      if (!swap.fixed || block_.answer.plan.choice[s_][d] < 0) continue;
      const int drill = p_.drills[d].drill;
      (is_pinned(block_, drill) ? pinned : eccentric).push_back(drill);
    }
    const auto are = [](const std::vector<int>& drills) { return drills.size() == 1 ? " is" : " are"; };
    std::string words;
    if (!pinned.empty()) words += names_words(pinned) + are(pinned) + " fixed by the lead";
    if (!eccentric.empty()) {
      words += (words.empty() ? "" : ", ") + names_words(eccentric) + are(eccentric) + " eccentric work of the routine";
    }
    return {words, Coded("fixed")
                       .with("drills", ids_node(catalogue_, pinned))
                       .with("eccentric", ids_node(catalogue_, eccentric))
                       .done()};
  }

  // 'Squat takes longer than planned, since nobody has done it yet'
  [[nodiscard]] Because times_changed() const {
    const std::vector<int> longer = longer_now();
    if (longer.empty()) return coded("drills take less time than planned", "less-time");
    const bool one = longer.size() == 1;
    const bool all_new = std::none_of(longer.begin(), longer.end(), [&](int drill) { return done_so_far(drill); });
    const std::string names =
        longer.size() > 3 ? std::to_string(longer.size()) + " of its drills" : names_words(longer);
    return {names + (one ? " takes" : " take") + " longer than planned" +
                (all_new ? std::string(", since nobody has done ") + (one ? "it yet" : "them yet") : ""),
            Coded("more-time").with("drills", ids_node(catalogue_, longer)).where("all_new", all_new).done()};
  }

  // Drills that stand and take more steps than they were planned with.
  [[nodiscard]] std::vector<int> longer_now() const {
    std::vector<int> out;
    const block::Kind& kind = p_.kinds[static_cast<std::size_t>(p_.sessions[s_].kind)];
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      const int choice = block_.replanned->standing.choice[s_][d];
      if (choice < 0) continue;
      for (const block::PlannedItem& item : standing()->items) {
        if (item.drill != p_.drills[d].drill) continue;
        if (kind.options[d][static_cast<std::size_t>(choice)].steps > item.steps) out.push_back(item.drill);
      }
    }
    return out;
  }

  [[nodiscard]] bool done_so_far(int drill) const {
    for (const block::PastSession& past : rolling_.past) {
      for (const block::PastItem& item : past.items) {
        if (item.planned.drill == drill && item.done) return true;
      }
    }
    return false;
  }

  [[nodiscard]] Because closed() const {
    std::vector<int> drills;
    for (const block::PlannedItem& item : standing()->items) {
      bool open = false;
      for (std::size_t d = 0; d < p_.drills.size(); ++d) {
        if (p_.drills[d].drill == item.drill) open = block_.replanned->standing.choice[s_][d] >= 0;
      }
      if (!open) drills.push_back(item.drill);
    }
    return {names_words(drills) + " cannot be done as planned",
            Coded("closed").with("drills", ids_node(catalogue_, drills)).done()};
  }

  // 'balance is 40 s short after the cut session of Tuesday 24 November'
  [[nodiscard]] Because behind() const {
    const std::size_t w = own_week();
    const block::Evaluation stands = block::evaluate(p_, block_.replanned->standing);
    std::vector<int> quarters;
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const int target = p_.weeks[w].target[f];
      quarters.push_back(std::min(target, rolling_.standing.credits[w][f]) - std::min(target, stands.credits[w][f]));
    }
    const Past after = past([&](const block::PastSession& one) { return week_of(one.evening) == w; });
    return wanting("behind", quarters, " short", after, ", since its week has changed");
  }

  // 'trunk is 1 min 20 s still owed after the missed session of ...'
  [[nodiscard]] Because owed() const {
    const std::size_t w = own_week();
    std::vector<int> quarters;
    const block::Evaluation stands = block::evaluate(p_, block_.replanned->standing);
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const int target = p_.weeks[w].target[f];
      quarters.push_back(std::min(target - rolling_.standing.targets[w][f], target - stands.credits[w][f]));
    }
    const Past after = past([&](const block::PastSession& one) { return owes(week_of(one.evening), w); });
    return wanting("owed", quarters, " still owed", after, "");
  }

  [[nodiscard]] Because wanting(const char* code, const std::vector<int>& quarters, const char* what, const Past& after,
                                const char* after_nothing) const {
    const std::vector<std::size_t> families = most_missing(quarters);
    const bool one = families.size() == 1;
    std::vector<std::string> parts;
    Node rows = Node::make_array();
    for (const std::size_t f : families) {
      const catalogue::FamilyRow& family = catalogue_.family(p_.families[f].family);
      const std::int64_t seconds = seconds_of_quarters(block_, f, quarters[f]);
      parts.push_back(family.name + (one ? " is " : " ") + plan::in_words(seconds));
      Node row = Node::make_table();
      row.set("family", Node::make_text(std::string(catalogue::word(catalogue::family_words(), family.family))));
      row.set("seconds", Node::make_integer(seconds));
      rows.items.push_back(std::move(row));
    }
    return {list_words(parts) + (one ? "" : " are") + what +
                (after.words.empty() ? std::string(after_nothing) : " after " + after.words),
            Coded(code).with("families", std::move(rows)).with("after", after.coded).done()};
  }

  // The families that the session's changes help, where there are any, else all; of these the three with most of their
  // weight missing.
  [[nodiscard]] std::vector<std::size_t> most_missing(const std::vector<int>& quarters) const {
    std::vector<std::size_t> order;
    for (const bool helped : {true, false}) {
      for (std::size_t f = 0; f < quarters.size(); ++f) {
        if (quarters[f] > 0 && (!helped || gain_in(f) > 0)) order.push_back(f);
      }
      if (!order.empty()) break;
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return quarters[a] * p_.families[a].weight > quarters[b] * p_.families[b].weight;
    });
    order.resize(std::min<std::size_t>(3, order.size()));
    return order;
  }

  // Quarter-credits that the session gives more than it did.
  [[nodiscard]] int gain_in(std::size_t f) const {
    const block::Kind& kind = p_.kinds[static_cast<std::size_t>(p_.sessions[s_].kind)];
    int gain = 0;
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      if (p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family != static_cast<int>(f)) continue;
      const int now = block_.answer.plan.choice[s_][d];
      const int then = block_.replanned->standing.choice[s_][d];
      gain += now < 0 ? 0 : kind.options[d][static_cast<std::size_t>(now)].credits;
      gain -= then < 0 ? 0 : kind.options[d][static_cast<std::size_t>(then)].credits;
    }
    return gain;
  }

  // Is it one of the two weeks with a session before that one?
  [[nodiscard]] bool owes(std::size_t week, std::size_t to) const {
    std::vector<bool> between(to, false);
    for (std::size_t slot = 0; slot < block_.wishes.slots.size(); ++slot) {
      const std::size_t at = week_of(slot);
      if (at > week && at < to && !block_.wishes.slots[slot].match_day) between[at] = true;
    }
    return week < to && std::count(between.begin(), between.end(), true) < 2;
  }

  // Sessions that gave less than was promised, by weeks.
  template <class Wanted>
  [[nodiscard]] Past past(const Wanted& wanted) const {
    std::vector<std::string> parts;
    Past out;
    for (std::size_t w = 0; w < p_.weeks.size(); ++w) {
      std::vector<const block::PastSession*> less;
      bool all_missed = true;
      for (const block::PastSession& one : rolling_.past) {
        if (week_of(one.evening) != w || !wanted(one)) continue;
        all_missed = all_missed && one.report.happened == Happened::kMissed;
        if (one.given != one.promised) less.push_back(&one);
      }
      const auto week = static_cast<std::int64_t>(w) + 1;
      if (less.size() == 1) {
        const Date date = block_.wishes.slots[less.front()->evening].date;
        const auto& [words, code] = session_of_past(*less.front());
        parts.push_back(words + day_words(date));
        out.coded.items.push_back(Coded(code).with("date", std::string_view(to_iso(date))).done());
      } else if (!less.empty()) {
        const std::string number = std::to_string(week);
        parts.push_back(all_missed ? "the missed week " + number
                                   : std::to_string(less.size()) + " sessions of week " + number);
        const auto count = static_cast<std::int64_t>(less.size());
        out.coded.items.push_back(all_missed ? Coded("missed-week").with("week", week).done()
                                             : Coded("sessions").with("count", count).with("week", week).done());
      }
    }
    out.words = list_words(parts);
    return out;
  }

  static std::pair<std::string, const char*> session_of_past(const block::PastSession& past) {
    switch (past.report.happened) {
      case Happened::kMissed:
        return {"the missed session of ", "missed-session"};
      case Happened::kCutShort:
        return {"the cut session of ", "cut-session"};
      case Happened::kNoWord:
        return {"the session without a word of ", "session-without-word"};
      case Happened::kHeld:
        break;
    }
    if (past.report.quarters == block::kHalfDidIt) return {"the session that half did on ", "session-half-did"};
    if (past.report.quarters == block::kFewDidIt) return {"the session that few did on ", "session-few-did"};
    if (past.report.minutes) return {"the shorter session of ", "shorter-session"};
    return {"the session with drills left out of ", "session-with-less"};
  }
};

}  // namespace

std::vector<Because> replan_reasons(const SquadBlock& block, std::size_t session, bool changes) {
  return block.replanned ? Reasons(block, session).all(changes) : std::vector<Because>{};
}

std::int64_t seconds_of_quarters(const SquadBlock& block, std::size_t family, int quarters) {
  const catalogue::Catalogue& catalogue = *block.wishes.outline.catalogue;
  const catalogue::FamilyRow& row = catalogue.family(block.built.problem.families[family].family);
  return std::max<std::int64_t>(1, quarters * row.session_work.count / 4);
}

bool is_pinned(const SquadBlock& block, int drill) {
  const std::string& id = block.wishes.outline.catalogue->drills[static_cast<std::size_t>(drill)].id;
  const std::vector<session::Evening>& evenings = block.wishes.outline.evenings;
  return std::any_of(evenings.begin(), evenings.end(), [&](const session::Evening& evening) {
    return std::any_of(evening.pins.begin(), evening.pins.end(),
                       [&](const session::Pin& pin) { return pin.drill == id; });
  });
}

}  // namespace lanework::door
