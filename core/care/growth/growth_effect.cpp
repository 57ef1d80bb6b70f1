#include "core/care/growth/growth_effect.h"

namespace lanework::care::growth {
namespace {

constexpr int kWhole = 100;
constexpr int kLight = 1;

}  // namespace

GrowthEffect effect_of(const GrowthTable& table, const GrowthReading& reading) {
  if (reading.state != AgreementState::kOn || !reading.fast || !reading.fast->on) return {};
  return {table.contacts_percent, false};
}

catalogue::Ceilings spared(const catalogue::Ceilings& ceilings, const GrowthEffect& effect) {
  catalogue::Ceilings out = ceilings;
  out.contacts_session = ceilings.contacts_session * effect.contacts_percent / kWhole;
  out.contacts_week = ceilings.contacts_week * effect.contacts_percent / kWhole;
  return out;
}

bool bars(const GrowthEffect& effect, const catalogue::Drill& drill, int times_done) {
  return !effect.new_eccentric_ok && drill.loads.eccentric_thousandths > 0 && times_done == 0;
}

std::optional<people::Restriction> restriction_of(const GrowthEffect& effect, const GrowthReading& reading) {
  if (!effect.any()) return {};
  people::Restriction out;
  out.player = reading.player;
  out.kinds = {catalogue::StressKind::kImpact};
  out.allowed_grade = kLight;
  out.review = reading.due;
  out.instruction = "fewer and lower jumps, soft landings; no new slow-lowering drill";
  return out;
}

}  // namespace lanework::care::growth
