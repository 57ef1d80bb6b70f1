// Documents of a club: what stands there is what comes out, and every mistake is one line at its place.
#include "core/club/read_club.h"

#include <gtest/gtest.h>

#include <stdexcept>

#include "tests/catalogue/shipped.h"
#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

Document parsed(const std::string& file, const std::string& toml) {
  auto document = parse_toml(file, toml);
  if (!document) throw std::runtime_error(to_line(document.faults().front()));
  return std::move(document).value();
}

std::string club_toml() {
  return "name = \"Quillmere Juniors\"\n"
         "[season]\nfrom = 2026-08-31\nto = 2027-06-27\n"
         "[block]\nfirst_monday = 2026-11-23\nweeks = 4\n"
         "[[holiday]]\nname = \"Winter break\"\nfrom = 2026-12-21\nto = 2026-12-27\n"
         "[[strip]]\nid = \"north\"\n";
}

std::string squad_toml() {
  return "name = \"Under-13\"\nroster = \"roster.csv\"\nin_roster = \"U13\"\nroutine = \"early-teens\"\n"
         "strip = \"north.toml\"\n[[week]]\nweekday = \"tuesday\"\nstart = 18:00:00\nminutes = 20\nlanes = 1\n";
}

ClubDocuments documents(const std::string& club = club_toml(), const std::string& squad = squad_toml()) {
  ClubDocuments out;
  out.club = parsed("club.toml", club);
  StripDocument strip;
  strip.id = "north";
  strip.file = "north.toml";
  strip.strip = parsed("north.toml",
                       "lane_length_metres = 15\ncone_spacing_metres = 5\nlanes = 2\n"
                       "area_metres = { width = 20, length = 15 }\n");
  out.strips = {strip};
  out.catalogues = {catalogue::test::shipped_documents()};
  people::Player ann;
  ann.id = "P1";
  ann.name = "Ann";
  ann.birth = day("2014-03-14");
  ann.squads = {"U13"};
  ann.row = 2;
  people::Player bo = ann;
  bo.id = "P2";
  bo.name = "Bo";
  out.rosters = {{"roster.csv", {ann, bo}}};
  SquadDocuments one;
  one.id = "u13";
  one.squad = parsed("squads/u13.toml", squad);
  one.routine = catalogue::test::read_toml(catalogue::test::shipped_folder() / "routines/early-teens.toml");
  one.match_day_routine = catalogue::test::read_toml(catalogue::test::shipped_folder() / "routines/match-day.toml");
  one.strip_file = "north.toml";
  out.squads = {one};
  return out;
}

std::string with(std::string text, const std::string& piece, const std::string& by) {
  const std::size_t at = text.find(piece);
  if (at == std::string::npos) throw std::invalid_argument(piece);
  return text.replace(at, piece.size(), by);
}

std::string faults_of(const ClubDocuments& from) { return catalogue::test::all_lines(read_club(from).faults); }

TEST(ReadClub, EverythingStatedIsRead) {
  const ClubReading read =
      read_club(documents(with(club_toml(), "[season]", "served_first = [\"u13\"]\n[season]") +
                          "[kit]\ncones = 60\nballs = 40\n[[lock]]\nages = { from = 8, to = 12 }\nbans = [\"squat\"]\n"
                          "[[lock]]\npins = [{ drill = \"side-plank\" }]\n"));
  ASSERT_TRUE(read.faults.empty()) << to_line(read.faults.front());
  const Settings& settings = read.club.settings;
  EXPECT_EQ(settings.name, "Quillmere Juniors");
  EXPECT_EQ(to_iso(settings.season_to), "2027-06-27");
  EXPECT_EQ(to_iso(settings.block_from), "2026-11-23");
  EXPECT_EQ(settings.block_weeks, 4);
  ASSERT_EQ(settings.holidays.size(), 1U);
  EXPECT_EQ(settings.holidays[0].name, "Winter break");
  ASSERT_EQ(settings.strips.size(), 1U);
  EXPECT_EQ(settings.strips[0].strip.lanes, 2);
  EXPECT_EQ(settings.kit->cones, 60);
  EXPECT_EQ(settings.served_first, std::vector<std::string>{"u13"});
  ASSERT_EQ(settings.locks.size(), 2U);
  EXPECT_EQ(settings.locks[1].age_to, 19);
  ASSERT_NE(read.club.find("u13"), nullptr);
  const ClubSquad& squad = *read.club.find("u13");
  EXPECT_EQ(squad.players.size(), 2U);
  EXPECT_EQ(squad.routine.id, "early-teens");
  EXPECT_EQ(squad.match_day_routine.id, "match-day");
  const session::Locks locks = locks_on(read.club, squad, settings.block_from);
  EXPECT_EQ(locks.bans, std::vector<std::string>{"squat"});
  EXPECT_EQ(locks.pins.size(), 1U);
  EXPECT_EQ(read.club.find("u14"), nullptr);
}

struct Mistake {
  std::string name;
  std::string piece;  // of club.toml; empty adds at its end
  std::string by;
  std::string line;
};
void PrintTo(const Mistake& mistake, std::ostream* out) { *out << mistake.name; }

class ClubMistake : public testing::TestWithParam<Mistake> {};

TEST_P(ClubMistake, IsOneLineAtItsPlace) {
  const Mistake& mistake = GetParam();
  const std::string text =
      mistake.piece.empty() ? club_toml() + mistake.by : with(club_toml(), mistake.piece, mistake.by);
  EXPECT_EQ(faults_of(documents(text)), "club.toml:" + mistake.line + "\n");
}

std::string mistake_name(const testing::TestParamInfo<Mistake>& info) { return info.param.name; }

INSTANTIATE_TEST_SUITE_P(
    Settings, ClubMistake,
    testing::Values(
        Mistake{"NoName", "name = \"Quillmere Juniors\"\n", "", "1:1: name: found nothing, expected text"},
        Mistake{"NoSeasonEnd", "to = 2027-06-27\n", "",
                "2:2: season.to: found nothing, expected a date such as 2026-11-23"},
        Mistake{"SeasonBackwards", "to = 2027-06-27", "to = 2025-06-27",
                "4:1: season.to: found 2025-06-27, expected a day not before 2026-08-31"},
        Mistake{"NotAMonday", "2026-11-23", "2026-11-26",
                "6:1: block.first_monday: found 2026-11-26, a Thursday, expected a Monday, such as 2026-11-23"},
        Mistake{"TwoWeeks", "weeks = 4", "weeks = 2", "7:1: block.weeks: found 2, expected a whole number from 3 to 8"},
        Mistake{"NineWeeks", "weeks = 4", "weeks = 9",
                "7:1: block.weeks: found 9, expected a whole number from 3 to 8"},
        Mistake{"HolidayBackwards", "to = 2026-12-27", "to = 2026-12-20",
                "11:1: holiday.1.to: found 2026-12-20, expected a day not before 2026-12-21"},
        Mistake{"UnknownDrillBanned", "", "[[lock]]\nbans = [\"moon-walk\"]\n",
                "15:1: lock.1.bans: found 'moon-walk', expected the id of a drill of the catalogue ('lanework "
                "catalogue list' shows them)"},
        Mistake{"AgesBackwards", "", "[[lock]]\nages = { from = 12, to = 10 }\n",
                "15:21: lock.1.ages.to: found 10, expected an age not below 12"},
        Mistake{"UnknownSquadServed", "[season]", "served_first = [\"u99\"]\n[season]",
                "2:1: served_first: found 'u99', expected the name of a file in squads/ without its ending"},
        Mistake{"UnknownKey", "", "[kit]\ncoins = 3\n",
                "15:1: kit.coins: found 'coins', expected one of cones, balls, mats"}),
    mistake_name);

TEST(ReadClub, SquadsNameStripsOfTheClub) {
  EXPECT_EQ(faults_of(documents(club_toml(), with(squad_toml(), "lanes = 1", "lanes = 3"))),
            "squads/u13.toml:6:1: week.1.lanes: found 3 lanes of north, expected at most 2, as many as it has\n");
  EXPECT_EQ(faults_of(documents(club_toml(), with(squad_toml(), "lanes = 1", "strip = \"south\""))),
            "squads/u13.toml:6:1: week.1.strip: found 'south', expected one of the strips of club.toml: north\n");
  ClubDocuments other = documents();
  other.squads[0].strip_file = "south.toml";
  EXPECT_EQ(faults_of(other),
            "squads/u13.toml:5:1: strip: found 'north.toml', expected one of the strips of club.toml: north\n");
}

TEST(ReadClub, RosterAndSquadFilesKnowEachOther) {
  ClubDocuments from = documents();
  from.rosters[0].players[1].squads = {"U13", "U14"};
  EXPECT_EQ(faults_of(from),
            "roster.csv:2: found squad 'U14', expected a squad that a file in squads/ names as in_roster\n");
  ClubDocuments two = documents();
  two.rosters.push_back({"other.csv", {two.rosters[0].players[0]}});
  EXPECT_EQ(faults_of(two), "");  // the same player in two rosters
  two.rosters[1].players[0].name = "Anna";
  EXPECT_NE(faults_of(two).find("other.csv:2: found 'P1', somebody else than in another roster"), std::string::npos);
}

TEST(ReadClub, ASquadWithoutAnySlotIsToldSo) {
  const std::string squad = squad_toml().substr(0, squad_toml().find("[[week]]"));
  EXPECT_EQ(faults_of(documents(club_toml(), squad)),
            "squads/u13.toml: week: found no slot, expected at least one [[week]]\n");
}

TEST(ReadClub, RestrictionsFollowThePlayerFromFileToFile) {
  ClubDocuments from = documents();
  from.squads[0].restrictions = parsed("a.toml", "[[restriction]]\nplayer = \"P1\"\n");
  SquadDocuments second = from.squads[0];
  second.id = "u14";
  second.squad = parsed("squads/u14.toml", with(with(squad_toml(), "Under-13", "Under-14"), "\"U13\"", "\"U14\""));
  second.restrictions = parsed("b.toml", "[[restriction]]\nplayer = \"P2\"\nsits_out = true\n");
  from.squads.push_back(second);
  from.rosters[0].players[1].squads = {"U13", "U14"};
  const ClubReading read = read_club(from);
  ASSERT_TRUE(read.faults.empty()) << to_line(read.faults.front());
  EXPECT_EQ(read.club.squads[0].restrictions.list.size(), 2U);
  EXPECT_EQ(read.club.squads[0].own_restrictions, 1U);
  EXPECT_EQ(turnout_on(read.club.squads[0], day("2026-11-24")), 1);
}

}  // namespace
}  // namespace lanework::club::test
