// House routines: the shipped ones, one mistake at a time, and shuffled ones.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <functional>
#include <numeric>
#include <set>

#include "core/catalogue/loads.h"
#include "tests/catalogue/mutate.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

std::vector<Document> shipped_routines() { return read_folder(shipped_folder() / "routines"); }

Document shipped_routine(const std::string& id) { return read_toml(shipped_folder() / "routines" / (id + ".toml")); }

Routine routine_of(const Document& document) {
  Result<Routine> routine = read_routine(document, shipped_catalogue());
  if (!routine.ok()) throw std::runtime_error(all_lines(routine.faults()));
  return std::move(routine).value();
}

const Drill& drill_of(const RoutineLine& line) {
  return shipped_catalogue().drills[static_cast<std::size_t>(line.drill)];
}

LoadSum load_of_line(const RoutineLine& line) {
  const Drill& drill = drill_of(line);
  return load_of(drill, drill.rungs[static_cast<std::size_t>(line.rung)],
                 drill.dose.steps[static_cast<std::size_t>(line.dose)], kUsualLane, shipped_catalogue().limits);
}

TEST(Routines, ReadClean) {
  for (const Document& document : shipped_routines()) {
    const Result<Routine> routine = read_routine(document, shipped_catalogue());
    EXPECT_TRUE(routine.ok()) << all_lines(routine.faults());
  }
}

TEST(Routines, EveryAgeHasOne) {
  std::set<int> ages;
  for (const Document& document : shipped_routines()) {
    const Routine routine = routine_of(document);
    for (int age = routine.age_from; age <= routine.age_to; ++age) ages.insert(age);
  }
  for (int age = 8; age <= 19; ++age) EXPECT_EQ(ages.count(age), 1U) << age;
}

TEST(Routines, TouchEveryRequiredFamily) {
  for (const Document& document : shipped_routines()) {
    const Routine routine = routine_of(document);
    std::set<Family> families;
    for (const RoutineLine& line : routine.lines) families.insert(drill_of(line).family);
    for (const FamilyRow& row : shipped_catalogue().families) {
      if (row.required) {
        EXPECT_EQ(families.count(row.family), 1U) << routine.id << ": " << row.name;
      }
    }
  }
}

// Written as the planner orders a session, so that an unchanged evening gives the routine back.
TEST(Routines, StandInTheOrderOfASession) {
  for (const Document& document : shipped_routines()) {
    const Routine routine = routine_of(document);
    for (std::size_t i = 1; i < routine.lines.size(); ++i) {
      const Drill& before = drill_of(routine.lines[i - 1]);
      const Drill& drill = drill_of(routine.lines[i]);
      const auto order = [](const Drill& d) { return std::pair(d.phase, shipped_catalogue().family(d.family).rank); };
      EXPECT_LE(order(before), order(drill)) << routine.id << ": " << before.id << ", " << drill.id;
    }
  }
}

TEST(Routines, ChangeFormationSeldom) {
  for (const Document& document : shipped_routines()) {
    const Routine routine = routine_of(document);
    int changes = 0;
    for (std::size_t i = 1; i < routine.lines.size(); ++i) {
      if (drill_of(routine.lines[i]).formation != drill_of(routine.lines[i - 1]).formation) ++changes;
    }
    EXPECT_LE(changes, 3) << routine.id;
  }
}

TEST(Routines, KeepHalfTheCeilingOnAMatchDay) {
  const Routine routine = routine_of(shipped_routine("match-day"));
  const Ceilings& ceilings = shipped_catalogue().ceilings_for(routine.age_from);
  const MatchDistance& day = shipped_catalogue().limits.match.front();
  LoadSum sum;
  for (const RoutineLine& line : routine.lines) sum += load_of_line(line);
  EXPECT_LE(sum.contacts, 10 * ceilings.contacts_session * day.contacts_percent);
  EXPECT_LE(sum.eccentric, 10 * ceilings.eccentric_session * day.eccentric_percent);
  EXPECT_LE(sum.hard_running, 10 * ceilings.hard_running_session * day.hard_running_percent);
}

TEST(Routines, HallNeedsNoPartnerNoBallAndNoGrass) {
  for (const RoutineLine& line : routine_of(shipped_routine("hall")).lines) {
    const Drill& drill = drill_of(line);
    for (const Need need : drill.needs) EXPECT_TRUE(need == Need::kWall || need == Need::kLine) << drill.id;
    EXPECT_EQ(std::count(drill.not_on.begin(), drill.not_on.end(), Surface::kHard), 0) << drill.id;
  }
}

struct Mistake {
  const char* name;
  std::function<void(Document&)> make;
  FaultCode code;
  const char* field;
};
std::ostream& operator<<(std::ostream& out, const Mistake& mistake) { return out << mistake.name; }

class RoutineMistake : public testing::TestWithParam<Mistake> {};

TEST_P(RoutineMistake, IsOneFaultAtItsField) {
  Document document = shipped_routine("first-steps");
  GetParam().make(document);
  const Result<Routine> routine = read_routine(document, shipped_catalogue());
  ASSERT_FALSE(routine.ok());
  ASSERT_EQ(routine.faults().size(), 1U) << all_lines(routine.faults());
  const Fault& fault = routine.faults().front();
  EXPECT_EQ(fault.place.field, GetParam().field) << to_line(fault);
  EXPECT_STREQ(fault_row(fault.code).key, fault_row(GetParam().code).key) << to_line(fault);
  EXPECT_GT(fault.place.line, 0) << to_line(fault);
}

void swap_lines(Document& document, std::size_t a, std::size_t b) {
  std::vector<Node>& lines = node_at(document.root, "drill").items;
  std::swap(lines.at(a - 1), lines.at(b - 1));
}

using D = Document;
constexpr auto kMissing = FaultCode::kMissing;
constexpr auto kRange = FaultCode::kOutOfRange;
constexpr auto kUnknown = FaultCode::kUnknownName;
constexpr auto kTwice = FaultCode::kDuplicate;
constexpr auto kClash = FaultCode::kContradiction;

INSTANTIATE_TEST_SUITE_P(
    Rules, RoutineMistake,
    testing::Values(
        Mistake{"NoName", [](D& d) { remove(d, "name"); }, kMissing, "name"},
        Mistake{"NotTheFile", [](D& d) { set(d, "id", "first"); }, kClash, "id"},
        Mistake{"NegativeMinutes", [](D& d) { set(d, "minutes", -3); }, kRange, "minutes"},
        Mistake{"TwoHours", [](D& d) { set(d, "minutes", 120); }, kRange, "minutes"},
        Mistake{"NoDrills", [](D& d) { remove(d, "drill"); }, kMissing, "drill"},
        Mistake{"NoDrillInList", [](D& d) { set(d, "drill", Node::make_array()); }, kRange, "drill"},
        Mistake{"UnknownDrill", [](D& d) { set(d, "drill.3.id", "handstand"); }, kUnknown, "drill.3.id"},
        Mistake{"UnknownRung", [](D& d) { set(d, "drill.3.rung", "hardest"); }, kUnknown, "drill.3.rung"},
        Mistake{"UnknownDose", [](D& d) { set(d, "drill.3.amount", 7); }, kUnknown, "drill.3.amount"},
        Mistake{"NoSets", [](D& d) { remove(d, "drill.3.sets"); }, kMissing, "drill.3.sets"},
        Mistake{"SetsInWords", [](D& d) { set(d, "drill.3.sets", "two"); }, FaultCode::kWrongType, "drill.3.sets"},
        Mistake{"UnknownKey", [](D& d) { set(d, "drill.3.speed", "fast"); }, FaultCode::kUnknownKey, "drill.3.speed"},
        Mistake{"DrillTwice", [](D& d) { repeat_item(d, "drill", 13); }, kTwice, "drill.14.id"},
        Mistake{"PhasesTurned", [](D& d) { swap_lines(d, 12, 11); }, kClash, "drill.12.id"},
        Mistake{"DrillForOlder",
                [](D& d) {
                  set(d, "drill.6.id", "single-leg-bridge"), set(d, "drill.6.rung", "knee-held");
                  set(d, "drill.6.amount", 5);
                },
                kClash, "drill.6.id"},
        Mistake{"RungForOlder", [](D& d) { set(d, "drill.5.rung", "for-height"); }, kClash, "drill.5.rung"},
        Mistake{"TooManyLandings", [](D& d) { set(d, "drill.5.rung", "knee-to-hip"), set(d, "drill.5.amount", 2); },
                FaultCode::kCeiling, "drill.11.amount"},
        Mistake{"TooMuchFastRunning",
                [](D& d) {
                  for (const char* id : {"strides", "build-up-runs"}) {
                    repeat_item(d, "drill", 13);
                    const std::string line = "drill." + std::to_string(node_at(d.root, "drill").items.size());
                    set(d, line + ".id", id), set(d, line + ".amount", 4);
                    set(d, line + ".rung", id == std::string("strides") ? "rolling-start" : "to-three-quarters");
                  }
                },
                FaultCode::kCeiling, "drill.15.amount"}),
    testing::PrintToStringParamName());

// A routine in any order is accepted exactly where its phases ascend.
TEST(RoutineProperty, OrderIsJudgedByPhase) {
  EXPECT_TRUE(rc::check([] {
    const std::vector<Document> routines = shipped_routines();
    Document document = routines[*rc::gen::inRange<std::size_t>(0, routines.size())];
    std::vector<Node>& lines = node_at(document.root, "drill").items;
    const auto a = *rc::gen::inRange<std::size_t>(0, lines.size());
    const auto b = *rc::gen::inRange<std::size_t>(0, lines.size());
    std::swap(lines[a], lines[b]);
    std::vector<Phase> phases;
    for (const Node& line : lines) phases.push_back(shipped_catalogue().find(line.find("id")->text)->phase);
    const Result<Routine> routine = read_routine(document, shipped_catalogue());
    RC_ASSERT(routine.ok() == std::is_sorted(phases.begin(), phases.end()));
  }));
}

// Any drills with any rungs and doses: accepted only within the ceilings of the youngest, and never
// refused for a ceiling that holds.
TEST(RoutineProperty, CeilingsAreJudgedExactly) {
  EXPECT_TRUE(rc::check([] {
    const Catalogue& catalogue = shipped_catalogue();
    const int age = *rc::gen::inRange(8, 20);
    Document document = shipped_routine("long-practice");
    set(document, "ages.from", age);
    set(document, "ages.to", age);
    Node lines = Node::make_array();
    LoadSum sum;
    for (const Phase phase : {Phase::kLoosen, Phase::kBuild, Phase::kSpring, Phase::kRun}) {
      for (const Drill& drill : catalogue.drills) {
        const auto rung = *rc::gen::inRange<std::size_t>(0, drill.rungs.size());
        const auto dose = *rc::gen::inRange<std::size_t>(0, drill.dose.steps.size());
        const bool loads =
            drill.loads.contacts_thousandths > 0 || drill.loads.eccentric_thousandths > 0 || drill.loads.hard_running;
        const bool fits = std::max(drill.age_from, drill.rungs[rung].age_from) <= age && age <= drill.age_to;
        if (drill.phase != phase || !loads || !fits || *rc::gen::inRange(0, 3) > 0) continue;
        Node line = Node::make_table();
        line.set("id", Node::make_text(drill.id));
        line.set("rung", Node::make_text(drill.rungs[rung].key));
        line.set("sets", Node::make_integer(drill.dose.steps[dose].sets));
        line.set("amount", Node::make_integer(drill.dose.steps[dose].amount));
        lines.items.push_back(line);
        sum += load_of(drill, drill.rungs[rung], drill.dose.steps[dose], kUsualLane, catalogue.limits);
      }
    }
    RC_PRE(!lines.items.empty() && lines.items.size() <= 40U);
    set(document, "drill", lines);
    const Ceilings& ceilings = catalogue.ceilings_for(age);
    const bool within = sum.contacts <= 1000 * ceilings.contacts_session &&
                        sum.eccentric <= 1000 * ceilings.eccentric_session &&
                        sum.hard_running <= 1000 * ceilings.hard_running_session;
    const Result<Routine> routine = read_routine(document, catalogue);
    RC_TAG(within);
    RC_ASSERT(routine.ok() == within);
    if (!within) {
      for (const Fault& fault : routine.faults()) RC_ASSERT(fault.code == FaultCode::kCeiling);
    }
  }));
}

}  // namespace
}  // namespace lanework::catalogue::test
