// Random bits for draws from a distribution, as a generator of the standard library's kind: one stream a key and three
// words, the same on any machine and any number of threads.
#pragma once

#include <cstdint>
#include <limits>

#include "core/base/random.h"

namespace lanework::evidence {

class RandomEngine {
 public:
  using result_type = std::uint32_t;

  RandomEngine(std::uint64_t seed, std::uint32_t what, std::uint32_t item, std::uint32_t run)
      : key_(random_key(seed)), counter_{0, what, item, run} {}

  static constexpr result_type min() { return 0; }
  static constexpr result_type max() { return std::numeric_limits<result_type>::max(); }

  result_type operator()() {
    if (used_ == 4) {
      words_ = philox(counter_, key_);
      ++counter_[0];
      used_ = 0;
    }
    return words_[used_++];
  }

 private:
  RandomKey key_;
  RandomBlock counter_;
  RandomBlock words_{};
  std::size_t used_ = 4;
};

}  // namespace lanework::evidence
