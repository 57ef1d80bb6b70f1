#include "core/care/growth/growth_effect.h"

namespace lanework::care::growth {
namespace {

constexpr int kLight = 1;

}  // namespace

GrowthEffect effect_of(const GrowthTable& table, const GrowthReading& reading) {
  if (reading.state != AgreementState::kOn || !reading.fast || !reading.fast->on) return {};
  return {table.contacts_percent, false};
}

std::optional<people::Restriction> restriction_of(const GrowthEffect& effect, const GrowthReading& reading) {
  if (!effect.any()) return {};
  people::Restriction out;
  out.player = reading.player;
  out.kinds = {catalogue::StressKind::kImpact};
  out.allowed_grade = kLight;
  out.landings_percent = effect.contacts_percent;
  out.new_eccentric_ok = effect.new_eccentric_ok;
  out.review = reading.due;
  out.instruction = "fewer and lower jumps, soft landings; no new slow-lowering drill";
  return out;
}

}  // namespace lanework::care::growth
