#include "core/findings/rate_table.h"

#include <gtest/gtest.h>

#include "core/evidence/poisson_limits.h"
#include "tests/findings/small_season.h"

namespace lanework::findings {
namespace {

RateTable table(GroupBy by) { return rate_table(small_season(), record_terms(), by, {0.95}); }

TEST(RateTable, AnEventOfTwoDiagnosesCountsOnce) {
  const RateTable whole = table(GroupBy::kWhole);
  ASSERT_EQ(whole.rows.size(), 1);
  const RateRow& all = whole.rows.front();
  EXPECT_EQ(all.injuries, 3);
  EXPECT_EQ(all.hours, 70);
  EXPECT_EQ(all.open, 1);
  // 6 days; open since 8 March, 35 by the end of 12 April; the fall's worst diagnosis 4.
  EXPECT_EQ(all.days, 6 + 35 + 4);
  EXPECT_EQ(all.median_days, 6);
  const evidence::Interval limits = evidence::exact_limits(3, 0.95);
  EXPECT_DOUBLE_EQ(all.limits.low, limits.low / 70);
  EXPECT_DOUBLE_EQ(all.limits.high, limits.high / 70);
}

TEST(RateTable, EachGroupHasItsOwnHours) {
  const RateTable settings = table(GroupBy::kSetting);
  ASSERT_EQ(settings.rows.size(), 2);
  EXPECT_EQ(settings.rows[0].label, "training");
  EXPECT_EQ(settings.rows[0].hours, 55);
  EXPECT_EQ(settings.rows[0].injuries, 2);
  EXPECT_EQ(settings.rows[1].hours, 15);
  EXPECT_EQ(settings.rows[1].injuries, 1);
  const RateTable squads = table(GroupBy::kSquad);
  ASSERT_EQ(squads.rows.size(), 2);
  EXPECT_EQ(squads.rows[1].label, "Thirteens");
  EXPECT_EQ(squads.rows[1].injuries, 2);
}

TEST(RateTable, AgesStandInTheirOrder) {
  const RateTable ages = table(GroupBy::kAgeBand);
  ASSERT_EQ(ages.rows.size(), 2);
  EXPECT_EQ(ages.rows[0].label, "U9");
  EXPECT_EQ(ages.rows[1].label, "U13");
}

TEST(RateTable, RegionsCountDiagnosesInAllHours) {
  records::Season season = small_season();
  const records::Terms terms = record_terms();
  season.injuries[0].region = static_cast<records::Region>(*terms.with_key(records::Field::kRegion, "knee"));
  const RateTable regions = rate_table(season, terms, GroupBy::kRegion, {0.95});
  EXPECT_TRUE(regions.of_diagnoses);
  ASSERT_EQ(regions.rows.size(), 2);
  EXPECT_EQ(regions.rows[0].label, "knee");
  EXPECT_EQ(regions.rows[0].hours, 70);
  EXPECT_EQ(regions.rows[1].label, "not known");
  EXPECT_EQ(regions.rows[1].injuries, 3);
}

// A group's count leaves out those that nobody assigned: with many of them its rate would be read as certain and low.
TEST(RateTable, WhereManyHaveNoGroupNoGroupHasARate) {
  records::Season season = small_season();
  const records::Terms terms = record_terms();
  const RateTable none = rate_table(season, terms, GroupBy::kRegion, {0.95});
  EXPECT_EQ(none.unknown, none.injuries);
  EXPECT_FALSE(none.rates_stand);
  const auto knee = static_cast<records::Region>(*terms.with_key(records::Field::kRegion, "knee"));
  for (records::InjuryRecord& injury : season.injuries) injury.region = knee;
  const RateTable all = rate_table(season, terms, GroupBy::kRegion, {0.95});
  EXPECT_EQ(all.unknown, 0);
  EXPECT_TRUE(all.rates_stand);
  season.injuries.resize(1);
  season.injuries.resize(10, season.injuries.front());
  season.injuries.back().region.reset();
  EXPECT_TRUE(rate_table(season, terms, GroupBy::kRegion, {0.95}).rates_stand) << "one in ten";
  season.injuries.front().region.reset();
  EXPECT_FALSE(rate_table(season, terms, GroupBy::kRegion, {0.95}).rates_stand) << "two in ten";
}

TEST(RateTable, RecurrentIsOfTheSamePlaceAndKind) {
  using records::Recurrence;
  records::Season season = small_season();
  season.injuries[0].recurrence = Recurrence::kFirst;
  season.injuries[1].recurrence = Recurrence::kReInjury;
  season.injuries[2].recurrence = Recurrence::kExacerbation;
  season.injuries[3].recurrence = Recurrence::kLocal;
  const RateTable found = rate_table(season, record_terms(), GroupBy::kHistory, {0.95});
  ASSERT_EQ(found.rows.size(), 3);
  EXPECT_EQ(found.rows[0].label, kFirstInjury.in(Language::kEnglish));
  EXPECT_EQ(found.rows[1].label, kRecurrent.in(Language::kEnglish));
  EXPECT_EQ(found.rows[1].injuries, 2);
  EXPECT_EQ(found.rows[1].hours, 70);
  EXPECT_EQ(found.rows[2].label, kOtherLater.in(Language::kEnglish));
  const auto share = recurrent_share(found, 0.95);
  ASSERT_TRUE(share);
  EXPECT_EQ(share->recurrent, 2);
  EXPECT_EQ(share->known, 4);
  // Exact limits of 2 of 4 (Clopper and Pearson).
  EXPECT_NEAR(share->limits.low, 0.0676, 5e-5);
  EXPECT_NEAR(share->limits.high, 0.9324, 5e-5);
  EXPECT_FALSE(recurrent_share(table(GroupBy::kHistory), 0.95));  // of no injury it is known
}

TEST(RateTable, InjuriesOfASquadWithoutHoursHaveNoRate) {
  records::Season season = small_season();
  season.injuries.push_back(injury(2, day(3, 20), day(3, 25)));
  const RateTable squads = rate_table(season, record_terms(), GroupBy::kSquad, {0.95});
  ASSERT_EQ(squads.rows.size(), 3);
  EXPECT_EQ(squads.rows[2].injuries, 1);
  EXPECT_EQ(squads.rows[2].hours, 0);
  EXPECT_FALSE(squads.rows[2].burden.has_value());
}

TEST(SeverityTable, BandsByTheWorstDiagnosis) {
  const std::vector<SeverityRow> rows = severity_table(small_season());
  ASSERT_EQ(rows.size(), 4);
  EXPECT_EQ(rows[0].injuries, 0);
  EXPECT_EQ(rows[1].injuries, 2);
  EXPECT_EQ(rows[3].injuries, 1);
  EXPECT_EQ(rows[3].open, 1);
}

}  // namespace
}  // namespace lanework::findings
