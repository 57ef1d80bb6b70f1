#include "app/serve/standing.h"

#include <algorithm>
#include <iterator>
#include <map>

#include "core/care/entries/read_cautiously.h"
#include "core/people/instruction.h"

namespace lanework::serve {
namespace {

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
  const auto review = one.restriction.review;
  if (review && (!player.review || *review < *player.review)) player.review = review;
  const auto until = one.restriction.until;
  player.until = first ? until : until && player.until ? std::max(until, player.until) : std::nullopt;
}

// Hurts and soreness by the id under which they are named.
using Reports = std::map<std::string, Reported>;

Reports reports_among(const ledger::State& state) {
  Reports out;
  for (const ledger::Received& one : state.care) {
    const std::string& kind = one.entry.kind;
    if (kind != "hurt" && kind != "soreness") continue;
    const auto day = parse_iso_date(one.received.substr(0, 10));
    if (day) out.emplace(to_text(one.entry.id), Reported{kind == "hurt", *day});
  }
  return out;
}

void add_report(PlayerStanding& player, const care::Standing& one, const Reports& reports) {
  for (const std::string& id : one.stems_from) {
    const auto found = reports.find(id.substr(0, id.find('#')));
    if (found == reports.end()) continue;
    const Reported& said = found->second;
    const bool later = !player.reported || player.reported->day < said.day;
    const bool hurt_that_day = player.reported && player.reported->day == said.day && said.hurt;
    if (later || hurt_that_day) player.reported = said;
  }
}

}  // namespace

SquadStanding standing_from(std::vector<ledger::Received> entries, const ledger::KindTable& kinds,
                            const CareRules& rules, const std::vector<std::string>& players, Date day) {
  SquadStanding out;
  for (const std::string& player : players) {
    out.players.push_back({player, care::words_of(people::TakingPart::kJoinsIn), {}, {}, {}, {}, {}});
  }
  const ledger::State state = ledger::fold(std::move(entries), kinds);
  const care::Knowledge known =
      care::fold(care::read_cautiously(ledger::care_document(state, kinds), rules.courses), rules.pain, rules.courses);
  const Reports reports = reports_among(state);
  if (known.as_known) out.known_at = care::to_known_words(*known.as_known);
  for (const care::Standing& one : care::holding_on(known.standing, day)) {
    const auto found = std::find_if(out.players.begin(), out.players.end(), [&](const PlayerStanding& player) {
      return player.player == one.restriction.player;
    });
    if (found == out.players.end()) continue;
    add(*found, one, day);
    add_report(*found, one, reports);
  }
  return out;
}

Result<std::vector<ledger::Received>> entries_about(Room& room, const House& house,
                                                    const std::vector<std::string>& players) {
  std::vector<ledger::Received> all;
  for (const std::string& player : players) {
    auto some = room.store->entries_about(player, house.kinds);
    if (!some) return some.faults();
    std::move(some.value().begin(), some.value().end(), std::back_inserter(all));
  }
  return all;
}

Result<SquadStanding> standing_of(Room& room, const House& house, const std::vector<std::string>& players, Date day) {
  auto all = entries_about(room, house, players);
  if (!all) return all.faults();
  return standing_from(std::move(all).value(), house.kinds, house.care, players, day);
}

}  // namespace lanework::serve
