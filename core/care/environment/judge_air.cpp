#include <cmath>
#include <utility>

#include "core/care/environment/degrees_text.h"
#include "core/care/environment/judge.h"
#include "core/care/environment/take_band.h"

namespace lanework::care::environment {
namespace {

AirVerdict by_index(const Weather& weather, const BandTable& table, const MeasuredAge& age) {
  const double index = *weather.air_quality_index;
  Found found{
      Topic::kAir, band_of(table, index), "air quality index " + std::to_string(std::lround(index)), {}, 0, false,
      false};
  return {take_band(table, std::move(found), age), index, false};
}

AirVerdict by_fine_particles(const Weather& weather, const BandTable& table, const FineParticleScale& scale,
                             const MeasuredAge& age) {
  const AirQualityIndex found_index = index_of(scale, *weather.fine_particles);
  Found found{Topic::kAir, band_of(table, found_index.index),      {}, {}, 0,
              false,       scale.standing == Standing::kUnverified};
  found.number = std::string("air quality index ") + (found_index.beyond_scale ? "of at least " : "about ") +
                 std::to_string(std::lround(found_index.index)) + " by fine particles of " +
                 with_one_decimal(weather.fine_particles->concentration) + " µg/m³ (breakpoints " +
                 standing_words(scale.standing) + ")";
  found.cautions.emplace_back("the index is of a mean of 24 hours, an hour's value stands for it only roughly");
  return {take_band(table, std::move(found), age), found_index.index, found_index.beyond_scale};
}

}  // namespace

AirVerdict judge_air(const Weather& weather, const BandTable& table, const FineParticleScale& scale,
                     const MeasuredAge& age) {
  AirVerdict out;
  if (weather.air_quality_index) {
    out = by_index(weather, table, age);
  } else if (weather.fine_particles) {
    out = by_fine_particles(weather, table, scale, age);
  } else {
    out.verdict =
        not_judged(Topic::kAir, "nobody measured the air; where smoke is seen or smelt, look up the index first",
                   "own-judgement", {});
  }
  if (weather.indoor && out.verdict.judged)
    out.verdict.cautions.emplace_back(
        "a hall is taken as the open air: what its windows and filters keep out is not known");
  return out;
}

}  // namespace lanework::care::environment
