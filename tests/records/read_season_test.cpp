// Sheets to a season: what is read, and every mistake in one clear line.
#include "core/records/read_season.h"

#include <gtest/gtest.h>

#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

using Lines = std::vector<std::string>;

TEST(ReadSeason, ReadsHoursWithWhatIsUsual) {
  Files files;
  files.hours =
      "Quillmere Juniors,,,,,,,,,\n"
      "Team,Day,Type,Min,Attendance,Player hours,Athlete,Who did the warm-up,Left out,Checked\n"
      "u13-kestrels,24/11/2026,Practice,60,14,,,most,Squat; plank,yes\n"
      "U13-Kestrels,28/11/2026,game,,,,,unknown,,\n"
      "u16-swifts,28/11/2026,training,,,20.5,,half,,no\n"
      "u16-swifts,29/11/2026,training,1:30,,,P7,?,,\n";
  const Season season = read_well(files).season;
  ASSERT_EQ(season.exposures.size(), 4U);
  const Exposure& training = season.exposures[0];
  EXPECT_EQ(to_iso(training.date), "2026-11-24");
  EXPECT_EQ(training.hours, PlayerMinutes(60 * 14));
  EXPECT_EQ(training.defaulted, Defaulted::kNothing);
  EXPECT_EQ(training.warm_up, WarmUp::kMost);
  EXPECT_EQ(joined(training.left_out), R"(Squat
plank
)");
  EXPECT_EQ(training.confirmed, true);
  EXPECT_EQ(season.exposures[1].hours, PlayerMinutes(60 * 9));
  EXPECT_EQ(season.exposures[1].defaulted, Defaulted::kBoth);
  EXPECT_FALSE(season.exposures[1].warm_up);
  EXPECT_EQ(season.exposures[2].hours, PlayerMinutes(1230));
  EXPECT_EQ(season.exposures[3].hours, PlayerMinutes(90));
  EXPECT_EQ(season.exposures[3].player, "P7");
  EXPECT_FALSE(season.exposures[3].warm_up);
}

TEST(ReadSeason, ReadsInjuries) {
  Files files;
  files.injuries =
      "Squad;Player;Event;Date of injury;Setting;Onset;Contact;Body part;Diagnosis;Side;Activity;Recurrence;Loss "
      "began;Return;Days missed;Note\n"
      "u13-kestrels;P07;7;24.11.2026;match;acute;none;Knee;sprain;L;landing;first;;14.12.2026;;fell\n"
      "u13-kestrels;p07;7;24.11.2026;match;acute;none;Thigh;dead leg;left;landing;;;26.11.2026;;\n"
      "u16-swifts;P12;;02.11.2026;training;overuse;n/a;Heel;unknown;;running;Re-injury;04.11.2026;;05.11.2026; "
      "03.12.2026;\n";
  std::string& text = files.injuries;
  text.replace(text.find("05.11.2026; 03.12.2026"), 22, "\"05.11.2026; 03.12.2026\"");
  const Season season = read_well(files).season;
  ASSERT_EQ(season.injuries.size(), 3U);
  const InjuryRecord& knee = season.injuries[0];
  const auto key = [](Field field, auto value) { return shipped_terms().term(field, *value).key; };
  EXPECT_EQ(key(Field::kRegion, knee.region), "knee");
  EXPECT_EQ(key(Field::kTissue, knee.tissue), "joint-sprain");
  EXPECT_EQ(knee.setting, Setting::kMatch);
  EXPECT_EQ(knee.onset, Onset::kAcuteSudden);
  EXPECT_EQ(knee.contact, Contact::kNone);
  EXPECT_EQ(knee.side, Side::kLeft);
  EXPECT_EQ(knee.recurrence, Recurrence::kFirst);
  EXPECT_EQ(knee.returned, day("2026-12-14"));
  EXPECT_EQ(knee.note, "fell");
  EXPECT_EQ(season.injuries[1].player, "P07");  // one spelling a player
  EXPECT_EQ(events_of(season.injuries).size(), 2U);
  const InjuryRecord& heel = season.injuries[2];
  EXPECT_EQ(heel.onset, Onset::kRepetitiveGradual);
  EXPECT_FALSE(heel.contact || heel.tissue || heel.side || heel.returned);
  EXPECT_EQ(heel.days_missed, (std::vector<Date>{day("2026-11-05"), day("2026-12-03")}));
  EXPECT_EQ(time_loss(heel, season.period.as_of), (evidence::DaysLost{2, true}));
}

// The day of a second column tells the order of days and months in the first.
TEST(ReadSeason, ColumnsOfDatesTellTheirOrderTogether) {
  Files files;
  files.injuries = "squad,date,returned\nu13-kestrels,03/11/2026,14/11/2026\n";
  EXPECT_EQ(read_well(files).season.injuries.front().date, day("2026-11-03"));
  files.injuries = "squad,date,returned\nu13-kestrels,11/03/2026,11/04/2026\n";
  EXPECT_EQ(fault_lines(read(files)).size(), 2U);
  files.mapping = "[injuries]\ndates = \"month-first\"\n";
  const Season season = read_well(files).season;
  ASSERT_EQ(season.injuries.size(), 1U);
  EXPECT_EQ(season.injuries.front().returned, day("2026-11-04"));
}

TEST(ReadSeason, EveryFaultOfHoursIsOneLine) {
  Files files;
  files.squads = "squad,training minutes,match minutes\nu13-kestrels,75,\n";
  files.hours =
      "squad,date,setting,minutes,players,hours,player,warm-up\n"
      "u14-kestrels,2026-11-24,training,60,14,,,\n"
      "u13-kestrels,2026-11-31,training,60,14,,,\n"
      "u13-kestrels,2027-07-01,training,60,14,,,\n"
      "u13-kestrels,,training,60,14,,,\n"
      "u13-kestrels,2026-11-24,party,60,14,,,\n"
      "u13-kestrels,2026-11-24,,60,14,,,\n"
      "u13-kestrels,2026-11-24,training,-60,14,,,\n"
      "u13-kestrels,2026-11-24,training,1e6,14,,,\n"
      "u13-kestrels,2026-11-24,training,60,14,1000000,,\n"
      "u13-kestrels,2026-11-24,training,60,3 or 4,,,\n"
      "u13-kestrels,2026-11-24,training,60,14,,,brilliant\n"
      "u13-kestrels,2026-11-24,training,60,14,,P1,\n"
      "u13-kestrels,2026-11-24,training,,,,,\n"
      "u13-kestrels,2026-11-24,match,,,,,\n"
      "u13-kestrels,2026-11-24,training,60,14,,,,surplus\n";
  EXPECT_EQ(
      joined(fault_lines(read(files))),
      R"(hours.csv:2: squad: found 'u14-kestrels', expected the id of a squad of the squads' sheet, or a name that only one has
hours.csv:3: date: found '2026-11-31', expected a date that exists, such as 2026-11-24
hours.csv:4: date: found '2027-07-01', expected a day from 1990-01-01 to 2027-06-30, the last that is known
hours.csv:5: date: found an empty cell, expected the day of the session, such as 2026-11-24
hours.csv:6: setting: found 'party', expected one of training, match (the mapping can say what a word of yours means)
hours.csv:7: setting: found an empty cell, expected training or match
hours.csv:8: minutes: found '-60', expected a whole number from 0 to 1440, in minutes, not a negative one
hours.csv:9: minutes: found '1e6', expected a whole number from 0 to 1440, in minutes (the minutes of one session, not of all players together)
hours.csv:10: hours: found '1000000', expected hours of all players together, at most 4800 a session (these seem to be minutes typed as hours)
hours.csv:11: players: found '3 or 4', expected a whole number from 0 to 200
hours.csv:12: warm-up: found 'brilliant', expected one of most, half, few, no (the mapping can say what a word of yours means)
hours.csv:13: players: found '14', expected nothing, or 1: the row is one player's
hours.csv:14: players: found an empty cell, expected the players who were there (or state how many players the squad has)
hours.csv:15: minutes: found an empty cell, expected the minutes of the session (or state the squad's usual match minutes)
hours.csv:15: players: found an empty cell, expected the players on the field (or state the squad's players on the field)
hours.csv:16: found 9 cells, expected at most 8, as many as headings (a cell that contains the separator needs quotation marks)
)");
}

TEST(ReadSeason, EveryFaultOfInjuriesIsOneLine) {
  Files files;
  files.injuries =
      "squad,player,event,date,region,loss began,returned,days missed\n"
      "u13-kestrels,P1,,2026-11-24,kneecap,2026-11-23,,\n"
      "u13-kestrels,P1,,2026-11-24,soul,,2026-11-23,\n"
      "u13-kestrels,P1,,2026-11-24,,2026-11-26,2026-11-25,\n"
      "u13-kestrels,P1,,2026-11-24,,,2026-11-26,2026-11-23; 2026-11-26\n"
      "u13-kestrels,P1,e,2026-11-24,,,,\n"
      "u13-kestrels,P2,e,2026-11-24,,,,\n"
      "u13-kestrels,P1,,2026-11-24,,,2027-12-01,\n"
      ",P1,,2026-11-24,,,,\n";
  EXPECT_EQ(joined(fault_lines(read(files))),
            R"(injuries.csv:2: loss began: found '2026-11-23', expected a day not before the onset on 2026-11-24
injuries.csv:3: region: found 'soul', expected a term such as head, neck, shoulder, upper-arm, elbow, forearm, wrist, hand (the mapping can say what a word of yours means)
injuries.csv:4: returned: found '2026-11-25', expected a day not before the loss began on 2026-11-26
injuries.csv:5: days missed: found '2026-11-23; 2026-11-26', expected days not before the onset on 2026-11-24
injuries.csv:5: days missed: found '2026-11-23; 2026-11-26', expected days before the return on 2026-11-26
injuries.csv:7: event: found 'e', expected an event of one player on one day: line 6 has it for another squad, player or day
injuries.csv:8: returned: found '2027-12-01', expected a day from 1990-01-01 to 2027-06-30, the last that is known
injuries.csv:9: squad: found an empty cell, expected the id or the name of a squad
)");
}

TEST(ReadSeason, EveryFaultOfSquadsAndPlayersIsOneLine) {
  Files files;
  files.squads =
      "squad,name,sex,players,training minutes,taught\n"
      "u13,Under 13,girls,16,75,2026-08-01\n"
      "U13,,,,,\n"
      ",Under 9,,,,\n"
      "u9,Under 9,people,0,601,31.8.26\n"
      "u10,Under 9,,,,\n";
  files.hours = "squad,date,setting,minutes,players\nu9,2026-11-24,training,60,14\nUnder 9,2026-11-24,training,60,14\n";
  files.players = "player,squad,joined,left\nP1,u13,,\np1,U13,,\n,u13,,\nP2,u13,2026-11-24,2026-11-23\n";
  EXPECT_EQ(joined(fault_lines(read(files))), R"(squads.csv:3: squad: found 'U13', expected one row a squad
squads.csv:4: squad: found an empty cell, expected an id, with a letter or a digit
squads.csv:5: sex: found 'people', expected one of girls, boys, mixed (the mapping can say what a word of yours means)
squads.csv:5: players: found '0', expected a whole number from 1 to 200
squads.csv:5: training minutes: found '601', expected a whole number from 1 to 600, in minutes (the minutes of one session, not of all players together)
players.csv:3: player: found 'p1', expected one row a player and squad
players.csv:4: player: found an empty cell, expected a player's pseudonym
players.csv:5: left: found '2026-11-23', expected a day not before joining on 2026-11-24
hours.csv:3: squad: found 'Under 9', expected the id of a squad of the squads' sheet, or a name that only one has
)");
}

TEST(ReadSeason, SheetsWithoutTheirColumnsSayWhich) {
  Files files;
  files.hours = "squad,date,minutes\nu13-kestrels,2026-11-24,60\n";
  files.injuries = "who,what\n";
  EXPECT_EQ(
      joined(fault_lines(read(files))),
      R"(hours.csv:1: found no column 'setting', expected columns 'squad', 'date' and 'setting' (see docs/formats/records.md for the headings that are read)
injuries.csv: found no heading row that we know, expected a row of headings with at least 'squad' and 'date' (see docs/formats/records.md for the headings that are read)
)");
  files.squads = "squad,name\n";
  EXPECT_EQ(joined(fault_lines(read(files))), R"(squads.csv: found no squad, expected at least one row
)");
  files.squads = "squad,name\n\"u13\n";
  files.hours = "squad,date\n\"a\"b,c\n";
  EXPECT_EQ(fault_lines(read(files)).size(), 2U);
}

TEST(ReadSeason, RowsOutsideThePeriodAreLeftOutAndNamed) {
  Files files;
  files.hours =
      "squad,date,setting\nu13-kestrels,2026-08-02,training\nu13-kestrels,2026-08-03,training\n"
      "u13-kestrels,2027-05-31,match\n";
  files.injuries = "squad,date\nu13-kestrels,2027-06-01\n";
  const ReadSeason season = read_well(files);
  EXPECT_EQ(season.season.exposures.size(), 1U);
  EXPECT_TRUE(season.season.injuries.empty());
  ASSERT_EQ(season.outside_period.size(), 3U);
  EXPECT_EQ(to_line(season.outside_period[0]),
            "hours.csv:2: 2026-08-02 is not in the period 2026-08-03 to 2027-05-30: the row is left out");
  EXPECT_EQ(to_line(season.outside_period[2]).substr(0, 27), "injuries.csv:2: 2027-06-01 ");
}

TEST(ReadSeason, IsASeasonOrItsFaults) {
  EXPECT_TRUE(season_of(read_well({})).ok());
  Files files;
  files.hours += "nobody,2026-11-24,training\n";
  EXPECT_EQ(season_of(read(files)).faults().size(), 1U);
}

}  // namespace
}  // namespace lanework::records::test
