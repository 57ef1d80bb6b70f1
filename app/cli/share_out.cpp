#include "app/cli/share_out.h"

#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

namespace lanework::cli {

void share_out(std::size_t count, unsigned threads, const std::function<Worker()>& hire) {
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    const Worker worker = hire();
    for (std::size_t i = next++; i < count; i = next++) worker(i);
  };
  std::vector<std::thread> all;
  for (unsigned t = 0; t < std::max(1U, threads); ++t) all.emplace_back(work);
  for (std::thread& thread : all) thread.join();
}

unsigned all_cores() { return std::max(1U, std::thread::hardware_concurrency()); }

}  // namespace lanework::cli
