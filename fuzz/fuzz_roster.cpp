// Any bytes as a roster: players that keep their promises, or clear faults.
#include <cstddef>
#include <cstdint>
#include <set>
#include <string>

#include "app/read/read_roster.h"
#include "core/people/roster_dates.h"
#include "fuzz/promise.h"

namespace {

using lanework::Date;
using lanework::fuzz::promise;

void check_players(const std::vector<lanework::people::Player>& players, Date evening) {
  promise(players.size() >= 2, "a roster has two players or more");
  std::set<std::string> ids;
  int row = 0;
  for (const lanework::people::Player& player : players) {
    promise(!player.name.empty(), "a player has a name");
    promise(!player.id.empty() && ids.insert(player.id).second, "ids are there and differ");
    promise(player.row > row, "players come in the order of the file");
    row = player.row;
    const auto age = lanework::people::age_on(player, evening);
    promise(!age || (*age >= lanework::people::kYoungestPlayer && *age <= lanework::people::kOldestPlayer),
            "ages are a player's");
    promise(!player.body_mass_grams || (*player.body_mass_grams >= 12'000 && *player.body_mass_grams <= 150'000),
            "a body mass is a player's");
    promise(!player.size_group || (*player.size_group >= 1 && *player.size_group <= 9), "a size group is 1 to 9");
    std::string cells = player.id + player.name + player.shirt;
    for (const std::string& squad : player.squads) cells += squad;
    for (const char c : cells)
      promise(static_cast<unsigned char>(c) >= 0x20 && c != 0x7F, "what is read of a player is one line");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Date evening = *lanework::make_date(2026, 11, 26);
  const std::string bytes(data, data + size);
  const auto players = lanework::read::read_roster("roster.csv", bytes, evening);
  if (players) {
    check_players(players.value(), evening);
  } else {
    lanework::fuzz::promise_clear_faults(players.faults(), "roster.csv");
    promise(players.faults().size() <= 51, "the long tail of faults is counted, not listed");
  }
  return 0;
}
