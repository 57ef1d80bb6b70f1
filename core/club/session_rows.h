// What really happened, one row a session, as the lead keeps it in a spreadsheet (docs/formats/sessions.md). Read
// strictly: what is not understood, or names nothing that exists, is a fault with its line and heading, and all faults
// are collected. Cells stay inert text.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/club/allocation.h"
#include "core/club/club.h"
#include "core/people/roster_sheet.h"

namespace lanework::club {

inline constexpr std::size_t kMostSessionRows = 20'000;

enum class Happened { kHeld, kMissed, kCutShort };
// How many of those who were there did it.
enum class DidIt { kMost, kHalf, kFew };

struct SessionRow {
  std::size_t squad = 0;  // index into Club::squads
  Date date;
  TimeOfDay start;
  Happened happened = Happened::kHeld;
  std::optional<int> minutes;  // that there really were, 1 to those of the slot
  DidIt did_it = DidIt::kMost;
  std::vector<std::string> left_out;  // drill ids, each once
  std::string note;
  Place place;           // of the row
  Place left_out_place;  // of its cell
};

struct SessionReading {
  const Club* club = nullptr;
  const Allocation* allocation = nullptr;  // of the block
  Date today;
  people::TextForms forms;
};

// In the order of the file. An empty sheet below its headings is no rows.
Result<std::vector<SessionRow>> read_session_rows(const people::Sheet& sheet, const SessionReading& reading);

// How well a sheet reads as one of sessions: known headings in its best row.
int count_known_session_headings(const people::Sheet& sheet, const people::TextForms& forms);

const char* to_word(Happened happened);  // 'held', 'missed', 'cut short'
const char* to_word(DidIt did_it);       // 'most', 'half', 'few'

}  // namespace lanework::club
