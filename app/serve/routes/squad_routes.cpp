// Squads as their coach and the lead see them tonight, and the lead's week.
#include <algorithm>

#include "app/serve/routes/routes.h"
#include "app/serve/session_limits.h"
#include "app/serve/standing.h"

namespace lanework::serve {
namespace {

Node squad_node(const Call& call, const store::ListedSquad& squad) {
  Node row = Node::make_table();
  row.set("id", Node::make_text(squad.id));
  row.set("name", Node::make_text(squad.name));
  const auto relation = access::relation_of(call.viewer, squad.id, call.viewer.today);
  row.set("relation", Node::make_text(std::string(access::relation_words()[static_cast<std::size_t>(relation)])));
  return row;
}

// Of squads that are somebody else's not even that they are there.
Response squads(Call& call) {
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  Node list = Node::make_array();
  for (const store::ListedSquad& squad : club.value()->lists.squads) {
    const auto relation = access::relation_of(call.viewer, squad.id, call.viewer.today);
    if (relation != access::Relation::kOwn && relation != access::Relation::kSubstitute) continue;
    list.items.push_back(
        access::visible_row(squad_node(call, squad), squad.id, call.viewer, *call.house.matrix.view("squad")));
  }
  Node body = Node::make_table();
  body.set("club", Node::make_text(club.value()->lists.club));
  body.set("squads", std::move(list));
  return json_answer(200, body);
}

// The squad's sheet for the caller, made of everything that was entered about its players.
struct Sheet {
  Node body;
  std::vector<ledger::Received> entries;
};

Result<Sheet> sheet_of(Call& call) {
  const auto club = call.house.club(call.room);
  if (!club) return club.faults();
  const store::Lists& lists = club.value()->lists;
  const std::string& id = call.values[0];
  std::vector<std::string> players;
  Node roster = Node::make_array();
  for (const store::ListedPlayer& player : lists.players) {
    if (std::find(player.squads.begin(), player.squads.end(), id) == player.squads.end()) continue;
    players.push_back(player.id);
    Node row = Node::make_table();
    row.set("player", Node::make_text(player.id));
    row.set("name", Node::make_text(player.name));
    row.set("age_group", Node::make_text(player.age_group));
    roster.items.push_back(access::visible_row(row, id, call.viewer, *call.house.matrix.view("roster")));
  }
  auto entries = entries_about(call.room, call.house, players);
  if (!entries) return entries.faults();
  const SquadStanding standing =
      standing_from(entries.value(), call.house.kinds, call.house.care, players, call.now.day);
  Node standings = Node::make_array();
  for (const PlayerStanding& one : standing.players) {
    Node row = Node::make_table();
    row.set("player", Node::make_text(one.player));
    row.set("word", Node::make_text(one.word));
    row.set("instructions", texts_node(one.instructions));
    if (one.until) row.set("until", Node::make_text(to_iso(*one.until)));
    row.set("reasons", texts_node(one.reasons));
    standings.items.push_back(access::visible_row(row, id, call.viewer, *call.house.matrix.view("standing")));
  }
  call.read_squad = id;
  call.read_people = static_cast<std::int64_t>(players.size());
  const auto found =
      std::find_if(lists.squads.begin(), lists.squads.end(), [&](const auto& one) { return one.id == id; });
  Node body = Node::make_table();
  body.set("squad", access::visible_row(squad_node(call, *found), id, call.viewer, *call.house.matrix.view("squad")));
  body.set("roster", std::move(roster));
  body.set("standing", std::move(standings));
  if (!standing.known_at.empty()) body.set("known_at", Node::make_text(standing.known_at));
  body.set("ask", Node::make_text("Ask who is sore tonight. Local rules and licensed practice come first."));
  return Sheet{std::move(body), std::move(entries).value()};
}

Response squad(Call& call) {
  const auto sheet = sheet_of(call);
  return sheet ? json_answer(200, sheet.value().body) : store_answer(sheet.faults());
}

// A substitute has this evening, and no other.
Node evenings_for(const Call& call, const Node& evenings) {
  const auto relation = access::relation_of(call.viewer, call.values[0], call.viewer.today);
  if (relation != access::Relation::kSubstitute) return evenings;
  Node out = Node::make_array();
  for (const Node& evening : evenings.items) {
    if (evening.find("day")->text == to_iso(call.viewer.today)) out.items.push_back(evening);
  }
  return out;
}

// All that a phone needs to plan, run and record the squad's coming evenings with no signal, and all that the desk
// needs to plan them anew (docs/formats/pocket.md).
Response evenings(Call& call, Whose whose) {
  if (!call.house.pocket) return no_folder();
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  auto sheet = sheet_of(call);
  if (!sheet) return store_answer(sheet.faults());
  const auto latest = call.room.queue->latest_plan(call.values[0]);
  if (!latest) return store_answer(latest.faults());
  const ledger::State state = ledger::fold(std::move(sheet.value().entries), call.house.kinds);
  auto pocket = call.house.pocket(call.values[0], ledger::care_document(state, call.house.kinds), call.now.day,
                                  latest.value() ? latest.value()->text : std::string(), whose);
  if (!pocket) return folder_has_a_fault(call);
  Node row = Node::make_table();
  row.set("made", Node::make_text(call.now.stamp));
  row.set("lease_until", Node::make_text(now_at(call.now.seconds + kLeaseSeconds).stamp));
  row.set("evenings", evenings_for(call, *pocket.value().find("evenings")));
  row.set("catalogue", *pocket.value().find("catalogue"));
  row.set("action_plans", *pocket.value().find("action_plans"));
  if (const Node* emergency = pocket.value().find("emergency")) row.set("emergency", *emergency);
  const Node seen = access::visible_row(row, call.values[0], call.viewer, *call.house.matrix.view("evenings"));
  Node body = Node::make_table();
  body.set("version", Node::make_integer(1));
  body.set("club", Node::make_text(club.value()->lists.club));
  for (const auto& [key, value] : sheet.value().body.entries) body.set(key, value);
  for (const auto& [key, value] : seen.entries) body.set(key, value);
  return json_answer(200, body);
}

Response evenings_of_device(Call& call) { return evenings(call, Whose::kPhones); }
Response evenings_of_desk(Call& call) { return evenings(call, Whose::kDesks); }

Response catalogue(Call& call) {
  if (!call.house.catalogue) return no_folder();
  auto catalogue = call.house.catalogue();
  return catalogue ? text_answer(std::move(catalogue).value()) : folder_has_a_fault(call);
}

Node evening_node(const ledger::SessionKey& key, const ledger::SessionState& state) {
  Node row = Node::make_table();
  row.set("squad", Node::make_text(key.squad));
  row.set("day", Node::make_text(key.day));
  row.set("start", Node::make_text(key.start));
  row.set("started", Node::make_boolean(state.started));
  const auto copy = [&](const std::optional<Node>& entry, const char* key_of_it) {
    const Node* value = entry ? entry->find(key_of_it) : nullptr;
    if (value != nullptr) row.set(key_of_it, *value);
  };
  copy(state.wrap_up, "happened");
  copy(state.wrap_up, "did_it");
  copy(state.wrap_up, "minutes");
  copy(state.wrap_up, "note");
  copy(state.attendance, "there");
  Node help = Node::make_array();
  for (const auto& [drill, marks] : state.drills) {
    if (marks.needs_help) help.items.push_back(Node::make_text(drill));
  }
  row.set("drills_that_need_help", std::move(help));
  row.set("visits", Node::make_integer(static_cast<std::int64_t>(state.visits.size())));
  if (state.twice) row.set("wrapped_up_by_two", Node::make_boolean(true));
  return row;
}

// Monday to Sunday. What it costs goes with what was entered in that week, not with the years before.
Response week(Call& call) {
  const auto monday = parse_iso_date(call.values[0]);
  if (!monday || weekday_name(*monday) != "Monday") {
    return error_answer(404, "not-found", "A week is named by its Monday, such as 2026-11-23.");
  }
  constexpr int kDays = 7;
  const Date sunday{monday->days_since_epoch + kDays - 1};
  auto entries = call.room.store->entries_of_days(*monday, sunday, call.house.kinds);
  if (!entries) return store_answer(entries.faults());
  const ledger::State state = ledger::fold(std::move(entries).value(), call.house.kinds);
  Node list = Node::make_array();
  for (const auto& [key, session] : state.sessions) list.items.push_back(evening_node(key, session));
  Node body = Node::make_table();
  body.set("from", Node::make_text(to_iso(*monday)));
  body.set("to", Node::make_text(to_iso(sunday)));
  body.set("evenings", std::move(list));
  return json_answer(200, body);
}

}  // namespace

const std::vector<NamedWork>& squad_routes() {
  static const std::vector<NamedWork> kWorks = {{"squads", squads},
                                                {"squads-of-device", squads},
                                                {"squad", squad},
                                                {"squad-of-device", squad},
                                                {"evenings-of-device", evenings_of_device},
                                                {"evenings", evenings_of_desk},
                                                {"catalogue", catalogue},
                                                {"week", week}};
  return kWorks;
}

}  // namespace lanework::serve
