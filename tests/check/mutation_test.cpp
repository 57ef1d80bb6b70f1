// For every rule of docs/model/check.md at least one plan that breaks it, made from a sound one.
#include <gtest/gtest.h>

#include <functional>
#include <set>

#include "tests/check/requests.h"
#include "tests/check/tiny.h"

namespace lanework::check {
namespace {

using namespace test;

struct Mutation {
  const char* name;
  const char* rule;
  bool alone;  // nothing else may be found wrong
  std::function<void(Node& request, Node& answer)> apply;
};

void swap_items(Node& answer, std::size_t a, std::size_t b) {
  std::vector<Node>& items = at(answer, "items").items;
  std::swap(items.at(a), items.at(b));
}

Node load_row(const char* key, std::int64_t value) {
  Node loads = Node::make_table();
  loads.set(key, number(value));
  return loads;
}

Node squad_restriction() {
  Node row = Node::make_table();
  row.set("squad", text("Under-13 Kestrels"));
  row.set("areas", texts({"knee"}));
  row.set("until", text("2026-11-26"));
  return row;
}

// A second trunk drill between the first and the last, then a drill of another family between them.
void split_trunk(Node& request, Node& answer) {
  put(request, "squad.tonight.free_composition", yes());
  std::vector<Node>& items = at(answer, "items").items;
  Node front = items[1];
  front.set("drill", text("front-plank"));
  front.set("amount", number(20));
  items.push_back(front);
}

void pin(Node& request, const char* drill, const char* rung, int amount) {
  Node row = Node::make_table();
  row.set("drill", text(drill));
  if (*rung != '\0') row.set("rung", text(rung));
  if (amount > 0) {
    row.set("sets", number(1));
    row.set("amount", number(amount));
  }
  Node pins = Node::make_array();
  pins.items.push_back(row);
  put(request, "squad.tonight.pins", pins);
}

void say_infeasible(Node& /*request*/, Node& answer) {
  Node why = Node::make_table();
  why.set("conflict", texts({"the slot"}));
  why.set("way_out", text("a longer slot"));
  put(answer, "outcome", text("infeasible"));
  put(answer, "infeasible", why);
  put(answer, "items", Node::make_array());
}

// Of the answer alone: something stated that is not so.
const std::vector<Mutation> kOfTheAnswer = {
    {"an item without a drill", "drill-unknown", false, [](Node&, Node& a) { erase(a, "items.1.drill"); }},
    {"a drill nobody knows", "drill-unknown", true, [](Node&, Node& a) { put(a, "items.1.drill", text("a-plank")); }},
    {"a rung nobody knows", "rung-unknown", true, [](Node&, Node& a) { put(a, "items.1.rung", text("upside-down")); }},
    {"a dose nobody knows", "dose-unknown", true, [](Node&, Node& a) { put(a, "items.1.amount", number(21)); }},
    {"no items", "answer-form", false, [](Node&, Node& a) { put(a, "items", text("none")); }},
    {"an outcome nobody knows", "answer-form", true, [](Node&, Node& a) { put(a, "outcome", text("good")); }},
    {"no levels", "answer-form", true, [](Node&, Node& a) { erase(a, "objective"); }},
    {"another version", "answer-form", true, [](Node&, Node& a) { put(a, "version", number(2)); }},
    {"an empty session", "empty", false, [](Node&, Node& a) { put(a, "items", Node::make_array()); }},
    {"the order swapped", "order", false, [](Node&, Node& a) { swap_items(a, 1, 2); }},
    {"a drill doubled", "drill-twice", false, [](Node&, Node& a) { at(a, "items").items.push_back(at(a, "items.2")); }},
    {"a dose beyond the ceiling", "ceiling-contacts", false,
     [](Node&, Node& a) { put(a, "items.2.amount", number(8)); }},
    {"a larger dose than the routine's", "not-offered", false,
     [](Node&, Node& a) { put(a, "items.0.amount", number(3)); }},
    {"a harder rung than the routine's", "not-offered", false,
     [](Node&, Node& a) { put(a, "items.0.rung", text("steady")); }},
    {"a rung for the older", "age", false, [](Node&, Node& a) { put(a, "items.1.rung", text("straight-legs")); }},
    {"other words for a rung", "item-words", true, [](Node&, Node& a) { put(a, "items.1.rung_words", text("easy")); }},
    {"other words for a dose", "item-words", true, [](Node&, Node& a) { put(a, "items.1.dose", text("30 s")); }},
    {"another family", "item-words", true, [](Node&, Node& a) { put(a, "items.1.family", text("balance")); }},
    {"a second less to do it", "takes-seconds", true,
     [](Node&, Node& a) { put(a, "items.0.takes_seconds", number(45)); }},
    {"a second more to do it", "takes-seconds", true,
     [](Node&, Node& a) { put(a, "items.2.takes_seconds", number(36)); }},
    {"a change a second short", "change-seconds", true,
     [](Node&, Node& a) { put(a, "items.1.change_seconds", number(9)); }},
    {"a break that nobody asked for", "rest-seconds", true,
     [](Node&, Node& a) { put(a, "items.1.rest_seconds", number(60)); }},
    {"a start a second late", "starts-seconds", true,
     [](Node&, Node& a) { put(a, "items.2.starts_seconds", number(144)); }},
    {"a sum a second short", "planned-seconds", true, [](Node&, Node& a) { put(a, "planned_seconds", number(177)); }},
    {"a median that is no sum", "planned-seconds", true,
     [](Node&, Node& a) { put(a, "time.median_seconds", number(179)); }},
    {"gathering a second short", "gathering-seconds", true,
     [](Node&, Node& a) { put(a, "gathering_seconds", number(17)); }},
    {"a margin beyond the slot", "slot", true, [](Node&, Node& a) { put(a, "margin_seconds", number(33)); }},
    {"another slot", "slot-stated", true, [](Node&, Node& a) { put(a, "slot_seconds", number(240)); }},
    {"another turnout", "turnout", true, [](Node&, Node& a) { put(a, "turnout", number(7)); }},
    {"more moving", "moving", true, [](Node&, Node& a) { put(a, "time.moving_permille", number(490)); }},
    {"an early finish", "finish", true, [](Node&, Node& a) { put(a, "time.finish", text("18:03")); }},
    {"an early worst finish", "finish", true, [](Node&, Node& a) { put(a, "time.finish_nine_in_ten", text("18:03")); }},
    {"nine in ten before the plan", "finish", true,
     [](Node&, Node& a) { put(a, "time.nine_in_ten_seconds", number(177)); }},
    {"fewer uncovered", "level-uncovered", true, [](Node&, Node& a) { put(a, "objective.uncovered", number(0)); }},
    {"less short", "level-shortfall", true, [](Node&, Node& a) { put(a, "objective.shortfall", number(63)); }},
    {"fewer changes", "level-changes", true, [](Node&, Node& a) { put(a, "objective.changes", number(4)); }},
    {"more preference", "level-preference", true, [](Node&, Node& a) { put(a, "objective.preference", number(1)); }},
    {"a change unsaid", "change-missing", true, [](Node&, Node& a) { erase(a, "changes.0"); }},
    {"a change that is none", "change-untrue", true,
     [](Node&, Node& a) { at(a, "changes").items.push_back(at(a, "changes.0")); }},
    {"a change of another kind", "change-untrue", false,
     [](Node&, Node& a) { put(a, "changes.0.kind", text("larger-dose")); }},
    {"a change from another dose", "change-untrue", false,
     [](Node&, Node& a) { put(a, "changes.0.from", text("15 s")); }},
    {"a change without a reason", "change-why", true, [](Node&, Node& a) { put(a, "changes.0.why", text("")); }},
    {"an uncovered family unsaid", "uncovered-listed", true, [](Node&, Node& a) { erase(a, "uncovered.0"); }},
    {"a covered family listed", "uncovered-listed", true,
     [](Node&, Node& a) { put(a, "uncovered.0.family", text("trunk")); }},
    {"fewer landings", "load-stated", true, [](Node&, Node& a) { put(a, "loads.0.planned", number(4)); }},
    {"a higher ceiling", "load-stated", true, [](Node&, Node& a) { put(a, "loads.0.ceiling", number(6)); }},
    {"a load unsaid", "load-stated", true, [](Node&, Node& a) { erase(a, "loads.2"); }},
    {"a player's name", "private", true,
     [](Node&, Node& a) { put(a, "changes.0.why", text("for amara okonjo's sake")); }},
    {"a part of a name", "private", true, [](Node&, Node& a) { put(a, "time.saving", text("Bj\u00f8rn first")); }},
    {"a player's id", "private", true, [](Node&, Node& a) { put(a, "time.saving", text("without Q04")); }},
    {"a player's mass", "private", true, [](Node&, Node& a) { put(a, "mass", number(43500)); }},
    {"a player's restriction", "private", true,
     [](Node&, Node& a) { put(a, "changes.1.why", text("No hopping at all")); }},
    {"nothing can be done, it says", "wrongly-infeasible", true, say_infeasible},
};

// Of the request: the same answer, on an evening that does not allow it.
const std::vector<Mutation> kOfTheEvening = {
    {"a drill banned", "ban", false, [](Node& r, Node&) { put(r, "squad.tonight.bans", texts({"side-plank"})); }},
    {"a younger squad", "age", false,
     [](Node& r, Node&) { put(r, "squad.age", number(10)), put(r, "catalogue.drills.1.ages.from", number(11)); }},
    {"an older squad", "age", false, [](Node& r, Node&) { put(r, "catalogue.drills.1.ages.to", number(11)); }},
    {"the squad held back", "squad-restriction", false,
     [](Node& r, Node&) { at(r, "restrictions.restriction").items.push_back(squad_restriction()); }},
    {"no soft ground", "need", false, [](Node& r, Node&) { put(r, "strip.soft_ground", Node::make_boolean(false)); }},
    {"the wall gone", "need", false, [](Node& r, Node&) { put(r, "catalogue.drills.1.needs", texts({"wall"})); }},
    {"too few balls", "need", false,
     [](Node& r, Node&) {
       put(r, "squad.kit.balls", number(5)), put(r, "catalogue.drills.1.needs", texts({"ball-each"}));
     }},
    {"too few balls for pairs", "need", false,
     [](Node& r, Node&) {
       put(r, "squad.kit.balls", number(2)), put(r, "catalogue.drills.1.needs", texts({"ball-a-pair"}));
     }},
    {"a rung's own need", "need", false,
     [](Node& r, Node&) { put(r, "catalogue.drills.1.rung.0.needs", texts({"line"})); }},
    {"a wet evening", "surface", false, [](Node& r, Node&) { put(r, "strip.surface", texts({"wet"})); }},
    {"a short lane", "lane-too-short", false, [](Node& r, Node&) { put(r, "strip.lane_length_metres", real(7.5)); }},
    {"too few cones", "cones", true, [](Node& r, Node&) { put(r, "squad.kit.cones", number(3)); }},
    {"not of the routine", "not-offered", false,
     [](Node& r, Node&) {
       erase(r, "routine.drill.1"), put(r, "catalogue.families.family.1.required", Node::make_boolean(false));
     }},
    {"a pin dropped", "pin", false, [](Node& r, Node&) { pin(r, "front-plank", "", 0); }},
    {"another rung pinned", "pin", true, [](Node& r, Node&) { pin(r, "easy-laps", "steady", 0); }},
    {"another dose pinned", "pin", true, [](Node& r, Node&) { pin(r, "side-plank", "", 15); }},
    {"a shorter slot", "slot", false, [](Node& r, Node&) { put(r, "squad.slot.minutes", real(3.3)); }},
    {"families in another order", "order", false,
     [](Node& r, Node& a) {
       put(r, "catalogue.families.family.3.phases", texts({"build"})),
           put(r, "catalogue.drills.3.phase", text("build"));
       put(a, "items.2.phase", text("build")), swap_items(a, 1, 2);
     }},
    {"a family split", "family-split", false, split_trunk},
    {"eccentric work before a match", "ceiling-eccentric", false,
     [](Node& r, Node&) { put(r, "catalogue.drills.1.loads", load_row("eccentric", 1)); }},
    {"too much hard running", "ceiling-hard-running", false,
     [](Node& r, Node&) {
       put(r, "catalogue.drills.0.loads.hard_running", yes());
       put(r, "catalogue.limits.ceilings.1.hard_running_session_metres", number(30));
     }},
    {"a match tomorrow", "ceiling-new-drills", false, [](Node& r, Node&) { erase(r, "routine.drill.1"); }},
    {"a match tonight", "ceiling-contacts", false,
     [](Node& r, Node&) { put(r, "squad.slot.days_to_match", number(0)); }},
    {"the youngest there after all", "ceiling-contacts", false,
     [](Node& r, Node&) { put(r, "squad.tonight.away", texts({})); }},
    {"one more in the squad", "turnout", false, [](Node& r, Node&) { put(r, "squad.tonight.away", texts({})); }},
    {"somebody away", "turnout", false,
     [](Node& r, Node&) {
       put(r, "squad.tonight.away", texts({"Q07", "Q02"}));
     }},
    {"a slower squad", "takes-seconds", false, [](Node& r, Node&) { put(r, "squad.clock.pace", real(1.03)); }},
    {"one lane fewer", "takes-seconds", false, [](Node& r, Node&) { put(r, "strip.lanes", number(1)); }},
    {"never taught", "takes-seconds", false, [](Node& r, Node&) { put(r, "squad.taught", Node::make_table()); }},
    {"a wider area", "change-seconds", false, [](Node& r, Node&) { put(r, "strip.area_metres.width", number(13)); }},
    {"two late", "gathering-seconds", false, [](Node& r, Node&) { put(r, "squad.tonight.late", number(2)); }},
    {"a break asked for", "rest-seconds", false,
     [](Node& r, Node&) {
       put(r, "squad.tonight.breaks", number(1)), put(r, "squad.tonight.break_minutes", number(1));
     }},
    {"thunder", "no-session", true, [](Node& r, Node&) { put(r, "squad.tonight.no_session", text("thunder")); }},
    {"other weights", "level-changes", true, [](Node& r, Node&) { put(r, "squad.weights.dose_step", real(1.25)); }},
};

void expect_caught(const Mutation& mutation) {
  SCOPED_TRACE(mutation.name);
  Node request = tiny_request();
  Node answer = tiny_answer();
  mutation.apply(request, answer);
  const Report report = report_of(request, answer);
  EXPECT_TRUE(breaks(report, mutation.rule)) << mutation.rule << " not among\n" << lines(report);
  if (!mutation.alone) return;
  for (const Violation& violation : report.violations) EXPECT_EQ(violation.rule, mutation.rule) << to_line(violation);
}

TEST(Mutation, OfTheAnswer) {
  for (const Mutation& mutation : kOfTheAnswer) expect_caught(mutation);
}

TEST(Mutation, OfTheEvening) {
  for (const Mutation& mutation : kOfTheEvening) expect_caught(mutation);
}

TEST(Mutation, EveryRuleOfTheModelHasOne) {
  std::ifstream in(std::string(LANEWORK_SOURCE_DIR) + "/docs/model/check.md");
  std::set<std::string> written;
  for (std::string line; std::getline(in, line);) {
    if (line.rfind("| `", 0) == 0) written.insert(line.substr(3, line.find('`', 3) - 3));
  }
  std::set<std::string> tried;
  for (const Mutation& mutation : kOfTheAnswer) tried.insert(mutation.rule);
  for (const Mutation& mutation : kOfTheEvening) tried.insert(mutation.rule);
  EXPECT_EQ(written, tried);
}

TEST(Mutation, AWordOfTheCatalogueIsNoName) {
  Node answer = tiny_answer();
  // 'Bridge' is Ewa's family name, and here a word of the catalogue.
  Node request = tiny_request();
  put(answer, "changes.0.why", text("Bridge first"));
  EXPECT_TRUE(breaks(report_of(request, answer), "private"));
  put(request, "catalogue.drills.2.name", text("Bridge"));
  EXPECT_FALSE(breaks(report_of(request, answer), "private"));
}

TEST(Mutation, AWitnessIsNeeded) {
  Node request = tiny_request();
  Node answer = tiny_answer();
  say_infeasible(request, answer);
  pin(request, "side-plank", "", 15);
  put(request, "squad.tonight.bans", texts({"side-plank"}));
  const Report report = report_of(request, answer);
  EXPECT_TRUE(report.ok()) << lines(report);
  EXPECT_TRUE(report.infeasible);
}

}  // namespace
}  // namespace lanework::check
