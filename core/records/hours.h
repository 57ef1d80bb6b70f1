// Hours of one row, and where the squad's usual minutes and players stand in for what the row leaves out. The reader of
// sheets and the stream of canonical rows use the same.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/records/season.h"

namespace lanework::records {

inline constexpr int kMostSessionMinutes = 24 * 60;
inline constexpr int kMostSessionPlayers = 200;
inline constexpr int kMostUsualMinutes = 600;
// Of all players of a session together.
inline constexpr PlayerMinutes kMostSessionHours{std::int64_t{kMostSessionMinutes} * kMostSessionPlayers};

struct StatedHours {
  std::optional<int> minutes;
  std::optional<int> players;
  std::optional<PlayerMinutes> hours;  // counts alone where it is there
  bool of_one_player = false;
};

struct SessionHours {
  PlayerMinutes hours;
  Defaulted defaulted = Defaulted::kNothing;
  bool minutes_lack = false;  // neither the row nor the squad says
  bool players_lack = false;
};

SessionHours session_hours(const SquadRecord& squad, Setting setting, const StatedHours& stated);

// '12.5 h', '3 h': to the nearest tenth.
std::string in_hours(PlayerMinutes hours);

}  // namespace lanework::records
