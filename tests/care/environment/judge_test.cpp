// What heat, cold and air ask: an estimate never allows, what is not known takes the careful side, and nothing that
// gets worse asks for less.
#include "core/care/environment/judge.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <type_traits>

#include "core/care/environment/weather_verdict.h"
#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

// Nothing leads from an estimate to what can allow.
static_assert(!std::is_constructible_v<MeasuredWetBulbGlobe, EstimatedWetBulbGlobe>);
static_assert(!std::is_convertible_v<EstimatedWetBulbGlobe, MeasuredWetBulbGlobe>);
static_assert(!std::is_constructible_v<Ruling, Caution>);
static_assert(!std::is_invocable_v<decltype(rule), const BandTable&, EstimatedWetBulbGlobe>);
static_assert(!std::is_invocable_v<decltype(allows_as_usual), const BandTable&, Caution, bool>);

double drawn(double least, double most) { return least + (most - least) * (*rc::gen::inRange(0, 10001)) / 10000.0; }

MeasuredWetBulbGlobe meter(double celsius) { return MeasuredWetBulbGlobe::of_meter({celsius}, {1}, {}).value(); }

const BandTable& drawn_heat_table() {
  const auto& tables = shipped_tables().heat.tables;
  return tables[*rc::gen::inRange<std::size_t>(0, tables.size())];
}

Weather drawn_weather() {
  Weather out;
  out.air = Celsius{drawn(10, 50)};
  out.humidity = RelativeHumidity{drawn(1, 100)};
  if (*rc::gen::arbitrary<bool>()) out.sun = static_cast<Sun>(*rc::gen::inRange(0, 3));
  if (*rc::gen::arbitrary<bool>()) out.acclimatised_days = *rc::gen::inRange(0, 30);
  if (*rc::gen::arbitrary<bool>()) out.youngest_age = *rc::gen::inRange(8, 18);
  return out;
}

const MeasuredAge kFresh{10};

TEST(JudgeHeat, AnEstimateNeverAllowsMoreThanTheSameMeasured) {
  EXPECT_TRUE(rc::check([] {
    const Weather estimated = drawn_weather();
    const BandTable& table = drawn_heat_table();
    const HeatVerdict by_estimate = judge_heat(estimated, table, kFresh);
    Weather measured = estimated;
    measured.wet_bulb_globe = meter(by_estimate.estimated->value().degrees);
    const HeatVerdict by_measure = judge_heat(measured, table, kFresh);
    RC_ASSERT(by_estimate.verdict.band >= by_measure.verdict.band);
    RC_ASSERT(at_least_as_careful(by_estimate.verdict.change, by_measure.verdict.change));
    RC_ASSERT(!by_estimate.allowed_as_usual);
  }));
}

TEST(JudgeHeat, NeverLessAsItGetsWarmerOrDamper) {
  EXPECT_TRUE(rc::check([] {
    const Weather cooler = drawn_weather();
    const BandTable& table = drawn_heat_table();
    Weather warmer = cooler;
    warmer.air = Celsius{drawn(cooler.air->degrees, 50)};
    warmer.humidity = RelativeHumidity{drawn(cooler.humidity->percent, 100)};
    RC_ASSERT(at_least_as_careful(judge_heat(warmer, table, kFresh).verdict.change,
                                  judge_heat(cooler, table, kFresh).verdict.change));
  }));
}

TEST(JudgeHeat, NeverLessAsTheReadingRises) {
  EXPECT_TRUE(rc::check([] {
    const BandTable& table = drawn_heat_table();
    Weather weather = drawn_weather();
    const double reading = drawn(5, 45);
    weather.wet_bulb_globe = meter(reading);
    const HeatVerdict lower = judge_heat(weather, table, kFresh);
    weather.wet_bulb_globe = meter(drawn(reading, 45));
    RC_ASSERT(at_least_as_careful(judge_heat(weather, table, kFresh).verdict.change, lower.verdict.change));
  }));
}

// Whatever is not known asks no less than whatever it could have been.
TEST(JudgeHeat, WhatIsNotKnownTakesTheCarefulSide) {
  EXPECT_TRUE(rc::check([] {
    const BandTable& table = drawn_heat_table();
    Weather known = drawn_weather();
    if (*rc::gen::arbitrary<bool>()) known.wet_bulb_globe = meter(drawn(5, 45));
    const SessionChange with_all = judge_heat(known, table, kFresh).verdict.change;
    RC_ASSERT(at_least_as_careful(judge_heat(known, table, {}).verdict.change, with_all));
    RC_ASSERT(at_least_as_careful(judge_heat(known, table, MeasuredAge{61}).verdict.change, with_all));
    for (const int what : {0, 1, 2, 3}) {
      Weather less = known;
      if (what == 0) less.humidity.reset();
      if (what == 1 && less.humidity->percent < 99) less.sun.reset();
      if (what == 2) less.acclimatised_days.reset();
      if (what == 3) less.youngest_age.reset();
      RC_ASSERT(at_least_as_careful(judge_heat(less, table, kFresh).verdict.change, with_all));
    }
  }));
}

TEST(JudgeHeat, OldWeatherIsOneBandMoreCareful) {
  EXPECT_TRUE(rc::check([] {
    const BandTable& table = drawn_heat_table();
    Weather weather;
    weather.wet_bulb_globe = meter(drawn(15, 40));
    const std::size_t fresh = judge_heat(weather, table, kFresh).verdict.band;
    const std::size_t wanted = std::min(fresh + 1, table.bands.size() - 1);
    RC_ASSERT(judge_heat(weather, table, MeasuredAge{61}).verdict.band == wanted);
    RC_ASSERT(judge_heat(weather, table, {}).verdict.band == wanted);
    RC_ASSERT(judge_heat(weather, table, MeasuredAge{60}).verdict.band == fresh);
  }));
}

bool says(const std::vector<std::string>& sentences, const std::string& part) {
  for (const std::string& sentence : sentences)
    if (sentence.find(part) != std::string::npos) return true;
  return false;
}

TEST(JudgeHeat, AMeasurementAllowsAnEstimateDoesNot) {
  const BandTable& table = shipped_tables().heat.of_default_region();
  Weather weather;
  weather.air = Celsius{18};
  weather.humidity = RelativeHumidity{40};
  weather.acclimatised_days = 20;
  weather.youngest_age = 14;
  EXPECT_FALSE(judge_heat(weather, table, kFresh).allowed_as_usual);
  EXPECT_FALSE(judge_heat(weather, table, kFresh).verdict.change.changes());
  weather.wet_bulb_globe = meter(17);
  EXPECT_TRUE(judge_heat(weather, table, kFresh).allowed_as_usual);
  EXPECT_FALSE(judge_heat(weather, table, MeasuredAge{61}).allowed_as_usual);
  EXPECT_FALSE(judge_heat(weather, table, {}).allowed_as_usual);
  EXPECT_TRUE(judge_heat(weather, table, MeasuredAge{60}).allowed_as_usual);
}

// 23.0 is below the cut-off of 24, but by less than the estimate's error.
TEST(JudgeHeat, NearACutOffAnEstimateTakesTheMoreCarefulBand) {
  const BandTable& table = shipped_tables().heat.of_default_region();
  Weather weather;
  weather.air = Celsius{23};
  weather.humidity = RelativeHumidity{55};
  const HeatVerdict verdict = judge_heat(weather, table, kFresh);
  ASSERT_LT(verdict.estimated->value().degrees, 24);
  ASSERT_GT(verdict.estimated->at_most().degrees, 24);
  EXPECT_EQ(verdict.verdict.band, 1U);
}

TEST(JudgeHeat, SaysWhatItDoesNotKnow) {
  const BandTable& table = shipped_tables().heat.of_default_region();
  Weather weather;
  weather.air = Celsius{24};
  const HeatVerdict verdict = judge_heat(weather, table, {});
  EXPECT_TRUE(says(verdict.verdict.cautions, "humidity is not known: taken as 100 %"));
  EXPECT_TRUE(says(verdict.verdict.cautions, "how many days they have trained in such heat is not known"));
  EXPECT_TRUE(says(verdict.verdict.cautions, "nobody says when it was measured"));
  const HeatVerdict nothing = judge_heat({}, table, kFresh);
  EXPECT_EQ(nothing.verdict.band, 1U);
  EXPECT_TRUE(says(nothing.verdict.cautions, "measure before anybody starts"));
}

TEST(JudgeHeat, UnverifiedTablesSaySo) {
  Weather weather;
  weather.wet_bulb_globe = meter(31);
  const auto reason = [&](const char* region) {
    return judge_heat(weather, heat_table(region), kFresh).verdict.change.reasons.front();
  };
  EXPECT_TRUE(reason("united-states-category-2").unverified);
  EXPECT_FALSE(reason("united-states-school").unverified);
  EXPECT_EQ(reason("united-states-school").source, "state-school-ladder-2012");
  EXPECT_EQ(reason("united-states-school").minutes_old, 10);
}

TEST(JudgeCold, NeverLessAsItGetsColderOrWindier) {
  EXPECT_TRUE(rc::check([] {
    const BandTable& table = shipped_tables().cold.of_default_region();
    Weather milder;
    milder.air = Celsius{drawn(-40, 20)};
    milder.wind = MetresPerSecond{drawn(0, 30)};
    Weather harsher = milder;
    harsher.air = Celsius{drawn(-40, milder.air->degrees)};
    harsher.wind = MetresPerSecond{drawn(milder.wind->speed, 30)};
    harsher.wet = *rc::gen::arbitrary<bool>();
    RC_ASSERT(at_least_as_careful(judge_cold(harsher, table, kFresh).verdict.change,
                                  judge_cold(milder, table, kFresh).verdict.change));
    RC_ASSERT(at_least_as_careful(judge_cold(milder, table, {}).verdict.change,
                                  judge_cold(milder, table, kFresh).verdict.change));
  }));
}

TEST(JudgeCold, SaysWhatItDoesNotKnow) {
  const BandTable& table = shipped_tables().cold.of_default_region();
  Weather weather;
  weather.air = Celsius{1};
  const ColdVerdict verdict = judge_cold(weather, table, kFresh);
  EXPECT_TRUE(says(verdict.verdict.cautions, "wind is not known: taken as 20 km/h"));
  EXPECT_EQ(verdict.verdict.band, 1U);
  weather.wind = MetresPerSecond{0};
  EXPECT_EQ(judge_cold(weather, table, kFresh).verdict.band, 0U);
  weather.wet = true;
  EXPECT_EQ(judge_cold(weather, table, kFresh).verdict.band, 1U);
  EXPECT_EQ(judge_cold({}, table, kFresh).verdict.band, 1U);
  weather.indoor = true;
  EXPECT_FALSE(judge_cold(weather, table, kFresh).verdict.judged);
}

TEST(JudgeAir, NeverLessAsTheAirGetsWorse) {
  EXPECT_TRUE(rc::check([] {
    const auto& tables = shipped_tables().air.tables;
    const BandTable& table = tables[*rc::gen::inRange<std::size_t>(0, tables.size())];
    const double better = drawn(0, 400);
    const double worse = drawn(better, 500);
    Weather weather;
    const auto change_at = [&](double value, bool particles) {
      weather.air_quality_index.reset();
      weather.fine_particles.reset();
      if (particles) weather.fine_particles = MicrogramsPerCubicMetre{value};
      if (!particles) weather.air_quality_index = value;
      return judge_air(weather, table, shipped_tables().fine_particles, kFresh).verdict.change;
    };
    for (const bool particles : {false, true})
      RC_ASSERT(at_least_as_careful(change_at(worse, particles), change_at(better, particles)));
  }));
}

// The index is published by the hour: 60 minutes would always be over.
TEST(JudgeAir, IsOldAfterThreeHours) {
  Weather weather;
  weather.air_quality_index = 88;
  weather.measured_at = Moment{0};
  const auto band_at = [&](int minutes) {
    return judge_weather(weather, shipped_tables(), Moment{minutes}).air.verdict.band;
  };
  EXPECT_EQ(band_at(180), 1U);
  EXPECT_EQ(band_at(181), 2U);
}

TEST(JudgeAir, SaysWhatItDoesNotKnow) {
  const BandTable& table = shipped_tables().air.of_default_region();
  const AirVerdict nothing = judge_air({}, table, shipped_tables().fine_particles, kFresh);
  EXPECT_FALSE(nothing.verdict.judged);
  EXPECT_FALSE(nothing.verdict.change.changes());
  EXPECT_NE(nothing.verdict.number.find("nobody measured the air"), std::string::npos);
  Weather weather;
  weather.fine_particles = MicrogramsPerCubicMetre{60};
  const AirVerdict smoke = judge_air(weather, table, shipped_tables().fine_particles, kFresh);
  EXPECT_TRUE(smoke.verdict.change.no_session);
  EXPECT_TRUE(smoke.verdict.change.reasons.front().unverified);
  EXPECT_NE(smoke.verdict.number.find("unverified"), std::string::npos);
}

}  // namespace
}  // namespace lanework::care::environment::test
