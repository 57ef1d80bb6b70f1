#include "core/care/screens/screen_tests.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "tests/care/shipped_screens.h"

namespace lanework::care::screens {
namespace {

using test::shipped_tests;

std::string faults_with(const std::string& what, const std::string& instead) {
  std::ifstream in(catalogue::test::shipped_folder() / "care" / "screens.toml");
  std::stringstream stream;
  stream << in.rdbuf();
  std::string text = stream.str();
  const std::size_t at = text.find(what);
  if (at == std::string::npos) return "not there: " + what;
  text.replace(at, what.size(), instead);
  const auto tests = read_screen_tests(parse_toml("screens.toml", text).value());
  return tests ? "" : catalogue::test::all_lines(tests.faults());
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(ScreenTests, EverySourceIsKnownAndEveryNormSaysWhomItIsOf) {
  const auto known = [](const std::vector<std::string>& keys) {
    EXPECT_FALSE(keys.empty());
    for (const std::string& key : keys) EXPECT_NE(catalogue::test::shipped_catalogue().source(key), nullptr) << key;
  };
  known(shipped_tests().symmetry_sources);
  for (const ScreenTest& test : shipped_tests().tests) {
    known(test.sources);
    for (const Norm& norm : test.norms) {
      known(norm.sources);
      EXPECT_FALSE(norm.of.empty()) << test.key;
      const bool of_whom =
          has(norm.of, "adult") || has(norm.of, "men") || has(norm.of, "11 to 19") || has(norm.of, "not noted");
      EXPECT_TRUE(of_whom) << test.key << ": " << norm.of;
    }
    if (test.change) known(test.change->sources);
  }
}

// Where nobody has published what measuring alone makes, there is no figure of ours.
TEST(ScreenTests, OnlyOneHasADetectableChange) {
  for (const ScreenTest& test : shipped_tests().tests)
    EXPECT_EQ(test.change.has_value(), test.key == "frontal-plane-angle") << test.key;
}

TEST(ScreenTests, EveryMistakeSaysWhere) {
  EXPECT_TRUE(has(faults_with("prompt_below_percent = 90", "prompt_below_percent = 9"),
                  "symmetry.prompt_below_percent: found 9"));
  EXPECT_TRUE(
      has(faults_with("key = \"timed-hop\"", "key = \"plank-hold\""), "found 'plank-hold', expected each test once"));
  EXPECT_TRUE(has(faults_with("wanted = \"less\"", "wanted = \"fewer\""), "wanted: found 'fewer'"));
  EXPECT_TRUE(has(faults_with("most = 45", "most = 0"), "expected more"));
  EXPECT_TRUE(has(faults_with("value = 8.93", "value = 0"), "change.value: found 0"));
  EXPECT_TRUE(has(faults_with("of = \"15 men\"", "off = \"15 men\""), "off: found"));
  EXPECT_TRUE(has(faults_with("[symmetry]", "[symetry]"), "symmetry: found nothing"));
}

}  // namespace
}  // namespace lanework::care::screens
