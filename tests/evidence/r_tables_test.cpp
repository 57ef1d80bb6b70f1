// Limits, ratios and shrunken rates against R's, tests/evidence/r/README.md.
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "core/evidence/gamma_poisson.h"
#include "core/evidence/poisson_limits.h"
#include "core/evidence/rate_ratio.h"
#include "tests/evidence/csv_rows.h"

namespace lanework::evidence {
namespace {

const std::string kFolder = LANEWORK_SOURCE_DIR "/tests/evidence/r/";

// Both as printed, to so many significant digits.
void expect_close(double ours, double theirs, double relative, const std::string& what) {
  EXPECT_LE(std::abs(ours - theirs), relative * std::max(std::abs(theirs), 1e-300))
      << what << ' ' << ours << ' ' << theirs;
}

TEST(RTables, LimitsOfRates) {
  const std::vector<CsvRow> rows = csv_rows(kFolder + "rate_limits.csv");
  ASSERT_EQ(rows.size(), 15U);
  for (const CsvRow& row : rows) {
    const auto count = std::stoll(row.at("x"));
    const double thousand = 1000 / number(row, "pt");
    const Interval exact = exact_limits(count, number(row, "conf"));
    const Interval mid_p = mid_p_limits(count, number(row, "conf"));
    expect_close(exact.low * thousand, number(row, "garwood_lo"), 1e-9, "exact low");
    expect_close(exact.high * thousand, number(row, "garwood_hi"), 1e-9, "exact high");
    expect_close(mid_p.low * thousand, number(row, "midp_lo"), 1e-9, "mid-P low");
    expect_close(mid_p.high * thousand, number(row, "midp_hi"), 1e-9, "mid-P high");
  }
}

TEST(RTables, RatiosOfRates) {
  const std::vector<CsvRow> rows = csv_rows(kFolder + "rate_ratios.csv");
  ASSERT_EQ(rows.size(), 15U);
  for (const CsvRow& row : rows) {
    const Exposed one{std::stoll(row.at("x1")), number(row, "pt1")};
    const Exposed other{std::stoll(row.at("x0")), number(row, "pt0")};
    const double level = number(row, "conf");
    expect_close(rate_ratio(one, other), number(row, "ptest_rr"), 1e-9, "ratio");
    const Tested exact = exact_ratio(one, other, level);
    expect_close(exact.limits.low, number(row, "cp_lo"), 1e-9, "exact low");
    expect_close(exact.limits.high, number(row, "cp_hi"), 1e-9, "exact high");
    const Tested mid_p = mid_p_ratio(one, other, level);
    expect_close(mid_p.limits.low, number(row, "tmid_lo"), 1e-8, "mid-P low");
    expect_close(mid_p.limits.high, number(row, "tmid_hi"), 1e-8, "mid-P high");
    expect_close(mid_p.p, number(row, "tmid_p"), 1e-9, "mid-P p");
    expect_close(least_likely_p(one, other), number(row, "ptest_p"), 1e-9, "p of what is no likelier");
    if (one.events > 0) {
      const Tested wald = log_wald_ratio(one, other, level);
      expect_close(wald.limits.low, number(row, "wald_lo"), 1e-9, "normal low");
      expect_close(wald.limits.high, number(row, "wald_hi"), 1e-9, "normal high");
    }
    expect_close(rate_difference(one, other, level).per_hour, number(row, "rd"), 1e-9, "difference");
  }
}

TEST(RTables, ShrunkenRates) {
  std::map<std::string, std::vector<CsvRow>> sets;
  for (CsvRow& row : csv_rows(kFolder + "shrunken.csv")) {
    const std::string set = row.at("set");
    sets[set].push_back(std::move(row));
  }
  ASSERT_EQ(sets.size(), 2U);
  for (const auto& [name, rows] : sets) {
    std::vector<SquadCount> squads;
    for (const CsvRow& row : rows) squads.push_back({std::stoll(row.at("y")), number(row, "E")});
    const std::vector<Shrunken> shrunken = shrink(squads, fit_gamma_prior(squads), 0.95);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      expect_close(shrunken[i].estimate * 1000, number(rows[i], "eb1000"), 1e-6, name);
      expect_close(shrunken[i].limits.low * 1000, number(rows[i], "lo1000"), 1e-5, name);
      expect_close(shrunken[i].limits.high * 1000, number(rows[i], "hi1000"), 1e-6, name);
      expect_close(1 - shrunken[i].weight_of_own, number(rows[i], "shrink"), 1e-5, name);
    }
  }
}

}  // namespace
}  // namespace lanework::evidence
