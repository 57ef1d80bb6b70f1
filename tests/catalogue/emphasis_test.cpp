// A club's own weights for a season, put into the families: bounded, told apart from the catalogue's, all or nothing.
#include "core/catalogue/emphasis.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/catalogue/words.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

Document emphasis(const std::string& text) { return parse_toml("emphasis.toml", text).value(); }

constexpr const char* kSeason = "from = 2025-08-25\nto = 2026-05-31\n";

std::string faults_of(const std::string& text) {
  Document families = shipped_documents().families;
  const std::string before = to_json(families.root);
  const std::string lines = all_lines(put_emphasis(emphasis(text), families));
  EXPECT_TRUE(lines.empty() || to_json(families.root) == before) << "changed in spite of a fault";
  return lines;
}

Result<Catalogue> with(const Document& families) {
  CatalogueDocuments documents = shipped_documents();
  documents.families = families;
  return read_catalogue(documents);
}

TEST(Emphasis, ThePlannersWeightsAreTheClubs) {
  Document families = shipped_documents().families;
  ASSERT_TRUE(
      put_emphasis(emphasis(std::string(kSeason) + "[weights]\nbalance = 6\nhamstring = 6\n"), families).empty());
  const Result<Catalogue> catalogue = with(families);
  ASSERT_TRUE(catalogue.ok()) << all_lines(catalogue.faults());
  const FamilyRow& balance = catalogue.value().family(Family::kBalance);
  EXPECT_EQ(balance.weight, 6);
  ASSERT_TRUE(balance.emphasis.has_value());
  EXPECT_EQ(balance.emphasis->catalogue_weight, 5);
  EXPECT_EQ(to_iso(balance.emphasis->from), "2025-08-25");
  EXPECT_EQ(to_iso(balance.emphasis->to), "2026-05-31");
  EXPECT_EQ(catalogue.value().family(Family::kHamstring).weight, 6);
  EXPECT_FALSE(catalogue.value().family(Family::kTrunk).emphasis.has_value());
}

TEST(Emphasis, TheCataloguesOwnWeightChangesNothing) {
  Document families = shipped_documents().families;
  ASSERT_TRUE(put_emphasis(emphasis(std::string(kSeason) + "[weights]\nbalance = 5\n"), families).empty());
  EXPECT_EQ(to_json(families.root), to_json(shipped_documents().families.root));
}

TEST(Emphasis, PutTwiceItIsStillOneStep) {
  Document families = shipped_documents().families;
  const std::string season = kSeason;
  ASSERT_TRUE(put_emphasis(emphasis(season + "[weights]\nbalance = 6\n"), families).empty());
  EXPECT_FALSE(put_emphasis(emphasis(season + "[weights]\nbalance = 7\n"), families).empty());
}

TEST(Emphasis, EveryMistakeIsOneLine) {
  const std::string season = kSeason;
  EXPECT_EQ(faults_of(season + "[weights]\nbalance = 7\n"),
            "emphasis.toml:4:1: weights.balance: found 7, expected 4 to 6, one step at most from the catalogue's 5\n");
  EXPECT_NE(faults_of(season + "[weights]\njump-and-land = 9\n").find("found 9"), std::string::npos);
  EXPECT_NE(faults_of(season + "[weights]\nbalence = 6\n").find("found 'balence'"), std::string::npos);
  EXPECT_NE(faults_of(season + "[weights]\nbalance = 5.5\n").find("weights.balance: found 5.5"), std::string::npos);
  EXPECT_NE(faults_of(season).find("weights: found nothing"), std::string::npos);
  EXPECT_NE(faults_of("[weights]\nbalance = 6\n").find("from: found nothing"), std::string::npos);
  EXPECT_NE(faults_of("from = 2026-05-31\nto = 2025-08-25\n[weights]\nbalance = 6\n").find("to: found 2025-08-25"),
            std::string::npos);
  EXPECT_NE(faults_of(season + "by = \"x\"\n[weights]\nbalance = 6\n").find("by: found"), std::string::npos);
}

TEST(Emphasis, AFamiliesRowThatSaysMoreThanOneStepIsAFault) {
  Document families = shipped_documents().families;
  ASSERT_TRUE(put_emphasis(emphasis(std::string(kSeason) + "[weights]\nbalance = 6\n"), families).empty());
  for (auto& [key, list] : families.root.entries) {
    for (Node& row : list.items) {
      if (row.find("emphasis") != nullptr) row.set("weight", Node::make_integer(8));
    }
  }
  const Result<Catalogue> catalogue = with(families);
  ASSERT_FALSE(catalogue.ok());
  EXPECT_NE(all_lines(catalogue.faults()).find("emphasis.catalogue_weight: found 5"), std::string::npos)
      << all_lines(catalogue.faults());
}

TEST(EmphasisProperty, TakenExactlyWithinOneStep) {
  EXPECT_TRUE(rc::check([] {
    const auto family = static_cast<Family>(*rc::gen::inRange(0, static_cast<int>(family_words().size())));
    const int weight = *rc::gen::inRange(-2, 12);
    const int own = shipped_catalogue().family(family).weight;
    Document families = shipped_documents().families;
    const std::string key(word(family_words(), family));
    const Faults faults =
        put_emphasis(emphasis(kSeason + ("[weights]\n" + key + " = " + std::to_string(weight) + "\n")), families);
    const bool fits = weight >= kLeastWeight && weight <= kMostWeight && std::abs(weight - own) <= kEmphasisStep;
    RC_ASSERT(faults.empty() == fits);
    RC_ASSERT(faults.size() <= 1);
    const Result<Catalogue> catalogue = with(families);
    RC_ASSERT(catalogue.ok());
    RC_ASSERT(catalogue.value().family(family).weight == (fits ? weight : own));
  }));
}

}  // namespace
}  // namespace lanework::catalogue::test
