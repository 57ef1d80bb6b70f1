#include "core/door/replan_words.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/block/rung_proposals.h"
#include "core/plan/duration_words.h"

namespace lanework::door {
namespace {

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

std::string joined(const std::vector<Because>& reasons) {
  std::string out;
  for (const Because& reason : reasons) out += (out.empty() ? "" : ", and ") + reason.words;
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
      change.because = replan_reasons(block_, static_cast<std::size_t>(s), !change.changes.empty());
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
            is_pinned(block_, swap.comes_in) ? ", as the lead has fixed" : ": eccentric work of the routine stays";
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
    return plan::in_words(seconds_of_quarters(block_, f, quarters));
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
      if (change.because.empty()) return out + "nothing changes";
      return out + "nothing changes, although " + joined(change.because) + ": no change that fits is worth its price";
    }
    const std::size_t count = change.changes.size();
    out += change.of == 0 ? std::to_string(count) + (count == 1 ? " drill" : " drills")
                          : std::to_string(count) + " of " + std::to_string(change.of) +
                                (count == 1 ? " drills changes" : " drills change");
    if (!change.because.empty()) out += ", because " + joined(change.because);
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
    Node because = Node::make_array();
    for (const Because& reason : change.because) {
      why.items.push_back(text(reason.words));
      because.items.push_back(reason.coded);
    }
    row.set("why", std::move(why));
    row.set("because", std::move(because));
    sessions.items.push_back(std::move(row));
  }
  node.set("sessions", std::move(sessions));
  Node swapped = Node::make_array();
  for (const block::SetSwap& swap : telling.swapped()) {
    Node row = Node::make_table();
    if (swap.leaves >= 0) row.set("leaves", text(id(swap.leaves)));
    row.set("comes_in", text(id(swap.comes_in)));
    row.set("why", text(!swap.fixed ? "closed" : is_pinned(block, swap.comes_in) ? "fixed" : "eccentric"));
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
