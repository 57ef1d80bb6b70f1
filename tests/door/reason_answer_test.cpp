// Every reason is told as a code with its values, and each code has a sentence of its own.
#include "core/door/reason_answer.h"

#include <gtest/gtest.h>

#include <set>

#include "core/plan/reason_words.h"
#include "tests/catalogue/shipped.h"

namespace lanework::door {
namespace {

using namespace session;
const catalogue::Catalogue& shipped() { return catalogue::test::shipped_catalogue(); }

int index_of(const std::string& id) {
  const auto& drills = shipped().drills;
  for (std::size_t d = 0; d < drills.size(); ++d) {
    if (drills[d].id == id) return static_cast<int>(d);
  }
  throw std::runtime_error(id);
}

TEST(ReasonAnswer, EveryReasonHasACodeItsValuesAndASentence) {
  const int plank = index_of("side-plank");
  const Bar wall = Lacks{catalogue::Need::kWall, 0};
  const std::vector<std::pair<Reason, std::string>> all = {
      {Bar(Banned{}), R"({"code":"banned"})"},
      {Bar(TooYoung{12}), R"({"code":"too-young","age":12})"},
      {Bar(TooOld{15}), R"({"code":"too-old","age":15})"},
      {Bar(SquadHeldBack{}), R"({"code":"squad-held-back"})"},
      {wall, R"({"code":"needs","need":"wall"})"},
      {Bar(Lacks{catalogue::Need::kBallAPair, 7}), R"({"code":"needs","need":"ball-a-pair","count":7})"},
      {Bar(WrongSurface{catalogue::Surface::kWet}), R"({"code":"not-on","surface":"wet"})"},
      {Bar(LaneTooShort{15}), R"({"code":"lane-too-short","metres":15})"},
      {Bar(TooFewCones{8}), R"({"code":"too-few-cones","cones":8})"},
      {Bar(NoneKeepsCeilings{}), R"({"code":"none-keeps-ceilings"})"},
      {Bar(NewEccentricNearMatch{}), R"({"code":"new-eccentric-near-match"})"},
      {NoTime(SlotTooShort{Seconds(1148), Seconds(840), Seconds(0)}),
       R"({"code":"slot-too-short","needed_seconds":1148,"slot_seconds":840,"breaks_seconds":0})"},
      {NoTime(RoomFor{{plank}}), R"({"code":"room-for","drills":["side-plank"]})"},
      {KeepsCeiling{Load::kContacts, 60, 12, 1},
       R"({"code":"keeps-ceiling","load":"contacts","most":60,"age":12,"days_to_match":1})"},
      {KeepsCeilings{}, R"({"code":"keeps-ceilings"})"},
      {TimeAndCeilings{RoomFor{}}, R"({"code":"time-and-ceilings","time":{"code":"room-for","drills":[]}})"},
      {MoreOfAnother{}, R"({"code":"more-of-another"})"},
      {Pinned{}, R"({"code":"pinned"})"},
      {StandsIn{plank, wall}, R"({"code":"stands-in","drill":"side-plank","because":{"code":"needs","need":"wall"}})"},
      {Covers{catalogue::Family::kTrunk}, R"({"code":"covers","family":"trunk"})"},
  };
  std::set<std::string> sentences;
  for (const auto& [reason, told] : all) {
    EXPECT_EQ(to_json(to_node(reason, shipped())), told);
    sentences.insert(plan::words(reason, shipped()));
  }
  EXPECT_EQ(sentences.size(), all.size());
  EXPECT_EQ(plan::words(all[18].first, shipped()), "Side plank cannot be done, it needs a wall");
}

TEST(ReasonAnswer, CuresDemandsWaysOutAndGains) {
  const int plank = index_of("side-plank");
  const auto& catalogue = shipped();
  EXPECT_EQ(to_json(to_node(plan::Cure(plan::MoreTime{Seconds(80)}), catalogue)),
            R"({"code":"more-time","seconds":80})");
  EXPECT_EQ(to_json(to_node(plan::Cure(plan::NoneCanBeDone{plank, Banned{}}), catalogue)),
            R"({"code":"none-can-be-done","drill":"side-plank","because":{"code":"banned"}})");
  EXPECT_EQ(to_json(to_node(plan::Cure(plan::NobodyWasTaught{2}), catalogue)),
            R"({"code":"nobody-was-taught","most_new":2})");
  EXPECT_EQ(to_json(to_node(plan::Cure(plan::CeilingsOrPins{}), catalogue)), R"({"code":"ceilings-or-pins"})");
  EXPECT_EQ(to_json(to_node(plan::Demand(plan::CeilingDemand{Load::kNewDrills, 2, 13, false}), catalogue)),
            R"({"code":"ceiling","load":"new-drills","most":2,"age":13,"match_in_sight":false})");
  EXPECT_EQ(to_json(to_node(plan::Demand(plan::PinDemand{plank, 0, Banned{}}), catalogue)),
            R"({"code":"pinned","drill":"side-plank","rung":")" +
                catalogue.drills[static_cast<std::size_t>(plank)].rungs[0].key + R"(","because":{"code":"banned"}})");
  EXPECT_EQ(to_json(to_node(plan::Demand(plan::SlotDemand{Seconds(300)}), catalogue)),
            R"({"code":"slot","seconds":300})");
  EXPECT_EQ(to_json(to_node(plan::WayOut{Seconds(720), {plank}, true, false}, catalogue)),
            R"({"slot_seconds":720,"lift":["side-plank"],"any_one":true})");
  EXPECT_EQ(to_json(to_node(plan::Gain{catalogue::Family::kTrunk, -1, 0}, catalogue)), R"({"covers":"trunk"})");
}

}  // namespace
}  // namespace lanework::door
