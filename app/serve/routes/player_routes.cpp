// About one child: what was entered and when, who read it; a copy of all of it; and its end.
#include <algorithm>
#include <cstdint>

#include "app/serve/routes/routes.h"
#include "app/serve/standing.h"
#include "core/ledger/consent.h"

namespace lanework::serve {
namespace {

Response no_such_player() { return error_answer(404, "not-found", "There is nothing here for you."); }

const store::ListedPlayer* listed(const ClubLists& club, const std::string& id) {
  const auto& players = club.lists.players;
  const auto found = std::find_if(players.begin(), players.end(), [&](const auto& one) { return one.id == id; });
  return found == players.end() ? nullptr : &*found;
}

enum class Showing : std::uint8_t {
  kWhatIsOpen,  // by the consents as they stand
  kAllOfIt      // the person's own copy
};

struct Entered {
  Node entries = Node::make_array();
  std::int64_t closed = 0;             // not shown for want of consent
  Node consents = Node::make_table();  // a word for each purpose
};

Node consents_node(const std::vector<ledger::Received>& about, const std::string& player,
                   const ledger::KindTable& kinds) {
  const ledger::State consents = ledger::consents_among(about, kinds);
  Node out = Node::make_table();
  for (const std::string& purpose : ledger::purposes(kinds)) {
    const ledger::Consent consent = ledger::consent_of(consents, player, purpose);
    out.set(purpose, Node::make_text(std::string(ledger::consent_word(consent))));
  }
  return out;
}

// Everything entered about the player.
Result<Entered> entered_about(Call& call, const ClubLists& club, const std::string& player, Showing showing) {
  auto about = call.room.store->entries_about(player, call.house.kinds);
  if (!about) return about.faults();
  Entered out;
  out.consents = consents_node(about.value(), player, call.house.kinds);
  ledger::Open shown{std::move(about).value(), 0};
  if (showing == Showing::kWhatIsOpen) shown = ledger::only_open(std::move(shown.entries), call.house.kinds);
  out.closed = shown.left_out;
  Node list = Node::make_array();
  for (const ledger::Received& one : shown.entries) {
    const Date received_on = parse_iso_date(one.received.substr(0, 10)).value_or(Date{});
    auto seen =
        access::visible_entry(one, received_on, call.viewer, call.house.matrix, call.house.kinds, club.squads_of);
    if (!seen) continue;
    seen->set("author", Node::make_text(one.author));
    seen->set("author_role", Node::make_text(std::string(ledger::role_words()[static_cast<std::size_t>(one.role)])));
    list.items.push_back(std::move(*seen));
  }
  out.entries = std::move(list);
  return out;
}

Node reads_node(const std::vector<store::ReadNote>& notes) {
  Node list = Node::make_array();
  for (const store::ReadNote& note : notes) {
    Node row = Node::make_table();
    row.set("number", Node::make_integer(note.number));
    row.set("when", Node::make_text(now_at(note.when).stamp));
    row.set("account", Node::make_text(note.account));
    if (!note.device.empty()) row.set("device", Node::make_text(note.device));
    row.set("what", Node::make_text(note.route));
    if (!note.squad.empty()) row.set("squad", Node::make_text(note.squad));
    row.set("people", Node::make_integer(note.people));
    list.items.push_back(std::move(row));
  }
  return list;
}

Response everything(Call& call, Showing showing) {
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  const std::string& id = call.values[0];
  const store::ListedPlayer* player = listed(*club.value(), id);
  if (player == nullptr) return no_such_player();
  auto entered = entered_about(call, *club.value(), id, showing);
  if (!entered) return store_answer(entered.faults());
  const auto standing = standing_of(call.room, call.house, {id}, call.now.day);
  if (!standing) return store_answer(standing.faults());
  constexpr std::size_t kMostReads = 1000;
  const auto reads = call.room.gate->reads(id, kMostReads);
  if (!reads) return store_answer(reads.faults());
  call.read_player = id;
  call.read_people = 1;
  Node body = Node::make_table();
  body.set("player", Node::make_text(player->id));
  body.set("name", Node::make_text(player->name));
  body.set("age_group", Node::make_text(player->age_group));
  Node squads = Node::make_array();
  for (const std::string& squad : player->squads) squads.items.push_back(Node::make_text(squad));
  body.set("squads", std::move(squads));
  body.set("now", Node::make_text(call.now.stamp));
  body.set("word", Node::make_text(standing.value().players.front().word));
  body.set("consents", std::move(entered.value().consents));
  body.set("entries", std::move(entered.value().entries));
  body.set("closed", Node::make_integer(entered.value().closed));
  body.set("read_by", reads_node(reads.value()));
  return json_answer(200, body);
}

Response timeline(Call& call) { return everything(call, Showing::kWhatIsOpen); }

// A copy of it leaves the house: to whom, and how it was made sure that it is the guardian, is written down with it.
Response export_player(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string verified = reader.text("verified");
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  constexpr std::size_t kMostWords = 200;
  if (verified.size() > kMostWords) return error_answer(400, "not-understood", "verified: at most 200 bytes.");
  Response out = everything(call, Showing::kAllOfIt);
  if (out.status != 200) return out;
  return out.with("Content-Disposition", "attachment; filename=\"one-player.json\"");
}

Response erase(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string again = reader.text("player");
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string& id = call.values[0];
  if (again != id)
    return error_answer(422, "not-the-same", "Say the player's id again, in 'player': this cannot be undone.");
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  const bool is_listed = listed(*club.value(), id) != nullptr;
  const auto erased = call.room.store->erase_person(id, call.now.stamp, call.house.note_erasure);
  if (!erased) return store_answer(erased.faults());
  if (!erased.value() && !is_listed) return no_such_player();
  const auto gone = call.room.directory->forget(id);
  if (!gone) return store_answer(gone.faults());
  Node body = Node::make_table();
  body.set("erased", Node::make_text(id));
  body.set("remains",
           Node::make_text(
               "That on some days some devices entered something about one and the same unknown person, and the id "
               "where attendance named it. Nothing says any more whose id that was. Backups from before "
               "can be read until they end: restore them with the list of those erased."));
  return json_answer(200, body);
}

Response reads(Call& call) {
  constexpr std::size_t kMost = 500;
  const auto notes = call.room.gate->reads("", kMost);
  if (!notes) return store_answer(notes.faults());
  Node body = Node::make_table();
  body.set("reads", reads_node(notes.value()));
  return json_answer(200, body);
}

Response reads_of_player(Call& call) {
  constexpr std::size_t kMost = 1000;
  const auto notes = call.room.gate->reads(call.values[0], kMost);
  if (!notes) return store_answer(notes.faults());
  Node body = Node::make_table();
  body.set("reads", reads_node(notes.value()));
  return json_answer(200, body);
}

}  // namespace

const std::vector<NamedWork>& player_routes() {
  static const std::vector<NamedWork> kWorks = {{"timeline", timeline},
                                                {"export-player", export_player},
                                                {"erase-player", erase},
                                                {"reads", reads},
                                                {"reads-of-player", reads_of_player}};
  return kWorks;
}

}  // namespace lanework::serve
