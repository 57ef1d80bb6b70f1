// The four sheets of a season and their columns: names, headings that are read (docs/formats/records.md).
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/people/sheet_columns.h"
#include "core/records/terms.h"

namespace lanework::records {

enum class SheetKind { kSquads, kHours, kInjuries, kPlayers };
inline constexpr std::size_t kSheets = 4;

// Enumerators are positions in columns_of(kind), which is also the order of the canonical files.
enum class SquadColumn {
  kId,
  kName,
  kClub,
  kAgeBand,
  kSex,
  kPlayers,
  kTrainingMinutes,
  kMatchMinutes,
  kOnTheField,
  kTaught
};
enum class HoursColumn {
  kSquad,
  kDate,
  kSetting,
  kMinutes,
  kPlayers,
  kHours,
  kPlayer,
  kWarmUp,
  kWarmUpMinutes,
  kLeftOut,
  kNeedingHelp,
  kConfirmed
};
inline constexpr std::size_t kHoursColumns = 12;
enum class InjuryColumn {
  kSquad,
  kPlayer,
  kEvent,
  kDate,
  kSetting,
  kOnset,
  kContact,
  kRegion,
  kTissue,
  kSide,
  kActivity,
  kRecurrence,
  kLossBegan,
  kReturned,
  kDaysMissed,
  kNote
};
enum class PlayerColumn { kPlayer, kSquad, kJoined, kLeft };

struct SheetColumn {
  people::KnownColumn known;
  std::optional<Field> field;  // whose terms its cells hold
  bool is_squad = false;       // its cells name a squad
  bool is_duration = false;    // of one session, in minutes unless the mapping says hours
};

const std::vector<SheetColumn>& columns_of(SheetKind kind);
const char* sheet_name(SheetKind kind);  // 'hours'; its canonical file is hours.csv

// 'warm-up minutes' as a key of a mapping: 'warm_up_minutes'.
std::string key_of(std::string_view column_name);
std::optional<std::size_t> column_with_key(SheetKind kind, std::string_view key);

}  // namespace lanework::records
