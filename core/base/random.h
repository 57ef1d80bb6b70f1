// Counter-based random numbers: Philox4x32-10 (Salmon et al. 2011, doi 10.1145/2063384.2063405). A draw
// is a pure function of key and counter: no state, no order, the same on any number of threads.
#pragma once

#include <array>
#include <cstdint>

namespace lanework {

using RandomBlock = std::array<std::uint32_t, 4>;
using RandomKey = std::array<std::uint32_t, 2>;

// Four words for one counter value.
inline RandomBlock philox(RandomBlock counter, RandomKey key) {
  constexpr std::uint64_t kMultiplier0 = 0xD2511F53U;
  constexpr std::uint64_t kMultiplier1 = 0xCD9E8D57U;
  for (int round = 0; round < 10; ++round) {
    const std::uint64_t product0 = kMultiplier0 * counter[0];
    const std::uint64_t product1 = kMultiplier1 * counter[2];
    counter = {static_cast<std::uint32_t>(product1 >> 32U) ^ counter[1] ^ key[0], static_cast<std::uint32_t>(product1),
               static_cast<std::uint32_t>(product0 >> 32U) ^ counter[3] ^ key[1], static_cast<std::uint32_t>(product0)};
    key[0] += 0x9E3779B9U;
    key[1] += 0xBB67AE85U;
  }
  return counter;
}

inline RandomKey random_key(std::uint64_t seed) {
  return {static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> 32U)};
}

// Uniform in (0, 1), never 0 or 1: the middle of the word's cell.
inline double uniform_from(std::uint32_t word) { return (word + 0.5) * 0x1p-32; }

// Standard normal numbers of one stream, in order. The stream is named by three words (for the clock:
// what, item, run); the fourth counts the blocks.
class NormalStream {
 public:
  NormalStream(RandomKey key, std::uint32_t what, std::uint32_t item, std::uint32_t run)
      : key_(key), counter_{0, what, item, run} {}
  double next();

 private:
  RandomKey key_;
  RandomBlock counter_;
  RandomBlock words_{};
  int used_ = 4;
};

}  // namespace lanework
