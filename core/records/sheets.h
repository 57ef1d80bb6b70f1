// One function a sheet. Inside this folder only.
#pragma once

#include "core/records/read_season.h"
#include "core/records/sheet_reader.h"

namespace lanework::records {

// Each appends to the season, its places and its faults. Squads first.
void read_squads(const people::Sheet& sheet, const SeasonReading& reading, ReadSeason& out);
void read_hours(const people::Sheet& sheet, const SeasonReading& reading, const SquadNames& squads,
                PlayerNames& players, ReadSeason& out);
void read_injuries(const people::Sheet& sheet, const SeasonReading& reading, const SquadNames& squads,
                   PlayerNames& players, ReadSeason& out);
void read_players(const people::Sheet& sheet, const SeasonReading& reading, const SquadNames& squads,
                  PlayerNames& players, ReadSeason& out);

// The question about a row whose day the period does not hold.
Question outside_period(const people::Sheet& sheet, const SheetRow& row, Date day, const SeasonReading& reading);

}  // namespace lanework::records
