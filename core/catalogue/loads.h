// What one dose of a drill asks of one player, to be held against the youth ceilings.
#pragma once

#include <cstdint>

#include "core/base/units.h"
#include "core/catalogue/catalogue.h"

namespace lanework::catalogue {

// Thousandths, so that sums stay exact; a ceiling in whole units holds when sum <= 1000 * ceiling.
struct LoadSum {
  std::int64_t contacts = 0;      // landings weighted by intensity, thousandths
  std::int64_t eccentric = 0;     // eccentric hamstring repetitions, thousandths
  std::int64_t hard_running = 0;  // millimetres

  LoadSum& operator+=(const LoadSum& other) {
    contacts += other.contacts;
    eccentric += other.eccentric;
    hard_running += other.hard_running;
    return *this;
  }
};

// Repetitions, seconds or metres of lane of one dose, for one player, both sides counted; thousandths.
// Only the way out of a pass counts.
std::int64_t units_of_dose(const Drill& drill, const DoseStep& step, Millimetres lane_length);

// Rounded up to the next thousandth. The rung's factor holds for contacts and eccentric repetitions.
LoadSum load_of(const Drill& drill, const Rung& rung, const DoseStep& step, Millimetres lane_length,
                const Limits& limits);

// The lane that routines are checked on before anybody knows tonight's strip: 15 m (common practice).
inline constexpr Millimetres kUsualLane{15'000};

}  // namespace lanework::catalogue
