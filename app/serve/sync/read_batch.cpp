#include "app/serve/sync/read_batch.h"

#include <utility>

#include "app/store/aside.h"

namespace lanework::serve::sync {
namespace {

using access::Relation;
using ledger::Entry;
using ledger::Role;

std::string text_at(const Entry& entry, std::string_view key) {
  const Node* found = entry.whole.find(key);
  return found != nullptr && found->kind == Node::Kind::kText ? found->text : std::string();
}

std::string by_clock(const Entry& entry, Role role, const Now& now) {
  constexpr std::int64_t kDaySeconds = 86'400;
  const std::int64_t made = seconds_of_stamp(entry.device_time);
  if (made > now.seconds + kMostAheadSeconds) return store::aside::kClockAhead;
  if (role != Role::kLead && made < now.seconds - kMostBehindDays * kDaySeconds) {
    return store::aside::kTooOld;
  }
  const auto day = parse_iso_date(text_at(entry, "day"));
  if (day && days_between(now.day, *day) > 1) return store::aside::kDayToCome;
  return {};
}

std::string by_squad(const Entry& entry, const access::Viewer& viewer, const access::SquadsOfPlayer& players,
                     const ledger::KindTable& kinds, const Now& now) {
  const ledger::Kind* kind = kinds.find(entry.kind);
  if (kind == nullptr || kind->about == ledger::About::kCoach) return {};
  const std::vector<std::string> squads = access::squads_of(entry, kinds, players);
  if (kind->about == ledger::About::kPlayer && squads.empty()) return store::aside::kNobodyListed;
  const Date day = parse_iso_date(text_at(entry, "day")).value_or(now.day);
  for (const Date when : {day, now.day}) {
    const Relation relation = access::relation_to_any(viewer, squads, when);
    if (relation == Relation::kOwn || relation == Relation::kSubstitute) return {};
  }
  return store::aside::kNotTheirSquad;
}

// Where and what was expected; never what was found, which is somebody's.
std::string why_unread(const Faults& faults) {
  const Fault& first = faults.front();
  return first.place.field + ": expected " + first.expected;
}

}  // namespace

std::string why_aside(const Entry& entry, const access::Viewer& viewer, const access::SquadsOfPlayer& players,
                      const ledger::KindTable& kinds, const Now& now) {
  std::string out = by_clock(entry, viewer.role, now);
  return out.empty() ? by_squad(entry, viewer, players, kinds, now) : out;
}

ReadBatch read_batch(std::vector<Node> list, const store::Sender& sender, const access::Viewer& viewer,
                     const access::SquadsOfPlayer& players, const ledger::KindTable& kinds, const Now& now) {
  ReadBatch out;
  out.batch.sender = sender;
  out.batch.received = now.stamp;
  out.batch.entries.reserve(list.size());
  for (std::size_t i = 0; i < list.size(); ++i) {
    auto entry = ledger::read_entry(std::move(list[i]), "entries." + std::to_string(i + 1), kinds);
    if (!entry) {
      out.unread.push_back(i);
      out.whys.push_back(why_unread(entry.faults()));
      out.batch.unread.push_back({to_json(list[i]), out.whys.back()});
      continue;
    }
    out.read.push_back(i);
    std::string aside = why_aside(entry.value(), viewer, players, kinds, now);
    out.batch.entries.push_back({std::move(entry).value(), std::move(aside)});
  }
  return out;
}

}  // namespace lanework::serve::sync
