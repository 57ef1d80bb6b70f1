#include <map>
#include <set>
#include <tuple>

#include "core/records/row_questions.h"

namespace lanework::records {
namespace {

// Two diagnoses of one event may well lie in one region, if they differ.
bool same_injury(const InjuryRecord& a, const InjuryRecord& b) {
  if (a.tissue == b.tissue) return true;
  return !a.player.empty() && (a.event.empty() || a.event != b.event);
}

class Sessions {
 public:
  explicit Sessions(const Season& season) : squads_(season.squads.size()) {
    for (const Exposure& exposure : season.exposures) {
      squads_[exposure.squad] = true;
      days_.emplace(exposure.squad, exposure.date, exposure.setting);
    }
  }
  [[nodiscard]] bool any(std::uint32_t squad) const { return squads_[squad]; }
  [[nodiscard]] bool on(const InjuryRecord& injury) const {
    const auto held = [&](Setting setting) { return days_.contains(std::tuple(injury.squad, injury.date, setting)); };
    return injury.setting ? held(*injury.setting) : held(Setting::kTraining) || held(Setting::kMatch);
  }

 private:
  std::vector<bool> squads_;
  std::set<std::tuple<std::uint32_t, Date, Setting>> days_;
};

}  // namespace

void ask_about_injuries(const Season& season, const SeasonPlaces& places, Language language,
                        std::vector<Question>& out) {
  const Speaker speaker(language);
  const Sessions sessions(season);
  std::map<std::tuple<std::uint32_t, std::string, Date, std::optional<Region>>, std::size_t> seen;
  for (std::size_t i = 0; i < season.injuries.size(); ++i) {
    const InjuryRecord& injury = season.injuries[i];
    const Place place = places.injuries.place(i);
    const std::string who =
        speaker.say({"{} on {}: ", "{}, {}: "}, season.squads[injury.squad].id, to_iso(injury.date));
    const auto [first, is_new] = seen.emplace(std::tuple(injury.squad, injury.player, injury.date, injury.region), i);
    if (!is_new && same_injury(season.injuries[first->second], injury)) {
      out.push_back({QuestionKind::kInjuryTwice, place,
                     who + speaker.say(Words{"the same player, day and region stand there twice; is it one injury?",
                                             "el mismo jugador, día y región constan dos veces; ¿es una sola lesión?"}),
                     places.injuries.lines[first->second]});
    }
    // What came on gradually shows on any day; a squad without any hours is asked about once.
    if (injury.onset == Onset::kRepetitiveGradual || !sessions.any(injury.squad) || sessions.on(injury)) continue;
    const Words what = !injury.setting
                           ? Words{"an injury, and no session that day", "una lesión, y ninguna sesión ese día"}
                       : *injury.setting == Setting::kTraining
                           ? Words{"an injury, and no training that day", "una lesión, y ningún entrenamiento ese día"}
                           : Words{"an injury, and no match that day", "una lesión, y ningún partido ese día"};
    out.push_back({QuestionKind::kInjuryWithoutSession, place, who + speaker.say(what)});
  }
}

void ask_about_players(const Season& season, const SeasonPlaces& places, Language language,
                       std::vector<Question>& out) {
  if (season.players.empty()) return;
  std::map<std::pair<std::string, std::uint32_t>, const PlayerRecord*> listed;
  for (const PlayerRecord& player : season.players) listed.emplace(std::pair(player.player, player.squad), &player);

  const Speaker speaker(language);
  const auto ask = [&](const std::string& player, std::uint32_t squad, Date date, const Words& what,
                       const Place& place) {
    if (player.empty()) return;
    const std::string start = speaker.say({"{} on {}: {} of {}", "{}, {}: {} de {}"}, season.squads[squad].id,
                                          to_iso(date), speaker.say(what), quote(player));
    const auto found = listed.find(std::pair(player, squad));
    if (found == listed.end()) {
      out.push_back({QuestionKind::kPlayerNotListed, place,
                     start + speaker.say(Words{", who is not among the squad's players",
                                               ", que no está entre los jugadores del equipo"})});
    } else if (found->second->left && date > *found->second->left) {
      out.push_back({QuestionKind::kAfterLeaving, place,
                     start + speaker.say({", who left on {}", ", que se fue el {}"}, to_iso(*found->second->left))});
    } else if (found->second->joined && date < *found->second->joined) {
      out.push_back({QuestionKind::kBeforeJoining, place,
                     start + speaker.say({", who joined on {}", ", que llegó el {}"}, to_iso(*found->second->joined))});
    }
  };
  for (std::size_t i = 0; i < season.injuries.size(); ++i) {
    const InjuryRecord& injury = season.injuries[i];
    ask(injury.player, injury.squad, injury.date, {"an injury", "una lesión"}, places.injuries.place(i));
  }
  for (std::size_t i = 0; i < season.exposures.size(); ++i) {
    const Exposure& exposure = season.exposures[i];
    ask(exposure.player, exposure.squad, exposure.date, {"hours", "horas"}, places.exposures.place(i));
  }
}

}  // namespace lanework::records
