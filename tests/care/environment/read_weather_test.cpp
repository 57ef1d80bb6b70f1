// Weather files: what is read, every mistake in one line, and the whole verdict of one.
#include "core/care/environment/read_weather.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/care/environment/weather_verdict.h"
#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

Result<Weather> weather_from(const std::string& text) {
  return read_weather(parse_toml("weather.toml", text).value(), shipped_tables());
}

std::string faults_of(const std::string& text) {
  const auto read = weather_from(text);
  std::string lines;
  if (!read)
    for (const Fault& fault : read.faults()) lines += to_line(fault) + "\n";
  return lines;
}

testing::AssertionResult is_one_line(const std::string& lines, const std::string& part) {
  if (std::count(lines.begin(), lines.end(), '\n') == 1 && lines.find(part) != std::string::npos)
    return testing::AssertionSuccess();
  return testing::AssertionFailure() << lines;
}

constexpr const char* kHotEvening =
    "measured_at = 2026-07-14T17:40:00\nair_celsius = 38\nhumidity_percent = 35\nsun = \"full\"\n"
    "wind_kilometres_per_hour = 8\n[[lightning]]\nat = 2026-07-14T18:06:00\nsign = \"thunder\"\n";

TEST(ReadWeather, AHotEvening) {
  const auto read = weather_from(kHotEvening);
  ASSERT_TRUE(read.ok()) << to_line(read.faults().front());
  const Weather& weather = read.value();
  EXPECT_EQ(to_iso(*weather.measured_at), "2026-07-14T17:40");
  EXPECT_EQ(weather.air, Celsius{38});
  EXPECT_EQ(weather.sun, Sun::kFull);
  EXPECT_NEAR(weather.wind->speed, 2.22, 0.01);
  EXPECT_EQ(to_iso(weather.lightning.last->at), "2026-07-14T18:06");
}

TEST(ReadWeather, TheWholeVerdict) {
  const Weather weather = weather_from(kHotEvening).value();
  const Moment now = moment_asked("18:07", weather).value();
  const WeatherVerdict verdict = judge_weather(weather, shipped_tables(), now);
  EXPECT_TRUE(verdict.heat.verdict.change.no_session);
  EXPECT_EQ(to_words(*verdict.lightning.until, now), "18:36");
  EXPECT_FALSE(verdict.cold.verdict.judged);
  EXPECT_EQ(to_words(verdict.change, now), "no session");
  EXPECT_EQ(verdict.change.reasons.size(), 4U);
}

TEST(ReadWeather, NothingInTheFileIsNothingKnown) {
  const Weather weather = weather_from("").value();
  const WeatherVerdict verdict = judge_weather(weather, shipped_tables(), Moment{});
  EXPECT_TRUE(verdict.change.breaks);
  EXPECT_EQ(verdict.lightning.state, LightningState::kNothingTold);
}

TEST(ReadWeather, TheRegionChoosesTheTable) {
  const Weather weather =
      weather_from("region = \"united-states-school\"\n[air_quality]\nindex = 40\nguide = \"schools\"\n").value();
  EXPECT_EQ(heat_table_of(weather, shipped_tables()).key, "state-school");
  EXPECT_EQ(cold_table_of(weather, shipped_tables()).key, "institution");
  EXPECT_EQ(air_table_of(weather, shipped_tables()).key, "schools");
  EXPECT_EQ(heat_table_of({}, shipped_tables()).key, "children");
  EXPECT_EQ(air_table_of({}, shipped_tables()).key, "under-18");
}

TEST(ReadWeather, UnitsAreOneThing) {
  EXPECT_NEAR(weather_from("air_fahrenheit = 95").value().air->degrees, 35, 1e-9);
  EXPECT_NEAR(weather_from("wind_miles_per_hour = 10").value().wind->speed, 4.4704, 1e-4);
  EXPECT_EQ(weather_from("wet_bulb_globe_fahrenheit = 86").value().wet_bulb_globe->value(), Celsius{30});
  const Weather thermometers =
      weather_from("air_celsius = 32\nnatural_wet_bulb_celsius = 25\nglobe_celsius = 40").value();
  EXPECT_NEAR(thermometers.wet_bulb_globe->value().degrees, 28.7, 1e-9);
}

TEST(ReadWeather, LightningInAnyOrderWithTimesOfDay) {
  const Weather weather = weather_from(
                              "measured_at = 2026-07-14T23:40:00\n[[lightning]]\nat = 00:10:20\nsign = "
                              "\"flash\"\n[[lightning]]\nat = 23:50:00\n"
                              "sign = \"flash-to-thunder\"\nseconds = 20\n")
                              .value();
  EXPECT_EQ(to_iso(weather.lightning.last->at), "2026-07-15T00:11");
}

TEST(ReadWeather, EveryMistakeIsOneLine) {
  EXPECT_TRUE(is_one_line(faults_of("humidity_percent = 101"), "weather.toml:1:1: humidity_percent: found 101"));
  EXPECT_TRUE(is_one_line(faults_of("humidity_percent = 0.4"), "humidity_percent: found 0.4"));
  EXPECT_TRUE(is_one_line(faults_of("air_celsius = 95"), "air_celsius: found 95, expected a number from -50 to 60"));
  EXPECT_TRUE(is_one_line(faults_of("air_celsius = 35\nair_fahrenheit = 95"), "expected one of the two"));
  EXPECT_TRUE(is_one_line(faults_of("wind_miles_per_hour = 3\nwind_metres_per_second = 3"), "wind in two units"));
  EXPECT_TRUE(is_one_line(faults_of("wind_metres_per_second = -1"), "wind_metres_per_second: found -1"));
  EXPECT_TRUE(is_one_line(faults_of("region = \"atlantis\""), "region: found 'atlantis', expected one of children, "));
  EXPECT_TRUE(is_one_line(faults_of("sun = \"hot\""), "sun: found 'hot'"));
  EXPECT_TRUE(is_one_line(faults_of("measured_at = 2026-07-14"),
                          "measured_at: found '2026-07-14', expected a date and local time"));
  EXPECT_TRUE(is_one_line(faults_of("air_celsius = 30\nnatural_wet_bulb_celsius = 31\nglobe_celsius = 40"),
                          "weather.toml:2:1: natural_wet_bulb_celsius: found 31.0 °C, above the air's 30.0 °C"));
  EXPECT_TRUE(is_one_line(faults_of("air_celsius = 30\nnatural_wet_bulb_celsius = 20\nglobe_celsius = 21"),
                          "weather.toml:3:1: globe_celsius: found 21.0 °C, far below the air's"));
  EXPECT_TRUE(
      is_one_line(faults_of("air_celsius = 30\nwet_bulb_globe_fahrenheit = 120"), "wet_bulb_globe_fahrenheit: found"));
  EXPECT_TRUE(
      is_one_line(faults_of("natural_wet_bulb_celsius = 20\nglobe_celsius = 21"), "air_celsius: found nothing"));
  EXPECT_TRUE(is_one_line(faults_of("globe_celsius = 21"), "natural_wet_bulb_celsius: found nothing"));
  EXPECT_TRUE(
      is_one_line(faults_of("wet_bulb_globe_celsius = 25\nglobe_celsius = 21"), "a meter's reading and thermometers"));
  EXPECT_TRUE(is_one_line(faults_of("[air_quality]\n"), "an index, or fine particles"));
  EXPECT_TRUE(is_one_line(faults_of("[air_quality]\nindex = -3"), "air_quality.index: found -3"));
  EXPECT_TRUE(
      is_one_line(faults_of("[air_quality]\nindex = 3\nguide = \"children\""), "expected one of under-18, schools"));
  EXPECT_TRUE(is_one_line(faults_of("[[lightning]]\nat = 2026-07-14T18:06:00\nsign = \"bang\""),
                          "lightning.1.sign: found 'bang'"));
  EXPECT_TRUE(is_one_line(faults_of("[[lightning]]\nsign = \"thunder\""), "lightning.1.at: found nothing"));
  EXPECT_TRUE(
      is_one_line(faults_of("[[lightning]]\nat = 18:06:00\nsign = \"thunder\""), "or measured_at to tell its day"));
  EXPECT_TRUE(is_one_line(faults_of("[[lightning]]\nat = 2026-07-14T18:06:00\nsign = \"thunder\"\nseconds = 3"),
                          "seconds of a single sign"));
  EXPECT_TRUE(is_one_line(faults_of("[[lightning]]\nat = 2026-07-14T18:06:00\nsign = \"flash-to-thunder\""),
                          "seconds from flash to thunder"));
  EXPECT_TRUE(is_one_line(faults_of("humidity = 40"), "found 'humidity'"));
}

// Hours beside the club's clock would make old weather fresh and end a wait for lightning early.
TEST(ReadWeather, AnOffsetIsAFaultAndNotDropped) {
  constexpr const char* kExpected = "', expected a date and local time, without an offset, such as 2026-07-14T17:40:00";
  for (const std::string offset : {"+02:00", "Z", "-05:30"}) {
    for (const std::string quoted : {"", "\""}) {
      const std::string at = quoted + "2026-07-14T18:06:00" + offset + quoted;
      const std::string found = ": found '2026-07-14T18:06:00" + offset + kExpected;
      EXPECT_TRUE(is_one_line(faults_of("measured_at = " + at), "weather.toml:1:1: measured_at" + found));
      EXPECT_TRUE(is_one_line(faults_of("[air_quality]\nindex = 3\nmeasured_at = " + at),
                              "weather.toml:3:1: air_quality.measured_at" + found));
      EXPECT_TRUE(
          is_one_line(faults_of("measured_at = 2026-07-14T17:40:00\n[[lightning]]\nsign = \"thunder\"\nat = " + at),
                      "weather.toml:4:1: lightning.1.at" + found));
    }
    EXPECT_TRUE(
        is_one_line(faults_of("measured_at = 2026-07-14T17:40:00\n[[lightning]]\nsign = \"thunder\"\nat = \"18:06:00" +
                              offset + "\""),
                    "lightning.1.at: found '18:06:00" + offset + kExpected));
  }
}

TEST(ReadWeather, AllMistakesTogether) {
  const std::string lines = faults_of("humidity_percent = 101\nair_celsius = 95\nregion = \"x\"");
  EXPECT_EQ(std::count(lines.begin(), lines.end(), '\n'), 3);
}

TEST(MomentAsked, NearestToWhatWasMeasured) {
  const Weather weather = weather_from("measured_at = 2026-07-14T23:40:00").value();
  EXPECT_EQ(to_iso(moment_asked("00:10", weather).value()), "2026-07-15T00:10");
  EXPECT_EQ(to_iso(moment_asked("2026-07-16T00:10", weather).value()), "2026-07-16T00:10");
  EXPECT_EQ(to_line(moment_asked("23:00", weather).faults().front()),
            "--at: found '23:00', expected a time not before what was measured at 2026-07-14T23:40");
  EXPECT_FALSE(moment_asked("soon", weather).ok());
}

}  // namespace
}  // namespace lanework::care::environment::test
