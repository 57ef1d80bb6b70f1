// Every drill that ships has a figure that reads without fault and stands on what it says it stands on.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "core/figure/motion.h"
#include "tests/figure/figure_text.h"

namespace lanework::figure {
namespace {

std::vector<std::filesystem::path> drill_files() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(LANEWORK_SOURCE_DIR "/catalogue/drills")) {
    if (entry.path().extension() == ".toml") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string text_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

TEST(CatalogueFigures, StandOnWhatTheySay) {
  const auto files = drill_files();
  ASSERT_GE(files.size(), 40u);
  for (const auto& file : files) {
    SCOPED_TRACE(file.filename().string());
    const Figure figure = sound_figure(text_of(file));
    EXPECT_FALSE(figure.empty());
    for (const Pose& pose : figure.poses) {
      for (const std::string& remark : remarks_on(pose)) ADD_FAILURE() << pose.label << ": " << remark;
    }
  }
}

TEST(CatalogueFigures, MoveWithoutLeavingTheGround) {
  for (const auto& file : drill_files()) {
    SCOPED_TRACE(file.filename().string());
    const Figure figure = sound_figure(text_of(file));
    const Motion motion(figure, figure.view);
    if (motion.empty()) continue;
    for (int i = 0; i <= 100; ++i) {
      const double low = lowest(motion.at(i / 100.0).body);
      EXPECT_GT(low, -0.12) << i;
      EXPECT_LT(low, 0.8) << i;
    }
  }
}

}  // namespace
}  // namespace lanework::figure
