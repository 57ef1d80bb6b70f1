// Ten sentences on the price of a minute, each confirmed by changing the club's slots as the lead would and planning
// again: with the sets as they are, and with the sets free.
#include <gtest/gtest.h>

#include <array>
#include <filesystem>

#include "app/read/club_folder.h"
#include "core/block/set_worth.h"
#include "core/door/squad_block.h"

namespace lanework::door {
namespace {

// The squads of other strips and days, so that a longer slot takes nobody's lanes.
constexpr std::array<const char*, 5> kSquads = {"u10-wrens", "u12-dunnocks", "u13-kestrels", "u16-avocets",
                                                "u18-buzzards"};
// Of the value: what another search over the same problem may differ by.
constexpr int kSurePerMille = 5;

const club::Club& demo() {
  static const read::ClubFolder kFolder = [] {
    const std::filesystem::path root = LANEWORK_SOURCE_DIR;
    return read::read_club_folder((root / "demo/quillmere").string(), (root / "catalogue").string());
  }();
  return kFolder.club;
}

SquadWishes wishes_in(const club::Club& club, const std::string& squad) {
  const club::Allocation allocation = club::allocate(club, club.settings.block_from, club.settings.block_weeks);
  const auto at = static_cast<std::size_t>(club.find(squad) - club.squads.data());
  return wishes_of(club, club.squads[at], allocation.calendars[at]).value();
}

// The demo club with the squad's slots of that day longer, or shorter.
club::Club with_minutes(const std::string& squad, const block::MinutePrice& price) {
  club::Club club = demo();
  auto& slots = club.squads[static_cast<std::size_t>(club.find(squad) - club.squads.data())].squad.weekly.slots;
  int changed = 0;
  for (auto& slot : slots) {
    if (static_cast<int>(slot.weekday) != price.day.weekday || slot.start != price.day.start) continue;
    slot.length = Seconds(slot.length.count + 60 * price.minutes);
    ++changed;
  }
  EXPECT_EQ(changed, 1) << squad;
  return club;
}

std::string rounded_percent(block::Points part, block::Points whole) {
  std::array<char, 32> out{};
  std::snprintf(out.data(), out.size(), "%.1f %%", 100.0 * static_cast<double>(part) / static_cast<double>(whole));
  return out.data();
}

void confirm(const SquadBlock& block, const block::MinutePrice& price, const std::string& sentence) {
  SCOPED_TRACE(sentence);
  const std::string& squad = block.wishes.squad->id;
  const club::Club club = with_minutes(squad, price);
  plan::KernelWorkspace workspace;
  const block::Work work;
  const SquadBlock again = plan_block(wishes_in(club, squad), work, workspace);
  ASSERT_EQ(again.wishes.slots.size(), block.wishes.slots.size());
  for (std::size_t e = 0; e < again.wishes.slots.size(); ++e)
    ASSERT_EQ(again.wishes.slots[e].lanes, block.wishes.slots[e].lanes) << "other lanes";
  const block::Evaluation same_sets = block::evaluate(
      again.built.problem, block::SetWorth(again.built.problem).plan_of(block.answer.plan.sets, work.week));
  EXPECT_TRUE(same_sets.broken.empty());
  EXPECT_EQ(same_sets.value, price.after);
  // With the sets free: no more than the new bound, and no less than the sentence says, but for what a search may miss.
  EXPECT_LE(price.after, block::bound_points(again.answer));
  EXPECT_GE(again.answer.value * 1000, price.after * (1000 - kSurePerMille));
  const block::Points changed = std::abs(price.after - price.before);
  if (changed * 1000 < price.before) {
    EXPECT_TRUE(sentence.find("no loss") != std::string::npos || sentence.find("buy nothing") != std::string::npos);
  } else {
    EXPECT_NE(sentence.find("worth " + rounded_percent(changed, price.before)), std::string::npos);
  }
}

TEST(PriceSentences, TenAreConfirmedByPlanningAgain) {
  int confirmed = 0;
  for (const char* squad : kSquads) {
    plan::KernelWorkspace workspace;
    const SquadBlock block = plan_block(wishes_in(demo(), squad), {}, workspace);
    const std::vector<std::string> sentences = price_sentences(block);
    ASSERT_EQ(sentences.size(), 2U) << squad;
    confirm(block, *block.prices.best_longer, sentences[0]);
    confirm(block, *block.prices.best_shorter, sentences[1]);
    confirmed += 2;
  }
  EXPECT_EQ(confirmed, 10);
}

}  // namespace
}  // namespace lanework::door
