// A club's own headings and words, and the mistakes a mapping can have.
#include "core/records/mapping.h"

#include <gtest/gtest.h>

#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

using Lines = std::vector<std::string>;

TEST(Mapping, ReadsAMessySheet) {
  Files files;
  files.hours =
      "Gruppe;Wann;Was;Dauer;Kinder;Bemerkung;Aufgewärmt\n"
      "Turmfalken;3.11.2026;TR;1,25;14;;ganz\n"
      "Mauersegler;4.11.2026;SP;1,5;11;;gar nicht\n";
  files.mapping =
      "[hours]\n"
      "duration = \"hours\"\n"
      "decimal = \"comma\"\n"
      "[hours.columns]\n"
      "squad = \"Gruppe\"\n"
      "date = \"Wann\"\n"
      "setting = \"Was\"\n"
      "minutes = \"Dauer\"\n"
      "players = \"Kinder\"\n"
      "warm_up = \"Aufgewaermt\"\n"
      "[hours.words.setting]\n"
      "training = [\"TR\"]\n"
      "match = [\"SP\"]\n"
      "[hours.words.warm_up]\n"
      "most = [\"ganz\"]\n"
      "no = [\"gar nicht\"]\n"
      "[hours.words.squad]\n"
      "u13-kestrels = [\"Turmfalken\"]\n"
      "u16-swifts = [\"Mauersegler\"]\n";
  EXPECT_EQ(joined(fault_lines(read(files))),
            R"(hours.csv:1: found no column 'Aufgewaermt', expected the heading that the mapping states for 'warm-up'
)");
  files.mapping.replace(files.mapping.find("Aufgewaermt"), 11, "aufgewarmt");  // accents and case do not count
  const Season season = read_well(files).season;
  ASSERT_EQ(season.exposures.size(), 2U);
  EXPECT_EQ(season.exposures[0].hours, PlayerMinutes(75 * 14));
  EXPECT_EQ(season.exposures[0].warm_up, WarmUp::kMost);
  EXPECT_EQ(season.exposures[1].squad, 1U);
  EXPECT_EQ(season.exposures[1].setting, Setting::kMatch);
  EXPECT_EQ(season.exposures[1].minutes, 90);
  EXPECT_EQ(season.exposures[1].warm_up, WarmUp::kNo);
}

TEST(Mapping, ItsHeadingGoesBeforeOurs) {
  Files files;
  files.hours = "squad,date,setting,duration,minutes\nu13-kestrels,2026-11-24,training,1,60\n";
  files.mapping = "[hours.columns]\nminutes = \"minutes\"\n";
  EXPECT_EQ(read_well(files).season.exposures.front().minutes, 60);
  files.mapping = "[hours]\nduration = \"hours\"\n[hours.columns]\nminutes = \"duration\"\n";
  EXPECT_EQ(read_well(files).season.exposures.front().minutes, 60);
  files.mapping.clear();
  EXPECT_EQ(
      joined(fault_lines(read(files))),
      R"(hours.csv:1: minutes: found 'minutes', expected one column only, and 'duration' is read already (rename the column that is not meant)
)");
}

TEST(Mapping, MinutesTypedAsHoursAreToldFromTheUnit) {
  Files files;
  files.hours = "squad,date,setting,minutes\nu13-kestrels,2026-11-24,training,75\n";
  files.mapping = "[hours]\nduration = \"hours\"\n";
  EXPECT_EQ(
      joined(fault_lines(read(files))),
      R"(hours.csv:2: minutes: found '75', expected hours of one session, at most 24 (these seem to be minutes typed as hours)
)");
}

TEST(Mapping, DatesOnlyInIsoForm) {
  Files files;
  files.hours =
      "squad,date,setting\nu13-kestrels,24/11/2026,training\nu13-kestrels,2026-11-25,training\n"
      "u13-kestrels,2027-11-25,training\n";
  files.mapping = "[hours]\ndates = \"iso\"\n";
  EXPECT_EQ(joined(fault_lines(read(files))),
            R"(hours.csv:2: date: found '24/11/2026', expected a date such as 2026-11-24, as the mapping says
hours.csv:4: date: found '2027-11-25', expected a day from 1990-01-01 to 2027-06-30, the last that is known
)");
}

TEST(Mapping, EveryMistakeIsOneLine) {
  const auto document = parse_toml("m.toml",
                                   "[hours]\n"
                                   "dates = \"sideways\"\n"
                                   "unit = \"hours\"\n"
                                   "[hours.columns]\n"
                                   "team = \"Team\"\n"
                                   "squad = \"Team\"\n"
                                   "date = \"team\"\n"
                                   "setting = \"-\"\n"
                                   "[hours.words.setting]\n"
                                   "training = [\"x\"]\n"
                                   "match = [\"X\"]\n"
                                   "party = [\"y\"]\n"
                                   "[hours.words.minutes]\n"
                                   "a = [\"y\"]\n"
                                   "[weather]\n");
  const auto mapping = read_mapping(document.value(), shipped_terms(), {});
  ASSERT_FALSE(mapping.ok());
  Lines lines;
  for (const Fault& fault : mapping.faults()) lines.push_back(to_line(fault));
  EXPECT_EQ(
      joined(lines),
      R"(m.toml:2:1: hours.dates: found 'sideways', expected one of as-the-column-tells, day-first, month-first, iso, serial-1904
m.toml:3:1: hours.unit: found 'unit', expected one of dates, duration, decimal, columns, words
m.toml:5:1: hours.columns.team: found 'team', expected one of squad, date, setting, minutes, players, hours, player, warm_up, warm_up_minutes, left_out, needing_help, confirmed
m.toml:6:1: hours.columns.squad: found 'Team' twice, expected a heading for one column only
m.toml:8:1: hours.columns.setting: found '-', expected a heading with a letter or a digit
m.toml:10:1: hours.words.setting.training: found 'x' twice, expected a word with one meaning only
m.toml:12:1: hours.words.setting.party: found 'party', expected one of training, match
m.toml:13:14: hours.words.minutes: found 'minutes', expected one of squad, setting, warm_up
m.toml:15:2: weather: found 'weather', expected one of squads, hours, injuries, players
)");
}

}  // namespace
}  // namespace lanework::records::test
