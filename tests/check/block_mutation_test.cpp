// Blocks of the real planner are sound; for every rule of docs/model/block-check.md at least one change of an answer,
// or of the club it is held against, is found.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>

#include "app/cli/check_documents.h"
#include "core/check/check_block.h"
#include "tests/check/demo_blocks.h"

namespace lanework::check {
namespace {

using namespace test;

Node pins(const char* drill, const char* rung) {
  Node row = Node::make_table();
  row.set("drill", text(drill));
  if (*rung != '\0') row.set("rung", text(rung));
  Node list = Node::make_array();
  list.items.push_back(row);
  return list;
}

// In place of a drill of the Kestrels' session.
void exchange(Matters& m, const std::string& drill, const char* id, const char* rung, int sets, int amount) {
  Node& item = at(m.kestrels(), drill);
  item.set("drill", text(id));
  item.set("rung", text(rung));
  item.set("sets", number(sets));
  item.set("amount", number(amount));
}

void restrict_everybody(Matters& m) {
  Node row = Node::make_table();
  row.set("squad", text("Under-13 Kestrels"));
  Node list = Node::make_array();
  list.items.push_back(row);
  for (SquadDocuments& squad : m.club.squads) put(squad.restrictions.root, "restriction", list);
}

// The Dunnocks' second evening of the week ten minutes earlier: less than 48 h after the first.
void bring_together(Matters& m) {
  m.each_band("jump_cap_session", 0);
  put(m.file("u12-dunnocks"), "week.1.start", text("17:20:00"));
  for (Node& session : at(m.answer, "squads.0.sessions").items) {
    const Date date = *parse_iso_date(at(session, "date").text);
    if ((date.days_since_epoch + 3) % 7 == 2) session.set("start", text("17:20"));
  }
}

void tell_a_shortfall_that_is_none(Matters& m) {
  Node& told = at(m.kestrels(), "shortfalls");
  for (const Node& family : at(m.club.catalogues.at(0), "families.family").items) {
    const std::string start = family.find("name")->text + ":";
    const bool stands = std::any_of(told.items.begin(), told.items.end(),
                                    [&](const Node& line) { return line.text.rfind(start, 0) == 0; });
    if (stands) continue;
    told.items.push_back(text(start + " a little"));
    return;
  }
}

// The drill that leaves in week 4, in a family where eccentric work comes first.
void make_eccentric_what_leaves(Matters& m) {
  const std::string id = at(m.kestrels(), "spells.1.leaves.0").text;
  std::string family;
  for (Node& drill : at(m.club.catalogues.at(0), "drills").items) {
    if (at(drill, "id").text != id) continue;
    family = at(drill, "family").text;
    put(drill, "loads.eccentric", real(0.001));
  }
  Node first = Node::make_table();
  first.set("from_age", number(8));
  first.set("other_work_percent", number(100));
  for (Node& row : at(m.club.catalogues.at(0), "families.family").items) {
    if (at(row, "key").text == family) row.set("eccentric_first", first);
  }
}

Node without_last(const Node& list) {
  Node out = list;
  out.items.pop_back();
  return out;
}

const char* const kFirst = "sessions.0.drills.";

// Session 0 of the Kestrels is on a Tuesday, 1 two days and 2 no day before a match; 10 is in the second spell.
const std::vector<Mutation> kMutations = {
    {"another club", "answer-frame", true, [](Matters& m) { put(m.answer, "club", text("Larkhollow Athletic")); }},
    {"another Monday", "answer-frame", true, [](Matters& m) { put(m.answer, "monday", text("2026-11-30")); }},
    {"a week more", "answer-frame", true, [](Matters& m) { put(m.answer, "weeks", number(7)); }},
    {"a squad nobody knows", "squad-unknown", true, [](Matters& m) { put(m.kestrels(), "squad", text("u13-owls")); }},
    {"a squad doubled", "squad-twice", true, [](Matters& m) { at(m.answer, "squads").items.push_back(m.kestrels()); }},
    {"another name", "squad-name", true, [](Matters& m) { put(m.kestrels(), "name", text("Kestrels")); }},
    {"another routine", "squad-routine", true, [](Matters& m) { put(m.kestrels(), "routine", text("hall")); }},
    {"a session dropped", "session-dropped", false, [](Matters& m) { erase(m.kestrels(), "sessions.3"); }},
    {"a session told as missed", "session-dropped", false,
     [](Matters& m) {
       Node row = at(m.kestrels(), "missed.0");
       row.set("date", at(m.kestrels(), "sessions.3.date"));
       at(m.kestrels(), "missed").items.push_back(row);
       erase(m.kestrels(), "sessions.3");
     }},
    {"a session invented", "session-invented", false,
     [](Matters& m) {
       Node extra = at(m.kestrels(), "sessions.3");
       extra.set("start", text("20:00"));
       at(m.kestrels(), "sessions").items.push_back(extra);
     }},
    {"a session doubled", "session-invented", false,
     [](Matters& m) { at(m.kestrels(), "sessions").items.push_back(at(m.kestrels(), "sessions.3")); }},
    {"sessions out of order", "session-order", true,
     [](Matters& m) { std::swap(at(m.kestrels(), "sessions.3"), at(m.kestrels(), "sessions.4")); }},
    {"another week", "session-week", true, [](Matters& m) { put(m.kestrels(), "sessions.3.week", number(3)); }},
    {"more minutes", "session-minutes", true, [](Matters& m) { put(m.kestrels(), "sessions.3.minutes", number(22)); }},
    {"another strip", "session-strip", true,
     [](Matters& m) { put(m.kestrels(), "sessions.3.strip", text("south-side")); }},
    {"another turnout", "turnout", true, [](Matters& m) { put(m.kestrels(), "sessions.3.turnout", number(16)); }},
    {"a match day untold", "match-day", true,
     [](Matters& m) { at(m.kestrels(), "sessions.2.match_day").boolean = false; }},
    {"a day more to the match", "days-to-match", true,
     [](Matters& m) { put(m.kestrels(), "sessions.0.days_to_match", number(5)); }},
    {"no match in sight", "days-to-match", true, [](Matters& m) { erase(m.kestrels(), "sessions.0.days_to_match"); }},
    {"a missed slot dropped", "missed-dropped", true, [](Matters& m) { erase(m.kestrels(), "missed.0"); }},
    {"a missed slot invented", "missed-invented", true,
     [](Matters& m) {
       Node row = at(m.kestrels(), "missed.0");
       row.set("date", text("2026-12-23"));
       at(m.kestrels(), "missed").items.push_back(row);
     }},
    {"another reason", "missed-why", true, [](Matters& m) { put(m.kestrels(), "missed.0.why", text("Autumn break")); }},
    {"a lane the strip has not", "lane-unknown", true,
     [](Matters& m) { at(m.kestrels(), "sessions.0.lanes.1").integer = 3; }},
    {"lanes in disorder", "lane-order", true,
     [](Matters& m) {
       at(m.kestrels(), "sessions.0.lanes.0").integer = 2;
       at(m.kestrels(), "sessions.0.lanes.1").integer = 1;
     }},
    {"a lane of the squad beside", "lane-taken", true,
     [](Matters& m) { at(m.answer, "squads.0.sessions.0.lanes.1").integer = 3; }},
    {"a lane less", "lane-count", false, [](Matters& m) { erase(m.kestrels(), "sessions.0.lanes.1"); }},
    {"lanes at an away match", "lane-count", false,
     [](Matters& m) { at(m.file("u13-kestrels"), "match.0").set("away", yes()); }},
    {"a match day with steps", "match-day-steps", true,
     [](Matters& m) { put(m.kestrels(), "sessions.2.budget_steps", number(100)); }},
    {"a match day with nothing to do", "match-day-empty", false,
     [](Matters& m) { put(m.kestrels(), "sessions.2.drills", Node::make_array()); }},
    {"a match day's dose beyond its own rules", "not-offered", false,
     [](Matters& m) { put(m.kestrels(), "sessions.2.drills.0.amount", number(3)); }},
    {"a drill nobody knows", "drill-unknown", false,
     [](Matters& m) { put(m.kestrels(), std::string(kFirst) + "0.drill", text("a-lap")); }},
    {"a rung nobody knows", "rung-unknown", false,
     [](Matters& m) { put(m.kestrels(), std::string(kFirst) + "0.rung", text("upside-down")); }},
    {"a dose nobody knows", "dose-unknown", false,
     [](Matters& m) { put(m.kestrels(), std::string(kFirst) + "0.amount", number(17)); }},
    {"a drill doubled", "drill-twice", false,
     [](Matters& m) {
       at(m.kestrels(), "sessions.0.drills").items.push_back(at(m.kestrels(), "sessions.0.drills.0"));
     }},
    {"two drills exchanged", "order", false,
     [](Matters& m) { std::swap(at(m.kestrels(), "sessions.0.drills.0"), at(m.kestrels(), "sessions.0.drills.4")); }},
    {"a family split", "family-split", false,
     [](Matters& m) {
       std::vector<Node>& items = at(m.kestrels(), "sessions.0.drills").items;
       items.push_back(items.front());
     }},
    {"a ban of the club", "ban", false,
     [](Matters& m) {
       Node lock = Node::make_table();
       lock.set("bans", texts({"squat"}));
       at(m.club.club.root, "lock").items.push_back(lock);
     }},
    {"a younger squad", "age", false, [](Matters& m) { put(m.file("u13-kestrels"), "age", number(8)); }},
    {"a squad held back", "squad-restriction", false, restrict_everybody},
    {"no soft ground", "need", false, [](Matters& m) { m.strip("soft_ground", Node::make_boolean(false)); }},
    {"dark", "surface", false,
     [](Matters& m) {
       m.strip("surface", texts({"wet", "hard", "uneven", "dark"}));
     }},
    {"short lanes", "lane-too-short", false, [](Matters& m) { m.strip("lane_length_metres", number(6)); }},
    {"the club's cones given out", "cones", false,
     [](Matters& m) {
       m.strip("line", Node::make_boolean(false));
       put(m.club.club.root, "kit.cones", number(1));
     }},
    {"no cones of its own", "cones", false,
     [](Matters& m) {
       m.strip("line", Node::make_boolean(false));
       put(m.file("u13-kestrels"), "kit.cones", number(1));
     }},
    {"eccentric work new two days before a match", "new-eccentric", false,
     [](Matters& m) { exchange(m, "sessions.1.drills.6", "walking-bridge", "two-steps", 1, 3); }},
    {"a drill that may not enter", "not-open", false,
     [](Matters& m) { exchange(m, "sessions.1.drills.6", "walking-bridge", "two-steps", 1, 3); }},
    {"an easier rung", "rung-of-week", false,
     [](Matters& m) { put(m.kestrels(), std::string(kFirst) + "9.rung", text("half-way")); }},
    {"another rung confirmed", "rung-of-week", false,
     [](Matters& m) {
       Node row = Node::make_table();
       row.set("drill", text("single-leg-bridge"));
       row.set("rung", text("leg-long"));
       row.set("from", text("2026-12-07"));
       Node list = Node::make_array();
       list.items.push_back(row);
       put(m.file("u13-kestrels"), "rung", list);
     }},
    {"a pin out of the set", "pin", false,
     [](Matters& m) { put(m.file("u13-kestrels"), "locks.pins", pins("front-plank", "")); }},
    {"another dose pinned", "pin", false,
     [](Matters& m) { put(m.file("u13-kestrels"), "locks.pins", pins("squat", "half-way")); }},
    {"a pinned drill left out and not told", "shortfall-missing", false,
     [](Matters& m) {
       put(m.file("u13-kestrels"), "locks.pins", pins("easy-laps", ""));
       erase(m.kestrels(), "sessions.0.drills.0");
     }},
    {"a pinned drill told as left out", "shortfall-untrue", false,
     [](Matters& m) {
       put(m.file("u13-kestrels"), "locks.pins", pins("jump-and-stick", ""));
       at(m.kestrels(), "shortfalls")
           .items.push_back(text("Jump and stick: fixed by the lead, but there is no room for it in 1 of 10 sessions"));
     }},
    {"less than half of the routine's dose", "dose-small", false,
     [](Matters& m) { put(m.kestrels(), std::string(kFirst) + "0.amount", number(1)); }},
    {"eccentric work of the routine swapped away", "eccentric-left", false, make_eccentric_what_leaves},
    {"a step less", "steps", true, [](Matters& m) { --at(m.kestrels(), std::string(kFirst) + "0.steps").integer; }},
    {"never taught", "steps", false, [](Matters& m) { put(m.file("u13-kestrels"), "taught", Node::make_table()); }},
    {"a slower squad", "steps", false, [](Matters& m) { put(m.file("u13-kestrels"), "clock.pace", real(1.1)); }},
    {"a step less in all", "planned-steps", true,
     [](Matters& m) { --at(m.kestrels(), "sessions.0.planned_steps").integer; }},
    {"a larger budget", "budget-steps", true,
     [](Matters& m) { ++at(m.kestrels(), "sessions.0.budget_steps").integer; }},
    {"no budget", "budget-steps", true, [](Matters& m) { erase(m.kestrels(), "sessions.0.budget_steps"); }},
    {"shorter slots", "clock", false, [](Matters& m) { put(m.file("u13-kestrels"), "week.0.minutes", number(12)); }},
    {"a lower ceiling of landings", "ceiling-contacts", false, [](Matters& m) { m.each_band("jump_cap_session", 10); }},
    {"a lower ceiling of eccentric work", "ceiling-eccentric", false,
     [](Matters& m) {
       m.each_band("eccentric_session", 0);
       exchange(m, "sessions.0.drills.6", "walking-bridge", "two-steps", 1, 3);
     }},
    {"a lower ceiling of hard running", "ceiling-hard-running", false,
     [](Matters& m) { m.each_band("hard_running_session_metres", 10); }},
    {"nothing new allowed", "new-in-session", false, [](Matters& m) { put(m.limits(), "most_new_drills", number(0)); }},
    {"little new allowed in a week", "new-in-week", false,
     [](Matters& m) {
       put(m.limits(), "most_new_drills", number(0));
       exchange(m, "sessions.0.drills.5", "hip-opening", "hip-height", 1, 1);
       exchange(m, "sessions.0.drills.6", "walking-bridge", "two-steps", 1, 3);
     }},
    {"a lower ceiling of a week's landings", "week-contacts", false,
     [](Matters& m) { m.each_band("jump_cap_week", 10); }},
    {"a lower ceiling of a week's eccentric work", "week-eccentric", false,
     [](Matters& m) {
       m.each_band("eccentric_week", 0);
       exchange(m, "sessions.0.drills.6", "walking-bridge", "two-steps", 1, 3);
     }},
    {"a lower ceiling of a week's hard running", "week-hard-running", false,
     [](Matters& m) { m.each_band("hard_running_week_metres", 10); }},
    {"two hard sessions together", "apart", false, bring_together},
    {"a spell lost", "spells", false, [](Matters& m) { erase(m.kestrels(), "spells.1"); }},
    {"a spell of four weeks", "spells", true, [](Matters& m) { put(m.kestrels(), "spells.0.weeks", number(4)); }},
    {"another spell of a week", "spells", true, [](Matters& m) { put(m.kestrels(), "weeks.0.spell", number(2)); }},
    {"a drill not of the set", "member", false, [](Matters& m) { erase(m.kestrels(), "spells.0.drills.0"); }},
    {"a set too small", "size", false, [](Matters& m) { erase(m.kestrels(), "spells.0.drills.0"); }},
    {"no swap", "swaps", false,
     [](Matters& m) { put(m.kestrels(), "spells.1.drills", at(m.kestrels(), "spells.0.drills")); }},
    {"a swap in the first spell", "swaps", false,
     [](Matters& m) { put(m.kestrels(), "spells.0.drills.9", text("split-squat")); }},
    {"a swap for a drill of others", "set-closed", false,
     [](Matters& m) { put(m.kestrels(), "spells.1.drills.9", text("kneeling-hamstring-lower-at-bar")); }},
    {"a drill that comes in untold", "comes-in", true, [](Matters& m) { erase(m.kestrels(), "spells.1.comes_in.0"); }},
    {"a drill that leaves untold", "leaves", true, [](Matters& m) { erase(m.kestrels(), "spells.1.leaves.0"); }},
    {"a week lost", "weeks", true,
     [](Matters& m) { put(m.kestrels(), "weeks", without_last(at(m.kestrels(), "weeks"))); }},
    {"a week numbered otherwise", "weeks", true, [](Matters& m) { put(m.kestrels(), "weeks.1.week", number(3)); }},
    {"a family lost", "family-rows", true, [](Matters& m) { erase(m.kestrels(), "weeks.0.families.2"); }},
    {"a family nobody knows", "family-unknown", false,
     [](Matters& m) { put(m.kestrels(), "weeks.0.families.2.family", text("luck")); }},
    {"a credit more", "credits", true, [](Matters& m) { ++at(m.kestrels(), "weeks.0.families.0.credits").integer; }},
    {"a lower target", "target", true, [](Matters& m) { --at(m.kestrels(), "weeks.0.families.0.target").integer; }},
    {"a second more work", "work-seconds", true,
     [](Matters& m) { ++at(m.kestrels(), "weeks.0.families.0.work_seconds").integer; }},
    {"fewer landings", "load-stated", true, [](Matters& m) { put(m.kestrels(), "weeks.0.contacts.used", number(1)); }},
    {"a higher ceiling of eccentric work", "load-stated", true,
     [](Matters& m) { ++at(m.kestrels(), "weeks.0.eccentric.ceiling").integer; }},
    {"no hard running", "load-stated", true, [](Matters& m) { erase(m.kestrels(), "weeks.0.hard_running_metres"); }},
    {"a point more", "value", false, [](Matters& m) { ++at(m.kestrels(), "value").integer; }},
    {"other weights of families", "value", false,
     [](Matters& m) { put(m.club.catalogues.at(0), "families.family.0.weight", number(5)); }},
    {"other weights of a squad", "value", true,
     [](Matters& m) { put(m.file("u13-kestrels"), "weights.new_drill", real(3.25)); }},
    {"a bound below the value", "bound", false,
     [](Matters& m) { put(m.kestrels(), "bound", number(at(m.kestrels(), "value").integer - 1)); }},
    {"a smaller gap", "gap", true, [](Matters& m) { put(m.kestrels(), "gap_percent", real(0.01)); }},
    {"a shortfall unsaid", "shortfall-missing", true,
     [](Matters& m) { put(m.kestrels(), "shortfalls", Node::make_array()); }},
    {"a shortfall that is none", "shortfall-untrue", true, [](Matters& m) { tell_a_shortfall_that_is_none(m); }},
    {"no plan keeps every row", "wrongly-infeasible", true,
     [](Matters& m) { at(m.kestrels(), "feasible").boolean = false; }},
};

TEST(BlockMutation, TheSoundAnswerIsSound) {
  ASSERT_TRUE(demo().faults.empty());
  const BlockReport report = report_of(cli::check_documents(demo().documents), sound_answer());
  EXPECT_TRUE(report.ok()) << lines(report);
  EXPECT_EQ(report.squads, 3);
  EXPECT_EQ(report.sessions, 44);
}

TEST(BlockMutation, EachIsFound) {
  expect_each_is_found({cli::check_documents(demo().documents), sound_answer()}, kMutations);
}

TEST(BlockMutation, EveryRuleOfTheModelHasOne) {
  std::ifstream in(std::string(LANEWORK_SOURCE_DIR) + "/docs/model/block-check.md");
  std::set<std::string> tried;
  for (const auto* mutations : {&kMutations, &rolling_mutations()}) {
    for (const Mutation& mutation : *mutations) tried.insert(mutation.rule);
  }
  int written = 0;
  for (std::string line; std::getline(in, line);) {
    if (line.rfind("| `", 0) != 0) continue;
    const std::string key = line.substr(3, line.find('`', 3) - 3);
    EXPECT_EQ(tried.count(key), 1U) << key;
    ++written;
  }
  EXPECT_GE(written, 60);
}

TEST(BlockMutation, AnAnswerThatCannotBeReadIsAMistake) {
  const BlockDocuments documents = cli::check_documents(demo().documents);
  Node answer = sound_answer();
  put(answer, "squads.0.value", text("much"));
  const auto report = check_block(documents, {"answer.json", answer});
  ASSERT_FALSE(report);
  EXPECT_EQ(to_line(report.faults().front()),
            "answer.json: squads.1.value: found 'much', expected a whole number from -1000000000 to 1000000000");
}

TEST(BlockPlanner, ASquadOfEveryRoutineIsSound) {
  const Node answer = planned_blocks(
      demo().club, {"u10-wrens", "u11-siskins", "u12-redstarts", "u15-redwings", "u18-buzzards", "u19-kites"});
  const BlockReport report = report_of(cli::check_documents(demo().documents), answer);
  EXPECT_TRUE(report.ok()) << lines(report);
  EXPECT_EQ(report.squads, 6);
}

// A routine without the families 'hamstring' and 'run-and-cut', which are required.
TEST(BlockPlanner, FamiliesThatTheRoutineLacksComeIn) {
  const std::set<std::string> lost = {"single-leg-bridge", "plant-and-cut", "strides"};
  club::Club club = demo().club;
  BlockDocuments documents = cli::check_documents(demo().documents);
  for (club::ClubSquad& squad : club.squads) {
    if (squad.id != "u13-kestrels") continue;
    const std::vector<catalogue::Drill>& drills = club.catalogue_of(squad).drills;
    std::erase_if(squad.routine.lines, [&](const catalogue::RoutineLine& line) {
      return lost.count(drills[static_cast<std::size_t>(line.drill)].id) > 0;
    });
  }
  for (SquadDocuments& squad : documents.squads) {
    if (squad.id != "u13-kestrels") continue;
    std::erase_if(at(squad.routine.root, "drill").items,
                  [&](const Node& line) { return lost.count(line.find("id")->text) > 0; });
  }
  Node answer = planned_blocks(club, {"u13-kestrels"});
  const BlockReport report = report_of(documents, answer);
  EXPECT_TRUE(report.ok()) << lines(report);
  EXPECT_EQ(at(answer, "squads.0.spells.0.comes_in").items.size(), 2U);
}

// The Kestrels have a match every Tuesday and Thursday, whose warm-up takes the slot.
TEST(BlockPlanner, MatchDaysAlone) {
  club::Club club = demo().club;
  BlockDocuments documents = cli::check_documents(demo().documents);
  std::vector<std::string> days;
  for (int week = 0; week < 6; ++week) {
    for (const int weekday : {1, 3})
      days.push_back(to_iso({club.settings.block_from.days_since_epoch + 7 * week + weekday}));
  }
  for (club::ClubSquad& squad : club.squads) {
    if (squad.id != "u13-kestrels") continue;
    squad.squad.weekly.matches.clear();
    for (const std::string& iso : days) {
      session::Match match;
      match.date = *parse_iso_date(iso);
      squad.squad.weekly.matches.push_back(match);
    }
  }
  for (SquadDocuments& squad : documents.squads) {
    if (squad.id != "u13-kestrels") continue;
    erase(squad.squad.root, "match");
    put(squad.squad.root, "matches", texts(days));
  }
  Node answer = planned_blocks(club, {"u13-kestrels"});
  const BlockReport report = report_of(documents, answer);
  EXPECT_TRUE(report.ok()) << lines(report);
  EXPECT_EQ(report.sessions, 12);
}

}  // namespace
}  // namespace lanework::check
