// A club's folder on the disk: what it names is read, what is missing is told at the line that names it.
#include "app/read/club_folder.h"

#include <gtest/gtest.h>

#include "app/read/new_folder.h"
#include "app/read/read_roster.h"
#include "app/read/write_roster.h"
#include "core/club/allocation.h"
#include "tests/read/scratch_folder.h"

namespace lanework::read {
namespace {

class ClubFolderTest : public testing::Test {
 protected:
  ScratchFolder club_;

  void SetUp() override {
    club_.write(
        "club.toml",
        "name = \"Quillmere Juniors\"\n[season]\nfrom = 2026-08-31\nto = 2027-06-27\n[block]\n"
        "first_monday = 2026-11-23\n[[strip]]\nid = \"north\"\nfile = \"strips/north.toml\"\nlanes = 4\n[[strip]]\n"
        "id = \"hall\"\nlane_length_metres = 12\ncone_spacing_metres = 4\nlanes = 1\n"
        "area_metres = { width = 9, length = 9 }\n");
    club_.write(
        "strips/north.toml",
        "lane_length_metres = 15\ncone_spacing_metres = 5\nlanes = 2\narea_metres = { width = 20, length = 15 }\n");
    club_.write("roster.csv", "Name,Born,Squad\nAnna,03/04/2013,U13\nBo,04/03/2013,U13\nCid,05/03/2013,U13\n");
    write_squad("");
  }

  void write_squad(const std::string& more, const std::string& strip = "../strips/north.toml") const {
    club_.write("squads/u13.toml",
                "name = \"Under-13\"\nroster = \"../roster.csv\"\nin_roster = \"U13\"\n"
                "routine = \"early-teens\"\nstrip = \"" +
                    strip + "\"\nroster_dates = \"day-first\"\n" + more +
                    "[[week]]\nweekday = \"tuesday\"\nstart = 18:00:00\nminutes = 20\n");
  }

  [[nodiscard]] ClubFolder read() const {
    return read_club_folder(club_.path(), std::string(LANEWORK_SOURCE_DIR) + "/catalogue");
  }

  // Lines of faults with the folder's name taken out.
  [[nodiscard]] std::string lines() const {
    std::string text;
    for (const Fault& fault : read().faults) text += (text.empty() ? "" : "\n") + to_line(fault);
    for (std::size_t at; (at = text.find(club_.path() + "/")) != std::string::npos;) {
      text.erase(at, club_.path().size() + 1);
    }
    return text;
  }
};

TEST_F(ClubFolderTest, EverythingNamedIsRead) {
  ASSERT_EQ(lines(), "");
  const ClubFolder folder = read();
  ASSERT_EQ(folder.club.squads.size(), 1U);
  const club::ClubSquad& squad = folder.club.squads[0];
  EXPECT_EQ(squad.id, "u13");
  ASSERT_EQ(squad.players.size(), 3U);
  EXPECT_EQ(to_iso(*squad.players[0].birth), "2013-04-03");
  EXPECT_EQ(folder.club.settings.strips[0].id, "hall");
  EXPECT_EQ(folder.club.settings.strips[1].strip.lanes, 4);  // as club.toml counts them
  EXPECT_EQ(squad.strip, 1U);
  EXPECT_EQ(squad.match_day_routine.id, "match-day");
}

TEST_F(ClubFolderTest, TheClubsEmphasisIsInEveryCatalogue) {
  club_.write("ours/routines/ours.toml", "");
  write_squad("catalogue = \"../ours\"\n");
  club_.write("emphasis.toml", "from = 2025-08-25\nto = 2026-05-31\n[weights]\nbalance = 6\n");
  ASSERT_EQ(lines(), "");
  const ClubFolder folder = read();
  ASSERT_EQ(folder.club.catalogues.size(), 2U);
  for (const catalogue::Catalogue& catalogue : folder.club.catalogues) {
    EXPECT_EQ(catalogue.family(catalogue::Family::kBalance).weight, 6);
  }
  club_.write("emphasis.toml", "from = 2025-08-25\nto = 2026-05-31\n[weights]\nbalance = 3\n");
  EXPECT_EQ(lines(),
            "emphasis.toml:4:1: weights.balance: found 3, expected 4 to 6, one step at most from the catalogue's 5");
}

TEST_F(ClubFolderTest, WhatIsMissingIsToldWhereItIsNamed) {
  write_squad("restrictions = \"../sore.toml\"\ncatalogue = \"../ours\"\n", "../strips/south.toml");
  EXPECT_EQ(
      lines(),
      "squads/u13.toml:8:1: catalogue: found 'squads/../ours', no such folder, expected a folder of drills\n"
      "squads/u13.toml:7:1: restrictions: found 'squads/../sore.toml', no such file, expected a file that can be read");
  write_squad("", "../strips/south.toml");
  EXPECT_EQ(
      lines(),
      "squads/u13.toml:5:1: strip: found '../strips/south.toml', expected one of the strips of club.toml: hall, north");
  write_squad("", "../../south.toml");
  EXPECT_NE(lines().find("expected a file in the folder of the squad file or the one above"), std::string::npos);
}

TEST_F(ClubFolderTest, OneListForAllFiles) {
  club_.write("squads/u14.toml", "name = \"U14\"\nroutine = 3\n");
  club_.write("squads/u15.toml", "name = = 3\n");
  club_.write("strips/north.toml", "lanes = 2\n");
  const std::string found = lines();
  for (const char* piece : {"squads/u14.toml:2:1: routine: found 3", "squads/u14.toml: strip: found nothing",
                            "squads/u14.toml: roster: found nothing",
                            "squads/u15.toml:1:8:", "strips/north.toml:1:1: lane_length_metres: found nothing"}) {
    EXPECT_NE(found.find(piece), std::string::npos) << piece << "\n" << found;
  }
}

TEST_F(ClubFolderTest, NoClubFileAndNoSquads) {
  std::filesystem::remove(club_.path("squads/u13.toml"));
  EXPECT_EQ(lines(), "squads: found no squad file, expected at least one squad, such as squads/u13-kestrels.toml");
  std::filesystem::remove(club_.path("club.toml"));
  EXPECT_EQ(lines(), "club.toml: found no such file, expected a file that can be read");
}

TEST(DemoClub, EverySlotOfTheBlockIsAnEvening) {
  const std::string root = LANEWORK_SOURCE_DIR;
  const ClubFolder folder = read_club_folder(root + "/demo/quillmere", root + "/catalogue");
  ASSERT_TRUE(folder.faults.empty()) << to_line(folder.faults.front());
  const club::Settings& settings = folder.club.settings;
  const club::Allocation allocation = club::allocate(folder.club, settings.block_from, settings.block_weeks);
  EXPECT_TRUE(allocation.conflicts.empty());
  ASSERT_EQ(folder.club.squads.size(), 24U);
  for (std::size_t i = 0; i < folder.club.squads.size(); ++i) {
    const club::ClubSquad& squad = folder.club.squads[i];
    EXPECT_GE(allocation.calendars[i].slots.size(), 10U) << squad.id;
    EXPECT_TRUE(squad.players.size() >= 8 && squad.players.size() <= 24) << squad.id;
    for (const club::PlannedSlot& slot : allocation.calendars[i].slots) {
      const auto evening = club::evening_of(folder.club, squad, slot);
      ASSERT_TRUE(evening) << squad.id << " " << to_line(evening.faults().front());
    }
  }
}

TEST(RosterText, IsReadBackUnchanged) {
  people::Player anna;
  anna.id = "Q1";
  anna.name = "Anna \"Ace\", Öst; x";
  anna.birth = parse_iso_date("2014-03-14");
  anna.squads = {"U13", "U14 Girls"};
  anna.shirt = "7";
  anna.size_group = 2;
  anna.body_mass_grams = 41250;
  anna.contact_ok = false;
  people::Player bo;
  bo.id = "Q2";
  bo.name = "=Bo";
  bo.stated_age = 12;
  bo.squads = {"U13"};
  const auto read = read_roster("roster.csv", roster_text({anna, bo}), *parse_iso_date("2026-11-26"));
  ASSERT_TRUE(read) << to_line(read.faults().front());
  ASSERT_EQ(read.value().size(), 2U);
  const people::Player& first = read.value()[0];
  EXPECT_EQ(first.id, anna.id);
  EXPECT_EQ(first.name, anna.name);
  EXPECT_EQ(first.birth, anna.birth);
  EXPECT_EQ(first.squads, anna.squads);
  EXPECT_EQ(first.shirt, "7");
  EXPECT_EQ(first.size_group, 2);
  EXPECT_EQ(first.body_mass_grams, 41250);
  EXPECT_FALSE(first.contact_ok);
  EXPECT_EQ(read.value()[1].name, "=Bo");
  EXPECT_EQ(read.value()[1].stated_age, 12);
  EXPECT_TRUE(read.value()[1].contact_ok);
}

TEST(NewFolder, AllOfItOrNothing) {
  const ScratchFolder scratch;
  const std::string folder = scratch.path("next");
  const auto fine = [](const std::string&) { return Faults(); };
  const auto bad = [](const std::string& there) {
    EXPECT_TRUE(std::filesystem::exists(there + "/squads/a.toml"));
    return Faults{{FaultCode::kContradiction, {}, "a", "b", {}}};
  };
  EXPECT_EQ(write_folder_atomically(folder, {{"squads/a.toml", "x"}}, bad).size(), 1U);
  EXPECT_TRUE(scratch.names().empty());
  EXPECT_TRUE(write_folder_atomically(folder + "/", {{"squads/a.toml", "x"}, {"b", "y"}}, fine).empty());
  EXPECT_EQ(scratch.names(), std::vector<std::string>{"next"});
  const Faults again = write_folder_atomically(folder, {{"c", "z"}}, fine);
  ASSERT_EQ(again.size(), 1U);
  EXPECT_EQ(again[0].code, FaultCode::kCannotWrite);
  EXPECT_FALSE(std::filesystem::exists(folder + "/c"));
  EXPECT_EQ(write_folder_atomically(scratch.path("no/next"), {{"c", "z"}}, fine).size(), 1U);
}

}  // namespace
}  // namespace lanework::read
