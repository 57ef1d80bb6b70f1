// The lead's week by squads: what was planned, what fell out, how many join in, and whom to see first. Counts and no
// names; who it is stands one click deeper, where reading is noted.
#include <algorithm>
#include <map>
#include <set>

#include "app/serve/routes/routes.h"
#include "app/serve/standing.h"
#include "core/loop/visits.h"

namespace lanework::serve {
namespace {

constexpr int kDaysOfWeek = 7;
constexpr int kReviewsAheadDays = 7;  // what is to be looked at within a week is told now; own judgement
constexpr int kReportedDays = 7;      // what came in within a week is new; own judgement

struct Week {
  Date monday;
  Date sunday;
};

std::optional<Week> week_of(const std::string& text) {
  const auto monday = parse_iso_date(text);
  if (!monday || weekday_name(*monday) != "Monday") return {};
  return Week{*monday, Date{monday->days_since_epoch + kDaysOfWeek - 1}};
}

std::optional<Date> day_at(const Node& row) {
  const Node* date = row.find("date");
  return date == nullptr ? std::nullopt : parse_iso_date(date->text);
}

// What the plans that stand have of the squads.
struct Planned {
  std::map<std::string, Node> rows;            // of the week, by squad: {"day", "start", "minutes", "match_day"}
  std::map<std::string, Node> fell_out;        // of the week, by squad: {"day", "start", "why", "because"}
  std::vector<loop::PlannedEvening> evenings;  // all of them
};

void add_plan(const std::string& squad, const Node& plan, const Week& week, Planned& out) {
  const auto list_of = [&](const char* key) {
    const Node* list = plan.find(key);
    return list == nullptr ? Node::make_array() : *list;
  };
  const auto in_week = [&](Date date) { return date >= week.monday && date <= week.sunday; };
  const auto row_of = [](const Node& from, Date date, std::initializer_list<const char*> keys) {
    Node row = Node::make_table();
    row.set("day", Node::make_text(to_iso(date)));
    for (const char* key : keys) {
      if (const Node* value = from.find(key)) row.set(key, *value);
    }
    return row;
  };
  Node rows = Node::make_array();
  Node fell_out = Node::make_array();
  for (const Node& session : list_of("sessions").items) {
    const auto date = day_at(session);
    const Node* start = session.find("start");
    const auto time = start == nullptr ? std::nullopt : parse_time_of_day(start->text);
    if (!date || !time) continue;
    out.evenings.push_back({squad, *date, *time});
    if (in_week(*date)) rows.items.push_back(row_of(session, *date, {"start", "minutes", "match_day"}));
  }
  for (const Node& missed : list_of("missed").items) {
    const auto date = day_at(missed);
    if (date && in_week(*date)) fell_out.items.push_back(row_of(missed, *date, {"start", "why", "because"}));
  }
  out.rows[squad] = std::move(rows);
  out.fell_out[squad] = std::move(fell_out);
}

Result<Planned> planned_of(Call& call, const std::vector<std::string>& squads, const Week& week) {
  Planned out;
  for (const std::string& squad : squads) {
    const auto latest = call.room.queue->latest_plan(squad);
    if (!latest) return latest.faults();
    if (!latest.value()) continue;
    const auto document = parse_json("plan", latest.value()->text);
    if (!document) return document.faults();
    const Node* all = document.value().root.find("squads");
    if (all != nullptr && !all->items.empty()) add_plan(squad, all->items.front(), week, out);
  }
  return out;
}

// How the squad's players take part tonight, and what is to be looked at again.
struct Counts {
  int joins_in = 0;
  int with_swaps = 0;
  int sits_out = 0;
  int reviews = 0;
  std::optional<Date> earliest;
  int hurt = 0;  // of whom that came in lately and still holds
  int sore = 0;
  std::optional<Date> latest_report;
};

std::map<std::string, Counts> counts_of(const store::Lists& lists, const SquadStanding& standing, Date today) {
  std::map<std::string, Counts> out;
  std::map<std::string, const std::vector<std::string>*> squads_of;
  for (const store::ListedPlayer& player : lists.players) squads_of[player.id] = &player.squads;
  for (const PlayerStanding& one : standing.players) {
    for (const std::string& squad : *squads_of.at(one.player)) {
      Counts& counts = out[squad];
      if (one.word == care::words_of(people::TakingPart::kSitsOut)) {
        ++counts.sits_out;
      } else if (one.word == care::words_of(people::TakingPart::kJoinsInWithSwaps)) {
        ++counts.with_swaps;
      } else {
        ++counts.joins_in;
      }
      if (one.reported && days_between(one.reported->day, today) < kReportedDays) {
        ++(one.reported->hurt ? counts.hurt : counts.sore);
        if (!counts.latest_report || *counts.latest_report < one.reported->day) {
          counts.latest_report = one.reported->day;
        }
      }
      if (!one.review || days_between(today, *one.review) > kReviewsAheadDays) continue;
      ++counts.reviews;
      if (!counts.earliest || *one.review < *counts.earliest) counts.earliest = one.review;
    }
  }
  return out;
}

Node counts_node(const Counts& counts) {
  Node out = Node::make_table();
  out.set("joins_in", Node::make_integer(counts.joins_in));
  out.set("with_swaps", Node::make_integer(counts.with_swaps));
  out.set("sits_out", Node::make_integer(counts.sits_out));
  out.set("reviews", Node::make_integer(counts.reviews));
  if (counts.earliest) out.set("earliest_review", Node::make_text(to_iso(*counts.earliest)));
  if (!counts.latest_report) return out;
  Node reported = Node::make_table();
  reported.set("hurt", Node::make_integer(counts.hurt));
  reported.set("sore", Node::make_integer(counts.sore));
  reported.set("latest", Node::make_text(to_iso(*counts.latest_report)));
  out.set("reported", std::move(reported));
  return out;
}

const char* reason_word(loop::VisitReason reason) {
  switch (reason) {
    case loop::VisitReason::kNotRun:
      return "not-run";
    case loop::VisitReason::kNothingHeard:
      return "nothing-heard";
    case loop::VisitReason::kFewDidIt:
      return "few-did-it";
    case loop::VisitReason::kAskedHelp:
      return "asked-help";
    case loop::VisitReason::kCutShort:
      return "cut-short";
    case loop::VisitReason::kNotSeen:
      return "not-seen";
  }
  return "";
}

Node visits_node(const std::vector<loop::VisitWish>& visits) {
  Node out = Node::make_array();
  for (const loop::VisitWish& wish : visits) {
    Node causes = Node::make_array();
    for (const loop::VisitCause& cause : wish.causes) {
      Node row = Node::make_table();
      row.set("reason", Node::make_text(reason_word(cause.reason)));
      if (cause.count > 0) row.set("count", Node::make_integer(cause.count));
      if (cause.latest) row.set("latest", Node::make_text(to_iso(*cause.latest)));
      causes.items.push_back(std::move(row));
    }
    Node row = Node::make_table();
    row.set("squad", Node::make_text(wish.squad));
    row.set("causes", std::move(causes));
    out.items.push_back(std::move(row));
  }
  return out;
}

Response week_of_squads(Call& call) {
  const auto week = week_of(call.values[0]);
  if (!week) return error_answer(404, "not-found", "A week is named by its Monday, such as 2026-11-23.");
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  const store::Lists& lists = club.value()->lists;
  std::vector<std::string> squads;
  for (const store::ListedSquad& squad : lists.squads) squads.push_back(squad.id);
  const auto planned = planned_of(call, squads, *week);
  if (!planned) return store_answer(planned.faults());
  std::vector<std::string> players;
  for (const store::ListedPlayer& player : lists.players) players.push_back(player.id);
  const auto standing = standing_of(call.room, call.house, players, call.now.day);
  if (!standing) return store_answer(standing.faults());
  const Date from{call.now.day.days_since_epoch - loop::kVisitLookBackDays};
  auto entries = call.room.store->entries_of_days(from, call.now.day, call.house.kinds);
  if (!entries) return store_answer(entries.faults());
  const ledger::State state = ledger::fold(std::move(entries).value(), call.house.kinds);

  auto counts = counts_of(lists, standing.value(), call.now.day);
  Node rows = Node::make_array();
  for (const store::ListedSquad& squad : lists.squads) {
    const auto rows_of = [&](const std::map<std::string, Node>& by_squad) {
      const auto found = by_squad.find(squad.id);
      return found == by_squad.end() ? Node::make_array() : found->second;
    };
    Node row = Node::make_table();
    row.set("squad", Node::make_text(squad.id));
    row.set("name", Node::make_text(squad.name));
    row.set("has_plan", Node::make_boolean(planned.value().rows.count(squad.id) > 0));
    row.set("planned", rows_of(planned.value().rows));
    row.set("fell_out", rows_of(planned.value().fell_out));
    row.set("tonight", counts_node(counts[squad.id]));
    rows.items.push_back(std::move(row));
  }
  Node body = Node::make_table();
  body.set("from", Node::make_text(to_iso(week->monday)));
  body.set("to", Node::make_text(to_iso(week->sunday)));
  body.set("squads", std::move(rows));
  body.set("visits", visits_node(loop::squads_to_visit(state, planned.value().evenings, call.now.day)));
  if (!standing.value().known_at.empty()) body.set("known_at", Node::make_text(standing.value().known_at));
  return json_answer(200, body);
}

}  // namespace

const std::vector<NamedWork>& overview_routes() {
  static const std::vector<NamedWork> kWorks = {{"week-of-squads", week_of_squads}};
  return kWorks;
}

}  // namespace lanework::serve
