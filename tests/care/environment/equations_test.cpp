// What the equations must do between the published values: unit round trips, and more heat or wind never counting for
// less.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/care/environment/heat_index.h"
#include "core/care/environment/wet_bulb.h"
#include "core/care/environment/wet_bulb_globe.h"
#include "core/care/environment/wind_chill.h"

namespace lanework::care::environment::test {
namespace {

double drawn(double least, double most) { return least + (most - least) * (*rc::gen::inRange(0, 100001)) / 100000.0; }

TEST(Units, ThereAndBack) {
  EXPECT_TRUE(rc::check([] {
    const double value = drawn(-60, 150);
    RC_ASSERT(std::abs(to_celsius(to_fahrenheit({value})).degrees - value) < 1e-12);
    RC_ASSERT(std::abs(to_fahrenheit(to_celsius({value})).degrees - value) < 1e-12);
    const MetresPerSecond wind{drawn(0, 60)};
    RC_ASSERT(std::abs(to_metres_per_second(to_miles_per_hour(wind)).speed - wind.speed) < 1e-12);
    RC_ASSERT(std::abs(to_metres_per_second(to_kilometres_per_hour(wind)).speed - wind.speed) < 1e-12);
  }));
  EXPECT_EQ(to_fahrenheit({100}).degrees, 212);
  EXPECT_NEAR(to_miles_per_hour({10}).speed, 22.369, 0.001);
}

// On the printed chart. Where the simple form gives way to the regression (78 to 82 F) the published index itself
// steps, by up to 1.8 F, and dry air steps down: nothing decides by it there.
TEST(HeatIndex, NeverFallsOnTheChart) {
  EXPECT_TRUE(rc::check([] {
    const double air = drawn(80, 110);
    const double humidity = drawn(40, 100);
    const double warmer = drawn(air, 110);
    const double damper = drawn(humidity, 100);
    RC_ASSERT(heat_index({warmer}, {damper}).value.degrees >= heat_index({air}, {humidity}).value.degrees - 1e-9);
  }));
}

TEST(HeatIndex, TheHigherReadingIsNeverBelowEither) {
  EXPECT_TRUE(rc::check([] {
    const Fahrenheit air{drawn(70, 90)};
    const RelativeHumidity humidity{drawn(0, 100)};
    const HeatIndex found = heat_index(air, humidity);
    const double simple = simple_heat_index(air, humidity).degrees;
    const bool doubtful = (simple >= 80) != ((simple + air.degrees) / 2 >= 80);
    if (doubtful) RC_ASSERT(found.value.degrees >= simple);
  }));
}

TEST(WindChill, ColderInWindAndInColderAir) {
  EXPECT_TRUE(rc::check([] {
    const double air = drawn(-50, 50);
    const double colder = drawn(-50, air);
    const double wind = drawn(3, 60);
    const double windier = drawn(wind, 60);
    RC_ASSERT(wind_chill(Fahrenheit{colder}, MilesPerHour{windier})->degrees <=
              wind_chill(Fahrenheit{air}, MilesPerHour{wind})->degrees + 1e-9);
    RC_ASSERT(wind_chill(Fahrenheit{air}, MilesPerHour{wind})->degrees < air);
  }));
}

// The two systems' equations are rounded each by itself.
TEST(WindChill, BothUnitSystemsAgree) {
  EXPECT_TRUE(rc::check([] {
    const Celsius air{drawn(-45, 9.9)};
    const MetresPerSecond wind{drawn(1.4, 25)};
    const double metric = wind_chill(air, to_kilometres_per_hour(wind))->degrees;
    const double imperial = to_celsius(*wind_chill(to_fahrenheit(air), to_miles_per_hour(wind))).degrees;
    RC_ASSERT(std::abs(metric - imperial) < 0.15);
  }));
}

// From 10 C on, where heat is judged. In colder dry air Stull's fit itself falls as humidity rises.
TEST(WetBulbGlobe, EstimatesNeverFallAsItGetsWarmerOrDamper) {
  EXPECT_TRUE(rc::check([] {
    const double air = drawn(10, 50);
    const double humidity = drawn(1, 100);
    const Celsius warmer{drawn(air, 50)};
    const RelativeHumidity damper{drawn(humidity, 100)};
    for (const auto estimate : {EstimatedWetBulbGlobe::simplified, EstimatedWetBulbGlobe::without_sun})
      RC_ASSERT(estimate(warmer, damper).value().degrees >= estimate({air}, {humidity}).value().degrees - 1e-9);
  }));
}

// Beyond what Stull's fit covers: saturated air is its own wet bulb, drier than 5 % counts as 5 %.
TEST(WetBulbGlobe, WithoutSunAtTheEndsOfHumidity) {
  EXPECT_EQ(EstimatedWetBulbGlobe::without_sun({25}, {100}).value(), Celsius{25});
  EXPECT_EQ(EstimatedWetBulbGlobe::without_sun({25}, {99.5}).value(), Celsius{25});
  EXPECT_EQ(EstimatedWetBulbGlobe::without_sun({25}, {1}).value(),
            EstimatedWetBulbGlobe::without_sun({25}, {5}).value());
}

TEST(WetBulbGlobe, SunNeverMakesAnEstimateCooler) {
  EXPECT_TRUE(rc::check([] {
    const Celsius air{drawn(10, 50)};
    const RelativeHumidity humidity{drawn(1, 98)};
    RC_ASSERT(EstimatedWetBulbGlobe::simplified(air, humidity).value() >=
              EstimatedWetBulbGlobe::without_sun(air, humidity).value());
  }));
}

std::string fault_of(const Result<MeasuredWetBulbGlobe>& made) { return made ? "" : to_line(made.faults().front()); }

TEST(WetBulbGlobe, ImpossibleThermometersAreToldInWords) {
  EXPECT_NE(fault_of(MeasuredWetBulbGlobe::outdoors({33}, {40}, {32})).find("above the air's 32.0 °C"),
            std::string::npos);
  EXPECT_NE(fault_of(MeasuredWetBulbGlobe::outdoors({20}, {24}, {32})).find("far below the air's"), std::string::npos);
  EXPECT_NE(fault_of(MeasuredWetBulbGlobe::indoors({26}, {25}, {})).find("above the globe's"), std::string::npos);
  EXPECT_NE(fault_of(MeasuredWetBulbGlobe::of_meter({45}, {1}, Celsius{30})).find("in air of 30.0 °C"),
            std::string::npos);
  EXPECT_TRUE(MeasuredWetBulbGlobe::of_meter({31}, {1}, Celsius{30}).ok());
}

}  // namespace
}  // namespace lanework::care::environment::test
