#include "app/serve/standing.h"

#include <algorithm>
#include <iterator>

#include "core/care/entries/read_entries.h"
#include "core/people/instruction.h"

namespace lanework::serve {
namespace {

Result<std::vector<care::Entry>> read_one(const Node& row, const CareRules& rules) {
  Document document{"ledger", Node::make_table()};
  Node list = Node::make_array();
  list.items.push_back(row);
  document.root.set("entry", std::move(list));
  return care::read_entries(document, rules.courses, {});
}

std::optional<Node> only(const Node& row, std::initializer_list<std::string_view> keys) {
  Node out = Node::make_table();
  for (const auto& [key, value] : row.entries) {
    if (std::find(keys.begin(), keys.end(), key) != keys.end()) out.set(key, value);
  }
  return out;
}

// An entry of a kind that adds caution and cannot be understood counts as a hurt at a place that is not known; one that
// would take caution away is passed over.
std::vector<care::Entry> read_all(const Node& document, const CareRules& rules) {
  std::vector<care::Entry> out;
  const Node* list = document.find("entry");
  if (list == nullptr) return out;
  for (const Node& row : list->items) {
    auto read = read_one(row, rules);
    if (!read) {
      const Node* kind = row.find("kind");
      const bool cautious =
          kind != nullptr && (kind->text == "hurt" || kind->text == "soreness" || kind->text == "restriction" ||
                              kind->text == "course-opened" || kind->text == "stepped-back");
      if (!cautious) continue;
      auto plain = only(row, {"id", "device_time", "player", "receipt", "received", "by", "role"});
      plain->set("kind", Node::make_text("hurt"));
      read = read_one(*plain, rules);
    }
    if (read) std::move(read.value().begin(), read.value().end(), std::back_inserter(out));
  }
  return out;
}

void add(PlayerStanding& player, const care::Standing& one, Date day) {
  const auto add_once = [](std::vector<std::string>& list, std::string words) {
    if (std::find(list.begin(), list.end(), words) == list.end()) list.push_back(std::move(words));
  };
  const bool first = player.reasons.empty();
  if (one.restriction.sits_out) player.word = care::words_of(people::TakingPart::kSitsOut);
  if (player.word == care::words_of(people::TakingPart::kJoinsIn)) {
    player.word = care::words_of(people::TakingPart::kJoinsInWithSwaps);
  }
  add_once(player.instructions, people::instruction_for(one.restriction, day));
  add_once(player.reasons, one.why);
  const auto until = one.restriction.until;
  player.until = first ? until : until && player.until ? std::max(until, player.until) : std::nullopt;
}

}  // namespace

SquadStanding standing_from(std::vector<ledger::Received> entries, const ledger::KindTable& kinds,
                            const CareRules& rules, const std::vector<std::string>& players, Date day) {
  SquadStanding out;
  for (const std::string& player : players) {
    out.players.push_back({player, care::words_of(people::TakingPart::kJoinsIn), {}, {}, {}});
  }
  const ledger::State state = ledger::fold(std::move(entries), kinds);
  const care::Knowledge known =
      care::fold(read_all(ledger::care_document(state, kinds), rules), rules.pain, rules.courses);
  if (known.as_known) out.known_at = care::to_known_words(*known.as_known);
  for (const care::Standing& one : care::holding_on(known.standing, day)) {
    const auto found = std::find_if(out.players.begin(), out.players.end(), [&](const PlayerStanding& player) {
      return player.player == one.restriction.player;
    });
    if (found != out.players.end()) add(*found, one, day);
  }
  return out;
}

Result<SquadStanding> standing_of(Room& room, const House& house, const std::vector<std::string>& players, Date day) {
  std::vector<ledger::Received> all;
  for (const std::string& player : players) {
    auto some = room.store->entries_about(player, house.kinds);
    if (!some) return some.faults();
    std::move(some.value().begin(), some.value().end(), std::back_inserter(all));
  }
  return standing_from(std::move(all), house.kinds, house.care, players, day);
}

}  // namespace lanework::serve
