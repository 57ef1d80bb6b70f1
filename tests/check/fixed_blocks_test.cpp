// Blocks with drills that the lead has fixed and rungs that the lead has confirmed: sound, whatever they are.
#include <gtest/gtest.h>

#include <algorithm>

#include "app/cli/check_documents.h"
#include "tests/check/demo_blocks.h"
#include "tests/plan/random_problem.h"

namespace lanework::check {
namespace {

using namespace test;

const std::set<std::string> kSquads = {"u12-dunnocks", "u13-kestrels", "u16-avocets"};

TEST(FixedBlocks, AreSoundWhateverIsFixed) {
  for (std::uint64_t seed = 1; seed <= 5; ++seed) {
    SCOPED_TRACE(seed);
    plan::Dice dice(seed * 29);
    club::Club club = demo().club;
    BlockDocuments documents = cli::check_documents(demo().documents);
    for (club::ClubSquad& squad : club.squads) {
      if (kSquads.count(squad.id) == 0) continue;
      const std::vector<catalogue::Drill>& drills = club.catalogue_of(squad).drills;
      Node pins = Node::make_array();
      std::set<std::string> ids;
      for (int k = dice.roll(1, 4); k > 0; --k)
        ids.insert(drills[static_cast<std::size_t>(dice.roll(0, static_cast<int>(drills.size()) - 1))].id);
      squad.squad.weekly.locks.pins.clear();
      for (const std::string& id : ids) {
        squad.squad.weekly.locks.pins.push_back({id, "", 0, 0});
        Node row = Node::make_table();
        row.set("drill", text(id));
        pins.items.push_back(row);
      }
      const auto file = std::find_if(documents.squads.begin(), documents.squads.end(),
                                     [&](const SquadDocuments& one) { return one.id == squad.id; });
      put(file->squad.root, "locks.pins", pins);
      Node rungs = Node::make_array();
      squad.squad.weekly.rungs.clear();
      for (const catalogue::RoutineLine& line : squad.routine.lines) {
        if (dice.roll(0, 2) != 0) continue;
        const catalogue::Drill& drill = drills[static_cast<std::size_t>(line.drill)];
        const auto rung = static_cast<std::size_t>(dice.roll(0, static_cast<int>(drill.rungs.size()) - 1));
        const Date from{club.settings.block_from.days_since_epoch + dice.roll(-10, 40)};
        squad.squad.weekly.rungs.push_back({drill.id, drill.rungs[rung].key, from});
        Node row = Node::make_table();
        row.set("drill", text(drill.id));
        row.set("rung", text(drill.rungs[rung].key));
        row.set("from", text(to_iso(from)));
        rungs.items.push_back(row);
      }
      put(file->squad.root, "rung", rungs);
    }
    const Node answer = planned_blocks(club, kSquads);
    const BlockReport report = report_of(documents, answer);
    EXPECT_TRUE(report.ok()) << lines(report);
    for (const Node& squad : answer.find("squads")->items) EXPECT_TRUE(squad.find("feasible")->boolean);
  }
}

// A first set that is no longer the routine's is sound only where the squad's file asks for it.
TEST(FixedBlocks, AreComposedFreelyOnlyOnRequest) {
  club::Club club = demo().club;
  BlockDocuments documents = cli::check_documents(demo().documents);
  const std::string id = "u13-kestrels";
  const auto squad =
      std::find_if(club.squads.begin(), club.squads.end(), [&](const club::ClubSquad& one) { return one.id == id; });
  const auto file = std::find_if(documents.squads.begin(), documents.squads.end(),
                                 [&](const SquadDocuments& one) { return one.id == id; });
  squad->squad.weekly.free_composition = true;
  put(file->squad.root, "free_composition", yes());
  const Node answer = planned_blocks(club, {id});
  const BlockReport report = report_of(documents, answer);
  EXPECT_TRUE(report.ok()) << lines(report);
  put(file->squad.root, "free_composition", Node::make_boolean(false));
  const BlockReport refused = report_of(documents, answer);
  ASSERT_EQ(refused.violations.size(), 1U) << lines(refused);
  EXPECT_EQ(refused.violations.front().rule, "swaps") << lines(refused);
}

}  // namespace
}  // namespace lanework::check
