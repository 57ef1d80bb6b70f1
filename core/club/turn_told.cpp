#include "core/club/turn_told.h"

#include <algorithm>

namespace lanework::club {

const std::vector<TurnSentence>& turn_sentences() {
  static const std::vector<TurnSentence> kSentences = {
      {"squad-ends", "{squad} ends: nobody plays for a squad above Under-{oldest}."},
      {"squad-becomes", "{squad} becomes {name}."},
      {"squad-stays", "{squad} has no age band in its name and stays as it is."},
      {"no-youngest", "No squad is Under-{band} now: add its new players to roster.csv and a file to squads/."},
      {"too-old", "{player} is too old for {squad} and goes to {to}."},
      {"goes-from", "{player} goes from {squad} to {to}."},
      {"no-squad-left", "No squad is left for {players}."},
      {"squad-empty", "{squad} has nobody and ends."},
      {"taught-to-nobody", "What {squad} was taught goes with nobody."},
      {"taught-to", "What {squad} was taught goes to {to}, with {count} of its {of} players."},
      {"emphasis", "The emphasis goes along: emphasis.toml, from the injuries of {from} to {to}."},
      {"season", "The season is {from} to {to}, the first block starts on {monday}."},
      {"calendar-left-out", "Holidays, matches and away days are of the old season and left out."},
      {"reported-goes-along", "What was reported of players goes along as it is; look at each before the season."},
      {"takes-routine", "{squad} takes {routine} as its routine in place of {before}."},
      {"takes-match-routine", "{squad} takes {routine} on match days in place of {before}."},
      {"keeps-routine", "{squad} keeps routine {routine}, which is for ages {from} to {to}: choose another."},
      {"restrictions-left-out", "{count} restrictions of players and squads who are gone are left out."},
      {"restrictions-go-along", "{count} restrictions go with their players; look at each before the season."},
      {"no-squad-to-coach", "No squad is left to coach for {coaches}."},
  };
  return kSentences;
}

std::string sentence_of(const TurnTold& told) {
  const std::vector<TurnSentence>& all = turn_sentences();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const TurnSentence& one) { return one.code == told.code; });
  if (found == all.end()) return {};
  std::string out;
  std::string_view rest = found->english;
  while (!rest.empty()) {
    const std::size_t open = rest.find('{');
    out += rest.substr(0, open);
    if (open == std::string_view::npos) break;
    const std::size_t close = rest.find('}', open);
    const std::string_view name = rest.substr(open + 1, close - open - 1);
    for (const auto& [key, value] : told.values) {
      if (key == name) out += value;
    }
    rest.remove_prefix(close + 1);
  }
  return out;
}

}  // namespace lanework::club
