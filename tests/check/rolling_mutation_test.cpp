// Blocks of the real planner that have begun are sound, day after day; for every rule about them at least one change of
// an answer, or of what is told, is found.
#include <gtest/gtest.h>

#include "app/cli/check_documents.h"
#include "app/planning/standing_block.h"
#include "core/door/roll_on.h"
#include "core/door/squad_block.h"
#include "tests/check/demo_blocks.h"

namespace lanework::check {
namespace {

using namespace test;

// The Kestrels' Tuesday was cut short after nine minutes, on Thursday half did it, without the squat; the others tell
// nothing. It is Monday 30 November.
door::SoFar so_far() {
  door::SoFar out;
  out.today = *parse_iso_date("2026-11-30");
  const club::Club& club = demo().club;
  club::SessionRow row;
  row.squad = static_cast<std::size_t>(club.find("u13-kestrels") - club.squads.data());
  row.start = *parse_time_of_day("18:00");
  row.date = *parse_iso_date("2026-11-24");
  row.happened = club::Happened::kCutShort;
  row.minutes = 9;
  out.rows.push_back(row);
  row.date = *parse_iso_date("2026-11-26");
  row.happened = club::Happened::kHeld;
  row.minutes.reset();
  row.did_it = club::DidIt::kHalf;
  row.left_out = {"squat"};
  out.rows.push_back(row);
  return out;
}

// The sound answer planned on.
Node rolled_on(const Node& answer, const door::SoFar& so_far) {
  const club::Club& club = demo().club;
  const auto standing = read::read_block_answer("standing.json", to_json(answer, 0));
  const club::Allocation allocation = club::allocate(club, club.settings.block_from, club.settings.block_weeks);
  plan::KernelWorkspace workspace;
  std::vector<door::SquadBlock> blocks;
  for (std::size_t s = 0; s < club.squads.size(); ++s) {
    if (standing.value().find(club.squads[s].id) == nullptr) continue;
    auto wishes = door::wishes_of(club, club.squads[s], allocation.calendars[s]);
    auto stands = planning::standing_block(standing.value(), "standing.json", club, club.squads[s]);
    auto rolled = door::roll_on(std::move(wishes).value(), std::move(stands).value(), so_far);
    if (!rolled) throw std::runtime_error(to_line(rolled.faults().front()));
    blocks.push_back(door::plan_block(std::move(rolled).value(), {}, workspace));
  }
  return door::block_answer_node(club, blocks);
}

const Node& sound_rolled_answer() {
  static const Node kAnswer = rolled_on(sound_answer(), so_far());
  return kAnswer;
}

Node& told(Matters& m, std::size_t row) { return m.club.so_far->sessions.items.at(row); }

// Sessions 0 to 2 of the Kestrels are over; 3 is the coming one.
const std::vector<Mutation> kMutations = {
    {"checked without what happened", "so-far", false, [](Matters& m) { m.club.so_far.reset(); }},
    {"another day", "so-far", true, [](Matters& m) { put(m.kestrels(), "rolling.today", text("2026-12-01")); }},
    {"held instead of cut short", "past-told", true,
     [](Matters& m) { put(m.kestrels(), "sessions.0.happened", text("held")); }},
    {"more minutes than there were", "past-told", true,
     [](Matters& m) { put(m.kestrels(), "sessions.0.minutes_had", number(12)); }},
    {"most did it", "past-told", true, [](Matters& m) { put(m.kestrels(), "sessions.1.did_it", text("most")); }},
    {"a word where there is none", "past-told", true,
     [](Matters& m) { put(m.kestrels(), "sessions.2.happened", text("held")); }},
    {"a session to come told as held", "past-told", true,
     [](Matters& m) { at(m.kestrels(), "sessions.3").set("happened", text("held")); }},
    {"a drill done after the end", "past-done", true,
     [](Matters& m) {
       Node& items = at(m.kestrels(), "sessions.0.drills");
       items.items.back().set("done", yes());
     }},
    {"a drill done that was left out", "past-done", false,
     [](Matters& m) {
       for (Node& item : at(m.kestrels(), "sessions.1.drills").items) item.set("done", yes());
     }},
    {"a row of more minutes", "credits", false, [](Matters& m) { told(m, 0).set("minutes", number(14)); }},
    {"a row that most did it", "credits", false, [](Matters& m) { told(m, 1).set("did_it", text("most")); }},
    {"a row that it was missed", "load-stated", false, [](Matters& m) { told(m, 1).set("happened", text("missed")); }},
    {"a target without what is owed", "target", true,
     [](Matters& m) {
       for (Node& row : at(m.kestrels(), "weeks.1.families").items) {
         if (row.find("family")->text == "trunk") row.set("target", number(10));
       }
     }},
    {"a later target with what is owed", "target", true,
     [](Matters& m) {
       for (Node& row : at(m.kestrels(), "weeks.3.families").items) {
         if (row.find("family")->text == "trunk") row.set("target", number(12));
       }
     }},
    {"a ceiling that what is over has used", "week-contacts", false,
     [](Matters& m) {
       m.club.so_far->today = *parse_iso_date("2026-11-25");
       m.each_band("jump_cap_week", 60);
     }},
    {"a drill of what is over exchanged", "past-changed", false,
     [](Matters& m) { put(m.kestrels(), "sessions.0.drills.0.amount", number(2)); }},
    {"a session of what is over shortened", "past-changed", false,
     [](Matters& m) { erase(m.kestrels(), "sessions.1.drills.0"); }},
    {"another set", "set-changed", false,
     [](Matters& m) { put(m.kestrels(), "spells.1.drills.0", text("hip-opening")); }},
    {"a set of what is over", "set-changed", false, [](Matters& m) { erase(m.kestrels(), "spells.0.drills.0"); }},
    {"a change untold", "changes-told", false,
     [](Matters& m) {
       Node& amount = at(m.kestrels(), "sessions.4.drills.0.amount");
       amount = number(amount.integer == 1 ? 2 : 1);
     }},
    {"a change that is none", "changes-told", true,
     [](Matters& m) {
       Node change = Node::make_table();
       change.set("drill", text("squat"));
       change.set("what", text("left out"));
       at(m.kestrels(), "rolling.sessions.0.changes").items.push_back(change);
     }},
};

BlockDocuments begun_documents() {
  BlockDocuments out = cli::check_documents(demo().documents);
  out.so_far = cli::check_so_far(so_far(), demo().club);
  out.so_far->standing = Document{"standing.json", sound_answer()};
  return out;
}

TEST(RollingMutation, TheSoundAnswerPlannedOnIsSound) {
  const BlockReport report = report_of(begun_documents(), sound_rolled_answer());
  EXPECT_TRUE(report.ok()) << lines(report);
  EXPECT_EQ(report.sessions, 44);
}

TEST(RollingMutation, EachIsFound) { expect_each_is_found({begun_documents(), sound_rolled_answer()}, kMutations); }

// Day after day with what the sessions before it came to, by chance: each plan on the one before, each sound.
TEST(RollingPlanner, DayAfterDayStaysSound) {
  Node standing = sound_answer();
  door::SoFar now;
  std::uint32_t dice = 7;
  const club::Club& club = demo().club;
  const club::Allocation allocation = club::allocate(club, club.settings.block_from, club.settings.block_weeks);
  std::set<std::string> told;
  for (int day = 0; day < 45; day += 4) {
    now.today = Date{club.settings.block_from.days_since_epoch + day};
    for (std::size_t s = 0; s < club.squads.size(); ++s) {
      for (const club::PlannedSlot& slot : allocation.calendars[s].slots) {
        const std::string key = club.squads[s].id + to_iso(slot.date) + to_text(slot.start);
        if (slot.date >= now.today || !told.insert(key).second) continue;
        dice = dice * 1664525U + 1013904223U;
        club::SessionRow row;
        row.squad = s;
        row.date = slot.date;
        row.start = slot.start;
        row.happened = static_cast<club::Happened>((dice >> 10U) % 3);
        row.did_it = static_cast<club::DidIt>((dice >> 14U) % 3);
        if (row.happened == club::Happened::kCutShort && (dice >> 18U) % 4 != 0)
          row.minutes = 4 + static_cast<int>((dice >> 20U) % 8);
        if ((dice >> 24U) % 5 != 0) now.rows.push_back(row);
      }
    }
    const Node answer = rolled_on(standing, now);
    BlockDocuments documents = cli::check_documents(demo().documents);
    documents.so_far = cli::check_so_far(now, club);
    documents.so_far->standing = Document{"standing.json", standing};
    const BlockReport report = report_of(documents, answer);
    EXPECT_TRUE(report.ok()) << to_iso(now.today) << '\n' << lines(report);
    standing = answer;
  }
}

}  // namespace

const std::vector<Mutation>& test::rolling_mutations() { return kMutations; }

}  // namespace lanework::check
