#include "core/release/audit.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "tests/release/club_of_test.h"
#include "tests/release/every_solution.h"

namespace lanework::release {
namespace {

using test::EverySolution;
using test::free_release;
using test::kAutumn;
using test::kSeason;

void hide(Release& release, Table table, std::initializer_list<const char*> keys) {
  for (const char* key : keys) release.hidden[static_cast<std::size_t>(table)].insert(key);
}

std::optional<NotGiven> found(const std::vector<NotGiven>& all, Days days, const std::string& key) {
  const auto one =
      std::find_if(all.begin(), all.end(), [&](const NotGiven& each) { return each.days == days && each.key == key; });
  return one == all.end() ? std::optional<NotGiven>() : *one;
}

TEST(Audit, OneRowThatIsHiddenIsASubtraction) {
  Release release = free_release(1, kSeason, {{{2, 7}, {9}, {9}}});
  hide(release, Table::kSquads, {"a"});
  const auto one = found(audit({release}), Days::kPeriod, "a");
  ASSERT_TRUE(one);
  EXPECT_EQ(one->interval, (Interval{2, 2})) << "9 - 7";
  EXPECT_TRUE(one->exposed());
}

TEST(Audit, TwoRowsThatHoldFiveTogetherAreWideEnoughAlsoForOneChildsParents) {
  Release release = free_release(1, kSeason, {{{2, 3, 7}, {12}, {12}}});
  hide(release, Table::kSquads, {"a", "b"});
  const auto one = found(audit({release}), Days::kPeriod, "a");
  ASSERT_TRUE(one);
  EXPECT_EQ(one->interval, (Interval{0, 5}));
  EXPECT_EQ(one->width, 4);
  EXPECT_FALSE(one->exposed());
}

TEST(Audit, TwoRowsThatHoldFourAreNotBecauseOneChildsParentsKnowOne) {
  Release release = free_release(1, kSeason, {{{1, 3, 7}, {11}, {11}}});
  hide(release, Table::kSquads, {"a", "b"});
  const auto one = found(audit({release}), Days::kPeriod, "a");
  ASSERT_TRUE(one);
  EXPECT_EQ(one->interval, (Interval{0, 4}));
  EXPECT_EQ(one->width, 3);
  EXPECT_TRUE(one->exposed());
}

TEST(Audit, TheHalfTakenOffTheSeasonIsTheOtherHalf) {
  const Release autumn = free_release(1, kAutumn, {{{10, 8}, {18}, {18}}});
  Release season = free_release(2, kSeason, {{{2, 9}, {11}, {11}}});
  season.whole = together(season.own, autumn.whole);
  const auto one = found(audit({autumn, season}), Days::kRest, "a");
  ASSERT_TRUE(one);
  EXPECT_EQ(one->interval, (Interval{2, 2})) << "12 of the season, 10 of the autumn, neither of them small";
  EXPECT_TRUE(one->exposed());
}

TEST(Audit, SmallTotalsAreExposedAndSoIsWhatIsLeftOfThem) {
  const Release autumn = free_release(1, kAutumn, {{{10, 8}, {18}, {18}}});
  Release season = free_release(2, kSeason, {{{2, 1}, {3}, {3}}});
  season.whole = together(season.own, autumn.whole);
  const auto exposed = exposed_totals(season, {autumn});
  ASSERT_EQ(exposed.size(), 1U);
  EXPECT_EQ(exposed.front().days, Days::kRest);
  EXPECT_EQ(exposed.front().interval, (Interval{3, 3}));
  const Release small = free_release(1, kAutumn, {{{2, 2}, {4}, {4}}});
  EXPECT_EQ(exposed_totals(small, {}).size(), 1U);
}

TEST(Audit, ManyInjuriesOfFewPeopleAreSmall) {
  Release release = free_release(1, kSeason, {{{6, 7}, {13}, {13}}});
  release.whole.of(Table::kSquads)["a"].people = 2;
  hide(release, Table::kSquads, {"a"});
  EXPECT_TRUE(found(audit({release}), Days::kPeriod, "a")->exposed());
}

TEST(Audit, AReleaseThatSaysNothingGivesNothingAway) {
  Release release = free_release(1, kSeason, {{{1, 0}, {1}, {1}}});
  release.silent = true;
  EXPECT_TRUE(audit({release}).empty());
}

// A number of days that one of several silent parts has, and nobody can tell which.
TEST(Audit, WhatIsLeftMayBeAnyOfTheSilentParts) {
  Release autumn = free_release(1, kAutumn, {{{2, 1}, {3}, {3}}});
  autumn.silent = true;
  Release season = free_release(2, kSeason, {{{4, 6}, {10}, {10}}});
  season.whole = together(season.own, autumn.whole);
  const auto all = audit({autumn, season});
  const auto one = found(all, Days::kPeriod, "a");
  ASSERT_TRUE(one);
  EXPECT_EQ(one->release, 1);
  EXPECT_EQ(one->interval, (Interval{0, 6})) << "all or none of the season's six";
  EXPECT_FALSE(one->exposed());
}

struct Drawn {
  std::vector<Release> releases;  // the last holds the others
  std::vector<bool> has_own;
};

// Up to two halves and a season, few rows, small numbers, any of it hidden or silent.
Drawn drawn() {
  Drawn out;
  const auto pieces = *rc::gen::inRange(0, 3);
  const bool covers = pieces == 2 && *rc::gen::arbitrary<bool>();
  const Period season = covers || pieces < 2 ? kSeason : Period{kSeason.from, test::day("2027-09-30")};
  const auto draw = [&](bool nothing) {
    std::array<std::vector<std::int64_t>, kTables> numbers;
    const auto a = nothing ? 0 : *rc::gen::inRange<std::int64_t>(0, 6);
    const auto b = nothing ? 0 : *rc::gen::inRange<std::int64_t>(0, 3);
    const auto c = nothing ? 0 : *rc::gen::inRange<std::int64_t>(0, 3);
    numbers[0] = {a, b, c};
    numbers[1] = {c, a + b};
    numbers[2] = {a + b + c};
    return numbers;
  };
  const auto hide_some = [](Release& release) {
    for (const Table table : kEveryTable) {
      for (const auto& [key, count] : release.whole.of(table)) {
        if (*rc::gen::arbitrary<bool>()) release.hidden[static_cast<std::size_t>(table)].insert(key);
      }
    }
  };
  const std::array<Period, 2> halves = {kAutumn, test::kSpring};
  for (int i = 0; i < pieces; ++i) {
    Release half = free_release(i + 1, halves[static_cast<std::size_t>(i)], draw(false));
    half.silent = *rc::gen::inRange(0, 3) == 0;
    hide_some(half);
    out.releases.push_back(half);
    out.has_own.push_back(true);
  }
  Release whole = free_release(pieces + 1, season, draw(covers));
  for (const Release& half : out.releases) whole.whole = together(whole.whole, half.whole);
  hide_some(whole);
  out.releases.push_back(whole);
  out.has_own.push_back(!covers);
  return out;
}

std::size_t position_of(std::int64_t release) { return static_cast<std::size_t>(release) - 1; }

// The narrowest whichever child is known besides.
std::int64_t narrowest(const EverySolution& every, const Drawn& drawn, const NotGiven& one) {
  const std::size_t position = position_of(one.release);
  const Interval plain = every.bounds(position, one.days, one.key);
  std::int64_t out = plain.most - plain.least;
  for (std::size_t unit = 0; unit < drawn.releases.size(); ++unit) {
    for (const auto& [key, count] : drawn.releases[unit].own.of(one.table)) {
      if (count.injuries == 0) continue;
      const Interval with = every.bounds(position, one.days, one.key, std::pair{unit, key});
      out = std::min(out, with.most - with.least);
    }
  }
  return out;
}

RC_GTEST_PROP(Audit, BoundsAreThoseOfTryingEverything, ()) {
  const Drawn some = drawn();
  const std::vector<NotGiven> all = audit(some.releases);
  for (const Table table : kEveryTable) {
    const EverySolution every(some.releases, table, some.has_own);
    RC_ASSERT(every.solutions() > 0U);
    for (const NotGiven& one : all) {
      if (one.table != table || one.key.empty()) continue;
      const Interval plain = every.bounds(position_of(one.release), one.days, one.key);
      RC_ASSERT(one.interval.least == plain.least);
      RC_ASSERT(one.interval.most == plain.most);
      RC_ASSERT(one.width == std::min(kLeastWidth, narrowest(every, some, one)));
    }
    // Nothing small that comes out is missing from the audit.
    for (const Release& release : some.releases) {
      if (release.silent) continue;
      for (const auto& [key, count] : release.whole.of(table)) {
        if (release.shows(table, key)) continue;
        RC_ASSERT(std::any_of(all.begin(), all.end(), [&, wanted = key, table](const NotGiven& one) {
          return one.release == release.number && one.days == Days::kPeriod && one.table == table && one.key == wanted;
        }));
      }
    }
  }
}

}  // namespace
}  // namespace lanework::release
