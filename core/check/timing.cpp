#include "core/check/timing.h"

#include <algorithm>
#include <cmath>

#include "core/check/lane_simulation.h"

namespace lanework::check {
namespace {

// Constants of docs/model/clock.md.
constexpr std::int64_t kStartUp = 1000;
constexpr std::int64_t kHeadway = 500;
constexpr std::int64_t kWaveChange = 8000;
constexpr std::int64_t kWalkSpeed = 1250;
constexpr double kSpreadNight = 0.06;
constexpr double kSpreadDrill = 0.05;
constexpr double kSpreadReps = 0.10;
constexpr double kSpreadSeconds = 0.03;
constexpr double kSpreadTelling = 0.30;
constexpr double kSpreadChange = 0.25;
constexpr double kSlowest = 1.6;
constexpr double kNineInTen = 1.2816;

std::int64_t up(std::int64_t a, std::int64_t b) { return a / b + (a % b != 0 ? 1 : 0); }
std::int64_t seconds_up(std::int64_t ms) { return up(ms, 1000); }
double real(std::int64_t value) { return static_cast<double>(value); }

std::int64_t speed_of(const std::string& gait, const Matter& matter) {
  const auto found = matter.gaits.find(gait);
  if (found == matter.gaits.end()) return kWalkSpeed;
  const int age = std::min(std::max(matter.tonight.age, 8), 19);
  return found->second.speed_mm_a_second.at(static_cast<std::size_t>(age - 8));
}

LaneSet lane_set(const Drill& drill, const Step& step, const Matter& matter) {
  const Strip& strip = matter.strip;
  const Lane& lane = drill.lane;
  const std::int64_t stops = lane.stops_at_cones ? strip.lane_mm / strip.cone_spacing_mm : 0;
  std::int64_t speed = speed_of(lane.out, matter);
  std::int64_t start_up = 0;
  if (lane.out == "run") {
    const std::int64_t share = lane.share_of_top_speed == 0 ? 100 : lane.share_of_top_speed;
    speed = std::max<std::int64_t>(1, speed * share / 100);
    start_up = kStartUp * (1 + stops);
  }
  LaneSet set;
  set.loop = up(1000 * strip.lane_mm, speed) + start_up + stops * lane.stop_ms + lane.turn_ms;
  if (lane.shape == "out-and-back") set.loop += up(1000 * strip.lane_mm, speed_of(lane.back, matter));
  set.players = static_cast<int>(up(matter.tonight.turnout, strip.lanes));
  if (lane.shape == "facing") set.players = (set.players + 1) / 2;
  set.gap = std::max<std::int64_t>({1, lane.gap_ms, lane.stops_at_cones ? lane.stop_ms : 0});
  set.headway = std::min(kHeadway, set.gap);
  set.passes = step.amount * (drill.sides ? 2 : 1);
  set.gathers = lane.shape == "one-way";
  return set;
}

DrillTiming time_lane(const Drill& drill, const Step& step, const Matter& matter) {
  const LaneSet set = lane_set(drill, step, matter);
  const std::int64_t sets = step.sets;
  const std::int64_t raw =
      sets * (simulated(set) + (drill.sides ? drill.side_change_ms : 0)) + (sets - 1) * drill.rest_ms;
  DrillTiming out;
  out.moving_permille =
      std::min<std::int64_t>(1000, 1000 * sets * set.passes * set.loop / std::max<std::int64_t>(1, raw));
  const auto gait = matter.gaits.find(drill.lane.out);
  const double spread = gait == matter.gaits.end() ? 0 : real(gait->second.spread_thousandths) / 1000;
  const double loop = real(set.loop);
  const double slow = loop * (1 + kSlowest * spread);
  const double file = real(set.players * set.gap);
  const double home = (slow - loop) / 2;
  double hold = 0;
  if (set.gathers) {
    hold = set.passes * home;
  } else {
    hold = (set.passes - 1) * (std::max(file, slow) - std::max(file, loop)) + home;
  }
  const std::int64_t hold_ms = static_cast<std::int64_t>(std::floor(real(sets) * hold + 0.5));
  const bool waits = set.gathers || slow > file;
  const double waited = real(sets * (waits ? set.passes * set.loop : set.loop));
  const double share = spread * waited / real(std::max<std::int64_t>(1, raw));
  out.log_spread = std::sqrt(kSpreadDrill * kSpreadDrill + share * share);
  out.doing_ms = up(raw * matter.tonight.pace_thousandths, 1000);
  out.hold_up_ms = up(hold_ms * matter.tonight.pace_thousandths, 1000);
  return out;
}

std::int64_t waves_of(const Drill& drill, std::int64_t groups, const Strip& strip) {
  const std::int64_t w = drill.width_mm;
  const std::int64_t l = drill.length_mm;
  if (w == 0 || l == 0) return 1;
  const std::int64_t along = (strip.width_mm / w) * (strip.length_mm / l);
  const std::int64_t across = (strip.width_mm / l) * (strip.length_mm / w);
  return up(groups, std::max<std::int64_t>({1, along, across}));
}

// One wave, walked through set by set, turn by turn, side by side.
std::int64_t one_wave(const Drill& drill, const Step& step, std::int64_t work, int turns) {
  std::int64_t ms = 0;
  for (int set = 0; set < step.sets; ++set) {
    for (int turn = 0; turn < turns; ++turn) {
      const bool first = set == 0 && turn == 0;
      if (!first) ms += turns > 1 ? drill.swap_ms : drill.rest_ms;
      ms += work;
      if (drill.sides) ms += drill.side_change_ms + work;
    }
  }
  return ms;
}

DrillTiming time_area(const Drill& drill, const Step& step, const Matter& matter) {
  const int players = matter.tonight.turnout;
  const bool pairs = drill.formation == "pairs";
  const bool reps = drill.dose_kind == "reps";
  const std::int64_t work = step.amount * (reps ? drill.tempo_ms : 1000);
  int turns = 1;
  if (pairs && !drill.both_at_once && players > 1) turns = players % 2 == 0 ? 2 : 3;
  const std::int64_t waves = waves_of(drill, pairs ? std::max(1, players / 2) : players, matter.strip);
  const std::int64_t raw = waves * one_wave(drill, step, work, turns) + (waves - 1) * kWaveChange;
  DrillTiming out;
  const std::int64_t moving = work * (drill.sides ? 2 : 1) * step.sets;
  out.moving_permille = std::min<std::int64_t>(1000, 1000 * moving / std::max<std::int64_t>(1, raw));
  const double by_kind = reps ? kSpreadReps : kSpreadSeconds;
  out.log_spread = std::sqrt(kSpreadDrill * kSpreadDrill + by_kind * by_kind);
  out.doing_ms = up(raw * matter.tonight.pace_thousandths, 1000);
  return out;
}

std::int64_t telling_ms(const Drill& drill, const Matter& matter) {
  const auto seen = matter.tonight.taught.find(drill.id);
  const std::int64_t times = seen == matter.tonight.taught.end() ? 0 : seen->second;
  const std::int64_t squared = 1'000'000 * (1 + times);
  auto root = static_cast<std::int64_t>(std::sqrt(real(squared)));
  while (root * root > squared) --root;
  while ((root + 1) * (root + 1) <= squared) ++root;
  const std::int64_t factor = 1'000'000 / root;
  const std::int64_t full = drill.telling_ms;
  return std::max({up(full * factor, 1000), full * 200 / 1000, std::min<std::int64_t>(5000, full)});
}

double square(double x) { return x * x; }

// The k-th of n breaks stands in the gap nearest to k parts of n + 1 of the drills' time, the earlier of two as near.
void put_breaks(std::vector<ItemTiming>& items, const Tonight& tonight) {
  std::vector<std::int64_t> gaps;  // drills' time before each gap
  std::int64_t drills = 0;
  for (const ItemTiming& item : items) {
    if (drills > 0) gaps.push_back(drills);
    drills += item.change_seconds + item.takes_seconds;
  }
  if (gaps.empty()) {
    for (ItemTiming& item : items) item.rest_seconds = tonight.breaks * tonight.break_seconds;
    return;
  }
  for (int k = 1; k <= tonight.breaks; ++k) {
    const auto away = [&](std::int64_t gap) { return std::abs((tonight.breaks + 1) * gap - k * drills); };
    const auto at =
        std::min_element(gaps.begin(), gaps.end(), [&](std::int64_t a, std::int64_t b) { return away(a) < away(b); });
    items[static_cast<std::size_t>(at - gaps.begin()) + 1].rest_seconds += tonight.break_seconds;
  }
}

}  // namespace

DrillTiming time_drill(const Pick& pick, const Matter& matter) {
  const Step& step = step_of(pick);
  DrillTiming out =
      pick.drill->formation == "lane" ? time_lane(*pick.drill, step, matter) : time_area(*pick.drill, step, matter);
  out.telling_ms = telling_ms(*pick.drill, matter);
  return out;
}

std::int64_t gathering_ms(const Matter& matter) {
  const int late = matter.tonight.late;
  return 15000 + 500 * (matter.tonight.turnout - late) + (late > 0 ? 10000 + 500 * late : 0);
}

std::int64_t change_ms(const std::string& from, const std::string& to, const Matter& matter) {
  if (from == to) return 0;
  const int players = matter.tonight.turnout;
  std::int64_t ms = 6000 + 500 * players;  // pairs
  if (to == "lane") ms = 6000 + 400 * players;
  if (to == "spread") ms = 4000 + 250 * players;
  const std::int64_t way = std::max(matter.strip.width_mm, matter.strip.length_mm) / 2;
  if (from == "lane" || to == "lane") ms += up(1000 * way, kWalkSpeed);
  return ms;
}

SessionTiming time_session(const Selection& selection, const Matter& matter) {
  SessionTiming out;
  out.gathering_seconds = seconds_up(gathering_ms(matter));
  double variance = 0;
  double over = 0;
  std::int64_t doing = 0;
  std::int64_t moving = 0;
  std::int64_t whole = 0;
  for (std::size_t i = 0; i < selection.size(); ++i) {
    const std::int64_t change =
        i == 0 ? gathering_ms(matter)
               : change_ms(selection[i - 1].drill->formation, selection[i].drill->formation, matter);
    const DrillTiming drill = time_drill(selection[i], matter);
    const ItemTiming item{0, seconds_up(change), seconds_up(drill.telling_ms + drill.doing_ms), 0};
    out.items.push_back(item);
    variance += square(real(drill.doing_ms) * drill.log_spread) + square(real(drill.telling_ms) * kSpreadTelling) +
                square(real(change) * kSpreadChange);
    over += real(drill.hold_up_ms) +
            (real(drill.doing_ms) * square(drill.log_spread) + real(drill.telling_ms) * square(kSpreadTelling) +
             real(change) * square(kSpreadChange)) /
                2;
    doing += drill.doing_ms;
    moving += drill.doing_ms * drill.moving_permille;
    whole += change + drill.telling_ms + drill.doing_ms;
  }
  put_breaks(out.items, matter.tonight);
  for (ItemTiming& item : out.items) {
    item.starts_seconds = out.planned_seconds + item.rest_seconds + item.change_seconds;
    out.planned_seconds = item.starts_seconds + item.takes_seconds;
    whole += 1000 * item.rest_seconds;
  }
  const double sd = std::sqrt(variance + square(kSpreadNight * real(doing)));
  out.margin_seconds = static_cast<std::int64_t>(std::ceil((over + kNineInTen * sd) / 1000));
  out.moving_permille = whole > 0 ? moving / whole : 0;
  return out;
}

}  // namespace lanework::check
