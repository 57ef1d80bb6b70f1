#include "core/catalogue/loads.h"

namespace lanework::catalogue {
namespace {

constexpr std::int64_t kThousand = 1000;

std::int64_t divided_up(std::int64_t value, std::int64_t by) { return (value + by - 1) / by; }

}  // namespace

std::int64_t units_of_dose(const Drill& drill, const DoseStep& step, Millimetres lane_length) {
  const std::int64_t sides = drill.dose.sides ? 2 : 1;
  const std::int64_t amount = std::int64_t{step.sets} * step.amount * sides;
  // A millimetre of lane is a thousandth of a metre.
  return amount * (drill.dose.kind == DoseKind::kPasses ? lane_length.count : kThousand);
}

LoadSum load_of(const Drill& drill, const Rung& rung, const DoseStep& step, Millimetres lane_length,
                const Limits& limits) {
  const std::int64_t units = units_of_dose(drill, step, lane_length);
  const std::int64_t weight = limits.contact_weight_thousandths[static_cast<std::size_t>(drill.loads.intensity)];
  LoadSum sum;
  const std::int64_t landings = divided_up(units * drill.loads.contacts_thousandths, kThousand);
  sum.contacts = divided_up(landings * weight * rung.load_thousandths, kThousand * kThousand);
  sum.eccentric = divided_up(units * drill.loads.eccentric_thousandths * rung.load_thousandths, kThousand * kThousand);
  if (drill.loads.hard_running) sum.hard_running = units;
  return sum;
}

}  // namespace lanework::catalogue
