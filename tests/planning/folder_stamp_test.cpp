#include "app/planning/folder_stamp.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <fstream>

namespace lanework::planning {
namespace {

namespace fs = std::filesystem;

class FolderStamp : public testing::Test {
 protected:
  fs::path folder = fs::temp_directory_path() / ("lanework-stamp-" + std::to_string(::getpid()));
  void SetUp() override {
    fs::create_directories(folder / "squads");
    write("club.toml", "one");
    write("squads/u13.toml", "two");
  }
  void TearDown() override { fs::remove_all(folder); }
  void write(const std::string& name, const std::string& text) const { std::ofstream(folder / name) << text; }
  [[nodiscard]] std::string stamp() const { return folder_stamp({folder.string()}); }
};

TEST_F(FolderStamp, IsTheSameAsLongAsNothingChanges) {
  EXPECT_EQ(stamp(), stamp());
  EXPECT_NE(stamp(), "");
}

TEST_F(FolderStamp, IsAnotherWithEveryChange) {
  std::string before = stamp();
  const auto is_another = [&] {
    const std::string now = stamp();
    const bool other = now != before;
    before = now;
    return other;
  };
  write("squads/u14.toml", "");
  EXPECT_TRUE(is_another()) << "a file more";
  write("squads/u13.toml", "longer than it was");
  EXPECT_TRUE(is_another()) << "longer";
  fs::last_write_time(folder / "club.toml", fs::file_time_type::clock::now() + std::chrono::seconds(5));
  EXPECT_TRUE(is_another()) << "written again";
  fs::rename(folder / "squads/u14.toml", folder / "squads/u15.toml");
  EXPECT_TRUE(is_another()) << "named otherwise";
  fs::remove(folder / "squads/u15.toml");
  EXPECT_TRUE(is_another()) << "a file less";
  EXPECT_FALSE(is_another());
}

// As the folder is changed from the desk: another one is put in its place.
TEST_F(FolderStamp, IsAnotherWhereAFolderTookItsPlace) {
  const std::string before = stamp();
  const fs::path other = folder.string() + "-other";
  fs::copy(folder, other, fs::copy_options::recursive);
  for (const char* name : {"club.toml", "squads/u13.toml"})
    fs::last_write_time(other / name, fs::last_write_time(folder / name));
  fs::remove_all(folder);
  fs::rename(other, folder);
  EXPECT_NE(stamp(), before);
}

TEST(FolderStampOfNothing, IsEmpty) { EXPECT_EQ(folder_stamp({"/no/such/folder"}), ""); }

}  // namespace
}  // namespace lanework::planning
