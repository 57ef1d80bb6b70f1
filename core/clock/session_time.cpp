#include <algorithm>
#include <cmath>

#include "core/clock/breaks.h"
#include "core/clock/clock.h"
#include "core/clock/constants.h"
#include "core/clock/saving.h"
#include "core/clock/simulate.h"

namespace lanework::clock {
namespace {

double squared(double x) { return x * x; }
double ms(Milliseconds time) { return static_cast<double>(time.count); }

// Standard deviation of the session in ms; square roots only, so the same everywhere.
double spread_ms(const std::vector<SessionLine>& lines) {
  double variance = 0;
  double doing = 0;
  for (const SessionLine& line : lines) {
    variance += squared(ms(line.time.doing) * line.time.log_spread);
    variance += squared(ms(line.time.telling) * kSpreadTelling);
    variance += squared(ms(line.change) * kSpreadChange);
    doing += ms(line.time.doing);
  }
  return std::sqrt(variance + squared(kSpreadNight * doing));
}

// How much longer half the evenings are than the plan's arithmetic: the slowest hold up their file, and the
// parts, being lognormal, have means above their medians (by half the variance of the log).
double over_plan_ms(const std::vector<SessionLine>& lines) {
  double over = 0;
  for (const SessionLine& line : lines) {
    over += ms(line.time.hold_up) + ms(line.time.doing) * squared(line.time.log_spread) / 2;
    over += (ms(line.time.telling) * squared(kSpreadTelling) + ms(line.change) * squared(kSpreadChange)) / 2;
  }
  return over;
}

Seconds seconds_up(double milliseconds) { return Seconds(static_cast<std::int64_t>(std::ceil(milliseconds / 1000))); }

// The value that this many of the runs do not exceed.
Seconds ranked(std::vector<std::int64_t>& times, std::size_t rank) {
  const auto at = times.begin() + static_cast<std::ptrdiff_t>(rank - 1);
  std::nth_element(times.begin(), at, times.end());
  return rounded_up(Milliseconds(*at));
}

int session_moving(const std::vector<SessionLine>& lines) {
  std::int64_t moving = 0;
  std::int64_t whole = 0;
  for (const SessionLine& line : lines) {
    moving += line.time.doing.count * line.time.moving_permille;
    whole += (line.change + line.time.total()).count + 1000 * line.rest.count;
  }
  return whole > 0 ? static_cast<int>(moving / whole) : 0;
}

void put_breaks(std::vector<SessionLine>& lines, const session::Breaks& breaks) {
  if (breaks.count == 0) return;
  std::vector<Seconds> parts;
  for (const SessionLine& line : lines) parts.push_back(rounded_up(line.change) + rounded_up(line.time.total()));
  const std::vector<int> before = breaks_before(parts, breaks.count);
  for (std::size_t i = 0; i < lines.size(); ++i) lines[i].rest = Seconds(before[i] * breaks.each.count);
}

}  // namespace

std::vector<SessionLine> session_lines(const session::Session& session, const catalogue::Catalogue& catalogue,
                                       const session::Evening& evening) {
  std::vector<SessionLine> lines;
  lines.reserve(session.items.size());
  const catalogue::Drill* before = nullptr;
  for (const session::Item& item : session.items) {
    const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(item.drill)];
    const Milliseconds change =
        before == nullptr ? gathering(evening) : formation_change(before->formation, drill.formation, evening);
    lines.push_back({change, drill_time(catalogue, drill, item.rung, item.dose, evening), {}});
    before = &drill;
  }
  put_breaks(lines, evening.breaks);
  return lines;
}

Seconds planned_time(const std::vector<SessionLine>& lines) {
  Seconds planned(0);
  for (const SessionLine& line : lines) planned += line.rest + rounded_up(line.change) + rounded_up(line.time.total());
  return planned;
}

void lay_out(session::Session& session, const catalogue::Catalogue& catalogue, const session::Evening& evening) {
  const std::vector<SessionLine> lines = session_lines(session, catalogue, evening);
  Seconds now(0);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    session::Item& item = session.items[i];
    item.change = rounded_up(lines[i].change);
    item.takes = rounded_up(lines[i].time.total());
    item.rest = lines[i].rest;
    item.starts = now + item.rest + item.change;
    now = item.starts + item.takes;
  }
  session.planned = now;
}

Seconds moment_spread(const std::vector<SessionLine>& lines) { return seconds_up(spread_ms(lines)); }

Seconds moment_margin(const std::vector<SessionLine>& lines) {
  return seconds_up(over_plan_ms(lines) + kNineInTen * spread_ms(lines));
}

SessionTime session_time(const session::Session& session, const catalogue::Catalogue& catalogue,
                         const session::Evening& evening, int runs) {
  SessionTime time;
  time.lines = session_lines(session, catalogue, evening);
  time.median = planned_time(time.lines);
  time.moving_permille = session_moving(time.lines);
  time.best_saving = best_saving(session, catalogue, evening);
  if (runs <= 0 || session.items.empty()) {
    time.simulated_median = time.median + seconds_up(over_plan_ms(time.lines));
    time.nine_in_ten = time.median + moment_margin(time.lines);
    return time;
  }
  std::vector<std::int64_t> times = simulate_sessions(session, catalogue, evening, 0, runs);
  const auto count = static_cast<std::size_t>(runs);
  time.simulated_median = ranked(times, (count + 1) / 2);
  time.nine_in_ten = ranked(times, (9 * count + 9) / 10);
  time.sessions_simulated = runs;
  return time;
}

}  // namespace lanework::clock
