#include "core/block/value_rows.h"

namespace lanework::block {

#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__) && \
    !defined(__SANITIZE_THREAD__)
#define LANEWORK_WIDEST __attribute__((target_clones("avx2", "default")))
#else
#define LANEWORK_WIDEST
#endif

LANEWORK_WIDEST void raise_row(std::int32_t* __restrict to, const std::int32_t* __restrict from, std::int32_t price,
                               int count) {
  for (int t = 0; t < count; ++t) {
    const std::int32_t candidate = from[t] + price;
    to[t] = candidate > to[t] ? candidate : to[t];
  }
}

LANEWORK_WIDEST void shift_row(std::int32_t* __restrict to, const std::int32_t* __restrict from, std::int32_t price,
                               int count) {
  for (int t = 0; t < count; ++t) to[t] = from[t] + price;
}

LANEWORK_WIDEST void merge_row(std::int32_t* __restrict to, const std::int32_t* __restrict skip, std::int32_t cost,
                               const std::int32_t* __restrict take, int count) {
  for (int t = 0; t < count; ++t) {
    const std::int32_t left_out = skip[t] - cost;
    to[t] = left_out > take[t] ? left_out : take[t];
  }
}

}  // namespace lanework::block
