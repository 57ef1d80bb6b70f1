// Every rule of a drill's file: one thing made wrong gives one fault, of the right kind and at its field.
#include <gtest/gtest.h>

#include <functional>

#include "core/catalogue/read_catalogue.h"
#include "tests/catalogue/mutate.h"
#include "tests/catalogue/sample_drills.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

struct Mistake {
  const char* name;
  Document (*drill)();
  std::function<void(Document&)> make;
  FaultCode code;
  const char* field;
};

std::ostream& operator<<(std::ostream& out, const Mistake& mistake) { return out << mistake.name; }

class OneMistake : public testing::TestWithParam<Mistake> {};

TEST_P(OneMistake, IsOneFaultAtItsField) {
  Document document = GetParam().drill();
  ASSERT_TRUE(read_drill(document).ok()) << all_lines(read_drill(document).faults());
  GetParam().make(document);
  const Result<Drill> drill = read_drill(document);
  ASSERT_FALSE(drill.ok());
  ASSERT_EQ(drill.faults().size(), 1U) << all_lines(drill.faults());
  const Fault& fault = drill.faults().front();
  EXPECT_EQ(fault.place.field, GetParam().field) << to_line(fault);
  EXPECT_STREQ(fault_row(fault.code).key, fault_row(GetParam().code).key) << to_line(fault);
  EXPECT_EQ(fault.place.file, document.file);
  EXPECT_FALSE(fault.found.empty());
  EXPECT_FALSE(fault.expected.empty());
}

using D = Document;
constexpr auto kMissing = FaultCode::kMissing;
constexpr auto kRange = FaultCode::kOutOfRange;
constexpr auto kUnknown = FaultCode::kUnknownName;
constexpr auto kTwice = FaultCode::kDuplicate;
constexpr auto kClash = FaultCode::kContradiction;

const char* const kNineWords = "one two three four five six seven eight nine";

INSTANTIATE_TEST_SUITE_P(
    Heading, OneMistake,
    testing::Values(
        Mistake{"IdIsNotTheFile", sample_spread, [](D& d) { set(d, "id", "other"); }, kClash, "id"},
        Mistake{"IdHasCapitals", sample_spread, [](D& d) { set(d, "id", "Steady-Lean"); }, kClash, "id"},
        Mistake{"NoName", sample_spread, [](D& d) { remove(d, "name"); }, kMissing, "name"},
        Mistake{"EmptyPurpose", sample_spread, [](D& d) { set(d, "purpose", ""); }, kMissing, "purpose"},
        Mistake{"UnknownFamily", sample_spread, [](D& d) { set(d, "family", "arms"); }, kUnknown, "family"},
        Mistake{"UnknownPhase", sample_spread, [](D& d) { set(d, "phase", "end"); }, kUnknown, "phase"},
        Mistake{"UnknownFormation", sample_spread, [](D& d) { set(d, "formation", "ring"); }, kUnknown, "formation"},
        Mistake{"NoAges", sample_spread, [](D& d) { remove(d, "ages"); }, kMissing, "ages"},
        Mistake{"TooYoung", sample_spread, [](D& d) { set(d, "ages.from", 7); }, kRange, "ages.from"},
        Mistake{"TooOld", sample_spread, [](D& d) { set(d, "ages.to", 20); }, kRange, "ages.to"},
        Mistake{"AgesTurned", sample_lane, [](D& d) { set(d, "ages.from", 12), set(d, "ages.to", 11); }, kClash,
                "ages.to"},
        Mistake{"NoTelling", sample_spread, [](D& d) { remove(d, "telling_seconds"); }, kMissing, "telling_seconds"},
        Mistake{"EndlessTelling", sample_spread, [](D& d) { set(d, "telling_seconds", 181); }, kRange,
                "telling_seconds"},
        Mistake{"UnknownNeed", sample_spread, [](D& d) { set_list(d, "needs", {"hoop"}); }, kUnknown, "needs"},
        Mistake{"NeedTwice", sample_spread,
                [](D& d) {
                  set_list(d, "needs", {"mat", "mat"});
                },
                kTwice, "needs"},
        Mistake{"UnknownSurface", sample_spread, [](D& d) { set_list(d, "not_on", {"ice"}); }, kUnknown, "not_on"},
        Mistake{"NoCues", sample_spread, [](D& d) { remove(d, "cues"); }, kMissing, "cues"},
        Mistake{"FourCues", sample_spread,
                [](D& d) {
                  set_list(d, "cues", {"a", "b", "c", "d"});
                },
                kRange, "cues"},
        Mistake{"NineWords", sample_spread, [](D& d) { set_list(d, "cues", {kNineWords}); }, kClash, "cues"},
        Mistake{"EmptyCue", sample_spread,
                [](D& d) {
                  set_list(d, "cues", {"a", ""});
                },
                kMissing, "cues"},
        Mistake{"NoStop", sample_spread, [](D& d) { set_list(d, "stop_if", {}); }, kRange, "stop_if"},
        Mistake{"UnknownKey", sample_spread, [](D& d) { set(d, "colour", "red"); }, FaultCode::kUnknownKey, "colour"}),
    testing::PrintToStringParamName());

INSTANTIATE_TEST_SUITE_P(
    Ladder, OneMistake,
    testing::Values(Mistake{"NoRungs", sample_spread, [](D& d) { remove(d, "rung"); }, kMissing, "rung"},
                    Mistake{"OneRung", sample_spread, [](D& d) { remove(d, "rung.2"); }, kRange, "rung"},
                    Mistake{"SameKey", sample_spread, [](D& d) { set(d, "rung.2.key", "near"); }, kTwice, "rung.2.key"},
                    Mistake{"SameWords", sample_spread, [](D& d) { set(d, "rung.2.change", "feet near"); }, kTwice,
                            "rung.2.change"},
                    Mistake{"NumberedKey", sample_spread, [](D& d) { set(d, "rung.1.key", "Level 1"); }, kClash,
                            "rung.1.key"},
                    Mistake{"FirstRungTooOld", sample_spread, [](D& d) { set(d, "rung.1.ages_from", 10); }, kClash,
                            "rung.1.ages_from"},
                    Mistake{"RungBelowTheDrill", sample_spread, [](D& d) { set(d, "rung.2.ages_from", 8); }, kClash,
                            "rung.2.ages_from"},
                    Mistake{"RungForNobody", sample_spread, [](D& d) { set(d, "rung.2.ages_from", 19); }, kClash,
                            "rung.2.ages_from"},
                    Mistake{"HeavyLoad", sample_spread, [](D& d) { set(d, "rung.1.load", 4); }, kRange, "rung.1.load"},
                    Mistake{"Grade4", sample_spread, [](D& d) { set(d, "rung.2.stress.1.grade", 4); }, kRange,
                            "rung.2.stress.1.grade"},
                    Mistake{"UnknownRungNeed", sample_spread, [](D& d) { set_list(d, "rung.1.needs", {"hoop"}); },
                            kUnknown, "rung.1.needs"}),
    testing::PrintToStringParamName());

Document sample_with_rung_figure() {
  Document document = sample_spread();
  Node figures = Node::make_table();
  figures.set("far", copy_of(document, "figure"));
  set(document, "rung_figure", figures);
  return document;
}

INSTANTIATE_TEST_SUITE_P(
    RungFigures, OneMistake,
    testing::Values(Mistake{"NoSuchRung", sample_with_rung_figure,
                            [](D& d) { set(d, "rung_figure.further", copy_of(d, "figure")); }, FaultCode::kUnknownKey,
                            "rung_figure.further"},
                    Mistake{"NotATable", sample_with_rung_figure, [](D& d) { set(d, "rung_figure.far", "far"); },
                            FaultCode::kWrongType, "rung_figure.far"},
                    Mistake{"NoPoses", sample_with_rung_figure,
                            [](D& d) {
                              remove(d, "rung_figure.far.pose");
                              remove(d, "rung_figure.far.main");
                            },
                            kMissing, "rung_figure.far.pose"},
                    Mistake{"UnknownAngle", sample_with_rung_figure,
                            [](D& d) { set(d, "rung_figure.far.pose.1.angles.tail", 5); }, FaultCode::kUnknownKey,
                            "rung_figure.far.pose.1.angles.tail"},
                    Mistake{"KneeTooFar", sample_with_rung_figure,
                            [](D& d) { set(d, "rung_figure.far.pose.2.angles.knee", 170); }, kRange,
                            "rung_figure.far.pose.2.angles.knee"},
                    Mistake{"UnknownContact", sample_with_rung_figure,
                            [](D& d) { set_list(d, "rung_figure.far.pose.1.contacts", {"wings"}); }, kUnknown,
                            "rung_figure.far.pose.1.contacts"}),
    testing::PrintToStringParamName());

TEST(RungFigures, AreTheRungsAndTheDrillsElsewhere) {
  Document document = sample_with_rung_figure();
  set(document, "rung_figure.far.pose.1.label", "lean");
  set(document, "rung_figure.far.main", "lean");
  const Drill drill = read_drill(document).value();
  EXPECT_EQ(&figure_on(drill, drill.rungs[0]), &drill.figure);
  EXPECT_EQ(figure_on(drill, drill.rungs[1]).poses[0].label, "lean");
  EXPECT_EQ(drill.figure.poses[0].label, "stand");
}

INSTANTIATE_TEST_SUITE_P(
    DoseRules, OneMistake,
    testing::Values(
        Mistake{"NoDose", sample_spread, [](D& d) { remove(d, "dose"); }, kMissing, "dose"},
        Mistake{"NoSteps", sample_spread, [](D& d) { remove(d, "dose.steps"); }, kMissing, "dose.steps"},
        Mistake{"SixSteps", sample_spread,
                [](D& d) {
                  for (int i = 0; i < 3; ++i) {
                    repeat_item(d, "dose.steps", 3);
                    set(d, "dose.steps." + std::to_string(4 + i) + ".amount", 20 + i);
                  }
                },
                kRange, "dose.steps"},
        Mistake{"NoReps", sample_spread, [](D& d) { set(d, "dose.steps.1.amount", 0); }, kRange, "dose.steps.1.amount"},
        Mistake{"NotMoreWork", sample_spread, [](D& d) { set(d, "dose.steps.3.amount", 3); }, kClash,
                "dose.steps.3.amount"},
        Mistake{"StepTwice", sample_pairs, [](D& d) { set(d, "dose.steps.2.sets", 1); }, kClash, "dose.steps.2.amount"},
        Mistake{"RepsWithoutTempo", sample_spread, [](D& d) { remove(d, "dose.tempo_seconds"); }, kMissing,
                "dose.tempo_seconds"},
        Mistake{"TempoOfSeconds", sample_pairs, [](D& d) { set(d, "dose.tempo_seconds", 2); }, kClash,
                "dose.tempo_seconds"},
        Mistake{"SideChangeWithoutSides", sample_spread, [](D& d) { set(d, "dose.sides", false); }, kClash,
                "dose.side_change_seconds"},
        Mistake{"PassesOnTheSpot", sample_pairs, [](D& d) { set(d, "dose.kind", "passes"); }, kClash, "dose.kind"},
        Mistake{"SecondsInTheLane", sample_lane, [](D& d) { set(d, "dose.kind", "seconds"); }, kClash, "dose.kind"},
        Mistake{"NegativeRest", sample_spread, [](D& d) { set(d, "dose.rest_seconds", -1); }, kRange,
                "dose.rest_seconds"}),
    testing::PrintToStringParamName());

INSTANTIATE_TEST_SUITE_P(
    FormationRules, OneMistake,
    testing::Values(
        Mistake{"NoLane", sample_lane, [](D& d) { remove(d, "lane"); }, kMissing, "lane"},
        Mistake{"LaneOnTheSpot", sample_spread, [](D& d) { set(d, "lane", copy_of(sample_lane(), "lane")); }, kClash,
                "lane"},
        Mistake{"NoPair", sample_pairs, [](D& d) { remove(d, "pair"); }, kMissing, "pair"},
        Mistake{"PairInTheLane", sample_lane, [](D& d) { set(d, "pair", copy_of(sample_pairs(), "pair")); }, kClash,
                "pair"},
        Mistake{"PairsWithoutPartner", sample_pairs, [](D& d) { set_list(d, "needs", {}); }, kClash, "needs"},
        Mistake{"NoSpace", sample_spread, [](D& d) { remove(d, "space_metres"); }, kMissing, "space_metres"},
        Mistake{"NoRoom", sample_spread, [](D& d) { set(d, "space_metres.width", 0); }, kRange, "space_metres.width"},
        Mistake{"UnknownShape", sample_lane, [](D& d) { set(d, "lane.shape", "ring"); }, kUnknown, "lane.shape"},
        Mistake{"NoOut", sample_lane, [](D& d) { remove(d, "lane.out"); }, kMissing, "lane.out"},
        Mistake{"NoBack", sample_lane, [](D& d) { remove(d, "lane.back"); }, kMissing, "lane.back"},
        Mistake{"BackAtARun", sample_lane, [](D& d) { set(d, "lane.back", "run"); }, kClash, "lane.back"},
        Mistake{"RunWithoutShare", sample_lane, [](D& d) { remove(d, "lane.share_of_top_speed"); }, kMissing,
                "lane.share_of_top_speed"},
        Mistake{"ShareOfAJog", sample_lane, [](D& d) { set(d, "lane.out", "jog"); }, kClash, "lane.share_of_top_speed"},
        Mistake{"FasterThanTop", sample_lane, [](D& d) { set(d, "lane.share_of_top_speed", 101); }, kRange,
                "lane.share_of_top_speed"},
        Mistake{"StopWithoutSeconds", sample_lane, [](D& d) { remove(d, "lane.stop_seconds"); }, kMissing,
                "lane.stop_seconds"},
        Mistake{"SecondsWithoutStop", sample_lane, [](D& d) { set(d, "lane.stop_at_cones", false); }, kClash,
                "lane.stop_seconds"},
        Mistake{"NoGap", sample_lane, [](D& d) { set(d, "lane.release_gap_seconds", 0); }, kRange,
                "lane.release_gap_seconds"}),
    testing::PrintToStringParamName());

INSTANTIATE_TEST_SUITE_P(
    SafetyRules, OneMistake,
    testing::Values(
        Mistake{"NoWatch", sample_spread, [](D& d) { remove(d, "watch"); }, kMissing, "watch"},
        Mistake{"WatchWithoutCue", sample_spread, [](D& d) { remove(d, "watch.1.cue"); }, kMissing, "watch.1.cue"},
        Mistake{"NoStress", sample_spread, [](D& d) { set(d, "stress", Node::make_array()); }, kRange, "stress"},
        Mistake{"UngradedStress", sample_spread, [](D& d) { set(d, "stress.1.grade", 0); }, kRange, "stress.1.grade"},
        Mistake{"UnknownArea", sample_spread, [](D& d) { set(d, "stress.1.area", "soul"); }, kUnknown, "stress.1.area"},
        Mistake{"StressTwice", sample_spread, [](D& d) { repeat_item(d, "stress", 1); }, kTwice, "stress.5.kind"},
        Mistake{"LandingsUnseen", sample_spread, [](D& d) { remove(d, "stress.4"); }, kClash, "loads.contacts"},
        Mistake{"EccentricUnseen", sample_spread, [](D& d) { remove(d, "stress.3"); }, kClash, "loads.eccentric"},
        Mistake{"SpeedUnseen", sample_lane, [](D& d) { set(d, "stress.1.kind", "load"); }, kClash,
                "loads.hard_running"},
        Mistake{"RunningInPairs", sample_pairs,
                [](D& d) {
                  set(d, "loads.hard_running", true), repeat_item(d, "stress", 1), set(d, "stress.2.kind", "speed");
                },
                kClash, "loads.hard_running"},
        Mistake{"UnknownIntensity", sample_spread, [](D& d) { set(d, "loads.intensity", "huge"); }, kUnknown,
                "loads.intensity"},
        Mistake{"NoSources", sample_spread, [](D& d) { remove(d, "sources"); }, kMissing, "sources"},
        Mistake{"NoSourceOfDose", sample_spread, [](D& d) { remove(d, "sources.dose"); }, kMissing, "sources.dose"},
        Mistake{"NoSourceOfLoads", sample_spread, [](D& d) { remove(d, "sources.loads"); }, kMissing, "sources.loads"},
        Mistake{"SourceTwice", sample_spread,
                [](D& d) {
                  set_list(d, "sources.dose", {"own-judgement", "own-judgement"});
                },
                kTwice, "sources.dose"},
        Mistake{"NoFigure", sample_spread, [](D& d) { remove(d, "figure"); }, kMissing, "figure"}),
    testing::PrintToStringParamName());

TEST(Drill, ManyMistakesAreAllTold) {
  Document document = sample_spread();
  set(document, "telling_seconds", -1);
  set(document, "rung.2.key", "");
  set(document, "stress.2.grade", 9);
  const Result<Drill> drill = read_drill(document);
  ASSERT_FALSE(drill.ok());
  EXPECT_EQ(drill.faults().size(), 3U) << all_lines(drill.faults());
}

TEST(Drill, ALoadlessDrillNeedsNoSourceOfLoads) {
  Document document = sample_spread();
  remove(document, "loads");
  remove(document, "sources.loads");
  EXPECT_TRUE(read_drill(document).ok());
}

}  // namespace
}  // namespace lanework::catalogue::test
