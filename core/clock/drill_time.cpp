#include <algorithm>

#include "core/clock/clock.h"
#include "core/clock/constants.h"
#include "core/clock/drill_work.h"
#include "core/clock/telling.h"

namespace lanework::clock {
namespace {

// The largest whole root that does not exceed the number: Newton from above.
std::int64_t whole_root(std::int64_t number) {
  if (number < 2) return number;
  std::int64_t root = number;
  std::int64_t next = (root + 1) / 2;
  while (next < root) {
    root = next;
    next = (root + number / root) / 2;
  }
  return root;
}

}  // namespace

Milliseconds telling_after(Milliseconds full, int times) {
  constexpr std::int64_t kMostTimes = 1000000;  // keeps the product inside 64 bits; the floor holds long before
  constexpr std::int64_t kMillion = 1000000;
  const std::int64_t seen = std::clamp<std::int64_t>(times, 0, kMostTimes);
  const std::int64_t factor = kMillion / whole_root(kMillion * (1 + seen));
  const std::int64_t told = (full.count * factor + 999) / 1000;
  const std::int64_t share = full.count * kTellingFloorShare / 1000;
  return Milliseconds(std::max({told, share, std::min(kTellingFloor, full.count)}));
}

DrillTime drill_time(const catalogue::Catalogue& catalogue, const catalogue::Drill& drill, int /*rung*/, int dose,
                     const session::Evening& evening) {
  const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(dose)];
  const DrillWork work = drill_work(catalogue, drill, step, {evening.turnout, evening.age, evening.strip});
  const auto seen = evening.exposures.find(drill.id);
  DrillTime time;
  time.telling = telling_after(drill.telling, seen != evening.exposures.end() ? seen->second.times : 0);
  time.doing = Milliseconds((work.raw.count * evening.pace_thousandths + 999) / 1000);
  time.hold_up = Milliseconds((work.hold_up.count * evening.pace_thousandths + 999) / 1000);
  time.log_spread = work.log_spread;
  time.moving_permille = work.moving_permille;
  time.waves = work.waves;
  return time;
}

}  // namespace lanework::clock
