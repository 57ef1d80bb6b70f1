// The clock's speed. Peers: the closed form beside the recursion, the C++ library's normal distribution
// beside the counter-based one.
#include <benchmark/benchmark.h>

#include <cmath>
#include <random>
#include <utility>

#include "core/base/elementary.h"
#include "core/base/random.h"
#include "core/clock/clock.h"
#include "core/clock/lane.h"
#include "core/clock/simulate.h"
#include "tests/clock/an_evening.h"

namespace lanework::clock {
namespace {

// Twelve drills, six of them in lanes with two or more passes, as an ordinary evening has.
session::Session ordinary_session() {
  session::Session session;
  for (const auto& [drill, dose] :
       {std::pair{1, 1}, {1, 1}, {1, 2}, {0, 0}, {0, 1}, {0, 1}, {0, 1}, {2, 1}, {0, 0}, {1, 1}, {1, 1}, {1, 1}}) {
    session::Item item{};
    item.drill = drill;
    item.dose = dose;
    session.items.push_back(item);
  }
  return session;
}

session::Evening twenty_players() {
  session::Evening evening = an_evening();
  evening.turnout = 20;
  return evening;
}

void BM_recursion(benchmark::State& state) {
  const LaneRun run{10, 4, Milliseconds(14500), Milliseconds(2000), Milliseconds(500), false};
  std::vector<std::int64_t> loops;
  for (int i = 0; i < 40; ++i) loops.push_back(14000 + 37 * i % 1000);
  std::vector<std::int64_t> returned;
  for (auto _ : state) {
    benchmark::DoNotOptimize(run_lane(
        run, [&](int player, int pass) { return loops[static_cast<std::size_t>(pass * 10 + player)]; }, returned));
  }
  state.counters["a_player_pass"] = benchmark::Counter(static_cast<double>(state.iterations()) * 40,
                                                       benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}
BENCHMARK(BM_recursion);

void BM_closed_form(benchmark::State& state) {
  LaneRun run{10, 4, Milliseconds(14500), Milliseconds(2000), Milliseconds(500), false};
  for (auto _ : state) {
    benchmark::DoNotOptimize(run);
    benchmark::DoNotOptimize(closed_form(run));
  }
}
BENCHMARK(BM_closed_form);

void BM_drill_time(benchmark::State& state) {
  const catalogue::Catalogue catalogue = a_catalogue();
  const session::Evening evening = twenty_players();
  const auto drill = static_cast<std::size_t>(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(drill_time(catalogue, catalogue.drills[drill], 0, 1, evening));
}
BENCHMARK(BM_drill_time)->DenseRange(0, 2);

void BM_ten_thousand_sessions(benchmark::State& state) {
  const catalogue::Catalogue catalogue = a_catalogue();
  const session::Evening evening = twenty_players();
  const session::Session session = ordinary_session();
  for (auto _ : state) benchmark::DoNotOptimize(simulate_sessions(session, catalogue, evening, 0, 10000));
}
BENCHMARK(BM_ten_thousand_sessions)->Unit(benchmark::kMillisecond);

void BM_normal_counter_based(benchmark::State& state) {
  NormalStream stream(random_key(1), 0, 0, 0);
  for (auto _ : state) benchmark::DoNotOptimize(stream.next());
}
BENCHMARK(BM_normal_counter_based);

void BM_normal_of_the_library(benchmark::State& state) {
  std::mt19937_64 engine(1);
  std::normal_distribution<double> normal;
  for (auto _ : state) benchmark::DoNotOptimize(normal(engine));
}
BENCHMARK(BM_normal_of_the_library);

void BM_exp(benchmark::State& state) {
  double x = 0.1;
  for (auto _ : state) {
    benchmark::DoNotOptimize(x);
    benchmark::DoNotOptimize(elementary_exp(x));
  }
}
BENCHMARK(BM_exp);

void BM_exp_of_the_library(benchmark::State& state) {
  double x = 0.1;
  for (auto _ : state) {
    benchmark::DoNotOptimize(x);
    benchmark::DoNotOptimize(std::exp(x));
  }
}
BENCHMARK(BM_exp_of_the_library);

}  // namespace
}  // namespace lanework::clock

BENCHMARK_MAIN();
