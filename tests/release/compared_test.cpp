// A rate beside an earlier one: from nothing but what both pages give out.
#include "core/release/compared.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/evidence/rate_ratio.h"
#include "core/release/make_release.h"
#include "core/release/release_text.h"
#include "tests/release/club_of_test.h"

namespace lanework::release {
namespace {

using test::day;
using test::hurt_many;
using test::kAutumn;
using test::kNextSeason;
using test::kSeason;
using test::kSpring;
using test::session;
using test::wanted;

// So many injuries on one day, and so many evenings of 20 players for an hour from it on.
void live(ledger::State& state, const char* from, int injuries, int evenings) {
  hurt_many(state, injuries, std::string("u16"), from, "match", "thigh");
  const Date first = day(from);
  for (int i = 0; i < evenings; ++i) {
    state.sessions[{"u16", to_iso(Date{first.days_since_epoch + i}), "18:00"}] = session("held", "most", 60, 20);
  }
}

Release made(const ledger::State& state, const Period& period, const std::vector<Release>& earlier = {}) {
  return make_release(state, wanted(period), earlier).value().release;
}

TEST(Compared, IsTheRatioOfTheTwoPagesWithItsExactLimits) {
  ledger::State state;
  live(state, "2026-09-01", 20, 50);
  live(state, "2027-09-01", 12, 60);
  const Release before = made(state, kSeason);
  const Release after = made(state, kNextSeason, {before});
  ASSERT_TRUE(after.compared);
  const evidence::Exposed one{12, 1200};
  const evidence::Exposed other{20, 1000};
  const evidence::Interval limits = evidence::exact_ratio(one, other, evidence::kUsualLevel).limits;
  EXPECT_EQ(after.compared->release, before.number);
  EXPECT_EQ(after.compared->period, kSeason);
  EXPECT_DOUBLE_EQ(after.compared->ratio, 0.5);
  EXPECT_NEAR(after.compared->low, limits.low, 0.005);
  EXPECT_NEAR(after.compared->high, limits.high, 0.005);
  EXPECT_LT(after.compared->low, 0.5);
  EXPECT_GT(after.compared->high, 0.5);
}

TEST(Compared, IsNotThereWhereEitherGivesNoRate) {
  ledger::State few;
  live(few, "2026-09-01", 20, 50);
  live(few, "2027-09-01", 3, 60);
  EXPECT_FALSE(made(few, kNextSeason, {made(few, kSeason)}).compared) << "too few injuries now";
  ledger::State unconfirmed;
  live(unconfirmed, "2026-09-01", 20, 0);
  live(unconfirmed, "2027-09-01", 12, 60);
  EXPECT_FALSE(made(unconfirmed, kNextSeason, {made(unconfirmed, kSeason)}).compared) << "no hours then";
  EXPECT_FALSE(made(unconfirmed, kNextSeason).compared) << "no earlier one";
}

TEST(Compared, IsWithOtherDaysAndWithThoseOfAYearBefore) {
  ledger::State state;
  live(state, "2026-09-01", 20, 50);
  live(state, "2027-02-01", 15, 50);
  live(state, "2027-09-01", 12, 60);
  const Release autumn = made(state, kAutumn);
  const Release spring = made(state, kSpring, {autumn});
  EXPECT_EQ(spring.compared->release, autumn.number) << "there is no other";
  const Release season = made(state, kSeason, {autumn, spring});
  EXPECT_FALSE(season.compared) << "its halves are of its own days";
  const Period next_autumn{day("2027-08-01"), day("2027-12-31")};
  const Release next = made(state, next_autumn, {autumn, spring, season});
  EXPECT_EQ(next.compared->period.from, kAutumn.from);
}

TEST(Compared, ComesBackFromThePageAsItWas) {
  ledger::State state;
  live(state, "2026-09-01", 20, 50);
  live(state, "2027-09-01", 13, 61);
  Wanted asked = wanted(kNextSeason);
  asked.asked = "Two evenings of teaching; \"120 euros\". <b>And a hall.</b>";
  asked.planned = {{"u16", "2027-09-01", "18:00"}, {"u16", "2028-02-01", "18:00"}};
  const Release release = make_release(state, asked, {made(state, kSeason)}).value().release;
  ASSERT_TRUE(release.compared);
  const auto parsed = [](const Node& node) { return parse_json("a release", to_json(node)).value(); };
  const auto back = read_release(parsed(shown_node(release)), parsed(counted_node(release)));
  ASSERT_TRUE(back) << to_line(back.faults().front());
  EXPECT_EQ(back.value().asked, asked.asked);
  EXPECT_EQ(back.value().planned, release.planned);
  EXPECT_EQ(back.value().planned_own, release.planned_own);
  EXPECT_EQ(to_json(shown_node(back.value())), to_json(shown_node(release)));
  EXPECT_EQ(to_json(counted_node(back.value())), to_json(counted_node(release)));
}

// One from before there was any of this.
TEST(Compared, AnOldReleaseReadsAndHasNone) {
  ledger::State state;
  live(state, "2026-09-01", 20, 50);
  const Release release = made(state, kSeason);
  const std::string shown = to_json(shown_node(release));
  for (const char* key : {"compared", "asked", "planned", "untold"})
    EXPECT_EQ(shown.find(key), std::string::npos) << key;
  const auto parsed = [](const Node& node) { return parse_json("a release", to_json(node)).value(); };
  const auto back = read_release(parsed(shown_node(release)), parsed(counted_node(release)));
  ASSERT_TRUE(back);
  EXPECT_FALSE(back.value().compared);
  EXPECT_FALSE(back.value().planned);
}

double number_in(const Node& table, const char* key) {
  const Node* found = table.find(key);
  return found->kind == Node::Kind::kInteger ? static_cast<double>(found->integer) : found->real;
}

// Whatever there is: whoever has the two pages has the ratio, so it says nothing of any row.
TEST(Compared, SaysNothingThatTheTwoPagesDoNot) {
  EXPECT_TRUE(rc::check("clubs", [] {
    ledger::State state;
    live(state, "2026-09-01", *rc::gen::inRange(0, 30), *rc::gen::inRange(0, 60));
    live(state, "2027-09-01", *rc::gen::inRange(0, 30), *rc::gen::inRange(0, 60));
    hurt_many(state, *rc::gen::inRange(0, 9), "u11", "2027-10-01", "training", "knee");
    const Release before = made(state, kSeason);
    const Release after = made(state, kNextSeason, {before});
    const auto given = [](const Release& release) {
      const Node shown = shown_node(release);
      return evidence::Exposed{static_cast<std::int64_t>(number_in(*shown.find("injuries"), "all")),
                               number_in(*shown.find("sessions")->find("all"), "hours")};
    };
    if (!after.compared) return;
    RC_ASSERT(!before.silent && !after.silent);
    const double ratio = evidence::rate_ratio(given(after), given(before));
    const auto limits = evidence::exact_ratio(given(after), given(before), evidence::kUsualLevel).limits;
    RC_ASSERT(std::abs(after.compared->ratio - ratio) <= 0.0051);
    RC_ASSERT(std::abs(after.compared->low - limits.low) <= 0.0051);
    RC_ASSERT(std::abs(after.compared->high - limits.high) <= 0.0051);
  }));
}

}  // namespace
}  // namespace lanework::release
