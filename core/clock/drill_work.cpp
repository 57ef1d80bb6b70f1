#include "core/clock/drill_work.h"

#include <algorithm>
#include <cmath>

#include "core/clock/constants.h"

namespace lanework::clock {
namespace {

using catalogue::DoseKind;
using catalogue::Drill;
using catalogue::Formation;
using catalogue::LaneShape;
using catalogue::LaneWork;

constexpr std::int64_t divided_up(std::int64_t a, std::int64_t b) { return (a + b - 1) / b; }

double combined(double a, double b) { return std::sqrt(a * a + b * b); }

int permille(std::int64_t part, std::int64_t whole) {
  return whole > 0 ? static_cast<int>(std::min<std::int64_t>(1000, 1000 * part / whole)) : 0;
}

// From the start to the far end, held stops included.
Milliseconds out_time(const catalogue::Catalogue& catalogue, const LaneWork& lane, const Staging& staging) {
  const session::Strip& strip = staging.strip;
  const std::int64_t stops = lane.stops_at_cones ? strip.lane_length.count / strip.cone_spacing.count : 0;
  MillimetresPerSecond speed = speed_of(catalogue, lane.out_gait, staging.age);
  std::int64_t start_up = 0;
  if (lane.out_gait == "run") {
    const int share = lane.out_share_of_top_speed > 0 ? lane.out_share_of_top_speed : 100;
    speed = MillimetresPerSecond(std::max<std::int64_t>(1, speed.count * share / 100));
    start_up = kStartUp * (1 + stops);
  }
  return travel_time(strip.lane_length, speed) + Milliseconds(start_up) + lane.stop * stops;
}

LaneRun lane_run(const catalogue::Catalogue& catalogue, const LaneWork& lane, const Staging& staging, int passes) {
  LaneRun run;
  run.players = file_players(staging.players, staging.strip.lanes, 0);
  if (lane.shape == LaneShape::kFacing) run.players = (run.players + 1) / 2;
  run.passes = passes;
  run.loop = out_time(catalogue, lane, staging) + lane.turn;
  if (lane.shape == LaneShape::kOutAndBack) {
    run.loop += travel_time(staging.strip.lane_length, speed_of(catalogue, lane.back_gait, staging.age));
  }
  run.gap = std::max(Milliseconds(1), lane.release_gap);
  if (lane.stops_at_cones) run.gap = std::max(run.gap, lane.stop);
  run.headway = std::min(Milliseconds(kHeadway), run.gap);
  run.gathers = lane.shape == LaneShape::kOneWay;
  return run;
}

// What the slowest player adds to the closed form of one set, in ms: all of it wherever the file waits for
// that player's return, half of it on the way home, where the slowest may stand anywhere in the file.
double hold_up(const LaneRun& run, double slow_loop) {
  const auto loop = static_cast<double>(run.loop.count);
  const double home = (slow_loop - loop) / 2;
  if (run.gathers) return run.passes * home;
  const double file_gap = static_cast<double>((run.gap * run.players).count);
  return (run.passes - 1) * (std::max(file_gap, slow_loop) - std::max(file_gap, loop)) + home;
}

DrillWork lane_work(const catalogue::Catalogue& catalogue, const Drill& drill, const catalogue::DoseStep& step,
                    const Staging& staging) {
  DrillWork work;
  work.in_lanes = true;
  work.facing = drill.lane.shape == LaneShape::kFacing;
  work.sets = step.sets;
  work.lane = lane_run(catalogue, drill.lane, staging, step.amount * (drill.dose.sides ? 2 : 1));
  if (drill.dose.sides) work.beside_sets += drill.dose.side_change * step.sets;
  work.beside_sets += drill.dose.rest * (step.sets - 1);
  work.raw = closed_form(work.lane) * step.sets + work.beside_sets;
  const Milliseconds moving = work.lane.loop * work.lane.passes * step.sets;
  work.moving_permille = permille(moving.count, work.raw.count);
  if (const catalogue::Gait* gait = catalogue.gait(drill.lane.out_gait)) {
    work.player_spread = static_cast<double>(gait->spread_thousandths) / 1000;
  }
  const double slow_loop = static_cast<double>(work.lane.loop.count) * (1 + kSlowest * work.player_spread);
  const double file_gap = static_cast<double>((work.lane.gap * work.lane.players).count);
  const bool waits_for_players = work.lane.gathers || slow_loop > file_gap;
  work.hold_up = Milliseconds(static_cast<std::int64_t>(step.sets * hold_up(work.lane, slow_loop) + 0.5));
  const Milliseconds waits = work.lane.loop * (waits_for_players ? work.lane.passes : 1) * step.sets;
  const double share =
      static_cast<double>(waits.count) / static_cast<double>(std::max<std::int64_t>(1, work.raw.count));
  work.log_spread = combined(kSpreadDrill, work.player_spread * share);
  return work;
}

// How many players (or pairs) the area holds, the better way round; 0: no limit.
std::int64_t room(const Drill& drill, const session::Strip& strip) {
  const std::int64_t w = drill.space_width.count;
  const std::int64_t l = drill.space_length.count;
  if (w <= 0 || l <= 0) return 0;
  const std::int64_t width = strip.area_width.count;
  const std::int64_t length = strip.area_length.count;
  return std::max<std::int64_t>(1, std::max((width / w) * (length / l), (width / l) * (length / w)));
}

// Everybody on the area at once: sets, sides, partners' turns, rests.
Milliseconds one_wave(const Drill& drill, const catalogue::DoseStep& step, Milliseconds side, int turns) {
  const Milliseconds set = drill.dose.sides ? side * 2 + drill.dose.side_change : side;
  if (turns == 1) return set * step.sets + drill.dose.rest * (step.sets - 1);
  const int goes = step.sets * turns;
  return set * goes + drill.pair.swap * (goes - 1);
}

DrillWork area_work(const Drill& drill, const catalogue::DoseStep& step, const Staging& staging) {
  const bool pairs = drill.formation == Formation::kPairs;
  const Milliseconds unit = drill.dose.kind == DoseKind::kReps ? drill.dose.tempo : Milliseconds(1000);
  const Milliseconds side = unit * step.amount;
  int turns = 1;
  if (pairs && !drill.pair.both_at_once && staging.players > 1) turns = staging.players % 2 == 1 ? 3 : 2;
  const int groups = pairs ? std::max(1, staging.players / 2) : staging.players;
  const std::int64_t fit = room(drill, staging.strip);
  DrillWork work;
  work.sets = step.sets;
  work.waves = fit == 0 ? 1 : static_cast<int>(divided_up(groups, fit));
  work.each_wave = one_wave(drill, step, side, turns);
  work.raw = work.each_wave * work.waves + Milliseconds(kWaveChange) * (work.waves - 1);
  const Milliseconds moving = side * (drill.dose.sides ? 2 : 1) * step.sets;
  work.moving_permille = permille(moving.count, work.raw.count);
  work.log_spread = combined(kSpreadDrill, drill.dose.kind == DoseKind::kReps ? kSpreadReps : kSpreadSeconds);
  return work;
}

}  // namespace

int file_players(int players, int lanes, int j) {
  return j >= players ? 0 : static_cast<int>(divided_up(players - j, lanes));
}

MillimetresPerSecond speed_of(const catalogue::Catalogue& catalogue, const std::string& gait, int age) {
  const catalogue::Gait* row = catalogue.gait(gait);
  const MillimetresPerSecond speed = row != nullptr ? catalogue::gait_speed(*row, age) : MillimetresPerSecond(0);
  return speed.count > 0 ? speed : MillimetresPerSecond(kWalk);
}

DrillWork drill_work(const catalogue::Catalogue& catalogue, const Drill& drill, const catalogue::DoseStep& step,
                     const Staging& staging) {
  if (drill.formation == Formation::kLane) return lane_work(catalogue, drill, step, staging);
  return area_work(drill, step, staging);
}

}  // namespace lanework::clock
