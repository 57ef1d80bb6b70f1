// An answer that takes long to work out, kept as long as what it was worked out from is as it was.
#pragma once

#include <array>
#include <cstddef>
#include <memory>
#include <mutex>
#include <string>
#include <utility>

#include "core/base/result.h"

namespace lanework::cli {

// The latest few, each under a name and with the state of its sources, a text of the caller's. Used by several threads
// at once; two who ask for the same at once may both work it out.
template <class Value>
class KeptAnswers {
 public:
  // work: gives Result<Value>. What has a fault is not kept.
  template <class Work>
  Result<std::shared_ptr<const Value>> get(const std::string& name, const std::string& state, const Work& work) {
    {
      const std::lock_guard<std::mutex> lock(lock_);
      for (const Kept& one : kept_) {
        if (one.value != nullptr && one.name == name && one.state == state) return one.value;
      }
    }
    auto made = work();
    if (!made) return made.faults();
    auto value = std::make_shared<const Value>(std::move(made).value());
    const std::lock_guard<std::mutex> lock(lock_);
    kept_[next_] = {name, state, value};
    next_ = (next_ + 1) % kMost;
    return value;
  }

 private:
  static constexpr std::size_t kMost = 4;
  struct Kept {
    std::string name;
    std::string state;
    std::shared_ptr<const Value> value;
  };
  std::mutex lock_;
  std::array<Kept, kMost> kept_;
  std::size_t next_ = 0;
};

}  // namespace lanework::cli
