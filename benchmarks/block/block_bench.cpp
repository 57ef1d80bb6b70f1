// The block planner on a fixed set of squads: how close to the best, how soon, and two peers in the same run.
// usage: bench_block [SQUADS [PEER_SQUADS [PEER_SECONDS]]]      60, 10 and 120 unless told; 0 peer squads: none
//        bench_block replan [SQUADS]                            that part alone; 20 unless told
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "benchmarks/block/growth.h"
#include "benchmarks/block/peers.h"
#include "benchmarks/block/quality.h"
#include "benchmarks/block/replan.h"

int main(int argc, char** argv) {
  if (argc > 1 && std::string_view(argv[1]) == "replan") {
    lanework::bench::measure_replan(std::max(1, argc > 2 ? std::atoi(argv[2]) : 20));
    return 0;
  }
  const int squads = argc > 1 ? std::atoi(argv[1]) : 60;
  const int peer_squads = argc > 2 ? std::atoi(argv[2]) : 10;
  const int peer_seconds = argc > 3 ? std::atoi(argv[3]) : 120;
  if (squads < 1 || peer_squads < 0 || peer_seconds < 1) {
    std::fprintf(stderr, "usage: bench_block [SQUADS [PEER_SQUADS [PEER_SECONDS]]]\n");
    return 2;
  }
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  std::printf("flags     %s\nsquads    seeds 1 .. %d of tests/block/drawn_squads.h: 6 weeks, 3 sessions a week\n\n",
              LANEWORK_FLAGS, squads);
  bool sound = lanework::bench::measure_growth(squads);
  std::printf("\n");
  sound = lanework::bench::time_binds(lanework::bench::measure_quality(squads)) && sound;
  std::printf("\n");
  lanework::bench::measure_replan(std::min(squads, 20));
  if (peer_squads > 0) {
    std::printf("\n");
    sound = lanework::bench::compare_with_solvers(peer_squads, peer_seconds) && sound;
  }
  return sound ? 0 : 1;
}
