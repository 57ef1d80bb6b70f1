#include "core/loop/visits.h"

#include <algorithm>
#include <map>
#include <set>

namespace lanework::loop {
namespace {

constexpr std::size_t kReasons = 6;

// By VisitReason, of one evening or drill each; own judgement. What was not done weighs more than what was done badly,
// and silence less than a word: a phone may only be without signal.
constexpr int kWeights[kReasons] = {3, 2, 3, 2, 1, 1};
constexpr int kMostOfOne = 4;  // evenings counted of one reason, so that one of them does not drown the others

struct Tally {
  int count = 0;
  std::optional<Date> latest;

  void add(Date date) {
    ++count;
    if (!latest || *latest < date) latest = date;
  }
};

struct Seen {
  Tally tallies[kReasons];
  std::optional<Date> visited;

  Tally& of(VisitReason reason) { return tallies[static_cast<std::size_t>(reason)]; }
};

std::string word_at(const std::optional<Node>& entry, const char* key) {
  const Node* value = entry ? entry->find(key) : nullptr;
  return value == nullptr || value->kind != Node::Kind::kText ? std::string() : value->text;
}

void add_session(Seen& seen, const ledger::SessionState& session, Date date) {
  const std::string happened = word_at(session.wrap_up, "happened");
  const std::string did_it = word_at(session.wrap_up, "did_it");
  if (happened == "missed" || did_it == "nobody") {
    seen.of(VisitReason::kNotRun).add(date);
  } else {
    if (happened == "cut-short") seen.of(VisitReason::kCutShort).add(date);
    if (did_it == "few") seen.of(VisitReason::kFewDidIt).add(date);
  }
  for (const auto& [drill, marks] : session.drills) {
    if (marks.needs_help) seen.of(VisitReason::kAskedHelp).add(date);
  }
  if (!session.visits.empty() && (!seen.visited || *seen.visited < date)) seen.visited = date;
}

bool was_heard_of(const ledger::SessionState& session) {
  return session.wrap_up || session.started || session.attendance || !session.drills.empty();
}

// Empty where nothing speaks for a visit.
VisitWish wish_of(const std::string& squad, Seen& seen) {
  VisitWish out{squad, {}, 0};
  for (std::size_t r = 0; r < kReasons; ++r) {
    const Tally& tally = seen.tallies[r];
    const bool before_the_visit = seen.visited && tally.latest && *tally.latest <= *seen.visited;
    if (tally.count == 0 || before_the_visit) continue;
    out.causes.push_back({static_cast<VisitReason>(r), tally.count, tally.latest});
    out.weight += kWeights[r] * std::min(tally.count, kMostOfOne);
  }
  if (out.causes.empty()) return out;
  if (!seen.visited) {
    out.causes.push_back({VisitReason::kNotSeen, 0, {}});
    out.weight += kWeights[static_cast<std::size_t>(VisitReason::kNotSeen)];
  }
  const auto weight = [](const VisitCause& cause) {
    return kWeights[static_cast<std::size_t>(cause.reason)] * std::min(std::max(cause.count, 1), kMostOfOne);
  };
  std::stable_sort(out.causes.begin(), out.causes.end(),
                   [&](const VisitCause& a, const VisitCause& b) { return weight(a) > weight(b); });
  return out;
}

}  // namespace

std::vector<VisitWish> squads_to_visit(const ledger::State& state, const std::vector<PlannedEvening>& planned,
                                       Date today) {
  std::map<std::string, Seen> squads;
  std::set<ledger::SessionKey> heard;
  const auto looked_at = [&](Date date) {
    const int ago = days_between(date, today);
    return ago >= 0 && ago <= kVisitLookBackDays;
  };
  for (const auto& [key, session] : state.sessions) {
    const auto date = parse_iso_date(key.day);
    if (!date || !looked_at(*date)) continue;
    add_session(squads[key.squad], session, *date);
    if (was_heard_of(session)) heard.insert(key);
  }
  for (const PlannedEvening& evening : planned) {
    const bool over = days_between(evening.date, today) >= 1;
    if (!over || !looked_at(evening.date)) continue;
    if (heard.count({evening.squad, to_iso(evening.date), to_text(evening.start)}) > 0) continue;
    squads[evening.squad].of(VisitReason::kNothingHeard).add(evening.date);
  }
  std::vector<VisitWish> out;
  for (auto& [squad, seen] : squads) {
    VisitWish wish = wish_of(squad, seen);
    if (!wish.causes.empty()) out.push_back(std::move(wish));
  }
  std::stable_sort(out.begin(), out.end(), [](const VisitWish& a, const VisitWish& b) { return a.weight > b.weight; });
  if (out.size() > kMostVisits) out.resize(kMostVisits);
  return out;
}

}  // namespace lanework::loop
