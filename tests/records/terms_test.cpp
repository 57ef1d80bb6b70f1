// The shipped terms, and every mistake a file of terms can have.
#include "core/records/terms.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "app/read/files.h"
#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

std::vector<std::string> keys_of(Field field, const std::string& group = {}) {
  std::vector<std::string> keys;
  for (const Term& term : shipped_terms().of(field)) {
    if (group.empty() || term.group == group) keys.push_back(term.key);
  }
  return keys;
}

using Keys = std::vector<std::string>;

// Bahr R et al. 2020, doi 10.1136/bjsports-2019-101969: table 2, how contact is classed.
TEST(Terms, ContactAsTheConsensusHasIt) {
  EXPECT_EQ(keys_of(Field::kContact),
            (Keys{"none", "indirect-athlete", "indirect-object", "direct-athlete", "direct-object"}));
}

// The same, table 4: areas by region. The wrist's row is from memory.
TEST(Terms, BodyAreasAsTheConsensusHasThem) {
  EXPECT_EQ(keys_of(Field::kRegion, "head-and-neck"), (Keys{"head", "neck"}));
  EXPECT_EQ(keys_of(Field::kRegion, "upper-limb"),
            (Keys{"shoulder", "upper-arm", "elbow", "forearm", "wrist", "hand"}));
  EXPECT_EQ(keys_of(Field::kRegion, "trunk"), (Keys{"chest", "thoracic-spine", "lumbosacral", "abdomen"}));
  EXPECT_EQ(keys_of(Field::kRegion, "lower-limb"),
            (Keys{"hip-and-groin", "thigh", "knee", "lower-leg", "ankle", "foot"}));
  EXPECT_EQ(keys_of(Field::kRegion, "several"), (Keys{"several-regions"}));
}

// The same, table 5: pathology by tissue. What is not specific is from memory.
TEST(Terms, TissuesAsTheConsensusHasThem) {
  EXPECT_EQ(keys_of(Field::kTissue, "muscle-tendon"),
            (Keys{"muscle-injury", "muscle-contusion", "compartment-syndrome", "tendinopathy", "tendon-rupture"}));
  EXPECT_EQ(keys_of(Field::kTissue, "bone"),
            (Keys{"fracture", "bone-stress-injury", "bone-contusion", "avascular-necrosis", "physis-injury"}));
  EXPECT_EQ(keys_of(Field::kTissue, "cartilage-synovium-bursa"),
            (Keys{"cartilage-injury", "arthritis", "synovitis-or-capsulitis", "bursitis"}));
  EXPECT_EQ(keys_of(Field::kTissue, "ligament-capsule"), (Keys{"joint-sprain", "dislocation", "chronic-instability"}));
  EXPECT_EQ(keys_of(Field::kTissue, "skin"), (Keys{"contusion", "laceration", "abrasion"}));
}

TEST(Terms, EverySourceStandsInTheCatalogue) {
  const auto sources = read::read_toml_file(LANEWORK_SOURCE_DIR "/catalogue/sources.toml");
  ASSERT_TRUE(sources.ok());
  std::vector<std::string> known;
  for (const Node& row : sources.value().root.find("source")->items) known.push_back(row.find("key")->text);
  for (std::size_t i = 0; i < kFields; ++i) {
    for (const Term& term : shipped_terms().of(static_cast<Field>(i))) {
      for (const std::string& source : term.sources)
        EXPECT_NE(std::find(known.begin(), known.end(), source), known.end()) << term.key << ": " << source;
    }
  }
}

TEST(Terms, AreMeantByTheirKeyTheirWordsAndSynonyms) {
  const Terms& terms = shipped_terms();
  EXPECT_EQ(terms.meant_by(Field::kRegion, "hip and groin"), terms.with_key(Field::kRegion, "hip-and-groin"));
  EXPECT_EQ(terms.meant_by(Field::kRegion, "hamstring"), terms.with_key(Field::kRegion, "thigh"));
  EXPECT_EQ(terms.meant_by(Field::kTissue, "concussion"),
            terms.with_key(Field::kTissue, "brain-or-spinal-cord-injury"));
  EXPECT_EQ(terms.meant_by(Field::kRecurrence, "re injury"), static_cast<std::uint8_t>(Recurrence::kReInjury));
  // Some write it of a first injury, the consensus of one at another place.
  EXPECT_FALSE(terms.meant_by(Field::kRecurrence, "new"));
  EXPECT_FALSE(terms.meant_by(Field::kContact, "contact"));
  EXPECT_TRUE(terms.not_known("n a"));
  EXPECT_EQ(terms.group(static_cast<Region>(*terms.with_key(Field::kRegion, "knee"))), RegionGroup::kLowerLimb);
}

std::vector<std::string> faults_with(const std::string& from, const std::string& to) {
  std::string text = read::read_file(LANEWORK_SOURCE_DIR "/catalogue/record_terms.toml").value();
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  text.replace(at, from.size(), to);
  const auto terms = read_terms(parse_toml("terms.toml", text).value());
  std::vector<std::string> lines;
  for (const Fault& fault : terms ? Faults{} : terms.faults()) lines.push_back(to_line(fault));
  return lines;
}

bool among_lines(const std::vector<std::string>& lines, const std::string& part) {
  return std::any_of(lines.begin(), lines.end(),
                     [&](const std::string& line) { return line.find(part) != std::string::npos; });
}

TEST(Terms, EveryMistakeIsOneLine) {
  EXPECT_TRUE(among_lines(faults_with("key = \"training\"", "key = \"drill\""),
                          "setting.1.key: found 'drill', expected 'training' in this place"));
  EXPECT_TRUE(among_lines(faults_with("\"skull\"", "\"throat\""), "region.2.read_as: found 'throat'"));
  EXPECT_TRUE(among_lines(faults_with("\"skull\"", "\"unknown\""), "region.1.read_as: found 'unknown'"));
  EXPECT_TRUE(among_lines(faults_with("group = \"trunk\"", "group = \"middle\""), "region.9.group: found 'middle'"));
  EXPECT_TRUE(
      among_lines(faults_with("sources = [\"bahr-2020\"]", "sources = []"), "setting.1.sources: found nothing"));
  EXPECT_TRUE(among_lines(faults_with("[[onset]]", "[[mode]]"), "onset: found 2 terms, expected 3 terms"));
  EXPECT_TRUE(among_lines(faults_with("shown = \"training\"", "shows = \"training\""), "setting.1.shows"));
}

}  // namespace
}  // namespace lanework::records::test
