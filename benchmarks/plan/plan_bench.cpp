// The planner's speed and its answers, with two peers in the same run.
// usage: bench_plan [INSTANCES [HIGHS_INSTANCES]]      200 and 20 unless told
#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <string>

#include "benchmarks/plan/agreement.h"
#include "benchmarks/plan/speed.h"

namespace {

std::string processor() {
  std::ifstream in("/proc/cpuinfo");
  std::string line;
  while (std::getline(in, line)) {
    if (line.rfind("model name", 0) == 0) return line.substr(line.find(':') + 2);
  }
  return "unknown";
}

void print_head() {
  const std::time_t now = std::time(nullptr);
  std::array<char, 32> date{};
  std::strftime(date.data(), date.size(), "%Y-%m-%d", std::gmtime(&now));
  std::printf("date      %s\nprocessor %s, one thread\ncompiler  GCC-compatible %s\nflags     %s\n", date.data(),
              processor().c_str(), __VERSION__, LANEWORK_FLAGS);
  std::printf(
      "times     processor time; ours the median of 5 runs an instance, the referees' one run as they tell it (CBC to "
      "0.01 s)\n\n");
}

}  // namespace

int main(int argc, char** argv) {
  const int instances = argc > 1 ? std::atoi(argv[1]) : 200;
  const int highs_instances = argc > 2 ? std::atoi(argv[2]) : 20;
  if (instances < 1 || highs_instances < 1) {
    std::fprintf(stderr, "usage: bench_plan [INSTANCES [HIGHS_INSTANCES]]\n");
    return 2;
  }
  print_head();
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  bool equal = lanework::bench::compare_with_referees(instances, highs_instances);
  std::printf("\n");
  equal = lanework::bench::compare_hardest(highs_instances) && equal;
  std::printf("\n");
  lanework::bench::time_hardest(instances);
  lanework::bench::time_pricing(instances);
  lanework::bench::time_growth(20);
  return equal ? 0 : 1;
}
