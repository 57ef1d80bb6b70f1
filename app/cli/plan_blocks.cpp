#include "app/cli/plan_blocks.h"

#include <algorithm>
#include <atomic>
#include <mutex>
#include <thread>

namespace lanework::cli {

unsigned all_cores() { return std::max(1U, std::thread::hardware_concurrency()); }

std::vector<door::SquadBlock> plan_blocks(std::vector<door::SquadWishes> wishes, const block::Work& work,
                                          unsigned threads, const SquadsDone& done) {
  std::vector<door::SquadBlock> blocks(wishes.size());
  std::atomic<std::size_t> next = 0;
  std::size_t finished = 0;
  std::mutex telling;
  const auto work_through = [&] {
    plan::KernelWorkspace workspace;
    for (std::size_t i = next++; i < wishes.size(); i = next++) {
      blocks[i] = door::plan_block(std::move(wishes[i]), work, workspace);
      const std::lock_guard<std::mutex> lock(telling);
      ++finished;
      if (done) done(finished);
    }
  };
  std::vector<std::thread> others;
  for (unsigned t = 1; t < threads; ++t) others.emplace_back(work_through);
  work_through();
  for (std::thread& other : others) other.join();
  return blocks;
}

}  // namespace lanework::cli
