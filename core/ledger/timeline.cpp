#include "core/ledger/timeline.h"

#include <algorithm>
#include <map>

#include "core/ledger/fold.h"

namespace lanework::ledger {
namespace {

std::string spaced(std::string key) {
  std::replace_if(
      key.begin(), key.end(), [](char c) { return c == '-' || c == '_'; }, ' ');
  return key;
}

std::string value_in_words(const Node& value) {
  switch (value.kind) {
    case Node::Kind::kText:
      return value.text;
    case Node::Kind::kInteger:
      return std::to_string(value.integer);
    case Node::Kind::kBoolean:
      return value.boolean ? "yes" : "no";
    case Node::Kind::kArray: {
      std::string out;
      for (const Node& item : value.items) out += (out.empty() ? "" : ", ") + value_in_words(item);
      return out;
    }
    default:
      return to_json(value);
  }
}

std::string in_words(const Entry& entry) {
  const auto& envelope = envelope_keys();
  std::string fields;
  for (const auto& [key, value] : entry.whole.entries) {
    if (key == "player" || std::find(envelope.begin(), envelope.end(), key) != envelope.end()) continue;
    fields += (fields.empty() ? "" : "; ") + spaced(key) + " " + value_in_words(value);
  }
  std::string out = spaced(entry.kind) + (fields.empty() ? "" : ": " + fields);
  return entry.corrects ? out + " (corrects an earlier entry)" : out;
}

bool names(const Node& attendance, const std::string& player) {
  const Node* players = attendance.find("players");
  return players != nullptr &&
         std::any_of(players->items.begin(), players->items.end(), [&](const Node& one) { return one.text == player; });
}

std::string how_it_went(const SessionState& session) {
  if (!session.wrap_up) return "nobody wrapped it up";
  std::string out;
  for (const char* key : {"happened", "did_it", "minutes"}) {
    const Node* value = session.wrap_up->find(key);
    if (value != nullptr) out += (out.empty() ? "" : "; ") + spaced(key) + " " + value_in_words(*value);
  }
  return out;
}

}  // namespace

std::vector<TimelineLine> entered_about(const std::vector<Received>& about) {
  std::vector<TimelineLine> out;
  out.reserve(about.size());
  for (const Received& one : about) out.push_back({one.received, in_words(one.entry), one.author, one.role});
  return out;
}

std::vector<TimelineLine> counted_at(const std::vector<Received>& evenings, const std::string& player,
                                     const KindTable& kinds) {
  const State state = fold(evenings, kinds);
  std::map<SessionKey, const Received*> counted;  // the latest that counted it
  for (const Received& one : evenings) {
    if (one.entry.kind != "attendance") continue;
    const auto text = [&](const char* key) {
      const Node* found = one.entry.whole.find(key);
      return found == nullptr ? std::string() : found->text;
    };
    counted[{text("squad"), text("day"), text("start")}] = &one;
  }
  std::vector<TimelineLine> out;
  for (const auto& [key, session] : state.sessions) {
    const auto by = counted.find(key);
    if (!session.attendance || !names(*session.attendance, player) || by == counted.end()) continue;
    out.push_back(
        {by->second->received,
         "there at the warm-up of " + key.squad + ", " + key.day + " " + key.start + ": " + how_it_went(session),
         by->second->author, by->second->role});
  }
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.received < b.received; });
  return out;
}

}  // namespace lanework::ledger
