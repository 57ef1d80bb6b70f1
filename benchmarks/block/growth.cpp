#include "benchmarks/block/growth.h"

#include <malloc.h>
#include <sys/resource.h>

#include <cstdio>

#include "benchmarks/block/squads.h"

namespace lanework::bench {
namespace {

// A twentieth of the work: the shape of the growth is the same, and the bench is bearable.
constexpr double kShare = 0.05;

double peak_megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

double megabytes_in_use() { return static_cast<double>(mallinfo2().uordblks) / (1024 * 1024); }

// Everything of an answer, folded (FNV-1a).
class Digest {
 public:
  void add(std::uint64_t number) {
    for (int byte = 0; byte < 8; ++byte) {
      sum_ = (sum_ ^ ((number >> (8 * byte)) & 255)) * 0x100000001B3ULL;
    }
  }
  void add(const block::Answer& answer) {
    for (const auto& set : answer.plan.sets) {
      for (const char in : set) add(static_cast<std::uint64_t>(in));
    }
    for (const auto& choice : answer.plan.choice) {
      for (const int option : choice) add(static_cast<std::uint64_t>(option + 1));
    }
    add(static_cast<std::uint64_t>(answer.value));
    add(static_cast<std::uint64_t>(answer.bound_fine));
  }
  [[nodiscard]] std::uint64_t sum() const { return sum_; }

 private:
  std::uint64_t sum_ = 0xCBF29CE484222325ULL;
};

struct Run {
  Cost cost;
  std::vector<std::uint64_t> digests;
  double peak = 0;  // the largest squad's
  double kept = 0;  // in use after the last
};

Run run(int count, int threads) {
  Run out;
  out.digests.resize(static_cast<std::size_t>(count));
  out.cost = solve_set(count, threads, block::times({}, kShare), [&](std::size_t i, const SolvedSquad& squad) {
    Digest digest;
    digest.add(squad.answer);
    out.digests[i] = digest.sum();
  });
  out.peak = peak_megabytes();
  out.kept = megabytes_in_use();
  std::printf("  %4d squads, %d threads: %.2f s on the wall, %.2f s of processor, at most %.1f MB, after it %.1f MB\n",
              count, threads, out.cost.wall_seconds, out.cost.processor_seconds, out.peak, out.kept);
  return out;
}

}  // namespace

bool measure_growth(int squads) {
  std::printf("Growth, at a twentieth of the default work:\n");
  const Run two = run(squads, 2);
  const Run one = run(squads, 1);
  const Run many = run(10 * squads, 2);
  print_aim("ten times the squads, processor time", many.cost.processor_seconds / two.cost.processor_seconds, 10.5,
            "times");
  print_aim("ten times the squads, wall", many.cost.wall_seconds / two.cost.wall_seconds, 10.5, "times");
  print_aim("memory at most, ten times the squads: larger ones are among them", many.peak / one.peak, 1.5, "times");
  print_aim("memory after them", many.kept / one.kept, 1.2, "times");
  const bool same = one.digests == two.digests;
  std::printf("  one and two threads: %s\n", same ? "the same bytes" : "DIFFERENT BYTES");
  return same;
}

}  // namespace lanework::bench
