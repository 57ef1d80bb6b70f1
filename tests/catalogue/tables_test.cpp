// The four tables and the catalogue as a whole: one mistake, one fault, at its field and in its file.
#include <gtest/gtest.h>

#include <functional>

#include "core/catalogue/read_catalogue.h"
#include "tests/catalogue/mutate.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

using Documents = CatalogueDocuments;

struct Mistake {
  const char* name;
  std::function<void(Documents&)> make;
  FaultCode code;
  const char* file;
  const char* field;
};

std::ostream& operator<<(std::ostream& out, const Mistake& mistake) { return out << mistake.name; }

class CatalogueMistake : public testing::TestWithParam<Mistake> {};

TEST_P(CatalogueMistake, IsOneFaultAtItsField) {
  Documents documents = shipped_documents();
  GetParam().make(documents);
  const Result<Catalogue> catalogue = read_catalogue(documents);
  ASSERT_FALSE(catalogue.ok());
  ASSERT_EQ(catalogue.faults().size(), 1U) << all_lines(catalogue.faults());
  const Fault& fault = catalogue.faults().front();
  EXPECT_EQ(fault.place.file, GetParam().file) << to_line(fault);
  EXPECT_EQ(fault.place.field, GetParam().field) << to_line(fault);
  EXPECT_STREQ(fault_row(fault.code).key, fault_row(GetParam().code).key) << to_line(fault);
  EXPECT_GT(fault.place.line, 0) << to_line(fault);
}

Document& drill(Documents& documents, const std::string& id) {
  for (Document& document : documents.drills) {
    if (document.file == id + ".toml") return document;
  }
  throw std::out_of_range(id);
}

void remove_family(Documents& documents, const std::string& family) {
  std::vector<Document> kept;
  for (const Document& document : documents.drills) {
    if (document.root.find("family")->text != family) kept.push_back(document);
  }
  documents.drills = kept;
}

using D = Documents;
constexpr auto kMissing = FaultCode::kMissing;
constexpr auto kRange = FaultCode::kOutOfRange;
constexpr auto kUnknown = FaultCode::kUnknownName;
constexpr auto kTwice = FaultCode::kDuplicate;
constexpr auto kClash = FaultCode::kContradiction;

const char* const kFamiliesFile = "families.toml";
const char* const kGaitsFile = "gaits.toml";
const char* const kLimitsFile = "limits.toml";
const char* const kSourcesFile = "sources.toml";

INSTANTIATE_TEST_SUITE_P(
    Families, CatalogueMistake,
    testing::Values(
        Mistake{"EightFamilies", [](D& d) { remove(d.families, "family.9"); }, kRange, kFamiliesFile, "family"},
        Mistake{"OutOfOrder", [](D& d) { set(d.families, "family.1.key", "trunk"); }, kClash, kFamiliesFile,
                "family.1.key"},
        Mistake{"RankTwice", [](D& d) { set(d.families, "family.2.rank", 1); }, kTwice, kFamiliesFile, "family.2.rank"},
        Mistake{"WeightNine", [](D& d) { set(d.families, "family.2.weight", 9); }, kRange, kFamiliesFile,
                "family.2.weight"},
        Mistake{"NoPhase", [](D& d) { set_list(d.families, "family.2.phases", {}); }, kRange, kFamiliesFile,
                "family.2.phases"},
        Mistake{"ThirdFamilyInTwoPhases",
                [](D& d) {
                  set_list(d.families, "family.9.phases", {"spring", "run"});
                },
                kClash, kFamiliesFile, "family.9.phases"},
        Mistake{"PhasesTurned",
                [](D& d) {
                  set_list(d.families, "family.3.phases", {"build", "loosen"});
                },
                kClash, kFamiliesFile, "family.3.phases"},
        Mistake{"UnknownSource", [](D& d) { set_list(d.families, "family.1.sources", {"nobody-1999"}); }, kUnknown,
                kFamiliesFile, "family.1.sources"},
        Mistake{"WeekWithoutItsSource", [](D& d) { remove(d.families, "family.1.week_sources"); }, kMissing,
                kFamiliesFile, "family.1.week_sources"},
        Mistake{"UnknownSourceOfAWeek", [](D& d) { set_list(d.families, "family.1.week_sources", {"nobody-1999"}); },
                kUnknown, kFamiliesFile, "family.1.week_sources"},
        Mistake{"ShareOfNothing", [](D& d) { set(d.families, "family.4.eccentric_first.other_work_percent", 0); },
                kRange, kFamiliesFile, "family.4.eccentric_first.other_work_percent"},
        Mistake{"UnknownSourceOfAShare",
                [](D& d) { set_list(d.families, "family.4.eccentric_first.sources", {"nobody-1999"}); }, kUnknown,
                kFamiliesFile, "family.4.eccentric_first.sources"},
        Mistake{"EmptyFamily", [](D& d) { remove_family(d, "balance"); }, kMissing, kFamiliesFile, "family.6.key"}),
    testing::PrintToStringParamName());

INSTANTIATE_TEST_SUITE_P(
    GaitsAndSources, CatalogueMistake,
    testing::Values(
        Mistake{"ElevenSpeeds", [](D& d) { remove(d.gaits, "gait.1.speeds.12"); }, kRange, kGaitsFile, "gait.1.speeds"},
        Mistake{"StandingStill", [](D& d) { node_at(d.gaits.root, "gait.1.speeds.3") = Node::make_integer(0); }, kRange,
                kGaitsFile, "gait.1.speeds"},
        Mistake{"SpeedInWords", [](D& d) { set_text_item(d.gaits, "gait.1.speeds.3", "fast"); }, FaultCode::kWrongType,
                kGaitsFile, "gait.1.speeds"},
        Mistake{"GaitTwice", [](D& d) { repeat_item(d.gaits, "gait", 2); }, kTwice, kGaitsFile, "gait.14.key"},
        Mistake{"WideSpread", [](D& d) { set(d.gaits, "gait.1.spread", 1); }, kRange, kGaitsFile, "gait.1.spread"},
        Mistake{"SourceTwice", [](D& d) { set(d.sources, "source.4.key", "bishop-2003"); }, kTwice, kSourcesFile,
                "source.7.key"},
        Mistake{"NoYear", [](D& d) { remove(d.sources, "source.4.year"); }, kMissing, kSourcesFile, "source.4.year"},
        Mistake{"AddressForDoi", [](D& d) { set(d.sources, "source.4.doi", "https://example.org"); }, kClash,
                kSourcesFile, "source.4.doi"}),
    testing::PrintToStringParamName());

INSTANTIATE_TEST_SUITE_P(
    LimitRules, CatalogueMistake,
    testing::Values(
        Mistake{"NoWeights", [](D& d) { remove(d.limits, "contact_weight"); }, kMissing, kLimitsFile, "contact_weight"},
        Mistake{"WeightsFall", [](D& d) { set(d.limits, "contact_weight.low", 3); }, kClash, kLimitsFile,
                "contact_weight.high"},
        Mistake{"AllOfTheCap", [](D& d) { set(d.limits, "warm_up_share_percent", 101); }, kRange, kLimitsFile,
                "warm_up_share_percent"},
        Mistake{"GapInAges", [](D& d) { set(d.limits, "ceilings.2.ages.from", 11); }, kClash, kLimitsFile,
                "ceilings.2.ages"},
        Mistake{"AgesEndEarly", [](D& d) { set(d.limits, "ceilings.5.ages.to", 18); }, kClash, kLimitsFile,
                "ceilings.5.ages"},
        Mistake{"WeekBelowSession", [](D& d) { set(d.limits, "ceilings.1.jump_cap_week", 49); }, kClash, kLimitsFile,
                "ceilings.1.jump_cap_week"},
        Mistake{"OlderMayLess", [](D& d) { set(d.limits, "ceilings.2.eccentric_session", 5); }, kClash, kLimitsFile,
                "ceilings.2.eccentric_session"},
        Mistake{"NegativeCeiling", [](D& d) { set(d.limits, "ceilings.1.eccentric_session", -1); }, kRange, kLimitsFile,
                "ceilings.1.eccentric_session"},
        Mistake{"MatchDaysJump", [](D& d) { set(d.limits, "match.2.days", 2); }, kClash, kLimitsFile, "match.2.days"},
        Mistake{"MoreBeforeAMatch", [](D& d) { set(d.limits, "match.1.contacts_percent", 120); }, kRange, kLimitsFile,
                "match.1.contacts_percent"}),
    testing::PrintToStringParamName());

INSTANTIATE_TEST_SUITE_P(
    References, CatalogueMistake,
    testing::Values(Mistake{"PhaseOfAnotherFamily", [](D& d) { set(drill(d, "front-plank"), "phase", "run"); }, kClash,
                            "front-plank.toml", "phase"},
                    Mistake{"UnknownGaitOut", [](D& d) { set(drill(d, "easy-laps"), "lane.out", "gallop"); }, kUnknown,
                            "easy-laps.toml", "lane.out"},
                    Mistake{"UnknownGaitBack", [](D& d) { set(drill(d, "easy-laps"), "lane.back", "gallop"); },
                            kUnknown, "easy-laps.toml", "lane.back"},
                    Mistake{"UnknownSource",
                            [](D& d) {
                              set_list(drill(d, "squat"), "sources.technique", {"common-practice", "nobody-1999"});
                            },
                            kUnknown, "squat.toml", "sources.technique"},
                    Mistake{"DrillTwice", [](D& d) { d.drills.push_back(drill(d, "squat")); }, kTwice, "squat.toml",
                            "id"}),
    testing::PrintToStringParamName());

TEST(Catalogue, AnUnreadableDrillIsNotAlsoAMissingFamily) {
  Documents documents = shipped_documents();
  for (Document& document : documents.drills) {
    if (document.root.find("family")->text == "balance") set(document, "telling_seconds", -1);
  }
  const Result<Catalogue> catalogue = read_catalogue(documents);
  ASSERT_FALSE(catalogue.ok());
  for (const Fault& fault : catalogue.faults()) EXPECT_EQ(fault.place.field, "telling_seconds") << to_line(fault);
}

TEST(Catalogue, OrderOfDocumentsDoesNotMatter) {
  Documents documents = shipped_documents();
  std::reverse(documents.drills.begin(), documents.drills.end());
  const Result<Catalogue> catalogue = read_catalogue(documents);
  ASSERT_TRUE(catalogue.ok()) << all_lines(catalogue.faults());
  const std::vector<Drill>& drills = catalogue.value().drills;
  for (std::size_t i = 0; i < drills.size(); ++i) EXPECT_EQ(drills[i].id, shipped_catalogue().drills[i].id);
}

}  // namespace
}  // namespace lanework::catalogue::test
