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

void ask_about_injuries(const Season& season, const SeasonPlaces& places, std::vector<Question>& out) {
  const Sessions sessions(season);
  std::map<std::tuple<std::uint32_t, std::string, Date, std::optional<Region>>, std::size_t> seen;
  for (std::size_t i = 0; i < season.injuries.size(); ++i) {
    const InjuryRecord& injury = season.injuries[i];
    const Place place = places.injuries.place(i);
    const std::string who = season.squads[injury.squad].id + " on " + to_iso(injury.date) + ": ";
    const auto [first, is_new] = seen.emplace(std::tuple(injury.squad, injury.player, injury.date, injury.region), i);
    if (!is_new && same_injury(season.injuries[first->second], injury)) {
      out.push_back({QuestionKind::kInjuryTwice, place,
                     who + "the same player, day and region stand there twice; is it one injury?",
                     places.injuries.lines[first->second]});
    }
    // What came on gradually shows on any day; a squad without any hours is asked about once.
    if (injury.onset == Onset::kRepetitiveGradual || !sessions.any(injury.squad) || sessions.on(injury)) continue;
    const std::string what = !injury.setting ? "session" : *injury.setting == Setting::kTraining ? "training" : "match";
    out.push_back({QuestionKind::kInjuryWithoutSession, place, who + "an injury, and no " + what + " that day"});
  }
}

void ask_about_players(const Season& season, const SeasonPlaces& places, std::vector<Question>& out) {
  if (season.players.empty()) return;
  std::map<std::pair<std::string, std::uint32_t>, const PlayerRecord*> listed;
  for (const PlayerRecord& player : season.players) listed.emplace(std::pair(player.player, player.squad), &player);

  const auto ask = [&](const std::string& player, std::uint32_t squad, Date date, const char* what,
                       const Place& place) {
    if (player.empty()) return;
    const std::string start = season.squads[squad].id + " on " + to_iso(date) + ": " + what + " of " + quote(player);
    const auto found = listed.find(std::pair(player, squad));
    if (found == listed.end()) {
      out.push_back({QuestionKind::kPlayerNotListed, place, start + ", who is not among the squad's players"});
    } else if (found->second->left && date > *found->second->left) {
      out.push_back({QuestionKind::kAfterLeaving, place, start + ", who left on " + to_iso(*found->second->left)});
    } else if (found->second->joined && date < *found->second->joined) {
      out.push_back({QuestionKind::kBeforeJoining, place, start + ", who joined on " + to_iso(*found->second->joined)});
    }
  };
  for (std::size_t i = 0; i < season.injuries.size(); ++i) {
    const InjuryRecord& injury = season.injuries[i];
    ask(injury.player, injury.squad, injury.date, "an injury", places.injuries.place(i));
  }
  for (std::size_t i = 0; i < season.exposures.size(); ++i) {
    const Exposure& exposure = season.exposures[i];
    ask(exposure.player, exposure.squad, exposure.date, "hours", places.exposures.place(i));
  }
}

}  // namespace lanework::records
