// The turn of a season as changes for the desk: done as they are they make a sound club a year on, and taken back they
// leave every document as it was.
#include "app/planning/season_turn.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <map>
#include <set>

#include "app/planning/club_documents.h"
#include "app/read/club_folder.h"
#include "tests/planning/planning_of_demo.h"

namespace lanework::planning {
namespace {

namespace fs = std::filesystem;

class SeasonTurned : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = fs::temp_directory_path() / ("lanework-turn-" + std::to_string(::getpid()));
    fs::remove_all(folder_);
    fs::create_directories(folder_);
    fs::copy(files_.club, folder_ / "club", fs::copy_options::recursive);
    files_.club = (folder_ / "club").string();
  }
  void TearDown() override { fs::remove_all(folder_); }

  [[nodiscard]] std::map<std::string, std::string> digests() const {
    std::map<std::string, std::string> out;
    const auto documents = club_documents(files_.club);
    for (const ClubDocument& one : documents.value()) out[one.path] = one.digest;
    return out;
  }

  fs::path folder_;
  PlanningFiles files_ = test::demo_files();
};

DocumentChange change_of(const Node& row) {
  DocumentChange out;
  out.path = row.find("path")->text;
  if (const Node* text = row.find("text")) out.text = text->text;
  if (const Node* digest = row.find("instead_of")) out.instead_of = digest->text;
  return out;
}

TEST_F(SeasonTurned, EverybodyIsToldOfOnceAndHasASquadOrNone) {
  const auto turn = season_turn(files_);
  ASSERT_TRUE(turn);
  const read::ClubFolder folder = read::read_club_folder(files_.club, files_.catalogue);
  std::set<std::string> everybody;
  for (const club::ClubSquad& squad : folder.club.squads) {
    for (const people::Player& player : squad.players) everybody.insert(player.id);
  }
  std::set<std::string> squads;
  for (const Node& squad : turn.value().find("squads")->items) squads.insert(squad.find("squad")->text);
  std::set<std::string> told;
  std::size_t without = 0;
  for (const Node& player : turn.value().find("players")->items) {
    EXPECT_TRUE(told.insert(player.find("player")->text).second);
    for (const Node& to : player.find("to")->items) EXPECT_EQ(squads.count(to.text), 1U) << to.text;
    without += player.find("to")->items.empty() ? 1 : 0;
  }
  for (const std::string& player : everybody) EXPECT_EQ(told.count(player), 1U) << player;
  EXPECT_GT(without, 0U) << "the oldest go";
  EXPECT_LT(without, told.size() / 4);
  EXPECT_EQ(turn.value().find("season")->find("from")->text.substr(0, 4), "2027");
}

TEST_F(SeasonTurned, DoneAndTakenBack) {
  const auto before = digests();
  const auto turn = season_turn(files_);
  ASSERT_TRUE(turn);
  std::vector<DocumentChange> changes;
  for (const Node& row : turn.value().find("changes")->items) {
    changes.push_back(change_of(row));
  }
  ASSERT_LE(changes.size(), kMostChanges);
  const auto done = change_club(files_, changes);
  ASSERT_TRUE(done) << to_line(done.faults().front());
  EXPECT_TRUE(done.value().meanwhile.empty());
  const read::ClubFolder next = read::read_club_folder(files_.club, files_.catalogue);
  EXPECT_TRUE(next.faults.empty());
  std::map<std::string, std::set<std::string>> there;
  for (const club::ClubSquad& squad : next.club.squads) {
    for (const people::Player& player : squad.players) there[player.id].insert(squad.id);
  }
  for (const Node& player : turn.value().find("players")->items) {
    std::set<std::string> to;
    for (const Node& squad : player.find("to")->items) to.insert(squad.text);
    EXPECT_EQ(there[player.find("player")->text], to) << player.find("player")->text;
  }
  const auto now = digests();
  std::vector<DocumentChange> back;
  for (const Node& row : turn.value().find("back")->items) {
    back.push_back(change_of(row));
    const auto found = now.find(back.back().path);
    if (found != now.end()) back.back().instead_of = found->second;
  }
  const auto taken_back = change_club(files_, back);
  ASSERT_TRUE(taken_back) << to_line(taken_back.faults().front());
  EXPECT_EQ(digests(), before);
}

}  // namespace
}  // namespace lanework::planning
