#include "core/care/growth/growth_effect.h"

#include <algorithm>
#include <numeric>

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

std::vector<std::size_t> items_beyond(std::int64_t contacts_ceiling_thousandths,
                                      const std::vector<catalogue::LoadSum>& loads) {
  std::vector<std::size_t> heaviest_first(loads.size());
  std::iota(heaviest_first.begin(), heaviest_first.end(), std::size_t{0});
  std::sort(heaviest_first.begin(), heaviest_first.end(), [&](std::size_t a, std::size_t b) {
    return loads[a].contacts != loads[b].contacts ? loads[a].contacts > loads[b].contacts : a > b;
  });
  std::int64_t left = 0;
  for (const catalogue::LoadSum& one : loads) left += one.contacts;
  std::vector<std::size_t> out;
  for (const std::size_t item : heaviest_first) {
    if (left <= contacts_ceiling_thousandths || loads[item].contacts == 0) break;
    left -= loads[item].contacts;
    out.push_back(item);
  }
  std::sort(out.begin(), out.end());
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
