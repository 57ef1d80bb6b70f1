// Rows of values by steps left, and the loops that a dynamic programme over them is made of: the widest vectors that
// the processor has, and the same whole numbers with every width.
#pragma once

#include <cstdint>

namespace lanework::block {

// Below every value and far from overflow when prices are added to it.
inline constexpr std::int32_t kNever = -(std::int32_t{1} << 30);

// to[t] = most of to[t] and from[t] + price.
void raise_row(std::int32_t* __restrict to, const std::int32_t* __restrict from, std::int32_t price, int count);

// to[t] = from[t] + price.
void shift_row(std::int32_t* __restrict to, const std::int32_t* __restrict from, std::int32_t price, int count);

// to[t] = most of skip[t] - cost and take[t].
void merge_row(std::int32_t* __restrict to, const std::int32_t* __restrict skip, std::int32_t cost,
               const std::int32_t* __restrict take, int count);

}  // namespace lanework::block
