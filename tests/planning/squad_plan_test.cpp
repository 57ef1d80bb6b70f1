// A squad's plan from the folder and the ledger: held against the roads that were there before, the block of the folder
// alone and the one planned on from a spreadsheet.
#include "app/planning/squad_plan.h"

#include <gtest/gtest.h>

#include "app/planning/standing_block.h"
#include "app/read/block_answer.h"
#include "app/read/club_folder.h"
#include "app/read/read_sessions.h"
#include "core/door/roll_on.h"
#include "core/door/squad_block.h"
#include "core/ledger/sheets.h"
#include "tests/planning/planning_of_demo.h"

namespace lanework::planning {
namespace {

using test::day;
using test::demo_files;
using test::kestrels;
using test::known_of;
using test::little_work;

constexpr const char* kSquad = "u13-kestrels";

std::string planned(const Known& known, const std::string& today, const std::string& standing = {}) {
  auto out = plan_squad(demo_files(), kSquad, known, day(today), standing, little_work());
  if (!out) throw std::runtime_error(to_line(out.faults().front()));
  return out.value().text;
}

const read::ClubFolder& folder() {
  static const read::ClubFolder kFolder = read::read_club_folder(demo_files().club, demo_files().catalogue);
  return kFolder;
}

// As 'lanework block' does it; sheet: as 'lanework ledger sheets' writes it, empty: nothing has happened.
std::string by_the_sheet(const std::string& sheet, const std::string& standing, const std::string& today) {
  const club::Club& club = folder().club;
  const auto allocation = club::allocate(club, club.settings.block_from, club.settings.block_weeks);
  const club::ClubSquad& squad = *club.find(kSquad);
  const auto index = static_cast<std::size_t>(&squad - club.squads.data());
  auto wishes = door::wishes_of(club, squad, allocation.calendars[index]).value();
  if (!sheet.empty()) {
    const auto answer = read::read_block_answer("standing", standing).value();
    auto rows = read::read_sessions("sheet", sheet, club, allocation, day(today)).value();
    wishes = door::roll_on(std::move(wishes), standing_block(answer, "standing", club, squad).value(),
                           {day(today), "standing", std::move(rows)})
                 .value();
  }
  std::vector<door::SquadBlock> blocks;
  plan::KernelWorkspace workspace;
  blocks.push_back(door::plan_block(std::move(wishes), little_work(), workspace));
  return to_json(door::block_answer_node(club, blocks), 2) + "\n";
}

TEST(SquadPlan, BeforeTheBlockBeginsItIsTheFoldersBlock) {
  EXPECT_EQ(planned(known_of({}), "2026-11-20"), by_the_sheet("", "", "2026-11-20"));
}

TEST(SquadPlan, OnceItHasBegunItGoesOnFromWhatWasEnteredAsFromASpreadsheet) {
  const std::string stands = planned(known_of({}), "2026-11-20");
  const auto answer = read::read_block_answer("standing", stands).value();
  const std::string drill = answer.find(kSquad)->sessions.front().drills.front().drill;
  const Known known =
      known_of({{"drill-marked", kestrels("2026-11-24", R"("drill":")" + drill + R"(","mark":"skipped")")},
                {"wrap-up", kestrels("2026-11-24", R"("happened":"held","did_it":"half","minutes":15)")},
                {"wrap-up", kestrels("2026-11-26", R"("happened":"missed")")}});
  const std::string sheet = ledger::sessions_sheet(known.state, {day("2026-11-23"), day("2027-01-03")});
  const std::string ours = planned(known, "2026-11-27", stands);
  EXPECT_EQ(ours, by_the_sheet(sheet, stands, "2026-11-27"));
  EXPECT_NE(ours, planned(known_of({}), "2026-11-27", stands)) << "what was entered counts";
}

TEST(SquadPlan, WithoutAPlanThatStandsItGoesOnFromTheOneThatWouldHave) {
  const Known known = known_of({{"wrap-up", kestrels("2026-11-24", R"("happened":"missed")")}});
  const std::string stands = planned(known_of({}), "2026-11-20");
  EXPECT_EQ(planned(known, "2026-11-25"), planned(known, "2026-11-25", stands));
  EXPECT_EQ(planned(known, "2026-11-25", "no plan at all"), planned(known, "2026-11-25", stands));
}

// Whoever sits out by the ledger is not counted as turning out.
TEST(SquadPlan, WhatTheLedgerHoldsBackIsHeldBackInThePlan) {
  const auto turnout = [](const std::string& text) {
    const auto answer = read::read_block_answer("plan", text).value();
    return answer.find(kSquad)->sessions.back().turnout;
  };
  const Known hurt = known_of({{"restriction", R"("player":"Q07","sits_out":true,"instruction":"sits out")"}});
  EXPECT_EQ(turnout(planned(hurt, "2026-11-20")), turnout(planned(known_of({}), "2026-11-20")) - 1);
}

TEST(SquadPlan, WhatChangesNoPlanIsTold) {
  const Known known =
      known_of({{"wrap-up", R"("squad":"u13-kestrels","day":"2026-11-25","start":"07:00","happened":"held")"},
                {"wrap-up", R"("squad":"u16-merlins","day":"2026-11-25","start":"07:00","happened":"held")"}});
  const auto out = plan_squad(demo_files(), kSquad, known, day("2026-11-26"), {}, little_work());
  ASSERT_TRUE(out);
  EXPECT_EQ(out.value().remarks, (std::vector<std::string>{"u13-kestrels on 2026-11-25 at 07:00 is in no calendar of "
                                                           "this block: it changes no plan."}));
}

TEST(SquadPlan, ASquadThatIsNotThereAndAFolderThatIsWrongAreFaults) {
  const auto nobody = plan_squad(demo_files(), "u99-none", known_of({}), day("2026-11-20"), {}, little_work());
  ASSERT_FALSE(nobody);
  EXPECT_NE(to_line(nobody.faults().front()).find("u99-none"), std::string::npos);
  const auto nowhere =
      plan_squad({"/nowhere", demo_files().catalogue}, kSquad, known_of({}), day("2026-11-20"), {}, little_work());
  ASSERT_FALSE(nowhere);
  EXPECT_NE(to_line(nowhere.faults().front()).find("/nowhere"), std::string::npos);
}

}  // namespace
}  // namespace lanework::planning
