#include "app/cli/plan_blocks.h"

#include <memory>
#include <mutex>

#include "app/cli/share_out.h"

namespace lanework::cli {

std::vector<door::SquadBlock> plan_blocks(std::vector<door::SquadWishes> wishes, const block::Work& work,
                                          unsigned threads, const SquadsDone& done) {
  std::vector<door::SquadBlock> blocks(wishes.size());
  std::size_t finished = 0;
  std::mutex telling;
  share_out(wishes.size(), threads, [&]() -> Worker {
    return [&, workspace = std::make_shared<plan::KernelWorkspace>()](std::size_t i) {
      blocks[i] = door::plan_block(std::move(wishes[i]), work, *workspace);
      const std::lock_guard<std::mutex> lock(telling);
      ++finished;
      if (done) done(finished);
    };
  });
  return blocks;
}

}  // namespace lanework::cli
