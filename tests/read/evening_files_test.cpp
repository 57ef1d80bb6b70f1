#include "app/read/evening_files.h"

#include <gtest/gtest.h>

#include <string>

#include "tests/read/scratch_folder.h"

namespace lanework::read {
namespace {

class EveningFilesTest : public testing::Test {
 protected:
  ScratchFolder shipped_;
  ScratchFolder club_;

  void SetUp() override {
    for (const char* name : {"families.toml", "limits.toml", "gaits.toml", "sources.toml"}) shipped_.write(name, "");
    shipped_.write("drills/a.toml", "id = \"a\"\n");
    shipped_.write("routines/early-teens.toml", "id = \"early-teens\"\n");
    club_.write("roster.csv", "Name,Born,Squad\nAnna,03/04/2013,U13\nBo,04/03/2013,U13\n");
    club_.write("strip.toml", "lanes = 2\n");
    club_.write("restrictions.toml", "as_known = \"Sunday 20:10\"\n");
  }

  void write_squad(const std::string& more, const std::string& roster = "roster.csv") const {
    club_.write("squad.toml", "roster = \"" + roster + "\"\nroutine = \"early-teens\"\nstrip = \"strip.toml\"\n" +
                                  more + "[slot]\ndate = 2026-11-26\n");
  }

  // Lines of faults with the folders' names taken out.
  [[nodiscard]] std::string lines(const EveningOverrides& overrides = {}) const {
    const auto files = read_evening_files(club_.path("squad.toml"), shipped_.path(), overrides);
    if (files) return "no fault";
    std::string text;
    for (const Fault& fault : files.faults()) text += (text.empty() ? "" : "\n") + to_line(fault);
    for (const ScratchFolder* folder : {&club_, &shipped_}) {
      for (std::size_t at; (at = text.find(folder->path() + "/")) != std::string::npos;) {
        text.erase(at, folder->path().size() + 1);
      }
    }
    return text;
  }
};

TEST_F(EveningFilesTest, EverythingNamedIsLoaded) {
  write_squad("restrictions = \"restrictions.toml\"\nroster_dates = \"day-first\"\nroster_encoding = \"utf-8\"\n");
  const auto files = read_evening_files(club_.path("squad.toml"), shipped_.path());
  ASSERT_TRUE(files) << to_line(files.faults().front());
  EXPECT_EQ(files.value().routine.root.find("id")->text, "early-teens");
  EXPECT_EQ(files.value().strip.root.find("lanes")->integer, 2);
  EXPECT_EQ(files.value().restrictions.root.find("as_known")->text, "Sunday 20:10");
  ASSERT_EQ(files.value().roster.size(), 2U);
  EXPECT_EQ(to_iso(*files.value().roster[0].birth), "2013-04-03");
  EXPECT_EQ(files.value().catalogue.drills.size(), 1U);
  // How the roster's file is read is settled here; the rest of the squad file goes on as it stands.
  EXPECT_EQ(files.value().squad.root.find("roster_dates"), nullptr);
  EXPECT_EQ(files.value().squad.root.find("roster_encoding"), nullptr);
  EXPECT_NE(files.value().squad.root.find("strip"), nullptr);
}

TEST_F(EveningFilesTest, RestrictionsMayBeAbsent) {
  write_squad("roster_dates = \"day-first\"\n");
  const auto files = read_evening_files(club_.path("squad.toml"), shipped_.path());
  ASSERT_TRUE(files);
  EXPECT_TRUE(files.value().restrictions.root.entries.empty());
}

TEST_F(EveningFilesTest, AClubsOwnFolderAddsDrillsAndRoutines) {
  club_.write("ours/drills/z.toml", "id = \"z\"\n");
  club_.write("ours/routines/early-teens.toml", "id = \"early-teens\"\nname = \"ours\"\n");
  write_squad("roster_dates = \"day-first\"\ncatalogue = \"ours\"\n");
  const auto files = read_evening_files(club_.path("squad.toml"), shipped_.path());
  ASSERT_TRUE(files);
  EXPECT_EQ(files.value().catalogue.drills.size(), 2U);
  EXPECT_EQ(files.value().routine.root.find("name")->text, "ours");
}

// The weight that the families have of balance, with a squad file in a folder of the club's and beside it.
TEST_F(EveningFilesTest, TheEmphasisOfTheClubAboveIsInItsFamilies) {
  shipped_.write("families.toml", "[[family]]\nkey = \"balance\"\nweight = 5\n");
  club_.write("squads/u13.toml",
              "roster = \"../roster.csv\"\nroutine = \"early-teens\"\nstrip = \"../strip.toml\"\n"
              "roster_dates = \"day-first\"\n[slot]\ndate = 2026-11-26\n");
  club_.write("emphasis.toml", "from = 2025-08-25\nto = 2026-05-31\n[weights]\nbalance = 6\n");
  const auto weight = [this] {
    const auto files = read_evening_files(club_.path("squads/u13.toml"), shipped_.path());
    if (!files) return files.faults().size() == 1 ? -1 : -2;
    const Node& row = files.value().catalogue.families.root.find("family")->items.front();
    return static_cast<int>(row.find("weight")->integer);
  };
  EXPECT_EQ(weight(), 5);  // a folder without club.toml is no club's
  club_.write("club.toml", "");
  EXPECT_EQ(weight(), 6);
  club_.write("emphasis.toml", "from = 2025-08-25\nto = 2026-05-31\n[weights]\nbalance = 8\n");
  EXPECT_EQ(weight(), -1);
}

TEST_F(EveningFilesTest, FlagsWin) {
  const ScratchFolder elsewhere;
  elsewhere.write("other.csv", "Name\nAnna\nBo\nCleo\n");
  elsewhere.write("other.toml", "id = \"other\"\n");
  write_squad("");
  EveningOverrides overrides;
  overrides.roster = elsewhere.path("other.csv");
  overrides.routine = elsewhere.path("other.toml");
  const auto files = read_evening_files(club_.path("squad.toml"), shipped_.path(), overrides);
  ASSERT_TRUE(files) << to_line(files.faults().front());
  EXPECT_EQ(files.value().roster.size(), 3U);
  EXPECT_EQ(files.value().routine.root.find("id")->text, "other");
}

TEST_F(EveningFilesTest, FaultsStandWhereTheFileIsNamed) {
  write_squad("restrictions = \"gone.toml\"\n", "../../roster.csv");
  EXPECT_EQ(lines(),
            "squad.toml:4:1: restrictions: found 'gone.toml', no such file, expected a file that can be read\n"
            "squad.toml:1:1: roster: found '../../roster.csv', expected a file in the folder of the squad file or "
            "the one above");
}

TEST_F(EveningFilesTest, AbsolutePathsAndFoldersAreRefused) {
  write_squad("restrictions = \"/etc/hostname\"\n", "ours");
  club_.write("ours/keep", "");
  EXPECT_EQ(lines(),
            "squad.toml:4:1: restrictions: found '/etc/hostname', expected a file in the folder of the squad "
            "file or the one above\nsquad.toml:1:1: roster: found 'ours', a folder, expected a file that can be read");
}

TEST_F(EveningFilesTest, ARosterThatDoesNotTellSaysHowToStateIt) {
  write_squad("");
  EXPECT_EQ(
      lines(),
      "roster.csv:2: Born: found '03/04/2013', expected a column in which at least one date shows whether the day "
      "or the month stands first (state it in the squad file: roster_dates = \"day-first\" or \"month-first\")");
}

TEST_F(EveningFilesTest, WrongStatementsAreFaults) {
  write_squad("roster_dates = \"american\"\nroster_encoding = 8\nin_roster = \"U13\"\n");
  EXPECT_EQ(lines().substr(0, 200),
            std::string("squad.toml:5:1: roster_encoding: found 8, expected text\n"
                        "squad.toml:4:1: roster_dates: found 'american', expected one of day-first, month-first, "
                        "serial-1904")
                .substr(0, 200));
}

TEST_F(EveningFilesTest, WhatIsMissingIsSaid) {
  club_.write("squad.toml", "roster = 7\nroutine = \"seniors\"\n");
  EXPECT_EQ(lines(),
            "squad.toml:2:1: routine: found routine 'seniors', expected one of early-teens, or a file name ending in "
            ".toml\n"
            "squad.toml: strip: found nothing, expected a file name\n"
            "squad.toml: slot.date: found nothing, expected the date of the evening, such as 2026-11-26\n"
            "squad.toml:1:1: roster: found 7, expected a file name");
}

TEST_F(EveningFilesTest, BrokenTomlIsOneLine) {
  club_.write("squad.toml", "roster = \"roster.csv\"\nroutine = [1,\n");
  const std::string text = lines();
  EXPECT_EQ(text.find('\n'), std::string::npos) << text;
  EXPECT_EQ(text.substr(0, 13), "squad.toml:2:") << text;
  club_.write("squad.toml", std::string("a = 1\nb = \0", 11));
  EXPECT_EQ(lines().substr(0, 13), "squad.toml:2:") << lines();
}

TEST_F(EveningFilesTest, TheClubsFolderMayStandAbove) {
  club_.write("squads/squad.toml",
              "roster = \"../roster.csv\"\nroster_dates = \"day-first\"\nroutine = \"early-teens\"\n"
              "strip = \"../strip.toml\"\n[slot]\ndate = 2026-11-26\n");
  const auto files = read_evening_files(club_.path("squads/squad.toml"), shipped_.path());
  EXPECT_TRUE(files) << to_line(files.faults().front());
}

TEST(DemoClub, EverySquadLoads) {
  const std::string root = LANEWORK_SOURCE_DIR;
  for (const char* squad : {"u10-wrens", "u13-kestrels", "u16-merlins"}) {
    const auto files = read_evening_files(root + "/demo/quillmere/squads/" + squad + ".toml", root + "/catalogue");
    EXPECT_TRUE(files) << squad << ": " << to_line(files.faults().front());
  }
}

TEST_F(EveningFilesTest, NoSquadFile) {
  EXPECT_EQ(lines(), "squad.toml: found no such file, expected a file that can be read");
}

}  // namespace
}  // namespace lanework::read
