// The lead's lists of people: coaches, with what they were taught and when they were seen; players by name; and what
// families agreed to.
#include <algorithm>
#include <map>
#include <set>

#include "app/serve/routes/routes.h"
#include "app/serve/standing.h"
#include "core/ledger/consent.h"

namespace lanework::serve {
namespace {

// Visits and asked help of the last 13 weeks are told; own judgement.
constexpr int kCoachesLookBackDays = 91;

std::string text_at(const Node& node, const char* key) {
  const Node* value = node.find(key);
  return value == nullptr ? std::string() : value->text;
}

using Authors = std::map<std::string, std::string>;  // account by entry id

Authors authors_of(const std::vector<ledger::Received>& entries) {
  Authors out;
  for (const ledger::Received& one : entries) out[to_text(one.entry.id)] = one.author;
  return out;
}

// What was entered as {"day", ..., "by"} by whom it is about.
using Rows = std::map<std::string, Node>;

void add(Rows& rows, const std::string& whom, Node row) {
  rows.try_emplace(whom, Node::make_array()).first->second.items.push_back(std::move(row));
}

Rows of_coaches(const std::vector<Node>& entries, std::initializer_list<const char*> fields, const Authors& authors) {
  Rows out;
  for (const Node& one : entries) {
    Node row = Node::make_table();
    for (const char* field : fields) {
      if (const Node* value = one.find(field)) row.set(field, *value);
    }
    const auto by = authors.find(text_at(one, "id"));
    if (by != authors.end()) row.set("by", Node::make_text(by->second));
    row.set("entry", Node::make_text(text_at(one, "id")));
    add(out, text_at(one, "coach"), std::move(row));
  }
  return out;
}

struct OfSquads {
  Rows visits;
  Rows help;
};

OfSquads of_squads(const ledger::State& state, const Authors& authors) {
  OfSquads out;
  for (const auto& [key, session] : state.sessions) {
    Node evening = Node::make_table();
    evening.set("day", Node::make_text(key.day));
    evening.set("squad", Node::make_text(key.squad));
    for (const Node& visit : session.visits) {
      Node row = evening;
      const auto by = authors.find(text_at(visit, "id"));
      if (by != authors.end()) row.set("by", Node::make_text(by->second));
      add(out.visits, key.squad, std::move(row));
    }
    for (const auto& [drill, marks] : session.drills) {
      if (!marks.needs_help) continue;
      Node row = evening;
      row.set("drill", Node::make_text(drill));
      add(out.help, key.squad, std::move(row));
    }
  }
  return out;
}

bool holds_on(const store::Grant& grant, const std::string& day) {
  return grant.from <= day && (grant.until.empty() || day <= grant.until);
}

Node list_for(const Rows& rows, const std::string& whom) {
  const auto found = rows.find(whom);
  return found == rows.end() ? Node::make_array() : found->second;
}

// Of the squads that the coach had on that day.
Node of_days_charged(const Rows& rows, const std::vector<store::Grant>& grants) {
  Node out = Node::make_array();
  std::set<std::string> squads;
  for (const store::Grant& grant : grants) squads.insert(grant.squad);
  for (const std::string& squad : squads) {
    for (const Node& row : list_for(rows, squad).items) {
      const std::string day = text_at(row, "day");
      const bool charged = std::any_of(grants.begin(), grants.end(), [&](const store::Grant& grant) {
        return grant.squad == squad && holds_on(grant, day);
      });
      if (charged) out.items.push_back(row);
    }
  }
  return out;
}

Response coaches(Call& call) {
  const auto accounts = call.room.gate->accounts();
  if (!accounts) return store_answer(accounts.faults());
  const auto by_leads = call.room.store->entries_by_role(ledger::Role::kLead, call.house.kinds);
  if (!by_leads) return store_answer(by_leads.faults());
  const Date from{call.now.day.days_since_epoch - kCoachesLookBackDays};
  const auto lately = call.room.store->entries_of_days(from, call.now.day, call.house.kinds);
  if (!lately) return store_answer(lately.faults());
  std::map<std::string, std::string> sent;
  for (const ledger::Received& one : lately.value()) sent[one.author] = std::max(sent[one.author], one.received);
  const ledger::State of_leads = ledger::fold(by_leads.value(), call.house.kinds);
  const Authors leads = authors_of(by_leads.value());
  const Rows taught = of_coaches(of_leads.taught, {"day", "what"}, leads);
  const Rows asked = of_coaches(of_leads.asked, {"day", "form", "answers", "note"}, leads);
  const OfSquads evenings = of_squads(ledger::fold(lately.value(), call.house.kinds), authors_of(lately.value()));
  const std::string today = to_iso(call.now.day);
  Node list = Node::make_array();
  for (const store::Account& account : accounts.value()) {
    if (account.role != ledger::Role::kCoach || account.ended != 0) continue;
    std::set<std::string> squads;
    for (const store::Grant& grant : account.grants) {
      if (holds_on(grant, today)) squads.insert(grant.squad);
    }
    Node row = Node::make_table();
    row.set("account", Node::make_text(account.id));
    row.set("name", Node::make_text(account.name));
    row.set("squads", texts_node({squads.begin(), squads.end()}));
    row.set("taught", list_for(taught, account.id));
    row.set("asked", list_for(asked, account.id));
    row.set("visits", of_days_charged(evenings.visits, account.grants));
    row.set("help", of_days_charged(evenings.help, account.grants));
    const auto last = sent.find(account.id);
    if (last != sent.end()) row.set("sent", Node::make_text(last->second));
    list.items.push_back(std::move(row));
  }
  Node body = Node::make_table();
  body.set("from", Node::make_text(to_iso(from)));
  body.set("coaches", std::move(list));
  return json_answer(200, body);
}

Node player_node(const store::ListedPlayer& player) {
  Node row = Node::make_table();
  row.set("player", Node::make_text(player.id));
  row.set("name", Node::make_text(player.name));
  row.set("age_group", Node::make_text(player.age_group));
  row.set("squads", texts_node(player.squads));
  return row;
}

Response players(Call& call) {
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  Node list = Node::make_array();
  for (const store::ListedPlayer& player : club.value()->lists.players) list.items.push_back(player_node(player));
  call.read_people = static_cast<std::int64_t>(list.items.size());
  Node body = Node::make_table();
  body.set("players", std::move(list));
  return json_answer(200, body);
}

// Everybody's latest words, and for each purpose what they come to.
Response consents(Call& call) {
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  std::vector<std::string> ids;
  for (const store::ListedPlayer& player : club.value()->lists.players) ids.push_back(player.id);
  const auto entries = entries_about(call.room, call.house, ids);
  if (!entries) return store_answer(entries.faults());
  const ledger::State state = ledger::consents_among(entries.value(), call.house.kinds);
  Rows said;
  for (const auto& [key, whole] : state.consents) {
    Node row = Node::make_table();
    for (const char* field : {"purpose", "by", "guardian", "answer", "day"}) {
      if (const Node* value = whole.find(field)) row.set(field, *value);
    }
    add(said, key.player, std::move(row));
  }
  const std::vector<std::string> purposes = ledger::purposes(call.house.kinds);
  Node list = Node::make_array();
  for (const store::ListedPlayer& player : club.value()->lists.players) {
    Node words = Node::make_table();
    for (const std::string& purpose : purposes) {
      words.set(purpose,
                Node::make_text(std::string(ledger::consent_word(ledger::consent_of(state, player.id, purpose)))));
    }
    Node row = player_node(player);
    row.set("stands", std::move(words));
    row.set("consents", list_for(said, player.id));
    list.items.push_back(std::move(row));
  }
  call.read_people = static_cast<std::int64_t>(list.items.size());
  Node body = Node::make_table();
  body.set("players", std::move(list));
  return json_answer(200, body);
}

}  // namespace

const std::vector<NamedWork>& people_routes() {
  static const std::vector<NamedWork> kWorks = {{"coaches", coaches}, {"players", players}, {"consents", consents}};
  return kWorks;
}

}  // namespace lanework::serve
