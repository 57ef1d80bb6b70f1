#include "core/care/growth/growth_effect.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <bit>
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
  for (int age = 8; age <= 19; ++age) {
    const catalogue::Ceilings& usual = shipped_catalogue().ceilings_for(age);
    const catalogue::Ceilings less = spared(usual, effect);
    EXPECT_EQ(less.contacts_session, usual.contacts_session / 2) << age;
    EXPECT_EQ(less.contacts_week, usual.contacts_week / 2) << age;
    EXPECT_EQ(less.eccentric_session, usual.eccentric_session) << age;
    EXPECT_EQ(less.hard_running_session, usual.hard_running_session) << age;
  }
}

TEST(GrowthEffect, NoneChangesNothing) {
  GrowthReading off = growing_fast();
  off.fast->on = false;
  const GrowthEffect effect = effect_of(shipped_table(), off);
  EXPECT_FALSE(effect.any());
  const catalogue::Ceilings& usual = shipped_catalogue().ceilings_for(13);
  EXPECT_EQ(spared(usual, effect).contacts_session, usual.contacts_session);
  EXPECT_FALSE(restriction_of(effect, off));
}

TEST(GrowthEffect, WithoutAgreementThereIsNone) {
  GrowthReading off = growing_fast();
  off.state = AgreementState::kWithdrawn;
  EXPECT_FALSE(effect_of(shipped_table(), off).any());
}

TEST(GrowthEffect, TheHeaviestItemsAreDoneWithoutLandings) {
  const auto landings = [](std::int64_t count) { return catalogue::LoadSum{1000 * count, 0, 0}; };
  const std::vector<catalogue::LoadSum> session = {landings(0), landings(6), landings(10), landings(6)};
  EXPECT_TRUE(items_beyond(22'000, session).empty());
  EXPECT_EQ(items_beyond(21'999, session), std::vector<std::size_t>{2});
  EXPECT_EQ(items_beyond(11'000, session), (std::vector<std::size_t>{2, 3}));
  EXPECT_EQ(items_beyond(0, session), (std::vector<std::size_t>{1, 2, 3}));
}

// Against every choice of items: what is left keeps the ceiling, and no smaller choice does.
TEST(GrowthEffect, AsFewItemsAsCanBe) {
  EXPECT_TRUE(rc::check([] {
    std::vector<catalogue::LoadSum> session(static_cast<std::size_t>(*rc::gen::inRange(0, 9)));
    std::int64_t all = 0;
    for (catalogue::LoadSum& item : session) all += item.contacts = *rc::gen::inRange(0, 20'000);
    const std::int64_t ceiling = *rc::gen::inRange(0, 60'000);
    const std::vector<std::size_t> found = items_beyond(ceiling, session);
    std::int64_t left = all;
    for (const std::size_t item : found) left -= session[item].contacts;
    RC_ASSERT(left <= ceiling);
    for (unsigned choice = 0; choice < 1U << session.size(); ++choice) {
      if (std::popcount(choice) >= static_cast<int>(found.size())) continue;
      std::int64_t rest = all;
      for (std::size_t i = 0; i < session.size(); ++i) rest -= (choice >> i & 1U) != 0 ? session[i].contacts : 0;
      RC_ASSERT(rest > ceiling);
    }
  }));
}

TEST(GrowthEffect, BarsOnlyEccentricWorkThatIsNew) {
  const GrowthEffect effect = effect_of(shipped_table(), growing_fast());
  const catalogue::Drill& lower = *shipped_catalogue().find("kneeling-hamstring-lower");
  const catalogue::Drill& plank = *shipped_catalogue().find("side-plank");
  EXPECT_TRUE(bars(effect, lower, 0));
  EXPECT_FALSE(bars(effect, lower, 3));
  EXPECT_FALSE(bars(effect, plank, 0));
  EXPECT_FALSE(bars({}, lower, 0));
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
