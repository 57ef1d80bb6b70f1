// Small files of a season, read with the shipped terms.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/read/read_records.h"

namespace lanework::records::test {

const Terms& shipped_terms();
Date day(const std::string& iso);

// 2026-08-03, a Monday, to 2027-05-30, known to 2027-06-30.
Period season_2026();

struct Files {
  std::string squads =
      "squad,players,training minutes,match minutes,on the field\nu13-kestrels,16,75,60,9\nu16-swifts,18,90,80,11\n";
  std::string hours = "squad,date,setting\n";
  std::string injuries = "squad,date\n";
  std::optional<std::string> players;
  std::string mapping;
};

ReadSeason read(const Files& files, const Period& period = season_2026());
// Without faults, or the test fails.
ReadSeason read_well(const Files& files, const Period& period = season_2026());
std::vector<std::string> fault_lines(const ReadSeason& read);
// Each line with its end, as a raw string has them.
std::string joined(const std::vector<std::string>& lines);
// Of rows and squads.
std::vector<std::string> question_lines(const ReadSeason& read);

}  // namespace lanework::records::test
