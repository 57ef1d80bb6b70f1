#include "core/records/hours.h"

namespace lanework::records {

SessionHours session_hours(const SquadRecord& squad, Setting setting, const StatedHours& stated) {
  if (stated.hours) return {*stated.hours, Defaulted::kNothing, false, false};
  const bool match = setting == Setting::kMatch;
  const std::optional<int> usual_minutes = match ? squad.match_minutes : squad.training_minutes;
  const std::optional<int> usual_players = match ? squad.on_the_field : squad.players;
  const std::optional<int> minutes = stated.minutes ? stated.minutes : usual_minutes;
  std::optional<int> players = stated.players ? stated.players : usual_players;
  if (stated.of_one_player) players = 1;
  SessionHours out;
  out.minutes_lack = !minutes;
  out.players_lack = !players;
  const bool minutes_usual = !stated.minutes;
  const bool players_usual = !stated.players && !stated.of_one_player;
  out.defaulted = static_cast<Defaulted>((minutes_usual ? 1 : 0) + (players_usual ? 2 : 0));
  if (minutes && players) out.hours = PlayerMinutes(std::int64_t{*minutes} * *players);
  return out;
}

std::string in_hours(PlayerMinutes hours) {
  const std::int64_t tenths = (hours.count + 3) / 6;
  std::string text = std::to_string(tenths / 10);
  if (tenths % 10 != 0) text += "." + std::to_string(tenths % 10);
  return text + " h";
}

}  // namespace lanework::records
