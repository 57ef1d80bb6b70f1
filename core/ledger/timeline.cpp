#include "core/ledger/timeline.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string_view>

#include "core/ledger/fold.h"

namespace lanework::ledger {
namespace {

std::string spaced(std::string key) {
  std::replace_if(
      key.begin(), key.end(), [](char c) { return c == '-' || c == '_'; }, ' ');
  return key;
}

// Entries by their ids, as a page calls them: nobody reads an id.
using Called = std::map<std::string, std::string>;

std::string value_in_words(const Node& value, const Called& called) {
  switch (value.kind) {
    case Node::Kind::kText: {
      const auto found = called.find(value.text);
      if (found != called.end()) return found->second;
      return parse_entry_id(value.text) ? "an entry that is not on this page" : value.text;
    }
    case Node::Kind::kInteger:
      return std::to_string(value.integer);
    case Node::Kind::kBoolean:
      return value.boolean ? "yes" : "no";
    case Node::Kind::kArray: {
      std::string out;
      for (const Node& item : value.items) out += (out.empty() ? "" : ", ") + value_in_words(item, called);
      return out;
    }
    default:
      return to_json(value);
  }
}

// 'place knee; before 3': all that the entry says, but for those that were said already.
std::string fields_in_words(const Entry& entry, const Called& called, const std::set<std::string_view>& said) {
  const auto& envelope = envelope_keys();
  std::string out;
  for (const auto& [key, value] : entry.whole.entries) {
    if (said.count(key) > 0 || std::find(envelope.begin(), envelope.end(), key) != envelope.end()) continue;
    out += (out.empty() ? "" : "; ") + spaced(key) + " " + value_in_words(value, called);
  }
  return out;
}

// 'consent to keep a record of injuries and screens: given by a guardian on 2026-09-01'. Nothing of what a later
// version asks, or says of it: that has the ledger's own words.
std::optional<std::string> consent_in_words(const Entry& entry, const Called& called) {
  static const std::map<std::string, std::string> kTo = {{"training", "take part in training"},
                                                         {"injury-record", "keep a record of injuries and screens"},
                                                         {"statistics", "be counted in the club's statistics"}};
  const auto text = [&](const char* key) {
    const Node* value = entry.whole.find(key);
    return value == nullptr || value->kind != Node::Kind::kText ? std::string() : value->text;
  };
  const auto to = kTo.find(text("purpose"));
  if (entry.kind != "consent" || to == kTo.end() || text("by").empty()) return {};
  const std::string which = text("guardian");
  const std::string whose =
      text("by") != "guardian" ? "the " + text("by") : (which.empty() ? "a" : "the " + which) + " guardian";
  const std::string rest = fields_in_words(entry, called, {"player", "purpose", "by", "guardian", "answer", "day"});
  return "consent to " + to->second + ": " + text("answer") + " by " + whose + " on " + text("day") +
         (rest.empty() ? "" : "; " + rest);
}

std::string as_entered(const Entry& entry, const Called& called) {
  const std::string fields = fields_in_words(entry, called, {"player"});
  return spaced(entry.kind) + (fields.empty() ? "" : ": " + fields);
}

std::string in_words(const Entry& entry, const Called& called) {
  const auto consent = consent_in_words(entry, called);
  const std::string out = consent ? *consent : as_entered(entry, called);
  if (!entry.corrects) return out;
  return out + " (corrects " + value_in_words(Node::make_text(to_text(*entry.corrects)), called) + ")";
}

bool names(const Node& attendance, const std::string& player) {
  const Node* players = attendance.find("players");
  return players != nullptr &&
         std::any_of(players->items.begin(), players->items.end(), [&](const Node& one) { return one.text == player; });
}

std::string how_it_went(const SessionState& session) {
  if (!session.wrap_up) return "nobody wrapped it up";
  const auto text = [&](const char* key) {
    const Node* value = session.wrap_up->find(key);
    return value == nullptr ? std::string() : spaced(value_in_words(*value, {}));
  };
  std::string out = text("happened");
  if (!text("did_it").empty()) out += ", " + text("did_it") + " did it";
  if (!text("minutes").empty()) out += ", " + text("minutes") + " min";
  return out;
}

}  // namespace

std::string minute_of(const std::string& stamp) {
  constexpr std::size_t kDay = 10;
  constexpr std::size_t kMinutes = 16;
  return stamp.size() < kMinutes ? stamp : stamp.substr(0, kDay) + " " + stamp.substr(kDay + 1, kMinutes - kDay - 1);
}

std::vector<TimelineLine> entered_about(const std::vector<Received>& about) {
  std::vector<TimelineLine> out;
  out.reserve(about.size());
  Called called;
  for (const Received& one : about) {
    called.emplace(to_text(one.entry.id), "the " + spaced(one.entry.kind) + " of " + minute_of(one.received));
  }
  for (const Received& one : about) out.push_back({one.received, in_words(one.entry, called), one.author, one.role});
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
