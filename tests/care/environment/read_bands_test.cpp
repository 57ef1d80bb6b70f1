// The shipped tables of heat, cold and air, and every mistake such a table can have.
#include "core/care/environment/read_bands.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

TEST(ReadBands, TheShippedTablesAreWhole) {
  const auto read = read_environment_tables(shipped_documents());
  std::string lines;
  if (!read)
    for (const Fault& fault : read.faults()) lines += to_line(fault) + "\n";
  EXPECT_EQ(lines, "");
}

std::vector<std::string> known_sources() {
  std::ifstream in(LANEWORK_SOURCE_DIR "/catalogue/sources.toml");
  std::stringstream text;
  text << in.rdbuf();
  const Document sources = parse_toml("sources.toml", text.str()).value();
  std::vector<std::string> known;
  for (const Node& row : sources.root.find("source")->items) known.push_back(row.find("key")->text);
  return known;
}

TEST(ReadBands, EverySourceIsKnown) {
  const std::vector<std::string> known = known_sources();
  const auto expect_known = [&](const std::string& key) {
    EXPECT_NE(std::find(known.begin(), known.end(), key), known.end()) << key;
  };
  for (const BandTables* tables : {&shipped_tables().heat, &shipped_tables().cold, &shipped_tables().air})
    for (const BandTable& table : tables->tables) expect_known(table.source);
  expect_known(shipped_tables().fine_particles.source);
  expect_known("walsh-2013");
}

// Where no region is set, the strictest of the tables that apply stands.
TEST(ReadBands, TheDefaultsCallOffFirst) {
  const BandTable& children = shipped_tables().heat.of_default_region();
  for (const BandTable& table : shipped_tables().heat.tables) {
    for (double fahrenheit = 60; fahrenheit < 100; fahrenheit += 0.1) {
      const auto called_off = [&](const BandTable& of) {
        const double value = of.unit == BandUnit::kCelsius ? to_celsius({fahrenheit}).degrees : fahrenheit;
        return of.bands[band_of(of, value)].usual.no_session.has_value();
      };
      if (called_off(table)) {
        EXPECT_TRUE(called_off(children)) << table.key << " at " << fahrenheit;
      }
    }
  }
}

TEST(ReadBands, LimitsInWords) {
  const BandTable& table = shipped_tables().heat.of_default_region();
  EXPECT_EQ(table.bands[0].limits, "below 24.0 °C");
  EXPECT_EQ(table.bands[1].limits, "from 24.0 °C, below 26.0 °C");
  EXPECT_EQ(table.bands[2].limits, "from 26.0 °C, up to 29.0 °C");
  EXPECT_EQ(table.bands[3].limits, "above 29.0 °C");
  const BandTable& cold = shipped_tables().cold.of_default_region();
  EXPECT_EQ(cold.bands[0].limits, "down to 30.0 °F");
  EXPECT_EQ(cold.bands[1].limits, "below 30.0 °F, above 20.0 °F");
  EXPECT_EQ(cold.bands[3].limits, "from 10.0 °F down");
  EXPECT_EQ(shipped_tables().air.of_default_region().bands[3].limits, "above 150");
  EXPECT_EQ(heat_table("united-states-category-1").bands[4].limits, "from 86.2 °F up");
}

// A small file of heat bands with one thing exchanged; its faults as lines.
constexpr const char* kSmall =
    "default_region = \"a\"\n[[table]]\nkey = \"t\"\nname = \"T\"\nsource = \"s\"\nstanding = \"read\"\nunit = "
    "\"celsius\"\n"
    "regions = [\"a\"]\n[[table.band]]\nbelow = 24.0\nwords = \"w\"\n[[table.band]]\nup_to = 29.0\nwords = \"w\"\n"
    "breaks_an_hour = 3\nbreak_minutes = 4\n[table.band.unused_to_heat]\nno_session = true\n[[table.band]]\nwords = "
    "\"w\"\n"
    "no_session = true\n";

std::string faults_with(const std::string& from, const std::string& to) {
  std::string text = kSmall;
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  if (at != std::string::npos) text.replace(at, from.size(), to);
  EnvironmentDocuments documents = shipped_documents();
  documents.heat = parse_toml("heat_bands.toml", text).value();
  const auto read = read_environment_tables(documents);
  std::string lines;
  if (!read)
    for (const Fault& fault : read.faults()) lines += to_line(fault) + "\n";
  return lines;
}

testing::AssertionResult is_one_line(const std::string& lines, const std::string& part) {
  if (std::count(lines.begin(), lines.end(), '\n') == 1 && lines.find(part) != std::string::npos)
    return testing::AssertionSuccess();
  return testing::AssertionFailure() << lines;
}

TEST(ReadBands, EveryMistakeIsOneLine) {
  EXPECT_EQ(faults_with("\"T\"", "\"T\""), "");
  EXPECT_TRUE(
      is_one_line(faults_with("default_region = \"a\"", "default_region = \"b\""), "default_region: found 'b'"));
  EXPECT_TRUE(
      is_one_line(faults_with("celsius", "kelvin"), "unit: found 'kelvin', expected one of celsius, fahrenheit"));
  EXPECT_TRUE(is_one_line(faults_with("\"read\"", "\"sure\""), "standing: found 'sure'"));
  EXPECT_TRUE(is_one_line(faults_with("regions = [\"a\"]", "regions = []\n#"), "regions: found nothing"));
  EXPECT_TRUE(is_one_line(faults_with("below = 24.0", "below = 24.0\nup_to = 24.0"), "below: found both"));
  EXPECT_TRUE(is_one_line(faults_with("below = 24.0\n", ""), "up_to: found nothing, expected up_to or below"));
  EXPECT_TRUE(is_one_line(faults_with("up_to = 29.0", "up_to = 23.0"), "up_to: found no further than the band before"));
  EXPECT_TRUE(is_one_line(faults_with("break_minutes = 4\n", ""), "break_minutes: found nothing"));
  EXPECT_TRUE(is_one_line(faults_with("break_minutes = 4", "break_minutes = 20"), "breaks that fill the hour"));
  EXPECT_TRUE(
      is_one_line(faults_with("words = \"w\"\nno_session = true", "words = \"w\"\nup_to = 40.0\nno_session = true"),
                  "an end of the last band"));
  EXPECT_TRUE(is_one_line(
      faults_with("words = \"w\"\nno_session = true", "words = \"w\"\nno_session = true\neffort = \"easy\""),
      "more asked of no session"));
  EXPECT_TRUE(is_one_line(faults_with("[table.band.unused_to_heat]\nno_session = true",
                                      "[table.band.unused_to_heat]\nbreaks_an_hour = 3\nbreak_minutes = 3"),
                          "unused_to_heat: found less than of the others"));
  EXPECT_TRUE(
      is_one_line(faults_with("below = 24.0", "below = 24.0\neffort = \"lower\""), "asks less than the one before"));
  EXPECT_TRUE(is_one_line(faults_with("words = \"w\"", "words = \"w\"\nmore = 1"), "found 'more'"));
}

}  // namespace
}  // namespace lanework::care::environment::test
