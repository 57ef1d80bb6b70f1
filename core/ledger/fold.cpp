#include "core/ledger/fold.h"

#include <algorithm>
#include <set>
#include <utility>

namespace lanework::ledger {
namespace {

std::string text_at(const Node& table, std::string_view key) {
  const Node* node = table.find(key);
  return node != nullptr && node->kind == Node::Kind::kText ? node->text : std::string();
}

std::vector<std::string> texts_at(const Node& table, std::string_view key) {
  std::vector<std::string> out;
  const Node* node = table.find(key);
  if (node == nullptr) return out;
  for (const Node& item : node->items) out.push_back(item.text);
  return out;
}

SessionKey session_of(const Entry& entry) {
  // '18:00:00' and '18:00' are one start.
  return {text_at(entry.whole, "squad"), text_at(entry.whole, "day"), text_at(entry.whole, "start").substr(0, 5)};
}

class Folding {
 public:
  Folding(std::vector<Received> entries, const KindTable& kinds) : kinds_(kinds), entries_(std::move(entries)) {}

  State take() {
    order();
    find_gaps();
    for (const Received& one : entries_) by_id_.emplace(one.entry.id, &one);
    for (const Received& one : entries_) settle_correction(one);
    for (const Received& one : entries_) apply(one);
    return std::move(out_);
  }

 private:
  const KindTable& kinds_;
  std::vector<Received> entries_;  // by receipt, each id once
  std::map<EntryId, const Received*> by_id_;
  std::set<EntryId> replaced_;  // corrected or taken back
  std::map<SessionKey, std::set<std::string>> wrapped_up_by_;
  std::map<EntryId, Injury> never_were_;  // as they would stand, should somebody take that back
  State out_;

  void odd(const Received& one, std::string what) { out_.odd.push_back({one.entry.id, std::move(what)}); }

  void order() {
    std::stable_sort(entries_.begin(), entries_.end(), [](const Received& a, const Received& b) {
      return std::tie(a.receipt, a.entry.id) < std::tie(b.receipt, b.entry.id);
    });
    std::map<EntryId, std::string> first;  // its bytes
    std::set<std::pair<EntryId, std::string>> told;
    std::vector<Received> once;
    for (Received& one : entries_) {
      std::string bytes = bytes_of(one.entry);
      const auto [known, is_new] = first.emplace(one.entry.id, bytes);
      if (is_new) {
        out_.latest_receipt = std::max(out_.latest_receipt, one.receipt);
        once.push_back(std::move(one));
      } else if (known->second != bytes && told.emplace(one.entry.id, std::move(bytes)).second) {
        odd(one, "came again with other content: the first stands");
      }
    }
    entries_ = std::move(once);
  }

  void find_gaps() {
    std::map<std::string, std::map<std::int64_t, EntryId>> of_device;
    for (const Received& one : entries_) {
      const auto [known, is_new] = of_device[one.device].emplace(one.entry.sequence, one.entry.id);
      if (!is_new && known->second != one.entry.id)
        odd(one, "has the device's number " + std::to_string(one.entry.sequence) + ", as another entry has");
    }
    for (const auto& [device, sequences] : of_device) {
      std::int64_t next = 1;
      for (const auto& [sequence, id] : sequences) {
        if (sequence > next) out_.gaps.push_back({device, next, sequence - 1});
        next = sequence + 1;
      }
    }
  }

  [[nodiscard]] bool is_care(const Entry& entry) const {
    const Kind* kind = kinds_.find(entry.kind);
    return kind != nullptr && kind->care;
  }

  // Care settles its own: there a correction never takes caution away.
  void settle_correction(const Received& one) {
    if (!one.entry.corrects || is_care(one.entry) || !one.entry.known) return;
    const auto found = by_id_.find(*one.entry.corrects);
    if (found == by_id_.end()) return odd(one, "corrects an entry that is not there yet");
    const Entry& older = found->second->entry;
    const bool takes_back = one.entry.kind == "taken-back" && is_about_a_session(older);
    if (is_care(older) || (older.kind != one.entry.kind && !takes_back))
      return odd(one, "corrects an entry of another kind: both stand");
    if (is_consent_of_another(one.entry, older)) return odd(one, "corrects the consent of another player: both stand");
    if (in_a_circle(one.entry)) return odd(one, "corrects in a circle: nothing is taken away");
    replaced_.insert(older.id);
  }

  // Whoever enters evenings takes back nothing about a person.
  [[nodiscard]] bool is_about_a_session(const Entry& entry) const {
    const Kind* kind = kinds_.find(entry.kind);
    return kind != nullptr && kind->about == About::kSession;
  }

  // So that the consents of one player are the same by themselves as among all entries.
  static bool is_consent_of_another(const Entry& entry, const Entry& older) {
    return entry.kind == "consent" &&
           (older.kind != "consent" || text_at(entry.whole, "player") != text_at(older.whole, "player"));
  }

  // A device cannot name an entry that is not made yet; what was sent may be anything.
  [[nodiscard]] bool in_a_circle(const Entry& entry) const {
    std::set<EntryId> seen = {entry.id};
    for (const Entry* at = &entry; at->corrects;) {
      if (!seen.insert(*at->corrects).second) return true;
      const auto older = by_id_.find(*at->corrects);
      if (older == by_id_.end() || is_consent_of_another(entry, older->second->entry)) return false;
      at = &older->second->entry;
    }
    return false;
  }

  void apply(const Received& one) {
    const Entry& entry = one.entry;
    const Kind* kind = kinds_.find(entry.kind);
    if (kind == nullptr) {
      ++out_.not_known;
    } else if (kind->care) {
      out_.care.push_back(one);
    } else if (entry.kind == "injury-opened") {
      open_injury(one);
    } else if (replaced_.count(entry.id) > 0 || entry.kind == "taken-back") {
      return;
    } else if (kind->about == About::kSession) {
      apply_to_session(one);
    } else {
      apply_to_person(one);
    }
  }

  static void mark(DrillMarks& marks, const std::string& word) {
    if (word == "needs-help") {
      marks.needs_help = true;
    } else if (word == "easier" || word == "harder") {
      marks.level = word;
    } else {
      marks.done = word;
    }
  }

  void apply_to_session(const Received& one) {
    const SessionKey key = session_of(one.entry);
    SessionState& session = out_.sessions[key];
    const std::string& kind = one.entry.kind;
    const Node& whole = one.entry.whole;
    if (kind == "session-started") session.started = true;
    if (kind == "drill-marked") mark(session.drills[text_at(whole, "drill")], text_at(whole, "mark"));
    if (kind == "attendance") session.attendance = whole;
    if (kind == "exposure-confirmed") session.confirmed = whole;
    if (kind == "visit") session.visits.push_back(whole);
    if (kind != "wrap-up") return;
    session.wrap_up = whole;
    if (!one.entry.corrects) wrapped_up_by_[key].insert(one.author);
    session.twice = wrapped_up_by_[key].size() > 1;
  }

  void apply_to_person(const Received& one) {
    const std::string& kind = one.entry.kind;
    const Node& whole = one.entry.whole;
    if (kind == "coach-taught") out_.taught.push_back(whole);
    if (kind == "coach-asked") out_.asked.push_back(whole);
    if (kind == "coach-entry-never-was") take_coach_entry_off(one);
    if (kind == "screening") out_.screenings.push_back(whole);
    if (kind == "consent") {
      out_.consents.insert_or_assign(ConsentKey{text_at(whole, "player"), text_at(whole, "purpose"),
                                                text_at(whole, "by"), text_at(whole, "guardian")},
                                     whole);
    }
    if (kind == "injury-updated" || kind == "injury-closed") change_injury(one);
    if (kind == "injury-reopened") reopen_injury(one);
    if (kind == "injury-never-was") take_injury_off(one);
  }

  void take_coach_entry_off(const Received& one) {
    const std::string id = text_at(one.entry.whole, "entry");
    const std::string coach = text_at(one.entry.whole, "coach");
    std::size_t gone = 0;
    for (auto* list : {&out_.taught, &out_.asked}) {
      gone += std::erase_if(
          *list, [&](const Node& entry) { return text_at(entry, "id") == id && text_at(entry, "coach") == coach; });
    }
    if (gone == 0) odd(one, "takes off an entry about a coach that is not there");
  }

  // A corrected opening keeps the injury under the id that others name. What was said of it before the correction came
  // was said of an injury that was there, so the first opening counts until then.
  void open_injury(const Received& one) {
    EntryId id = one.entry.id;
    for (const Entry* entry = &one.entry; entry->corrects;) {
      const auto older = by_id_.find(*entry->corrects);
      if (older == by_id_.end() || replaced_.count(older->first) == 0) break;
      id = older->first;
      entry = &older->second->entry;
    }
    const auto never_was = never_were_.find(id);
    const bool there = never_was != never_were_.end() || out_.injuries.count(id) > 0;
    if (there && replaced_.count(one.entry.id) > 0) return;
    Injury& injury = never_was != never_were_.end() ? never_was->second : out_.injuries[id];
    injury.player = text_at(one.entry.whole, "player");
    injury.squad = text_at(one.entry.whole, "squad");
    injury.day = text_at(one.entry.whole, "day");
    injury.what = texts_at(one.entry.whole, "what");
    injury.note = text_at(one.entry.whole, "note");
  }

  // The injury that the entry names, in either map; empty, and told as odd, where there is none of that player.
  std::optional<std::pair<EntryId, Injury*>> injury_named(const Received& one) {
    const auto id = parse_entry_id(text_at(one.entry.whole, "injury"));
    for (auto* among : {&out_.injuries, &never_were_}) {
      const auto found = id ? among->find(*id) : among->end();
      if (found == among->end()) continue;
      if (text_at(one.entry.whole, "player") == found->second.player) return std::pair(*id, &found->second);
      odd(one, "is about an injury of somebody else");
      return {};
    }
    odd(one, "is about an injury that nobody has opened");
    return {};
  }

  void change_injury(const Received& one) {
    const auto named = injury_named(one);
    if (!named) return;
    const Node& whole = one.entry.whole;
    Injury& injury = *named->second;
    if (whole.find("what") != nullptr) injury.what = texts_at(whole, "what");
    if (whole.find("note") != nullptr) injury.note = text_at(whole, "note");
    if (whole.find("loss_began") != nullptr) injury.loss_began = text_at(whole, "loss_began");
    if (whole.find("returned") != nullptr) injury.returned = text_at(whole, "returned");
  }

  void reopen_injury(const Received& one) {
    const auto named = injury_named(one);
    if (!named) return;
    auto taken_off = never_were_.extract(named->first);
    if (taken_off.empty()) {
      named->second->returned.clear();
    } else {
      out_.injuries.insert(std::move(taken_off));
    }
  }

  void take_injury_off(const Received& one) {
    const auto named = injury_named(one);
    if (!named) return;
    auto there = out_.injuries.extract(named->first);
    if (!there.empty()) never_were_.insert(std::move(there));
  }
};

Node list_of(const std::vector<Node>& items) {
  Node out = Node::make_array();
  out.items = items;
  return out;
}

Node texts(const std::vector<std::string>& items) {
  Node out = Node::make_array();
  for (const std::string& item : items) out.items.push_back(Node::make_text(item));
  return out;
}

Node marks_node(const DrillMarks& marks) {
  std::vector<std::string> words;
  if (!marks.done.empty()) words.push_back(marks.done);
  if (!marks.level.empty()) words.push_back(marks.level);
  if (marks.needs_help) words.push_back("needs-help");
  return texts(words);
}

Node session_node(const SessionKey& key, const SessionState& session) {
  Node out = Node::make_table();
  out.set("squad", Node::make_text(key.squad));
  out.set("day", Node::make_text(key.day));
  out.set("start", Node::make_text(key.start));
  out.set("started", Node::make_boolean(session.started));
  Node drills = Node::make_table();
  for (const auto& [drill, marks] : session.drills) drills.set(drill, marks_node(marks));
  out.set("drills", std::move(drills));
  if (session.attendance) out.set("attendance", *session.attendance);
  if (session.wrap_up) out.set("wrap_up", *session.wrap_up);
  if (session.confirmed) out.set("confirmed", *session.confirmed);
  out.set("visits", list_of(session.visits));
  out.set("twice", Node::make_boolean(session.twice));
  return out;
}

Node injury_node(const EntryId& id, const Injury& injury) {
  Node out = Node::make_table();
  out.set("id", Node::make_text(to_text(id)));
  out.set("player", Node::make_text(injury.player));
  out.set("squad", Node::make_text(injury.squad));
  out.set("day", Node::make_text(injury.day));
  out.set("what", texts(injury.what));
  out.set("note", Node::make_text(injury.note));
  out.set("loss_began", Node::make_text(injury.loss_began));
  out.set("returned", Node::make_text(injury.returned));
  return out;
}

// By whom, in the words of care: a clearance is its clinician's, whoever typed it; whoever stands on the grass is a
// coach to it.
const char* by_word(const Received& one) {
  if (one.entry.kind == "clearance") return "clinician";
  return one.role == Role::kLead ? "lead" : "coach";
}

void set_receipt(const Received& one, Node& out) {
  out.set("receipt", Node::make_integer(one.receipt));
  out.set("received", Node::make_text(one.received));
  out.set("by", Node::make_text(by_word(one)));
  out.set("author", Node::make_text(one.author));
}

Node received_node(const Received& one) {
  Node out = Node::make_table();
  out.set("entry", one.entry.whole);
  set_receipt(one, out);
  return out;
}

}  // namespace

State fold(std::vector<Received> entries, const KindTable& kinds) { return Folding(std::move(entries), kinds).take(); }

Node care_document(const State& state, const KindTable& kinds) {
  Node list = Node::make_array();
  for (const Received& one : state.care) {
    const Kind* kind = kinds.find(one.entry.kind);
    if (kind == nullptr) continue;  // not folded here
    Node row = Node::make_table();
    for (const auto& [key, value] : one.entry.whole.entries) {
      const bool envelope =
          key == "id" || key == "device_time" || key == "kind" || key == "corrects" || key == "player";
      if (envelope || kind->field(key) != nullptr) row.set(key, value);
    }
    set_receipt(one, row);
    list.items.push_back(std::move(row));
  }
  Node out = Node::make_table();
  out.set("entry", std::move(list));
  return out;
}

Node to_node(const State& state) {
  Node out = Node::make_table();
  Node sessions = Node::make_array();
  for (const auto& [key, session] : state.sessions) sessions.items.push_back(session_node(key, session));
  out.set("sessions", std::move(sessions));
  Node injuries = Node::make_array();
  for (const auto& [id, injury] : state.injuries) injuries.items.push_back(injury_node(id, injury));
  out.set("injuries", std::move(injuries));
  Node care = Node::make_array();
  for (const Received& one : state.care) care.items.push_back(received_node(one));
  out.set("care", std::move(care));
  out.set("taught", list_of(state.taught));
  out.set("asked", list_of(state.asked));
  out.set("screenings", list_of(state.screenings));
  Node consents = Node::make_array();
  for (const auto& [key, whole] : state.consents) consents.items.push_back(whole);
  out.set("consents", std::move(consents));
  Node gaps = Node::make_array();
  for (const Gap& gap : state.gaps) {
    Node row = Node::make_table();
    row.set("device", Node::make_text(gap.device));
    row.set("from", Node::make_integer(gap.from));
    row.set("to", Node::make_integer(gap.to));
    gaps.items.push_back(std::move(row));
  }
  out.set("gaps", std::move(gaps));
  Node odd = Node::make_array();
  for (const Odd& one : state.odd) {
    Node row = Node::make_table();
    row.set("id", Node::make_text(to_text(one.id)));
    row.set("what", Node::make_text(one.what));
    odd.items.push_back(std::move(row));
  }
  out.set("odd", std::move(odd));
  out.set("not_known", Node::make_integer(state.not_known));
  out.set("latest_receipt", Node::make_integer(state.latest_receipt));
  return out;
}

}  // namespace lanework::ledger
