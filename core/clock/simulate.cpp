#include "core/clock/simulate.h"

#include <cmath>

#include "core/base/elementary.h"
#include "core/base/random.h"
#include "core/clock/constants.h"
#include "core/clock/drill_work.h"

namespace lanework::clock {
namespace {

// Names of the random streams; docs/model/clock.md states the counter's layout.
enum Stream : std::uint32_t { kNight = 0, kPlayers = 1, kParts = 2, kPasses = 3 };

std::int64_t to_whole(double ms) { return static_cast<std::int64_t>(ms + 0.5); }

std::int64_t varied(Milliseconds median, double spread, double z) {
  return to_whole(static_cast<double>(median.count) * elementary_exp(spread * z));
}

struct Part {
  SessionLine line;
  DrillWork work;
  int players;  // who are there for it
};

class Simulation {
 public:
  Simulation(const session::Session& session, const catalogue::Catalogue& catalogue, const session::Evening& evening)
      : key_(random_key(evening.seed)),
        lanes_(evening.strip.lanes),
        pace_(evening.pace_thousandths / 1000.0),
        speed_(static_cast<std::size_t>(evening.turnout)) {
    const std::vector<SessionLine> lines = session_lines(session, catalogue, evening);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const session::Item& item = session.items[i];
      const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(item.drill)];
      const int there = i == 0 ? players_at_first_drill(evening) : evening.turnout;
      const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(item.dose)];
      parts_.push_back({lines[i], drill_work(catalogue, drill, step, {there, evening.age, evening.strip}), there});
    }
  }

  std::int64_t run(std::uint32_t number) {
    const double night = elementary_exp(kSpreadNight * NormalStream(key_, kNight, 0, number).next());
    NormalStream players(key_, kPlayers, 0, number);
    for (double& z : speed_) z = players.next();
    std::int64_t total = 0;
    for (std::size_t i = 0; i < parts_.size(); ++i) {
      const Part& part = parts_[i];
      NormalStream draws(key_, kParts, static_cast<std::uint32_t>(i), number);
      total += 1000 * part.line.rest.count;
      total += varied(part.line.change, kSpreadChange, draws.next());
      total += varied(part.line.time.telling, kSpreadTelling, draws.next());
      const double z = draws.next();
      const Milliseconds doing =
          part.work.in_lanes ? lane_time(part, static_cast<std::uint32_t>(i), number) : part.work.raw;
      const double spread = part.work.in_lanes ? kSpreadDrill : part.work.log_spread;
      total += to_whole(static_cast<double>(doing.count) * pace_ * night * elementary_exp(spread * z));
    }
    return total;
  }

 private:
  // All sets of a lane drill: every file of every lane, the last one home ends the set.
  Milliseconds lane_time(const Part& part, std::uint32_t item, std::uint32_t number) {
    NormalStream passes(key_, kPasses, item, number);
    Milliseconds time = part.work.beside_sets;
    for (int set = 0; set < part.work.sets; ++set) {
      Milliseconds longest(0);
      for (int file = 0; file < lanes_; ++file) {
        const int players = file_players(part.players, lanes_, file);
        const int first_half = part.work.facing ? (players + 1) / 2 : players;
        longest = std::max(longest, file_time(part.work, file, 0, first_half, passes));
        longest = std::max(longest, file_time(part.work, file, first_half, players - first_half, passes));
      }
      time += longest;
    }
    return time;
  }

  // The players of one file from its position `from` on, as a file of their own.
  Milliseconds file_time(const DrillWork& work, int file, int from, int players, NormalStream& passes) {
    if (players == 0) return Milliseconds(0);
    LaneRun run = work.lane;
    run.players = players;
    const auto loop = static_cast<double>(run.loop.count);
    return run_lane(
        run,
        [&](int player, int) {
          const double own = speed_[static_cast<std::size_t>((from + player) * lanes_ + file)];
          return to_whole(loop * elementary_exp(work.player_spread * own + kSpreadPass * passes.next()));
        },
        returned_);
  }

  RandomKey key_;
  int lanes_;
  double pace_;
  std::vector<double> speed_;  // z of every player, once a session
  std::vector<Part> parts_;
  std::vector<std::int64_t> returned_;
};

}  // namespace

std::vector<std::int64_t> simulate_sessions(const session::Session& session, const catalogue::Catalogue& catalogue,
                                            const session::Evening& evening, int first, int runs) {
  Simulation simulation(session, catalogue, evening);
  std::vector<std::int64_t> times;
  times.reserve(static_cast<std::size_t>(runs));
  for (int run = 0; run < runs; ++run) times.push_back(simulation.run(static_cast<std::uint32_t>(first + run)));
  return times;
}

}  // namespace lanework::clock
