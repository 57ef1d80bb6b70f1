// What a season's injuries by region propose: bounded, never downwards, rarely by chance.
#include "core/findings/emphasis.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numeric>
#include <random>

#include "core/base/random.h"
#include "tests/findings/shipped_reference.h"
#include "tests/findings/small_season.h"

namespace lanework::findings {
namespace {

using records::Field;

const std::vector<FamilyWeight>& families() {
  static const std::vector<FamilyWeight> kFamilies = {{"pulse-raising", "pulse raising", 4},
                                                      {"mobility", "mobility", 2},
                                                      {"hip-and-groin", "hip and groin", 5},
                                                      {"hamstring", "hamstring", 7},
                                                      {"trunk", "trunk", 5},
                                                      {"balance", "balance", 5},
                                                      {"leg-strength", "leg strength", 7},
                                                      {"jump-and-land", "jump and land", 8},
                                                      {"run-and-cut", "run and cut", 6}};
  return kFamilies;
}

const EmphasisReference& reference() { return shipped_reference(); }

std::size_t at(const char* region) {
  static const records::Terms kTerms = record_terms();
  const auto wanted = static_cast<records::Region>(*kTerms.with_key(Field::kRegion, region));
  const auto same = [&](const RegionReference& row) { return row.region == wanted; };
  const auto& rows = reference().regions;
  return static_cast<std::size_t>(std::find_if(rows.begin(), rows.end(), same) - rows.begin());
}

EmphasisProposal propose(const RegionCounts& counts) {
  return propose_emphasis(counts, reference(), families(), {1, 8}, 0.95);
}

RegionCounts counts_of(std::vector<int> of_region) {
  RegionCounts out;
  out.all = std::accumulate(of_region.begin(), of_region.end(), 0);
  out.of_region = std::move(of_region);
  return out;
}

// As many per cent of 100 injuries as the usual shares say.
RegionCounts usual_counts() {
  std::vector<int> out;
  for (const RegionReference& row : reference().regions) out.push_back(row.usual_percent);
  return counts_of(std::move(out));
}

const FamilyRow& row_of(const EmphasisProposal& found, const char* key) {
  return *std::find_if(found.families.begin(), found.families.end(),
                       [&](const FamilyRow& row) { return row.family.key == key; });
}

TEST(Emphasis, AClubLikeAllOthersProposesNothing) {
  const EmphasisProposal found = propose(usual_counts());
  EXPECT_FALSE(found.any_change());
  for (const FamilyRow& row : found.families) {
    if (row.regions.empty()) continue;
    EXPECT_DOUBLE_EQ(row.share.times_usual, 1) << row.family.key;
  }
  EXPECT_EQ(row_of(found, "mobility").judged, Judged::kNoRegion);
}

TEST(Emphasis, ManyMoreAnklesRaiseBalanceByOne) {
  RegionCounts counts = usual_counts();
  counts.of_region[at("ankle")] += 40;
  counts.all += 40;
  const EmphasisProposal found = propose(counts);
  const FamilyRow& balance = row_of(found, "balance");
  EXPECT_EQ(balance.judged, Judged::kRaise);
  EXPECT_EQ(balance.proposed_weight, 6);
  // (40 * 0.18 + 58) / (40 + 140) by 0.18
  EXPECT_DOUBLE_EQ(balance.share.times_usual, 65.2 / 180 / 0.18);
  EXPECT_EQ(std::count_if(found.families.begin(), found.families.end(), [](const auto& row) { return row.changes(); }),
            1);
}

TEST(Emphasis, TheHighestWeightStays) {
  RegionCounts counts = usual_counts();
  counts.of_region[at("knee")] += 100;
  counts.all += 100;
  const EmphasisProposal found = propose(counts);
  EXPECT_EQ(row_of(found, "jump-and-land").judged, Judged::kAtHighest);
  EXPECT_EQ(row_of(found, "jump-and-land").proposed_weight, 8);
  EXPECT_EQ(row_of(found, "leg-strength").proposed_weight, 8);
}

TEST(Emphasis, FewInjuriesNeverLowerAWeight) {
  RegionCounts counts = usual_counts();
  for (int& count : counts.of_region) count *= 20;
  counts.of_region[at("thigh")] = 10;
  counts.all = std::accumulate(counts.of_region.begin(), counts.of_region.end(), 0);
  const EmphasisProposal found = propose(counts);
  EXPECT_EQ(row_of(found, "hamstring").judged, Judged::kClearlyFewer);
  EXPECT_EQ(row_of(found, "hamstring").proposed_weight, 7);
}

TEST(Emphasis, BelowTheFewestNothingIsSaid) {
  std::vector<int> ankles(reference().regions.size(), 0);
  ankles[at("ankle")] = reference().fewest_injuries - 1;
  EXPECT_EQ(row_of(propose(counts_of(ankles)), "balance").judged, Judged::kTooFew);
  ankles[at("ankle")] += 1;
  EXPECT_EQ(row_of(propose(counts_of(ankles)), "balance").judged, Judged::kRaise);
}

// Counting.

records::InjuryRecord of(const char* region, const char* tissue = nullptr) {
  static const records::Terms kTerms = record_terms();
  records::InjuryRecord out = injury(0, day(3, 3), day(3, 10));
  if (region != nullptr) out.region = static_cast<records::Region>(*kTerms.with_key(Field::kRegion, region));
  if (tissue != nullptr) out.tissue = static_cast<records::Tissue>(*kTerms.with_key(Field::kTissue, tissue));
  return out;
}

TEST(RegionCounts, WhatCountsAndWhatIsLeftOut) {
  records::Season season = small_season();
  season.injuries = {of("ankle"),
                     of("ankle", "joint-sprain"),
                     of("knee", "contusion"),
                     of("foot", "physis-injury"),
                     of("several-regions"),
                     of(nullptr),
                     of("ankle"),
                     of("thigh")};
  season.injuries[6].contact = records::Contact::kDirectAthlete;
  season.injuries[7].recurrence = records::Recurrence::kExacerbation;
  const RegionCounts counts = count_regions(season, reference());
  EXPECT_EQ(counts.all, 2);
  EXPECT_EQ(counts.of_region[at("ankle")], 2);
  EXPECT_EQ(counts.contact, 1);
  EXPECT_EQ(counts.recurrence, 1);
  EXPECT_EQ(counts.tissue, 2);
  EXPECT_EQ(counts.no_region, 2);
}

TEST(RegionCounts, AnEventCountsOnceForEachRegion) {
  records::Season season = small_season();
  season.injuries = {of("ankle", "joint-sprain"), of("ankle", "fracture"), of("knee", "joint-sprain")};
  for (records::InjuryRecord& one : season.injuries) one.event = "fall";
  const RegionCounts counts = count_regions(season, reference());
  EXPECT_EQ(counts.all, 2);
  EXPECT_EQ(counts.of_region[at("ankle")], 1);
  EXPECT_EQ(counts.of_region[at("knee")], 1);
}

TEST(RegionCounts, WithoutInjuriesNothingIsCountedOrProposed) {
  records::Season season = small_season();
  season.injuries.clear();
  const RegionCounts counts = count_regions(season, reference());
  EXPECT_EQ(counts.all, 0);
  EXPECT_FALSE(propose(counts).any_change());
}

// Properties.

records::Season any_season() {
  records::Season season = small_season();
  season.injuries.clear();
  const int regions = static_cast<int>(record_terms().of(Field::kRegion).size());
  const int tissues = static_cast<int>(record_terms().of(Field::kTissue).size());
  const int rows = *rc::gen::inRange(0, 60);
  for (int i = 0; i < rows; ++i) {
    records::InjuryRecord one = injury(0, day(3, 3), day(3, 10));
    if (*rc::gen::inRange(0, 5) > 0) one.region = static_cast<records::Region>(*rc::gen::inRange(0, regions));
    if (*rc::gen::inRange(0, 2) > 0) one.tissue = static_cast<records::Tissue>(*rc::gen::inRange(0, tissues));
    if (*rc::gen::inRange(0, 2) > 0) one.contact = static_cast<records::Contact>(*rc::gen::inRange(0, 5));
    if (*rc::gen::inRange(0, 2) > 0) one.recurrence = static_cast<records::Recurrence>(*rc::gen::inRange(0, 5));
    if (*rc::gen::inRange(0, 3) == 0) one.event = std::string("e") + std::to_string(*rc::gen::inRange(0, 6));
    season.injuries.push_back(one);
  }
  return season;
}

RegionCounts any_counts() {
  std::vector<int> of_region;
  for (std::size_t i = 0; i < reference().regions.size(); ++i) of_region.push_back(*rc::gen::inRange(0, 60));
  return counts_of(std::move(of_region));
}

TEST(Emphasis, EachRegionHasItsOwnShare) {
  const std::vector<ShareRow> rows = region_shares(usual_counts(), reference(), 0.95);
  ASSERT_EQ(rows.size(), reference().regions.size());
  EXPECT_EQ(rows[at("ankle")].injuries, 18);
  EXPECT_DOUBLE_EQ(rows[at("ankle")].expected, 18);
  EXPECT_DOUBLE_EQ(rows[at("ankle")].times_usual, 1);
}

TEST(EmphasisProperty, TheOrderOfRowsDoesNotMatter) {
  EXPECT_TRUE(rc::check([] {
    records::Season season = any_season();
    const RegionCounts counts = count_regions(season, reference());
    std::mt19937 shuffling(static_cast<std::uint32_t>(*rc::gen::inRange(0, 1 << 20)));
    std::shuffle(season.injuries.begin(), season.injuries.end(), shuffling);
    RC_ASSERT(count_regions(season, reference()) == counts);
    RC_ASSERT(counts.all == std::accumulate(counts.of_region.begin(), counts.of_region.end(), 0));
  }));
}

TEST(EmphasisProperty, MoreInjuriesOfARegionNeverLowerItsFamiliesRatio) {
  EXPECT_TRUE(rc::check([] {
    RegionCounts counts = any_counts();
    const EmphasisProposal before = propose(counts);
    const auto more = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(counts.of_region.size())));
    counts.of_region[more] += 1;
    counts.all += 1;
    const EmphasisProposal after = propose(counts);
    for (std::size_t f = 0; f < families().size(); ++f) {
      const auto& regions = after.families[f].regions;
      if (std::find(regions.begin(), regions.end(), reference().regions[more].region) == regions.end()) continue;
      const ShareRow& a = before.families[f].share;
      const ShareRow& b = after.families[f].share;
      RC_ASSERT(b.times_usual >= a.times_usual - 1e-12);
      RC_ASSERT(b.limits.low >= a.limits.low - 1e-9);
      RC_ASSERT(b.limits.high >= a.limits.high - 1e-9);
    }
  }));
}

TEST(EmphasisProperty, AlwaysWithinBoundsAndNeverDown) {
  EXPECT_TRUE(rc::check([] {
    const RegionCounts counts = any_counts();
    std::vector<FamilyWeight> weighed = families();
    for (FamilyWeight& family : weighed) family.weight = *rc::gen::inRange(1, 9);
    const EmphasisProposal found = propose_emphasis(counts, reference(), weighed, {1, 8}, 0.95);
    for (std::size_t f = 0; f < weighed.size(); ++f) {
      const FamilyRow& row = found.families[f];
      RC_ASSERT(row.proposed_weight >= weighed[f].weight);
      RC_ASSERT(row.proposed_weight <= std::min(8, weighed[f].weight + 1));
      RC_ASSERT(row.changes() == (row.judged == Judged::kRaise));
      if (!row.changes()) continue;
      RC_ASSERT(row.share.limits.low > 1.25);
      RC_ASSERT(counts.all >= reference().fewest_injuries);
    }
  }));
}

TEST(EmphasisProperty, WithoutInjuriesOfItsRegionsAFamilyIsNeverRaised) {
  EXPECT_TRUE(rc::check([] {
    RegionCounts counts = any_counts();
    counts.all -= counts.of_region[at("ankle")];
    counts.of_region[at("ankle")] = 0;
    RC_ASSERT(!row_of(propose(counts), "balance").changes());
  }));
}

// Clubs made up: how often is anything proposed where nothing is different, and where something is?

struct Simulated {
  double any = 0;      // share of clubs with a change proposed
  double balance = 0;  // of them with more balance
};

Simulated simulate(int injuries, double ankles_times, double reference_off, std::uint64_t seed) {
  constexpr int kClubs = 4000;
  const RandomKey key = random_key(seed);
  Simulated out;
  for (int club = 0; club < kClubs; ++club) {
    NormalStream normals(key, 1, static_cast<std::uint32_t>(club), 0);
    std::vector<double> shares;
    for (const RegionReference& row : reference().regions)
      shares.push_back(row.usual_percent * std::exp(reference_off * normals.next()));
    shares[at("ankle")] *= ankles_times;
    const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
    std::vector<int> counts(shares.size(), 0);
    for (int i = 0; i < injuries; ++i) {
      double left =
          all * uniform_from(philox({static_cast<std::uint32_t>(i), 2, static_cast<std::uint32_t>(club), 0}, key)[0]);
      std::size_t region = 0;
      while (region + 1 < shares.size() && left > shares[region]) left -= shares[region++];
      ++counts[region];
    }
    const EmphasisProposal found = propose(counts_of(std::move(counts)));
    out.any += found.any_change() ? 1.0 / kClubs : 0;
    out.balance += row_of(found, "balance").changes() ? 1.0 / kClubs : 0;
  }
  return out;
}

// Stated in docs/model/evidence.md.
TEST(EmphasisSimulated, ClubsWithoutADifferenceAreSeldomProposedAChange) {
  for (const int injuries : {30, 60, 120, 240}) {
    const double any = simulate(injuries, 1, 0, 11).any;
    const double off = simulate(injuries, 1, 0.2, 12).any;
    std::printf("%3d injuries: %.2f %% of clubs like the reference, %.2f %% of clubs off it by a fifth\n", injuries,
                100 * any, 100 * off);
    EXPECT_LT(any, 0.01) << injuries;
    EXPECT_LT(off, 0.05) << injuries;
  }
}

TEST(EmphasisSimulated, ALargeDifferenceIsSeenWithEnoughInjuries) {
  double before = 0;
  for (const int injuries : {30, 60, 120, 240}) {
    // Twice the ankles of a usual club are 2 / 1.18 times their usual share.
    const double twice = simulate(injuries, 2, 0, 13).balance;
    const double thrice = simulate(injuries, 3, 0, 14).balance;
    std::printf("%3d injuries: seen in %.0f %% of clubs with twice the ankles, %.0f %% with three times\n", injuries,
                100 * twice, 100 * thrice);
    EXPECT_GE(thrice, twice);
    EXPECT_GE(twice, before - 0.02);
    before = twice;
  }
  EXPECT_GT(before, 0.6);
}

}  // namespace
}  // namespace lanework::findings
