#include "core/door/replan_words.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include "core/block/rung_proposals.h"
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

std::string joined(const std::vector<std::string>& clauses) {
  std::string out;
  for (const std::string& clause : clauses) out += (out.empty() ? "" : ", and ") + clause;
  return out;
}

class Telling {
 public:
  explicit Telling(const SquadBlock& block)
      : block_(block),
        p_(block.built.problem),
        catalogue_(*block.wishes.outline.catalogue),
        rolling_(*block.wishes.outline.rolling) {}

  std::vector<SessionChange> sessions() const {
    std::vector<SessionChange> out;
    for (std::size_t slot = rolling_.past.size(); slot < block_.wishes.slots.size(); ++slot) {
      const int s = session_of(slot);
      if (s < 0) continue;
      SessionChange change;
      change.slot = slot;
      const block::StandingSession* stands = standing_at(slot);
      if (stands != nullptr && !stands->match_day) {
        change.of = stands->items.size();
        change.changes = changes(stands->items, items_of(block_, slot));
      } else {
        change.changes = changes({}, items_of(block_, slot));
      }
      if (!out.empty() && change.changes.empty()) continue;
      change.why = reasons(static_cast<std::size_t>(s), !change.changes.empty());
      out.push_back(std::move(change));
    }
    return out;
  }

  std::vector<std::string> sentences() const {
    std::vector<std::string> out;
    tell_no_word(out);
    for (const block::SetSwap& swap : swapped()) {
      const std::string place = swap.leaves < 0 ? "" : " takes the place of " + name(swap.leaves);
      if (swap.fixed) {
        const char* why =
            is_pinned(swap.comes_in) ? ", as the lead has fixed" : ": eccentric work of the routine stays";
        out.push_back(name(swap.comes_in) + (place.empty() ? " comes in" : place) + why);
      } else {
        out.push_back(name(swap.comes_in) + place + ", which cannot be done in the sessions to come");
      }
    }
    const std::vector<SessionChange> changed = sessions();
    for (std::size_t i = 0; i < changed.size(); ++i) out.push_back(sentence(changed[i]));
    tell_the_rest(changed, out);
    tell_shortfalls(out);
    tell_rungs(out);
    return out;
  }

  // Drills of the catalogue.
  [[nodiscard]] std::vector<block::SetSwap> swapped() const {
    std::vector<block::SetSwap> out;
    if (!block_.replanned) return out;
    const auto drill_at = [&](int d) { return d < 0 ? -1 : p_.drills[static_cast<std::size_t>(d)].drill; };
    for (const block::SetSwap& swap : block_.replanned->swapped)
      out.push_back({drill_at(swap.leaves), drill_at(swap.comes_in), swap.fixed});
    return out;
  }

  // By the lead. What else is fixed is the routine's eccentric work.
  [[nodiscard]] bool is_pinned(int drill) const {
    const std::string& id = catalogue_.drills[static_cast<std::size_t>(drill)].id;
    const std::vector<session::Evening>& evenings = block_.wishes.outline.evenings;
    return std::any_of(evenings.begin(), evenings.end(), [&](const session::Evening& evening) {
      return std::any_of(evening.pins.begin(), evening.pins.end(),
                         [&](const session::Pin& pin) { return pin.drill == id; });
    });
  }

 private:
  const SquadBlock& block_;
  const block::Problem& p_;
  const catalogue::Catalogue& catalogue_;
  const block::Rolling& rolling_;

  [[nodiscard]] std::string name(int drill) const { return catalogue_.drills[static_cast<std::size_t>(drill)].name; }
  [[nodiscard]] int session_of(std::size_t slot) const {
    const auto found = std::find(block_.built.evening_of.begin(), block_.built.evening_of.end(), slot);
    return found == block_.built.evening_of.end() ? -1 : static_cast<int>(found - block_.built.evening_of.begin());
  }
  [[nodiscard]] const block::StandingSession* standing_at(std::size_t slot) const {
    return rolling_.standing.find(block_.wishes.slots[slot].date, block_.wishes.slots[slot].start);
  }
  [[nodiscard]] std::size_t week_of(std::size_t slot) const {
    return static_cast<std::size_t>(days_between(block_.wishes.outline.monday, block_.wishes.slots[slot].date) / 7);
  }

  [[nodiscard]] std::string dose_words(int drill, int rung, int dose, bool with_rung) const {
    const catalogue::Drill& known = catalogue_.drills[static_cast<std::size_t>(drill)];
    const std::string words = catalogue::dose_in_words(known, known.dose.steps[static_cast<std::size_t>(dose)]);
    return with_rung ? known.rungs[static_cast<std::size_t>(rung)].change + ", " + words : words;
  }

  [[nodiscard]] std::vector<ItemChange> changes(const std::vector<block::PlannedItem>& before,
                                                const std::vector<BlockItem>& after) const {
    std::vector<ItemChange> out;
    for (const block::PlannedItem& item : before) {
      const auto now =
          std::find_if(after.begin(), after.end(), [&](const BlockItem& one) { return one.drill == item.drill; });
      if (now == after.end()) {
        out.push_back({ItemChange::What::kLeftOut, item.drill, name(item.drill) + " left out"});
      } else if (now->rung != item.rung || now->dose != item.dose) {
        const bool rung = now->rung != item.rung;
        out.push_back({ItemChange::What::kOtherDose, item.drill,
                       name(item.drill) + " " + dose_words(now->drill, now->rung, now->dose, rung) + " instead of " +
                           dose_words(item.drill, item.rung, item.dose, rung)});
      }
    }
    for (const BlockItem& item : after) {
      const auto then = std::find_if(before.begin(), before.end(),
                                     [&](const block::PlannedItem& one) { return one.drill == item.drill; });
      if (then == before.end())
        out.push_back({ItemChange::What::kComesIn, item.drill,
                       name(item.drill) + " comes in, " + dose_words(item.drill, item.rung, item.dose, false)});
    }
    return out;
  }

  [[nodiscard]] std::string quarters_words(std::size_t f, int quarters) const {
    const catalogue::FamilyRow& row = catalogue_.family(p_.families[f].family);
    return plan::in_words(std::max<std::int64_t>(1, quarters * row.session_work.count / 4));
  }

  // 'balance is 40 s short', 'balance 40 s and trunk 20 s are short': the families that the session's changes help,
  // where there are any, else all; of these the three with most of their weight missing.
  [[nodiscard]] std::string families_words(std::size_t s, const std::vector<int>& quarters, const char* what) const {
    std::vector<std::size_t> order;
    for (const bool helped : {true, false}) {
      for (std::size_t f = 0; f < quarters.size(); ++f) {
        if (quarters[f] > 0 && (!helped || gain_in(s, f) > 0)) order.push_back(f);
      }
      if (!order.empty()) break;
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return quarters[a] * p_.families[a].weight > quarters[b] * p_.families[b].weight;
    });
    order.resize(std::min<std::size_t>(3, order.size()));
    const bool one = order.size() == 1;
    std::vector<std::string> parts;
    for (const std::size_t f : order)
      parts.push_back(catalogue_.family(p_.families[f].family).name + (one ? " is " : " ") +
                      quarters_words(f, quarters[f]));
    return list_words(parts) + (one ? " " : " are ") + what;
  }

  // Quarter-credits that the session gives more than it did.
  [[nodiscard]] int gain_in(std::size_t s, std::size_t f) const {
    const block::Kind& kind = p_.kinds[static_cast<std::size_t>(p_.sessions[s].kind)];
    int gain = 0;
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      if (p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family != static_cast<int>(f)) continue;
      const int now = block_.answer.plan.choice[s][d];
      const int then = block_.replanned->standing.choice[s][d];
      gain += now < 0 ? 0 : kind.options[d][static_cast<std::size_t>(now)].credits;
      gain -= then < 0 ? 0 : kind.options[d][static_cast<std::size_t>(then)].credits;
    }
    return gain;
  }

  [[nodiscard]] std::vector<std::string> reasons(std::size_t s, bool changes) const {
    std::vector<std::string> out;
    if (!block_.replanned) return out;
    const std::vector<Cause>& causes = block_.replanned->causes[s];
    const auto is_cause = [&](Cause cause) { return std::find(causes.begin(), causes.end(), cause) != causes.end(); };
    const bool closed = is_cause(Cause::kDrillClosed) || is_cause(Cause::kDrillFixed);
    for (const Cause cause : causes) {
      // That a drill cannot be done, or is fixed, says why its family is short and why other time is left.
      if (closed && (cause == Cause::kWeekBehind || cause == Cause::kSlotChanged)) continue;
      // What leaves a session as it stood need not be told, unless it is short of something.
      if (!changes && cause != Cause::kWeekBehind && cause != Cause::kTargetRaised) continue;
      const std::string words = reason(s, cause);
      if (!words.empty()) out.push_back(words);
    }
    return out;
  }

  [[nodiscard]] std::string reason(std::size_t s, Cause cause) const {
    const std::size_t slot = block_.built.evening_of[s];
    const block::StandingSession* stands = standing_at(slot);
    const session::Evening& now = block_.wishes.outline.evenings[slot];
    switch (cause) {
      case Cause::kNewSession:
        return "it is a new session";
      case Cause::kSlotChanged: {
        const std::int64_t seconds = now.slot.count - stands->slot.count;
        if (seconds == 0) return "another time is left for its drills";
        return "the slot is " + plan::in_words(std::abs(seconds)) + (seconds < 0 ? " shorter" : " longer");
      }
      case Cause::kMatchMoved:
        return match_words(now.days_to_match, stands->days_to_match);
      case Cause::kTurnoutChanged:
        return std::to_string(now.turnout) + " come instead of " + std::to_string(stands->turnout);
      case Cause::kDrillClosed:
        return closed_words(s, *stands);
      case Cause::kDrillFixed:
        return fixed_words(s);
      case Cause::kRungConfirmed:
        return "another rung is confirmed";
      case Cause::kTimesChanged:
        return times_words(s, *stands);
      case Cause::kTooMuch:
        return "what was planned no longer fits";
      case Cause::kWeekBehind:
        return behind_words(s);
      case Cause::kTargetRaised:
        return owed_words(s);
      case Cause::kWeekChanged:
        return "the other sessions of its week have changed";
    }
    return {};
  }

  // 'Squat is fixed by the lead'
  [[nodiscard]] std::string fixed_words(std::size_t s) const {
    std::vector<std::string> pinned;
    std::vector<std::string> eccentric;
    for (const block::SetSwap& swap : block_.replanned->swapped) {
      const auto d = static_cast<std::size_t>(swap.comes_in);
      if (!swap.fixed || block_.answer.plan.choice[s][d] < 0) continue;
      (is_pinned(p_.drills[d].drill) ? pinned : eccentric).push_back(name(p_.drills[d].drill));
    }
    const auto are = [](const std::vector<std::string>& names) { return names.size() == 1 ? " is" : " are"; };
    std::string out;
    if (!pinned.empty()) out += list_words(pinned) + are(pinned) + " fixed by the lead";
    if (!eccentric.empty()) {
      out += (out.empty() ? "" : ", ") + list_words(eccentric) + are(eccentric) + " eccentric work of the routine";
    }
    return out;
  }

  // 'Squat takes longer than planned, since nobody has done it yet'
  [[nodiscard]] std::string times_words(std::size_t s, const block::StandingSession& stands) const {
    std::vector<std::string> longer;
    bool all_new = true;
    const block::Kind& kind = p_.kinds[static_cast<std::size_t>(p_.sessions[s].kind)];
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      const int choice = block_.replanned->standing.choice[s][d];
      if (choice < 0) continue;
      for (const block::PlannedItem& item : stands.items) {
        if (item.drill != p_.drills[d].drill) continue;
        if (kind.options[d][static_cast<std::size_t>(choice)].steps <= item.steps) continue;
        longer.push_back(name(item.drill));
        all_new = all_new && !done_so_far(item.drill);
      }
    }
    if (longer.empty()) return "drills take less time than planned";
    const bool one = longer.size() == 1;
    const std::string names = longer.size() > 3 ? std::to_string(longer.size()) + " of its drills" : list_words(longer);
    return names + (one ? " takes" : " take") + " longer than planned" +
           (all_new ? std::string(", since nobody has done ") + (one ? "it yet" : "them yet") : "");
  }

  [[nodiscard]] bool done_so_far(int drill) const {
    for (const block::PastSession& past : rolling_.past) {
      for (const block::PastItem& item : past.items) {
        if (item.planned.drill == drill && item.done) return true;
      }
    }
    return false;
  }

  static std::string match_words(std::optional<int> now, std::optional<int> then) {
    const auto in = [](int days) {
      return days == 0 ? std::string("today") : days == 1 ? "tomorrow" : "in " + std::to_string(days) + " days";
    };
    if (now && then) return "the next match is " + in(*now) + ", not " + in(*then);
    if (now) return "the next match is " + in(*now);
    return "no match is near any more";
  }

  [[nodiscard]] std::string closed_words(std::size_t s, const block::StandingSession& stands) const {
    std::vector<std::string> names;
    for (const block::PlannedItem& item : stands.items) {
      bool open = false;
      for (std::size_t d = 0; d < p_.drills.size(); ++d) {
        if (p_.drills[d].drill == item.drill) open = block_.replanned->standing.choice[s][d] >= 0;
      }
      if (!open) names.push_back(name(item.drill));
    }
    return list_words(names) + " cannot be done as planned";
  }

  // 'balance is 40 s short after the cut session of Tuesday 24 November'
  [[nodiscard]] std::string behind_words(std::size_t s) const {
    const auto w = static_cast<std::size_t>(p_.sessions[s].week);
    const block::Evaluation stands = block::evaluate(p_, block_.replanned->standing);
    std::vector<int> quarters;
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const int target = p_.weeks[w].target[f];
      quarters.push_back(std::min(target, rolling_.standing.credits[w][f]) - std::min(target, stands.credits[w][f]));
    }
    const std::string after = past_words([&](const block::PastSession& past) { return week_of(past.evening) == w; });
    return families_words(s, quarters, "short") + (after.empty() ? ", since its week has changed" : " after " + after);
  }

  // 'week 1 owes trunk 1 min 20 s after the missed session of ...'
  [[nodiscard]] std::string owed_words(std::size_t s) const {
    const auto w = static_cast<std::size_t>(p_.sessions[s].week);
    std::vector<int> quarters;
    const block::Evaluation stands = block::evaluate(p_, block_.replanned->standing);
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const int target = p_.weeks[w].target[f];
      quarters.push_back(std::min(target - rolling_.standing.targets[w][f], target - stands.credits[w][f]));
    }
    const std::string after =
        past_words([&](const block::PastSession& past) { return owes(week_of(past.evening), w); });
    return families_words(s, quarters, "still owed") + (after.empty() ? "" : " after " + after);
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

  // 'the cut session of Tuesday 24 November', 'the missed week 1'
  template <class Wanted>
  [[nodiscard]] std::string past_words(const Wanted& wanted) const {
    std::vector<std::string> parts;
    for (std::size_t w = 0; w < p_.weeks.size(); ++w) {
      std::vector<const block::PastSession*> less;
      bool all_missed = true;
      for (const block::PastSession& past : rolling_.past) {
        if (week_of(past.evening) != w || !wanted(past)) continue;
        all_missed = all_missed && past.report.happened == Happened::kMissed;
        if (past.given != past.promised) less.push_back(&past);
      }
      if (less.size() == 1) {
        parts.push_back(session_words(*less.front()) + day_words(block_.wishes.slots[less.front()->evening].date));
      } else if (!less.empty()) {
        parts.push_back(all_missed ? "the missed week " + std::to_string(w + 1)
                                   : std::to_string(less.size()) + " sessions of week " + std::to_string(w + 1));
      }
    }
    return list_words(parts);
  }

  static std::string session_words(const block::PastSession& past) {
    switch (past.report.happened) {
      case Happened::kMissed:
        return "the missed session of ";
      case Happened::kCutShort:
        return "the cut session of ";
      case Happened::kNoWord:
        return "the session without a word of ";
      case Happened::kHeld:
        break;
    }
    if (past.report.quarters == block::kHalfDidIt) return "the session that half did on ";
    if (past.report.quarters == block::kFewDidIt) return "the session that few did on ";
    return past.report.minutes ? "the shorter session of " : "the session with drills left out of ";
  }

  void tell_no_word(std::vector<std::string>& out) const {
    std::vector<std::string> days;
    for (const block::PastSession& past : rolling_.past) {
      if (past.report.happened == Happened::kNoWord) days.push_back(day_words(block_.wishes.slots[past.evening].date));
    }
    if (days.empty()) return;
    out.push_back("no word of " + std::to_string(days.size()) + (days.size() == 1 ? " session (" : " sessions (") +
                  list_words(days) + "): loads count as planned, nothing counts as done");
  }

  [[nodiscard]] std::string sentence(const SessionChange& change) const {
    std::string out = day_words(block_.wishes.slots[change.slot].date) + ": ";
    if (change.changes.empty()) {
      if (change.why.empty()) return out + "nothing changes";
      return out + "nothing changes, although " + joined(change.why) + ": no change that fits is worth its price";
    }
    const std::size_t count = change.changes.size();
    out += change.of == 0 ? std::to_string(count) + (count == 1 ? " drill" : " drills")
                          : std::to_string(count) + " of " + std::to_string(change.of) +
                                (count == 1 ? " drills changes" : " drills change");
    if (!change.why.empty()) out += ", because " + joined(change.why);
    if (change.of == 0) return out;
    out += ": ";
    for (std::size_t i = 0; i < count; ++i) out += (i == 0 ? "" : "; ") + change.changes[i].words;
    return out;
  }

  void tell_the_rest(const std::vector<SessionChange>& changed, std::vector<std::string>& out) const {
    if (p_.sessions.empty()) {
      out.push_back("no session of the block is to come");
      return;
    }
    const std::size_t stay = p_.sessions.size() - changed.size();
    if (p_.sessions.size() == 1) return;
    out.push_back(stay == 0   ? "every later session changes"
                  : stay == 1 ? "1 later session stays as it is"
                              : std::to_string(stay) + " later sessions stay as they are");
  }

  // 'Squat: most did it in 4 sessions in a row; the next rung, half-way down, waits for the lead to see and confirm it'
  void tell_rungs(std::vector<std::string>& out) const {
    for (const block::RungProposal& one : block::rung_proposals(block_.wishes.outline)) {
      const catalogue::Drill& drill = catalogue_.drills[static_cast<std::size_t>(one.drill)];
      const std::string rung = drill.rungs[static_cast<std::size_t>(one.to)].change;
      const std::string sessions = " in " + std::to_string(one.sessions) + " sessions in a row; ";
      out.push_back(drill.name + (one.to > one.from ? ": most did it" + sessions + "the next rung, " + rung +
                                                          ", waits for the lead to see it and confirm it"
                                                    : ": hardly done" + sessions + "an easier rung is: " + rung));
    }
  }

  // 'week 2: trunk 40 s short (before 10 s), balance no longer short'.
  void tell_shortfalls(std::vector<std::string>& out) const {
    const block::Evaluation now = block::evaluate(p_, block_.answer.plan);
    for (std::size_t w = 0; w < p_.weeks.size() && w < rolling_.standing.credits.size(); ++w) {
      const bool to_come = std::any_of(p_.sessions.begin(), p_.sessions.end(), [&](const block::Session& session) {
        return session.week == static_cast<int>(w);
      });
      std::vector<std::string> parts;
      for (std::size_t f = 0; f < p_.families.size() && to_come; ++f) {
        const int before = std::max(0, rolling_.standing.targets[w][f] - rolling_.standing.credits[w][f]);
        const int after = std::max(0, p_.weeks[w].target[f] - now.credits[w][f]);
        if (before == after) continue;
        const std::string family = catalogue_.family(p_.families[f].family).name;
        parts.push_back(after == 0 ? family + " no longer short"
                                   : family + " " + quarters_words(f, after) +
                                         " short (before: " + (before == 0 ? "met" : quarters_words(f, before)) + ")");
      }
      if (!parts.empty()) out.push_back("week " + std::to_string(w + 1) + ": " + list_words(parts));
    }
  }
};

const char* to_word(ItemChange::What what) {
  constexpr std::array<const char*, 3> words = {"comes in", "left out", "other dose"};
  return words[static_cast<std::size_t>(what)];
}

Node text(std::string value) { return Node::make_text(std::move(value)); }

}  // namespace

const char* to_word(Happened happened) {
  constexpr std::array<const char*, 4> words = {"no word", "held", "missed", "cut short"};
  return words[static_cast<std::size_t>(happened)];
}

std::vector<SessionChange> session_changes(const SquadBlock& block) { return Telling(block).sessions(); }

std::vector<std::string> replan_sentences(const SquadBlock& block) { return Telling(block).sentences(); }

Node rolling_node(const SquadBlock& block) {
  const Telling telling(block);
  const catalogue::Catalogue& catalogue = *block.wishes.outline.catalogue;
  const auto id = [&](int drill) { return catalogue.drills[static_cast<std::size_t>(drill)].id; };
  Node node = Node::make_table();
  node.set("today", text(to_iso(block.wishes.outline.rolling->today)));
  Node sessions = Node::make_array();
  for (const SessionChange& change : telling.sessions()) {
    const club::PlannedSlot& slot = block.wishes.slots[change.slot];
    Node row = Node::make_table();
    row.set("date", text(to_iso(slot.date)));
    row.set("start", text(to_text(slot.start)));
    row.set("of", Node::make_integer(static_cast<std::int64_t>(change.of)));
    Node changes = Node::make_array();
    for (const ItemChange& one : change.changes) {
      Node item = Node::make_table();
      item.set("drill", text(id(one.drill)));
      item.set("what", text(to_word(one.what)));
      changes.items.push_back(std::move(item));
    }
    row.set("changes", std::move(changes));
    Node why = Node::make_array();
    for (const std::string& clause : change.why) why.items.push_back(text(clause));
    row.set("why", std::move(why));
    sessions.items.push_back(std::move(row));
  }
  node.set("sessions", std::move(sessions));
  Node swapped = Node::make_array();
  for (const block::SetSwap& swap : telling.swapped()) {
    Node row = Node::make_table();
    if (swap.leaves >= 0) row.set("leaves", text(id(swap.leaves)));
    row.set("comes_in", text(id(swap.comes_in)));
    row.set("why", text(!swap.fixed ? "closed" : telling.is_pinned(swap.comes_in) ? "fixed" : "eccentric"));
    swapped.items.push_back(std::move(row));
  }
  node.set("swapped", std::move(swapped));
  Node rungs = Node::make_array();
  for (const block::RungProposal& one : block::rung_proposals(block.wishes.outline)) {
    Node row = Node::make_table();
    row.set("drill", text(id(one.drill)));
    row.set("rung",
            text(catalogue.drills[static_cast<std::size_t>(one.drill)].rungs[static_cast<std::size_t>(one.to)].key));
    row.set("sessions", Node::make_integer(one.sessions));
    row.set("why", text(one.to > one.from ? "done by most" : "hardly done"));
    rungs.items.push_back(std::move(row));
  }
  node.set("rungs", std::move(rungs));
  Node sentences = Node::make_array();
  for (std::string& sentence : telling.sentences()) sentences.items.push_back(text(std::move(sentence)));
  node.set("sentences", std::move(sentences));
  return node;
}

}  // namespace lanework::door
