// The club's folder changed at the desk: all of a change or nothing, and never over somebody else's.
#include "app/planning/club_documents.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <thread>

#include <unistd.h>

#include "app/planning/pocket.h"
#include "app/read/files.h"
#include "tests/planning/planning_of_demo.h"

namespace lanework::planning {
namespace {

namespace fs = std::filesystem;

class ClubDocuments : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = fs::temp_directory_path() / ("lanework-club-" + std::to_string(::getpid()));
    fs::remove_all(folder_);
    fs::create_directories(folder_);
    files_ = test::demo_files();
    fs::copy(files_.club, folder_ / "club", fs::copy_options::recursive);
    files_.club = (folder_ / "club").string();
  }
  void TearDown() override { fs::remove_all(folder_); }

  [[nodiscard]] ClubDocument at(const std::string& path) const {
    const auto documents = club_documents(files_.club);
    for (const ClubDocument& one : documents.value()) {
      if (one.path == path) return one;
    }
    throw std::runtime_error(path);
  }
  [[nodiscard]] std::string text_of(const std::string& path) const {
    return read::read_file(files_.club + "/" + path).value();
  }
  // Nothing stands beside the club but the lock.
  [[nodiscard]] std::size_t beside() const {
    std::size_t out = 0;
    for ([[maybe_unused]] const auto& one : fs::directory_iterator(folder_)) ++out;
    return out;
  }

  fs::path folder_;
  PlanningFiles files_;
};

TEST_F(ClubDocuments, AreEveryDocumentOfTheFolderAndNoRostersContent) {
  const auto documents = club_documents(files_.club);
  std::size_t squads = 0;
  for (const ClubDocument& one : documents.value()) {
    squads += one.path.rfind("squads/", 0) == 0 ? 1 : 0;
    const bool names_children = one.path.rfind("roster", 0) == 0 || one.path == "restrictions.toml";
    EXPECT_EQ(one.content.has_value(), !names_children) << one.path;
    EXPECT_EQ(one.digest.size(), 32U);
    EXPECT_EQ(one.path.find("season"), std::string::npos);
  }
  EXPECT_EQ(squads, 24U);
  EXPECT_EQ(at("club.toml").content->find("name")->text, "Quillmere Juniors");
}

TEST_F(ClubDocuments, ASquadIsChangedAndSoIsItsDigest) {
  const ClubDocument before = at("squads/u13-kestrels.toml");
  Node squad = *before.content;
  squad.set("name", Node::make_text("Under-13 Kites"));
  const auto changed = change_club(files_, {{before.path, to_toml(squad), before.digest}});
  ASSERT_TRUE(changed) << to_line(changed.faults().front());
  EXPECT_TRUE(changed.value().meanwhile.empty());
  ASSERT_EQ(changed.value().now.size(), 1U);
  EXPECT_NE(changed.value().now[0].digest, before.digest);
  EXPECT_EQ(at(before.path).digest, changed.value().now[0].digest);
  EXPECT_EQ(at(before.path).content->find("name")->text, "Under-13 Kites");
  const auto& squads = changed.value().lists->squads;
  EXPECT_TRUE(std::any_of(squads.begin(), squads.end(), [](const auto& one) { return one.name == "Under-13 Kites"; }));
  EXPECT_EQ(beside(), 2U);
}

TEST_F(ClubDocuments, OfTwoWhoChangeOneTheSecondIsTold) {
  const ClubDocument before = at("coaches.toml");
  ASSERT_TRUE(change_club(files_, {{before.path, text_of(before.path) + "\n# the first\n", before.digest}}));
  const auto second = change_club(files_, {{before.path, text_of(before.path) + "\n# the second\n", before.digest},
                                           {"club.toml", text_of("club.toml"), at("club.toml").digest}});
  ASSERT_TRUE(second);
  ASSERT_EQ(second.value().meanwhile.size(), 1U);
  EXPECT_EQ(second.value().meanwhile[0].path, "coaches.toml");
  EXPECT_EQ(second.value().meanwhile[0].digest, at("coaches.toml").digest);
  EXPECT_NE(text_of("coaches.toml").find("# the first"), std::string::npos);
  EXPECT_EQ(text_of("coaches.toml").find("# the second"), std::string::npos);
  const auto anew = change_club(files_, {{"coaches.toml", text_of("coaches.toml"), ""}});
  EXPECT_EQ(anew.value().meanwhile.size(), 1U) << "new, but there is one";
}

TEST_F(ClubDocuments, AChangeWithAFaultChangesNothing) {
  const ClubDocument squad = at("squads/u13-kestrels.toml");
  const ClubDocument club = at("club.toml");
  Node wrong = *squad.content;
  wrong.set("expected_turnout", Node::make_integer(400));
  const auto changed = change_club(files_, {{club.path, text_of(club.path) + "\n# more\n", club.digest},
                                            {squad.path, to_toml(wrong), squad.digest}});
  ASSERT_FALSE(changed);
  EXPECT_EQ(changed.faults().front().place.file, squad.path) << "as the lead knows it";
  EXPECT_EQ(at(club.path).digest, club.digest);
  EXPECT_EQ(at(squad.path).digest, squad.digest);
  EXPECT_EQ(beside(), 2U);
}

TEST_F(ClubDocuments, AStripThatASquadUsesDoesNotGo) {
  const ClubDocument strip = at("strips/north-end.toml");
  EXPECT_FALSE(change_club(files_, {{strip.path, {}, strip.digest}}));
  EXPECT_EQ(at(strip.path).digest, strip.digest);
}

TEST_F(ClubDocuments, ADrillOfTheClubsOwnIsReadAlsoWhereNoSquadHasIt) {
  std::string own = read::read_file(files_.catalogue + "/drills/squat.toml").value();
  own.replace(own.find("\"squat\""), 7, "\"squat-own\"");
  std::string wrong = own;
  wrong.replace(wrong.find("\"squat-own\""), 11, "\"Squat Own\"");
  const auto unsound = change_club(files_, {{"drills/squat-own.toml", wrong, ""}});
  ASSERT_FALSE(unsound);
  EXPECT_EQ(unsound.faults().front().place.file, "drills/squat-own.toml");
  ASSERT_TRUE(change_club(files_, {{"drills/squat-own.toml", own, ""}}));
  const auto drills = [&] { return catalogue_of(files_).value().find("catalogue")->find("drills")->items.size(); };
  const std::size_t shipped = drills();
  const ClubDocument squad = at("squads/u13-kestrels.toml");
  Node named = *squad.content;
  named.set("catalogue", Node::make_text(".."));
  const auto changed = change_club(files_, {{squad.path, to_toml(named), squad.digest}});
  ASSERT_TRUE(changed) << to_line(changed.faults().front());
  EXPECT_EQ(drills(), shipped + 1);
  // All of it back: the folder of drills is empty then.
  const auto undone = change_club(files_, {{squad.path, to_toml(*squad.content), changed.value().now[0].digest},
                                           {"drills/squat-own.toml", {}, at("drills/squat-own.toml").digest}});
  ASSERT_TRUE(undone) << to_line(undone.faults().front());
  EXPECT_EQ(drills(), shipped);
}

TEST_F(ClubDocuments, NothingOutsideTheClubIsWritten) {
  for (const char* path : {"../club.toml", "squads/../../x.toml", "/etc/x.toml", "squads/x/y.toml", "squads/X.toml",
                           "club.toml.bak", "notes.txt", "season/hours.csv", "emergency.csv", "squads/.toml",
                           "squads/-a.toml", "", "squads/", "roster.txt", "restrictions-u16.toml"}) {
    EXPECT_FALSE(is_club_path(path)) << path;
    EXPECT_FALSE(change_club(files_, {{path, "", ""}})) << path;
  }
  for (const char* path :
       {"club.toml", "squads/u13-kestrels.toml", "drills/wall-push.toml", "roster.csv", "roster-u16.csv"}) {
    EXPECT_TRUE(is_club_path(path)) << path;
  }
  EXPECT_FALSE(change_club(files_, {}));
}

TEST_F(ClubDocuments, AClubIsMadeWhereThereWasNone) {
  PlanningFiles anew = files_;
  anew.club = (folder_ / "new-club").string();
  EXPECT_TRUE(club_documents(anew.club).value().empty());
  const DocumentChange club = {"club.toml", R"(name = "Thimbleby Rovers"
[season]
from = 2026-08-31
to = 2027-06-27
[block]
first_monday = 2026-11-23
weeks = 6
[[strip]]
id = "green"
file = "strips/green.toml"
)",
                               ""};
  const DocumentChange strip = {"strips/green.toml", R"(name = "Green"
lane_length_metres = 15
cone_spacing_metres = 5
lanes = 2
area_metres = { width = 10, length = 15 }
)",
                                ""};
  const DocumentChange squad = {"squads/u12.toml", R"(club = "Thimbleby Rovers"
name = "Under-12"
roster = "../roster.csv"
routine = "early-teens"
strip = "../strips/green.toml"
[[week]]
weekday = "tuesday"
start = 18:00:00
minutes = 20
)",
                                ""};
  const DocumentChange roster = {"roster.csv", "Id;Name;Age\nT01;Ada;12\nT02;Bo;12\nT03;Cy;12\n", ""};
  EXPECT_FALSE(change_club(anew, {club, strip})) << "a club has a squad";
  EXPECT_FALSE(std::filesystem::exists(anew.club));
  const auto made = change_club(anew, {club, strip, squad, roster});
  ASSERT_TRUE(made) << to_line(made.faults().front());
  EXPECT_EQ(made.value().lists->club, "Thimbleby Rovers");
  EXPECT_EQ(made.value().lists->players.size(), 3U);
  EXPECT_EQ(club_documents(anew.club).value().size(), 4U);
}

// Four at once, each adding its own line to one document some times, reading anew whenever it is told that it came
// second: no line is lost.
TEST_F(ClubDocuments, NoChangeOfSeveralAtOnceIsLost) {
  constexpr int kWriters = 4;
  constexpr int kLines = 5;
  std::vector<std::thread> writers;
  for (int w = 0; w < kWriters; ++w) {
    writers.emplace_back([this, w] {
      for (int line = 0; line < kLines;) {
        const std::string digest = at("coaches.toml").digest;
        const std::string before = text_of("coaches.toml");
        if (at("coaches.toml").digest != digest) continue;  // changed while it was read
        const std::string mark = "# line " + std::to_string(w) + "." + std::to_string(line) + "\n";
        const auto changed = change_club(files_, {{"coaches.toml", before + mark, digest}});
        if (changed && changed.value().meanwhile.empty() && text_of("coaches.toml").find(mark) != std::string::npos)
          ++line;
      }
    });
  }
  for (std::thread& writer : writers) writer.join();
  const std::string text = text_of("coaches.toml");
  for (int w = 0; w < kWriters; ++w) {
    for (int line = 0; line < kLines; ++line) {
      EXPECT_NE(text.find("# line " + std::to_string(w) + "." + std::to_string(line) + "\n"), std::string::npos)
          << w << line;
    }
  }
}

}  // namespace
}  // namespace lanework::planning
