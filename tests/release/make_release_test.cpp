#include "core/release/make_release.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <chrono>

#include "tests/release/club_of_test.h"

namespace lanework::release {
namespace {

using test::hurt;
using test::hurt_many;
using test::kAutumn;
using test::kNextSeason;
using test::kSeason;
using test::kSpring;
using test::wanted;

TEST(MakeRelease, SmallRowsAreHiddenAndOneMoreThatKeepsThemSo) {
  ledger::State state;
  hurt_many(state, 2, "u11", "2026-09-10", "training", "knee");
  hurt_many(state, 9, "u13", "2026-09-10", "match", "ankle");
  hurt_many(state, 20, "u16", "2026-09-10", "match", "thigh");
  const auto made = make_release(state, wanted(kSeason), {});
  ASSERT_TRUE(made) << to_line(made.faults().front());
  const Release& release = made.value().release;
  EXPECT_EQ(release.whole.all.injuries, 31);
  EXPECT_FALSE(release.silent);
  EXPECT_FALSE(release.shows(Table::kSquads, "u11"));
  EXPECT_FALSE(release.shows(Table::kSquads, "u13")) << "31 - 9 - 20 is 2";
  EXPECT_TRUE(release.shows(Table::kSquads, "u16"));
  EXPECT_FALSE(release.shows(Table::kRegions, "not-stated")) << "none says of everybody that they had none";
  ASSERT_EQ(made.value().tried.size(), 3U);
  EXPECT_NE(made.value().tried.front().find("also hidden: u13. Else this would come out: squads u11"),
            std::string::npos)
      << made.value().tried.front();
}

TEST(MakeRelease, WithTooFewAtAllNothingIsSaidOfInjuries) {
  ledger::State state;
  hurt_many(state, 4, "u13", "2026-09-10");
  const auto made = make_release(state, wanted(kSeason), {});
  ASSERT_TRUE(made);
  EXPECT_TRUE(made.value().release.silent);
  EXPECT_NE(made.value().tried.front().find("all injuries"), std::string::npos);
}

TEST(MakeRelease, ASeasonThatWouldGiveAwayItsOtherHalfSaysNothing) {
  ledger::State state;
  hurt_many(state, 8, "u13", "2026-09-10");
  hurt_many(state, 9, "u16", "2026-09-10");
  hurt_many(state, 3, "u16", "2027-02-10");
  const auto autumn = make_release(state, wanted(kAutumn), {});
  ASSERT_TRUE(autumn);
  ASSERT_FALSE(autumn.value().release.silent);
  const auto season = make_release(state, wanted(kSeason), {autumn.value().release});
  ASSERT_TRUE(season);
  EXPECT_TRUE(season.value().release.silent) << "20 - 17 is 3";
}

TEST(MakeRelease, ARowThatSubtractingMakesSmallIsHidden) {
  ledger::State state;
  hurt_many(state, 10, "u13", "2026-09-10", "training", "knee");
  hurt_many(state, 12, "u16", "2026-09-10", "match", "ankle");
  hurt_many(state, 11, "u11", "2026-09-10", "match", "ankle");
  const auto autumn = make_release(state, wanted(kAutumn), {});
  ASSERT_TRUE(autumn);
  ASSERT_TRUE(autumn.value().release.shows(Table::kSquads, "u13"));
  hurt_many(state, 2, "u13", "2027-02-10", "training", "knee");
  hurt_many(state, 9, "u16", "2027-02-10", "match", "ankle");
  hurt_many(state, 8, "u11", "2027-02-10", "match", "ankle");
  const auto season = make_release(state, wanted(kSeason), {autumn.value().release});
  ASSERT_TRUE(season);
  EXPECT_FALSE(season.value().release.shows(Table::kSquads, "u13")) << "12 - 10 is 2, though neither is small";
}

TEST(MakeRelease, DaysThatWereGivenOutCountAsTheyWereAndTheNextReleaseSaysSo) {
  ledger::State state;
  hurt_many(state, 10, "u13", "2026-09-10");
  hurt_many(state, 10, "u16", "2026-09-10");
  const auto autumn = make_release(state, wanted(kAutumn), {});
  ASSERT_TRUE(autumn);
  EXPECT_TRUE(autumn.value().release.remarks.empty());
  hurt(state, "late", "u16", "2026-10-01", "match", "knee");
  hurt_many(state, 10, "u13", "2027-02-10");
  const auto season = make_release(state, wanted(kSeason), {autumn.value().release});
  ASSERT_TRUE(season);
  EXPECT_EQ(season.value().release.whole.all.injuries, 30) << "without the one that came late";
  EXPECT_EQ(season.value().release.remarks.size(), 1U);
  EXPECT_FALSE(make_release(state, wanted(kAutumn), {autumn.value().release})) << "frozen";
}

TEST(MakeRelease, NothingIsAddedToReleasesThatGiveSomethingAway) {
  ledger::State state;
  hurt_many(state, 10, "u13", "2027-09-10");
  Release broken = test::free_release(1, kSeason, {{{2, 9}, {11}, {11}}});
  broken.hidden[0].insert("a");
  const auto made = make_release(state, wanted(kNextSeason), {broken});
  ASSERT_FALSE(made);
  EXPECT_EQ(made.faults().front().found, "squads a, 2026-08-01 to 2027-06-30: 2");
}

// Any club, any seasons, in halves or whole: nobody ever gets a number within 1 to 4, or all, or none.
RC_GTEST_PROP(MakeRelease, NobodyWorksOutASmallNumberFromAnySequenceOfReleases, ()) {
  ledger::State state;
  const int many = *rc::gen::inRange(0, 120);
  const std::array<const char*, 5> squads = {"u11", "u13", "u13", "u16", "u19"};
  const std::array<const char*, 5> regions = {"knee", "knee", "ankle", "thigh", "elbow"};
  for (int i = 0; i < many; ++i) {
    const Date on{kAutumn.from.days_since_epoch + *rc::gen::inRange(0, 700)};
    hurt(state, "Q" + std::to_string(*rc::gen::inRange(0, 60)), squads.at(*rc::gen::inRange<std::size_t>(0, 5)),
         to_iso(on), *rc::gen::arbitrary<bool>() ? "training" : "match",
         regions.at(*rc::gen::inRange<std::size_t>(0, 5)));
  }
  std::vector<Release> given;
  for (const Period& period :
       {kAutumn, kSpring, kSeason, Period{test::day("2027-08-01"), test::day("2028-01-15")}, kNextSeason}) {
    if (*rc::gen::inRange(0, 4) == 0) continue;
    const auto made = make_release(state, wanted(period), given);
    RC_ASSERT(made.ok());
    given.push_back(made.value().release);
    for (const NotGiven& one : audit(given)) {
      RC_ASSERT(!one.exposed());
      RC_ASSERT(one.interval.least < 1 || one.interval.most > 4);
      RC_ASSERT(one.interval.least <= one.actual.injuries);
      RC_ASSERT(one.interval.most >= one.actual.injuries);
    }
    for (const Table table : kEveryTable) {
      for (const auto& [key, count] : given.back().whole.of(table)) {
        if (given.back().shows(table, key)) RC_ASSERT(!is_small(count));
      }
    }
  }
}

}  // namespace
}  // namespace lanework::release
