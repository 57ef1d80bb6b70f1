// Injuries as the lead sees them: who, what, since when, and the days lost by the consensus' rule. Never for coaches.
#include <algorithm>
#include <map>

#include "app/serve/routes/routes.h"
#include "app/serve/standing.h"
#include "core/evidence/time_loss.h"
#include "core/ledger/consent.h"

namespace lanework::serve {
namespace {

void set_stated(Node& row, const char* key, const std::string& text) {
  if (!text.empty()) row.set(key, Node::make_text(text));
}

// By player: the first day on which something that holds them back is to be looked at again.
using Reviews = std::map<std::string, Date>;

Reviews reviews_of(const SquadStanding& standing) {
  Reviews out;
  for (const PlayerStanding& player : standing.players) {
    if (player.review) out.emplace(player.player, *player.review);
  }
  return out;
}

Node injury_node(const ledger::EntryId& id, const ledger::Injury& injury, const Reviews& reviews, Date today) {
  Node row = Node::make_table();
  row.set("injury", Node::make_text(to_text(id)));
  row.set("player", Node::make_text(injury.player));
  row.set("squad", Node::make_text(injury.squad));
  row.set("day", Node::make_text(injury.day));
  row.set("what", texts_node(injury.what));
  set_stated(row, "note", injury.note);
  set_stated(row, "loss_began", injury.loss_began);
  set_stated(row, "returned", injury.returned);
  const auto review = reviews.find(injury.player);
  if (injury.returned.empty() && review != reviews.end()) {
    row.set("review", Node::make_text(to_iso(review->second)));
  }
  const auto began = parse_iso_date(injury.loss_began.empty() ? injury.day : injury.loss_began);
  if (began) {
    const evidence::DaysLost lost = evidence::days_lost({*began, parse_iso_date(injury.returned), {}}, today);
    row.set("days_lost", Node::make_integer(lost.days));
    row.set("open", Node::make_boolean(lost.open));
  }
  return row;
}

// The latest first. Those that wait for a consent are counted and not shown.
Response injuries(Call& call) {
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  std::vector<std::string> players;
  for (const store::ListedPlayer& player : club.value()->lists.players) players.push_back(player.id);
  auto entries = entries_about(call.room, call.house, players);
  if (!entries) return store_answer(entries.faults());
  const Reviews reviews =
      reviews_of(standing_from(entries.value(), call.house.kinds, call.house.care, players, call.now.day));
  ledger::State state = ledger::fold(std::move(entries).value(), call.house.kinds);
  ledger::close_records(state, call.house.kinds);
  std::vector<Node> rows;
  for (const auto& [id, injury] : state.injuries) rows.push_back(injury_node(id, injury, reviews, call.now.day));
  std::stable_sort(rows.begin(), rows.end(),
                   [](const Node& a, const Node& b) { return a.find("day")->text > b.find("day")->text; });
  call.read_people = static_cast<std::int64_t>(rows.size());
  Node list = Node::make_array();
  list.items = std::move(rows);
  Node body = Node::make_table();
  body.set("injuries", std::move(list));
  body.set("without_consent", Node::make_integer(state.closed));
  return json_answer(200, body);
}

}  // namespace

const std::vector<NamedWork>& injury_routes() {
  static const std::vector<NamedWork> kWorks = {{"injuries", injuries}};
  return kWorks;
}

}  // namespace lanework::serve
