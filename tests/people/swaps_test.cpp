#include "core/people/swaps.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "core/catalogue/loads.h"
#include "tests/people/shipped_catalogue.h"

namespace lanework::people {
namespace {

using catalogue::BodyArea;
using catalogue::Catalogue;
using catalogue::Drill;
using catalogue::Family;
using catalogue::Formation;
using catalogue::Need;
using catalogue::Phase;
using catalogue::StressKind;

Drill spread_drill(const std::string& id, Family family, std::vector<catalogue::Stress> stress) {
  Drill drill{};
  drill.id = id;
  drill.name = "Drill " + id;
  drill.family = family;
  drill.phase = Phase::kBuild;
  drill.formation = Formation::kSpread;
  drill.rungs.resize(2);
  drill.rungs[0].key = drill.rungs[0].change = "easy";
  drill.rungs[1].key = drill.rungs[1].change = "full";
  drill.dose.kind = catalogue::DoseKind::kSeconds;
  drill.dose.steps = {{1, 20}, {1, 30}, {2, 30}};
  drill.stress = std::move(stress);
  return drill;
}

Catalogue small_catalogue(std::vector<Drill> drills) {
  Catalogue out;
  std::sort(drills.begin(), drills.end(), [](const Drill& a, const Drill& b) { return a.id < b.id; });
  out.drills = std::move(drills);
  return out;
}

int index_of(const Catalogue& catalogue, const std::string& id) {
  return static_cast<int>(catalogue.find(id) - catalogue.drills.data());
}

// Sets times the amount, in seconds.
Setting by_dose(const Catalogue& catalogue) {
  Setting out;
  out.time_of = [&catalogue](int drill, int, int dose) -> std::int64_t {
    const auto& step = catalogue.drills[static_cast<std::size_t>(drill)].dose.steps[static_cast<std::size_t>(dose)];
    return std::int64_t{step.sets} * step.amount;
  };
  return out;
}

Restriction no_impact() {
  Restriction restriction;
  restriction.player = "Q14";
  restriction.areas = {BodyArea::kKnee};
  restriction.kinds = {StressKind::kImpact};
  return restriction;
}

TEST(Permits, MatchesAreaKindAndGrade) {
  const Drill drill = spread_drill("hop", Family::kJumpAndLand, {{BodyArea::kKnee, StressKind::kImpact, 2}});
  Restriction restriction = no_impact();
  EXPECT_FALSE(permits(restriction, drill, drill.rungs[1]));
  restriction.allowed_grade = 2;
  EXPECT_TRUE(permits(restriction, drill, drill.rungs[1]));
  restriction.allowed_grade = 1;
  EXPECT_FALSE(permits(restriction, drill, drill.rungs[1]));
  restriction.areas = {BodyArea::kAnkle};
  EXPECT_TRUE(permits(restriction, drill, drill.rungs[1]));
  restriction.areas.clear();
  EXPECT_FALSE(permits(restriction, drill, drill.rungs[1]));
  restriction.kinds = {StressKind::kTwist};
  EXPECT_TRUE(permits(restriction, drill, drill.rungs[1]));
  restriction.sits_out = true;
  EXPECT_FALSE(permits(restriction, drill, drill.rungs[1]));
}

TEST(Swaps, AnEasierRungComesFirst) {
  Drill hop = spread_drill("hop", Family::kJumpAndLand, {{BodyArea::kKnee, StressKind::kImpact, 2}});
  hop.rungs[0].stress = {{BodyArea::kKnee, StressKind::kImpact, 0}};
  const Catalogue catalogue = small_catalogue(
      {hop, spread_drill("landing", Family::kJumpAndLand, {}), spread_drill("squat", Family::kLegStrength, {})});
  const int drill = index_of(catalogue, "hop");
  const PlayerSwaps out = swaps_for("Q14", {no_impact()}, catalogue, {{drill, 1, 1, Seconds(30)}}, by_dose(catalogue));
  EXPECT_EQ(out.taking_part, TakingPart::kJoinsInWithSwaps);
  ASSERT_EQ(out.swaps.size(), 1U);
  EXPECT_EQ(out.swaps[0].kind, SwapKind::kSameDrill);
  EXPECT_EQ(out.swaps[0].instruction, "does Drill hop, easy, 30 s");
  EXPECT_EQ(out.instruction, "no jumping");
}

TEST(Swaps, SameFamilyThenFormationThenTimeThenRelated) {
  const Drill hop = spread_drill("hop", Family::kJumpAndLand, {{BodyArea::kKnee, StressKind::kImpact, 2}});
  Drill lane = spread_drill("a-lane", Family::kJumpAndLand, {});
  lane.formation = Formation::kLane;
  const Drill near = spread_drill("c-near", Family::kJumpAndLand, {});
  const Drill squat = spread_drill("b-squat", Family::kLegStrength, {});
  const auto chosen = [&](const std::vector<Drill>& drills) {
    const Catalogue catalogue = small_catalogue(drills);
    const int drill = index_of(catalogue, "hop");
    const PlayerSwaps out =
        swaps_for("Q14", {no_impact()}, catalogue, {{drill, 1, 1, Seconds(30)}}, by_dose(catalogue));
    const Swap& swap = out.swaps.at(0);
    return swap.drill < 0 ? "" : catalogue.drills[static_cast<std::size_t>(swap.drill)].id;
  };
  EXPECT_EQ(chosen({hop, lane, squat, near}), "c-near");
  EXPECT_EQ(chosen({hop, lane, squat}), "a-lane");
  EXPECT_EQ(chosen({hop, squat}), "b-squat");
  EXPECT_EQ(chosen({hop, spread_drill("rocks", Family::kMobility, {})}), "");  // stands in for no jumping
}

TEST(Swaps, TakeTheDoseNearestInTimeAndNeverMuchLonger) {
  const Drill hop = spread_drill("hop", Family::kJumpAndLand, {{BodyArea::kKnee, StressKind::kImpact, 2}});
  const Catalogue catalogue = small_catalogue({hop, spread_drill("squat", Family::kLegStrength, {})});
  const auto dose_for = [&](std::int64_t takes) {
    const PlayerSwaps out = swaps_for("Q14", {no_impact()}, catalogue, {{0, 1, 1, Seconds(takes)}}, by_dose(catalogue));
    return out.swaps.at(0).dose;
  };
  EXPECT_EQ(dose_for(22), 0);
  EXPECT_EQ(dose_for(27), 1);
  EXPECT_EQ(dose_for(44), 1);  // 60 s would be 16 s longer
  EXPECT_EQ(dose_for(46), 2);  // 14 s longer is nearer than 16 s shorter
  EXPECT_EQ(dose_for(4), -1);  // 20 s would be 16 s longer
}

TEST(Swaps, AreNotRepeatedWhenAnotherIsAsNear) {
  const Drill hop = spread_drill("hop", Family::kJumpAndLand, {{BodyArea::kKnee, StressKind::kImpact, 2}});
  const Drill bound = spread_drill("bound", Family::kJumpAndLand, {{BodyArea::kKnee, StressKind::kImpact, 3}});
  Drill slow = spread_drill("b-slow", Family::kLegStrength, {});
  slow.dose.steps = {{1, 25}};
  const Catalogue catalogue = small_catalogue({hop, bound, spread_drill("a-squat", Family::kLegStrength, {}), slow});
  const std::vector<SquadDrill> session = {{index_of(catalogue, "hop"), 1, 1, Seconds(30)},
                                           {index_of(catalogue, "bound"), 1, 1, Seconds(30)}};
  const PlayerSwaps out = swaps_for("Q14", {no_impact()}, catalogue, session, by_dose(catalogue));
  ASSERT_EQ(out.swaps.size(), 2U);
  EXPECT_EQ(out.swaps[0].instruction, "does Drill a-squat, easy, 30 s");
  EXPECT_EQ(out.swaps[1].instruction, "does Drill b-slow, easy, 25 s");
}

TEST(Swaps, NeedNobodyWhoIsBusyWithTheSquad) {
  const Drill hop = spread_drill("hop", Family::kJumpAndLand, {{BodyArea::kKnee, StressKind::kImpact, 2}});
  Drill anchored = spread_drill("anchored", Family::kLegStrength, {});
  anchored.needs = {Need::kPartner};
  Drill passes = spread_drill("passes", Family::kLegStrength, {});
  passes.formation = Formation::kPairs;
  const Catalogue catalogue = small_catalogue({hop, anchored, passes});
  const int drill = index_of(catalogue, "hop");
  const PlayerSwaps out = swaps_for("Q14", {no_impact()}, catalogue, {{drill, 1, 1, Seconds(30)}}, by_dose(catalogue));
  EXPECT_EQ(out.swaps.at(0).kind, SwapKind::kNothing);
  EXPECT_EQ(out.swaps.at(0).instruction, "nothing suitable here: rests, or helps the coach");
  EXPECT_EQ(out.taking_part, TakingPart::kJoinsInWithSwaps);
}

TEST(Swaps, NoFastWorkBeforeItsPhase) {
  Drill laps = spread_drill("laps", Family::kRunAndCut, {{BodyArea::kKnee, StressKind::kImpact, 2}});
  Drill sprint = spread_drill("sprint", Family::kRunAndCut, {});
  sprint.phase = Phase::kRun;
  for (const Phase phase : {Phase::kStart, Phase::kRun}) {
    laps.phase = phase;
    const Catalogue catalogue = small_catalogue({laps, sprint});
    const PlayerSwaps out = swaps_for("Q14", {no_impact()}, catalogue, {{0, 1, 1, Seconds(30)}}, by_dose(catalogue));
    EXPECT_EQ(out.swaps.at(0).kind, phase == Phase::kRun ? SwapKind::kOtherDrill : SwapKind::kNothing);
  }
}

TEST(Swaps, WhoSitsOutGetsNone) {
  const Catalogue catalogue = small_catalogue({spread_drill("squat", Family::kLegStrength, {})});
  Restriction out_tonight = no_impact();
  out_tonight.sits_out = true;
  out_tonight.until = make_date(2026, 12, 3);
  const PlayerSwaps out =
      swaps_for("Q14", {no_impact(), out_tonight}, catalogue, {{0, 0, 0, Seconds(20)}}, by_dose(catalogue));
  EXPECT_EQ(out.taking_part, TakingPart::kSitsOut);
  EXPECT_TRUE(out.swaps.empty());
  EXPECT_EQ(out.instruction, "sits out until 3 Dec");
}

TEST(Swaps, NobodyRestrictedNothingChanges) {
  const Catalogue catalogue = small_catalogue({spread_drill("squat", Family::kLegStrength, {})});
  const PlayerSwaps out = swaps_for("Q14", {}, catalogue, {{0, 0, 0, Seconds(20)}}, by_dose(catalogue));
  EXPECT_EQ(out.taking_part, TakingPart::kJoinsIn);
  EXPECT_TRUE(out.swaps.empty());
  EXPECT_TRUE(out.instruction.empty());
}

Restriction share_of_landings(int percent) {
  Restriction restriction;
  restriction.player = "Q14";
  restriction.allowed_grade = 3;
  restriction.landings_percent = percent;
  return restriction;
}

// A landing a second, whatever the drill.
Setting a_landing_a_second(const Catalogue& catalogue, std::int64_t ceiling) {
  Setting out = by_dose(catalogue);
  out.landings_of = [time_of = out.time_of](int drill, int rung, int dose) {
    return 1000 * time_of(drill, rung, dose);
  };
  out.landings_ceiling = 1000 * ceiling;
  return out;
}

TEST(Swaps, FewerLandingsAreFirstLessOfTheSameDrill) {
  const Catalogue catalogue = small_catalogue({spread_drill("hop", Family::kJumpAndLand, {})});
  const std::vector<SquadDrill> session = {{0, 1, 2, Seconds(60)}};
  const auto swap = [&](int percent) {
    return swaps_for("Q14", {share_of_landings(percent)}, catalogue, session, a_landing_a_second(catalogue, 60));
  };
  EXPECT_EQ(swap(100).taking_part, TakingPart::kJoinsIn);
  ASSERT_EQ(swap(50).swaps.size(), 1U);
  EXPECT_EQ(swap(50).swaps[0].kind, SwapKind::kSameDrill);
  EXPECT_EQ(swap(50).swaps[0].instruction, "does Drill hop, full, 30 s");
  EXPECT_EQ(swap(49).swaps[0].instruction, "does Drill hop, full, 20 s");
  EXPECT_EQ(swap(33).swaps[0].kind, SwapKind::kNothing);
  EXPECT_EQ(swap(50).instruction, "fewer jumps");
}

TEST(Swaps, NoEccentricWorkThatTheSquadHasNotDone) {
  Drill lower = spread_drill("lower", Family::kHamstring, {});
  lower.loads.eccentric_thousandths = 1000;
  const Catalogue catalogue = small_catalogue({lower, spread_drill("bridge", Family::kHamstring, {})});
  const int drill = index_of(catalogue, "lower");
  Restriction restriction = share_of_landings(100);
  restriction.new_eccentric_ok = false;
  for (const bool done : {false, true}) {
    Setting setting = by_dose(catalogue);
    setting.done_before = [&](int) { return done; };
    const PlayerSwaps out = swaps_for("Q14", {restriction}, catalogue, {{drill, 1, 1, Seconds(30)}}, setting);
    ASSERT_EQ(out.swaps.size(), done ? 0U : 1U);
    if (!done) {
      EXPECT_EQ(out.swaps[0].instruction, "does Drill bridge, easy, 30 s");
    }
  }
}

// Random restrictions over the shipped drills: an evening, a player and what stands about.
struct Evening {
  std::vector<Restriction> restrictions;
  std::vector<SquadDrill> session;
  Setting setting;
};

std::vector<Restriction> random_restrictions() {
  std::vector<Restriction> out;
  const int count = *rc::gen::inRange(1, 4);
  for (int i = 0; i < count; ++i) {
    Restriction restriction;
    restriction.player = "Q14";
    for (int k = *rc::gen::inRange(0, 4); k > 0; --k) {
      restriction.areas.push_back(static_cast<BodyArea>(*rc::gen::inRange(0, 14)));
    }
    for (int k = *rc::gen::inRange(0, 4); k > 0; --k) {
      restriction.kinds.push_back(static_cast<StressKind>(*rc::gen::inRange(0, 7)));
    }
    restriction.allowed_grade = *rc::gen::inRange(0, 3);
    if (*rc::gen::inRange(0, 2) == 0) restriction.until = Date{20783 + *rc::gen::inRange(0, 400)};
    out.push_back(std::move(restriction));
  }
  return out;
}

// Work by the dose, telling once; no wall, few balls, an age: what the clock and the kit would refuse.
OfDose random_time(const Catalogue& catalogue) {
  const int age = *rc::gen::inRange(8, 20);
  const bool wall = *rc::gen::arbitrary<bool>();
  return [&catalogue, age, wall](int drill, int rung, int dose) -> std::int64_t {
    const Drill& d = catalogue.drills[static_cast<std::size_t>(drill)];
    const catalogue::Rung& r = d.rungs[static_cast<std::size_t>(rung)];
    if (age < d.age_from || age > d.age_to || age < r.age_from) return -1;
    const auto needs_wall = [](const std::vector<Need>& needs) {
      return std::find(needs.begin(), needs.end(), Need::kWall) != needs.end();
    };
    if (!wall && (needs_wall(d.needs) || needs_wall(r.needs))) return -1;
    const catalogue::DoseStep& step = d.dose.steps[static_cast<std::size_t>(dose)];
    const std::int64_t unit = d.dose.kind == catalogue::DoseKind::kPasses ? 25
                              : d.dose.kind == catalogue::DoseKind::kReps ? 3
                                                                          : 1;
    return 10 + unit * step.sets * step.amount * (d.dose.sides ? 2 : 1);
  };
}

Evening random_evening(const Catalogue& catalogue) {
  Evening out;
  out.restrictions = random_restrictions();
  out.setting.time_of = random_time(catalogue);
  std::set<int> taken;
  for (int i = *rc::gen::inRange(1, 14); i > 0; --i) {
    const int drill = *rc::gen::inRange(0, static_cast<int>(catalogue.drills.size()));
    const Drill& d = catalogue.drills[static_cast<std::size_t>(drill)];
    if (!taken.insert(drill).second) continue;
    const int rung = *rc::gen::inRange(0, static_cast<int>(d.rungs.size()));
    const int dose = *rc::gen::inRange(0, static_cast<int>(d.dose.steps.size()));
    const std::int64_t takes = out.setting.time_of(drill, rung, dose);
    if (takes >= 0) out.session.push_back({drill, rung, dose, Seconds(takes)});
  }
  return out;
}

const Drill& drill_at(const Catalogue& catalogue, int drill) {
  return catalogue.drills[static_cast<std::size_t>(drill)];
}
const catalogue::Rung& rung_at(const Catalogue& catalogue, int drill, int rung) {
  return drill_at(catalogue, drill).rungs[static_cast<std::size_t>(rung)];
}

// The restriction read straight off the lists, not through permits().
bool breaks(const Restriction& restriction, const Catalogue& catalogue, int drill, int rung) {
  std::map<std::pair<BodyArea, StressKind>, int> grades;
  for (const auto& s : drill_at(catalogue, drill).stress) grades[{s.area, s.kind}] = s.grade;
  for (const auto& s : rung_at(catalogue, drill, rung).stress) grades[{s.area, s.kind}] = s.grade;
  for (const auto& [what, grade] : grades) {
    if (grade <= restriction.allowed_grade) continue;
    const auto named = [](const auto& list, auto one) {
      return list.empty() || std::count(list.begin(), list.end(), one) > 0;
    };
    if (named(restriction.areas, what.first) && named(restriction.kinds, what.second)) return true;
  }
  return false;
}

bool breaks_any(const Evening& evening, const Catalogue& catalogue, int drill, int rung) {
  return std::any_of(evening.restrictions.begin(), evening.restrictions.end(),
                     [&](const Restriction& r) { return breaks(r, catalogue, drill, rung); });
}

TEST(Swaps, EveryBarredDrillIsSwappedAndEverySwapIsPermitted) {
  const Catalogue& catalogue = shipped_catalogue();
  EXPECT_TRUE(rc::check([&] {
    const Evening evening = random_evening(catalogue);
    const PlayerSwaps out = swaps_for("Q14", evening.restrictions, catalogue, evening.session, evening.setting);
    std::map<int, const Swap*> by_item;
    for (const Swap& swap : out.swaps) by_item[swap.item] = &swap;
    RC_ASSERT(by_item.size() == out.swaps.size());
    for (std::size_t i = 0; i < evening.session.size(); ++i) {
      const SquadDrill& squad = evening.session[i];
      const auto found = by_item.find(static_cast<int>(i));
      RC_ASSERT((found != by_item.end()) == breaks_any(evening, catalogue, squad.drill, squad.rung));
      if (found == by_item.end() || found->second->kind == SwapKind::kNothing) continue;
      const Swap& swap = *found->second;
      RC_ASSERT(!breaks_any(evening, catalogue, swap.drill, swap.rung));
      const std::int64_t takes = evening.setting.time_of(swap.drill, swap.rung, swap.dose);
      RC_ASSERT(takes >= 0 && takes <= squad.takes.count + 15);
      if (swap.kind == SwapKind::kSameDrill) {
        RC_ASSERT(swap.drill == squad.drill && swap.rung < squad.rung && swap.dose <= squad.dose);
      } else {
        RC_ASSERT(swap.drill != squad.drill);
        RC_ASSERT(drill_at(catalogue, swap.drill).formation != Formation::kPairs);
      }
    }
  }));
}

// Nothing nearer was passed over: an easier rung, or the same family in the same formation.
TEST(Swaps, NothingNearerIsPassedOver) {
  const Catalogue& catalogue = shipped_catalogue();
  EXPECT_TRUE(rc::check([&] {
    const Evening evening = random_evening(catalogue);
    for (const Swap& swap : swaps_for("Q14", evening.restrictions, catalogue, evening.session, evening.setting).swaps) {
      const SquadDrill& squad = evening.session[static_cast<std::size_t>(swap.item)];
      const Drill& own = drill_at(catalogue, squad.drill);
      const auto fits = [&](int drill, int rung, int dose) {
        const std::int64_t takes = evening.setting.time_of(drill, rung, dose);
        return takes >= 0 && takes <= squad.takes.count + 15 && !breaks_any(evening, catalogue, drill, rung);
      };
      if (swap.kind != SwapKind::kSameDrill) {
        for (int rung = 0; rung < squad.rung; ++rung) {
          for (int dose = 0; dose <= squad.dose; ++dose) RC_ASSERT(!fits(squad.drill, rung, dose));
        }
      }
      if (swap.kind == SwapKind::kSameDrill) continue;
      const bool same = swap.drill >= 0 && drill_at(catalogue, swap.drill).family == own.family;
      if (same && drill_at(catalogue, swap.drill).formation == own.formation) continue;
      for (int drill = 0; drill < static_cast<int>(catalogue.drills.size()); ++drill) {
        const Drill& other = drill_at(catalogue, drill);
        if (drill == squad.drill || other.family != own.family || other.phase > own.phase) continue;
        if (other.formation == Formation::kPairs || (same && other.formation != own.formation)) continue;
        for (int rung = 0; rung < static_cast<int>(other.rungs.size()); ++rung) {
          std::vector<Need> needs = other.needs;
          const auto& more = rung_at(catalogue, drill, rung).needs;
          needs.insert(needs.end(), more.begin(), more.end());
          if (std::count(needs.begin(), needs.end(), Need::kPartner) > 0) continue;
          if (std::count(needs.begin(), needs.end(), Need::kBallAPair) > 0) continue;
          for (int dose = 0; dose < static_cast<int>(other.dose.steps.size()); ++dose)
            RC_ASSERT(!fits(drill, rung, dose));
        }
      }
    }
  }));
}

// Whatever else is barred: what the player does in the end lands no more than the share, and has nothing eccentric in
// it that is new; nothing of the squad's is taken away that need not be.
TEST(Swaps, LandingsOfThePlayerKeepTheShare) {
  const Catalogue& catalogue = shipped_catalogue();
  EXPECT_TRUE(rc::check([&] {
    Evening evening = random_evening(catalogue);
    if (*rc::gen::arbitrary<bool>()) evening.restrictions.clear();
    Restriction counted = share_of_landings(*rc::gen::inRange(0, 101));
    counted.new_eccentric_ok = *rc::gen::arbitrary<bool>();
    evening.restrictions.push_back(counted);
    evening.setting.landings_of = [&](int drill, int rung, int dose) -> std::int64_t {
      const Drill& d = drill_at(catalogue, drill);
      return catalogue::load_of(d, rung_at(catalogue, drill, rung), d.dose.steps[static_cast<std::size_t>(dose)],
                                catalogue::kUsualLane, catalogue.limits)
          .contacts;
    };
    evening.setting.landings_ceiling = *rc::gen::inRange(0, 50'000);
    const int known = *rc::gen::inRange(0, static_cast<int>(catalogue.drills.size()));
    evening.setting.done_before = [known](int drill) { return drill < known; };
    const PlayerSwaps out = swaps_for("Q14", evening.restrictions, catalogue, evening.session, evening.setting);
    std::map<int, const Swap*> by_item;
    for (const Swap& swap : out.swaps) by_item[swap.item] = &swap;
    std::int64_t sum = 0;
    std::int64_t squad_sum = 0;
    const auto barred_new = [&](int drill) {
      return !counted.new_eccentric_ok && drill >= known && drill_at(catalogue, drill).loads.eccentric_thousandths > 0;
    };
    bool needed = false;  // is anything swapped for its landings alone?
    for (std::size_t i = 0; i < evening.session.size(); ++i) {
      const SquadDrill& squad = evening.session[i];
      const std::int64_t its = evening.setting.landings_of(squad.drill, squad.rung, squad.dose);
      const bool barred = breaks_any(evening, catalogue, squad.drill, squad.rung) || barred_new(squad.drill);
      if (!barred) squad_sum += its;
      const auto found = by_item.find(static_cast<int>(i));
      if (found == by_item.end()) {
        RC_ASSERT(!barred);
        sum += its;
        continue;
      }
      needed = needed || !barred;
      const Swap& swap = *found->second;
      if (swap.kind == SwapKind::kNothing) continue;
      RC_ASSERT(!barred_new(swap.drill));
      sum += evening.setting.landings_of(swap.drill, swap.rung, swap.dose);
    }
    const std::int64_t ceiling = evening.setting.landings_ceiling * counted.landings_percent / 100;
    if (counted.landings_percent < 100) RC_ASSERT(sum <= ceiling);
    RC_ASSERT(needed == (counted.landings_percent < 100 && squad_sum > ceiling));
  }));
}

// What the coach reads is made of drills, doses, what to avoid and a date; never of the areas restricted.
TEST(Swaps, WordsGiveNoAreaAway) {
  const Catalogue& catalogue = shipped_catalogue();
  EXPECT_TRUE(rc::check([&] {
    const Evening evening = random_evening(catalogue);
    const PlayerSwaps out = swaps_for("Q14", evening.restrictions, catalogue, evening.session, evening.setting);
    std::vector<std::string> words = {out.instruction};
    for (const Swap& swap : out.swaps) {
      if (swap.kind == SwapKind::kNothing) {
        words.push_back(swap.instruction);
        continue;
      }
      const Drill& drill = drill_at(catalogue, swap.drill);
      RC_ASSERT(swap.instruction == "does " + drill.name + ", " + rung_at(catalogue, swap.drill, swap.rung).change +
                                        ", " +
                                        dose_in_words(drill, drill.dose.steps[static_cast<std::size_t>(swap.dose)]));
    }
    for (const std::string& text : words) {
      for (const std::string_view area : catalogue::body_area_words()) {
        // 'kneeling' is what to avoid, 'knee' is where it hurts.
        const std::size_t at = text.find(area);
        if (at != std::string::npos) RC_ASSERT(area == "knee" && text.compare(at, 8, "kneeling") == 0);
      }
      for (const char* word : {"mass", "weight", "kg", "pain", "injur", "groin", "thigh"}) {
        RC_ASSERT(text.find(word) == std::string::npos);
      }
    }
    // The same words whatever the areas are, where the same drills are barred.
    std::vector<Restriction> elsewhere = evening.restrictions;
    for (Restriction& restriction : elsewhere) restriction.areas.clear();
    RC_ASSERT(swaps_for("Q14", elsewhere, catalogue, {}, evening.setting).instruction == out.instruction);
  }));
}

}  // namespace
}  // namespace lanework::people
