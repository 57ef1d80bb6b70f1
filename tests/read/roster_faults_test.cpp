// Bad rosters, each with the very line a lead gets to read.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "app/read/read_roster.h"

namespace lanework::read {
namespace {

using namespace std::string_literals;

const Date kEvening = *make_date(2026, 11, 26);

std::string lines_for(const std::string& bytes, const RosterStatement& stated = {}) {
  const auto players = read_roster("roster.csv", bytes, kEvening, stated);
  if (players) return "no fault";
  std::string lines;
  for (const Fault& fault : players.faults()) lines += (lines.empty() ? "" : "\n") + to_line(fault);
  return lines;
}

struct BadRoster {
  const char* name;
  std::string bytes;
  std::string lines;
};

void PrintTo(const BadRoster& bad, std::ostream* out) { *out << bad.name; }

class BadRosters : public testing::TestWithParam<BadRoster> {};

TEST_P(BadRosters, SayWhatIsWrong) { EXPECT_EQ(lines_for(GetParam().bytes), GetParam().lines); }

std::string name_of(const testing::TestParamInfo<BadRoster>& bad) { return bad.param.name; }

const std::vector<BadRoster> kBytes = {
    {"EmptyFile", "", "roster.csv: found an empty file, expected text"},
    {"OnlyAMark", "\xEF\xBB\xBF",
     "roster.csv: found no heading row that we know, expected a row of headings with at least 'Name' "
     "(see docs/formats/roster.md for the headings that are read)"},
    {"Workbook", "PK\x03\x04rest",
     "roster.csv: found a workbook or another zip archive, expected text (save the sheet as CSV first)"},
    {"NulByte", "Name,Age\nAnna,12\nBo\0b,13\nCleo,12\n"s, "roster.csv:3: found a NUL byte, expected text"},
    {"ControlCharacter", "Name,Age\nAnna\x1B[2J,12\nBo,12\n", "roster.csv:2: found a control character, expected text"},
    {"TruncatedUtf16", "\xFF\xFEN\0a\0m\0e\0\n\0A\0n\0n\0a\0\n\0B"s,
     "roster.csv:3: found half a UTF-16 character at the end, expected whole UTF-16 characters (the file may be "
     "half-written)"},
    {"HalfASurrogate", "\xFE\xFF\0N\0a\0m\0e\0\n\xD8\x3D"s,
     "roster.csv:2: found half a UTF-16 character, expected whole UTF-16 characters (the file may be half-written)"},
    {"TruncatedUtf8", "Name,Age\nZo\xC3\xAB,12\nJ\xC3",
     "roster.csv:3: found half a UTF-8 character at the end, expected whole UTF-8 characters (the file may be "
     "half-written)"},
    {"BrokenUtf8", "\xEF\xBB\xBFName,Age\nZo\xEB,12\n",
     "roster.csv:2: found a byte that is not UTF-8, expected UTF-8 throughout (save it again as CSV UTF-8)"},
    {"HalfWritten", "Name,Age\nAnna,12\n\"Bo,13\nCleo,12\n",
     "roster.csv:3: found a quoted cell that never closes, expected a closing quotation mark (the file may be "
     "half-written)"},
    {"TextBehindQuotes", "Name;Age\n\"Anna\"x;12\nBo;13\n",
     "roster.csv:2: found text behind a closing quotation mark, expected the separator or the end of the line (a "
     "quotation mark inside a quoted cell is doubled)"},
};
INSTANTIATE_TEST_SUITE_P(Bytes, BadRosters, testing::ValuesIn(kBytes), name_of);

const std::vector<BadRoster> kRows = {
    {"NoHeadings", "Anna,12\nBo,13\n",
     "roster.csv: found no heading row that we know, expected a row of headings with at least 'Name' (see "
     "docs/formats/roster.md for the headings that are read)"},
    {"HeadingTwice", "Name,Player,Age\nAnna,A,12\nBo,B,13\n",
     "roster.csv:1: Player: found 'Player', expected one column only, and 'Name' is read already (rename the column "
     "that is not meant)"},
    {"NobodyAtAll", "Name,Age\n", "roster.csv: found 0 players, expected at least 2 players"},
    {"OnePlayer", "Name,Age\nAnna,12\n", "roster.csv: found 1 player, expected at least 2 players"},
    {"SeparatorUnquoted", "Name,Weight (kg)\nAnna,38,5\nBo,40\n",
     "roster.csv:2: found 3 cells, expected at most 2, as many as headings (a cell that contains the separator needs "
     "quotation marks)"},
    {"NameMissing", "Name,Date of birth\nAnna,2013-01-02\n,2013-05-06\nBo,2013-07-08\n",
     "roster.csv:3: Name: found an empty cell, expected a name"},
    {"IdMissing", "ID,Name\nQ1,Anna\n,Bo\n",
     "roster.csv:3: ID: found an empty cell, expected an id, as the other rows have"},
    {"IdTwice", "ID,Name\nQ1,Anna\nQ2,Bo\nq1,Cleo\n",
     "roster.csv:4: ID: found 'q1', expected an id that does not stand in line 2 already"},
    // The same name in composed and in decomposed letters, and in capitals.
    {"PlayerTwice", "Name,Born\nZo\u00EB Klein,2013-05-31\nBo,2013-01-02\nZOE\u0308  KLEIN,31 May 2013\n",
     "roster.csv:4: Name: found 'ZOE\u0308 KLEIN', expected a player who does not stand in line 2 already (one row a "
     "player: write both squads into the squad cell, as U13; U14)"},
    {"NameTwiceWithoutBirth", "Name,Age\nAnna,12\nAnna,13\n",
     "roster.csv:3: Name: found 'Anna', expected a player who does not stand in line 2 already (two players of one "
     "name need birth dates or ids)"},
    {"AgeNotANumber", "Name,Age\nAnna,twelve\nBo,13\n",
     "roster.csv:2: Age: found 'twelve', expected an age from 5 to 25 years"},
    {"AgeOfAParent", "Name,Age\nAnna,41\nBo,13\n", "roster.csv:2: Age: found '41', expected an age from 5 to 25 years"},
    {"SizeGroup", "Name,Size group\nAnna,large\nBo,3\n",
     "roster.csv:2: Size group: found 'large', expected a whole number from 1 (the smallest) to 9"},
    {"ContactUnclear", "Name,Contact OK\nAnna,ask mum\nBo,yes\n",
     "roster.csv:2: Contact OK: found 'ask mum', expected yes or no"},
    {"LinesAfterAQuotedBreak", "Title\n\nName,Notes,Age\n\"Anna\",\"two\r\nlines\n\nand more\",12\nBo,,1\n",
     "roster.csv:8: Age: found '1', expected an age from 5 to 25 years"},
    {"LineOfTheCellNotOfTheRow", "Name,Notes,Age\nAnna,\"two\nlines\",1\nBo,,12\n",
     "roster.csv:3: Age: found '1', expected an age from 5 to 25 years"},
};
INSTANTIATE_TEST_SUITE_P(Rows, BadRosters, testing::ValuesIn(kRows), name_of);

const std::vector<BadRoster> kDates = {
    {"Ambiguous", "Name,Born\nAnna,05/05/2013\nBo,03/04/2013\nCleo,04/03/2013\n",
     "roster.csv:3: Born: found '03/04/2013', expected a column in which at least one date shows whether the day or "
     "the "
     "month stands first (state it in the squad file: roster_dates = \"day-first\" or \"month-first\")"},
    {"Contradictory", "Name,Born\nAnna,25/04/2013\nBo,03/04/2013\nCleo,04/25/2013\n",
     "roster.csv:4: Born: found '04/25/2013', expected day first as in line 2: one order in the column"},
    {"NoSuchDay", "Name,Born\nAnna,2013-02-30\nBo,2013-01-02\n",
     "roster.csv:2: Born: found '2013-02-30', expected a date that exists, such as 2013-05-31"},
    {"NoSuchDayInAnyOrder", "Name,Born\nAnna,31/31/2013\nBo,25/04/2013\n",
     "roster.csv:2: Born: found '31/31/2013', expected a date that exists, such as 2013-05-31"},
    {"InTheFuture", "Name,Born\nAnna,2027-02-03\nBo,2013-01-02\n",
     "roster.csv:2: Born: found '2027-02-03', expected a birth date that makes the player 5 to 25 years old on "
     "2026-11-26"},
    {"TwoDigitsHyphens", "Name,Born\nAnna,13-05-12\nBo,2013-01-02\n",
     "roster.csv:2: Born: found '13-05-12', expected a year of four digits"},
    {"TwoDigitsOfAParent", "Name,Born\nAnna,12.05.84\nBo,12.05.13\n",
     "roster.csv:2: Born: found '12.05.84', expected a birth date that makes the player 5 to 25 years old on "
     "2026-11-26"},
    {"YearOnly", "Name,Born\nAnna,2013\nBo,2014-01-02\n",
     "roster.csv:2: Born: found '2013', expected a date with day, month and year"},
    {"Prose", "Name,Born\nAnna,last spring\nBo,2014-01-02\n",
     "roster.csv:2: Born: found 'last spring', expected a date such as 2013-05-31"},
    // 39963 is 31 May 2013 on the 1904 system and four years less a day earlier on the other.
    {"Serial1904", "Name,Born,Age\nAnna,39963,13\nBo,40000,13\n",
     "roster.csv:2: Born: found '39963', expected day numbers that agree with the ages in the file (if the workbook "
     "counts days from 1904, state it in the squad file: roster_dates = \"serial-1904\")"},
};
INSTANTIATE_TEST_SUITE_P(Dates, BadRosters, testing::ValuesIn(kDates), name_of);

const std::vector<BadRoster> kMeasures = {
    {"PoundsWithoutUnit", "Name,Weight\nAnna,84\nBo,91\n",
     "roster.csv:2: Weight: found '84', expected a unit, kg or lb, in the heading or in the cell (and in 1 more rows)"},
    {"UnitsDisagree", "Name,Weight (kg)\nAnna,84 lb\nBo,40\n",
     "roster.csv:2: Weight (kg): found '84 lb', expected kilograms, as the heading says"},
    {"MassOutOfReach", "Name,Weight (lb)\nAnna,840\nBo,91\n",
     "roster.csv:2: Weight (lb): found '840', expected a body mass of 12 to 150 kg, such as 38.5 kg, 84 lb or 6 st 4 "
     "lb"},
    {"MassInWords", "Name,Weight (kg)\nAnna,light\nBo,40\n",
     "roster.csv:2: Weight (kg): found 'light', expected a body mass of 12 to 150 kg, such as 38.5 kg, 84 lb or 6 st 4 "
     "lb"},
    {"HeightWithoutUnit", "Name,Height\nAnna,62\nBo,152\n",
     "roster.csv:2: Height: found '62', expected a unit, cm or m, in the heading or in the cell"},
    {"HeightInReach", "Name,Height (cm)\nAnna,15\nBo,152\n",
     "roster.csv:2: Height (cm): found '15', expected a height of 0.80 to 2.30 m, such as 152 cm, 1.52 m or 5'2\""},
};
INSTANTIATE_TEST_SUITE_P(Measures, BadRosters, testing::ValuesIn(kMeasures), name_of);

std::string roster_of(int players, const std::string& squad) {
  std::string text = "Name,Squad\n";
  for (int i = 1; i <= players; ++i) text += "Player " + std::to_string(i) + "," + squad + "\n";
  return text;
}

TEST(RosterFaults, MoreThanSixtyPlayersAreNoSquad) {
  EXPECT_EQ(lines_for(roster_of(60, "U13")), "no fault");
  EXPECT_EQ(lines_for(roster_of(61, "U13")),
            "roster.csv: found 61 players, expected at most 60 players (name the squad with in_roster where the file "
            "holds the whole club)");
}

TEST(RosterFaults, ALimitHoldsForTheSquadThatIsStated) {
  RosterStatement stated;
  stated.squad = "U13";
  EXPECT_EQ(lines_for("Name,Squad\nAnna,U13; U14\nBo,U13\nCleo,U14\n", stated), "no fault");
  EXPECT_EQ(lines_for("Name,Squad\nAnna,U13; U14\nBo,U12\nCleo,U14\n", stated),
            "roster.csv: found 1 player of squad 'U13', expected at least 2 players");
  EXPECT_EQ(lines_for("Name\nAnna\nBo\n", stated),
            "roster.csv: found no column of squads, expected a heading 'Squad', to find players of squad 'U13'");
}

TEST(RosterFaults, TheLongTailIsCounted) {
  std::string text = "Name,Age\n";
  for (int i = 0; i < 58; ++i) text += "Player " + std::to_string(i) + ",old\n";
  const auto players = read_roster("roster.csv", text, kEvening);
  ASSERT_FALSE(players);
  ASSERT_EQ(players.faults().size(), 51U);
  EXPECT_EQ(to_line(players.faults().back()), "roster.csv: found 58 faults, expected none; the first 50 are listed");
}

TEST(RosterFaults, UnknownEncodingNames) {
  RosterStatement stated;
  stated.encoding = "ebcdic";
  EXPECT_EQ(lines_for("Name\nAnna\nBo\n", stated),
            "roster.csv: found encoding 'ebcdic', expected a name such as windows-1250");
}

}  // namespace
}  // namespace lanework::read
