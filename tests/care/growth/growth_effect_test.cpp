#include "core/care/growth/growth_effect.h"

#include <gtest/gtest.h>

#include <cctype>

#include "core/people/instruction.h"
#include "core/people/swaps.h"
#include "tests/care/growth/a_player.h"

namespace lanework::care::growth {
namespace {

using catalogue::test::shipped_catalogue;
using test::a_player;
using test::day;
using test::height_on;
using test::shipped_table;

const Date kToday = day("2026-11-26");

GrowthReading growing_fast() {
  GrowthPerson person = a_player();
  person.agreement = {day("2025-01-01"), day("2025-01-01"), {}};
  return read_growth(shipped_table(), person, {height_on("2025-11-26", 149), height_on("2026-11-26", 158)}, kToday);
}

TEST(GrowthEffect, HalvesTheLandingsAndAddsNothingEccentric) {
  const GrowthEffect effect = effect_of(shipped_table(), growing_fast());
  EXPECT_EQ(effect.contacts_percent, 50);
  EXPECT_FALSE(effect.new_eccentric_ok);
  const auto restriction = restriction_of(effect, growing_fast());
  ASSERT_TRUE(restriction);
  EXPECT_EQ(restriction->landings_percent, 50);
  EXPECT_FALSE(restriction->new_eccentric_ok);
}

TEST(GrowthEffect, NoneChangesNothing) {
  GrowthReading off = growing_fast();
  off.fast->on = false;
  const GrowthEffect effect = effect_of(shipped_table(), off);
  EXPECT_FALSE(effect.any());
  EXPECT_FALSE(restriction_of(effect, off));
}

TEST(GrowthEffect, WithoutAgreementThereIsNone) {
  GrowthReading off = growing_fast();
  off.state = AgreementState::kWithdrawn;
  EXPECT_FALSE(effect_of(shipped_table(), off).any());
}

// Landing well is what such a player needs most: light landings stay.
TEST(GrowthEffect, LightLandingsStayAndHeavyOnesGo) {
  const auto restriction = restriction_of(effect_of(shipped_table(), growing_fast()), growing_fast());
  ASSERT_TRUE(restriction);
  int allowed = 0;
  for (const catalogue::Drill& drill : shipped_catalogue().drills) {
    if (drill.family != catalogue::Family::kJumpAndLand) continue;
    for (const catalogue::Rung& rung : drill.rungs) allowed += people::permits(*restriction, drill, rung) ? 1 : 0;
  }
  EXPECT_GT(allowed, 0);
  const catalogue::Drill& jump = *shipped_catalogue().find("jump-and-stick");
  EXPECT_FALSE(people::permits(*restriction, jump, jump.rungs.back()));
}

TEST(GrowthEffect, TheCoachReadsNoMeasureAndNoReason) {
  const GrowthReading reading = growing_fast();
  const auto restriction = restriction_of(effect_of(shipped_table(), reading), reading);
  ASSERT_TRUE(restriction);
  EXPECT_EQ(restriction->player, "Q07");
  EXPECT_EQ(restriction->review, day("2027-02-24"));
  EXPECT_FALSE(restriction->until);
  EXPECT_TRUE(restriction->areas.empty());
  std::string words = people::instruction_for(*restriction, kToday);
  EXPECT_EQ(people::private_word_in(words), "");
  EXPECT_EQ(words.find_first_of("0123456789"), std::string::npos) << words;
  for (char& c : words) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  for (const char* never : {"grow", "height", "tall", "body", "mass", "weight", "spurt", "matur", "puber", "cm", "age",
                            "bone", "risk", "measure"}) {
    EXPECT_EQ(words.find(never), std::string::npos) << never;
  }
}

}  // namespace
}  // namespace lanework::care::growth
