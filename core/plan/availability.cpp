#include "core/plan/availability.h"

#include <algorithm>

#include "core/people/swaps.h"

namespace lanework::plan {
namespace {

using catalogue::Drill;
using catalogue::Formation;
using catalogue::Need;
using session::Bar;
using session::Evening;

std::optional<Bar> missing_need(Need need, const Evening& evening) {
  const int players = evening.turnout;
  const auto lacks = [need](bool there, int count = 0) {
    return there ? std::nullopt : std::optional<Bar>(session::Lacks{need, count});
  };
  switch (need) {
    case Need::kPartner:
      return lacks(players >= 2);
    case Need::kWall:
      return lacks(evening.strip.wall);
    case Need::kBallEach:
      return lacks(evening.kit.balls >= players, players);
    case Need::kBallAPair:
      return lacks(evening.kit.balls >= (players + 1) / 2, (players + 1) / 2);
    case Need::kMat:
      return lacks(evening.kit.mats >= players);
    case Need::kSoftGround:
      return lacks(evening.strip.soft_ground || evening.kit.mats >= players);
    case Need::kLine:
      return lacks(evening.strip.line);
  }
  return {};
}

std::optional<Bar> wrong_place(const Drill& drill, const Evening& evening) {
  for (const catalogue::Surface surface : drill.not_on) {
    const auto& here = evening.strip.surface;
    if (std::find(here.begin(), here.end(), surface) != here.end()) return session::WrongSurface{surface};
  }
  if (drill.formation != Formation::kLane) return {};
  if (evening.strip.lane_length < drill.lane.least_lane) {
    return session::LaneTooShort{static_cast<int>((drill.lane.least_lane.count + 999) / 1000)};
  }
  const int cones = 2 * evening.strip.lanes;
  if (evening.kit.cones < cones && !evening.strip.line) return session::TooFewCones{cones};
  return {};
}

}  // namespace

std::optional<Bar> barred_because(const Drill& drill, int rung_index, const Evening& evening) {
  const catalogue::Rung& rung = drill.rungs[static_cast<std::size_t>(rung_index)];
  if (std::find(evening.bans.begin(), evening.bans.end(), drill.id) != evening.bans.end()) return session::Banned{};
  const int floor = std::max(drill.age_from, rung.age_from);
  if (evening.age < floor) return session::TooYoung{floor};
  if (evening.age > drill.age_to) return session::TooOld{drill.age_to};
  if (!people::permits_all(evening.restrictions, drill, rung)) return session::SquadHeldBack{};
  for (const Need need : drill.needs) {
    if (const std::optional<Bar> missing = missing_need(need, evening)) return missing;
  }
  for (const Need need : rung.needs) {
    if (const std::optional<Bar> missing = missing_need(need, evening)) return missing;
  }
  return wrong_place(drill, evening);
}

std::optional<Bar> barred_because(const Drill& drill, const Evening& evening) {
  std::optional<Bar> first;
  for (int rung = 0; rung < static_cast<int>(drill.rungs.size()); ++rung) {
    std::optional<Bar> reason = barred_because(drill, rung, evening);
    if (!reason) return {};
    if (!first) first = reason;
  }
  return first;
}

}  // namespace lanework::plan
