// Any bytes as the answer of 'lanework block --json', for everything that reads one.
#include <cstddef>
#include <cstdint>
#include <string>

#include "fuzz/block_promises.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string json(data, data + size);
  constexpr lanework::fuzz::HowFar kThirdWeek{15, 0xC4};
  lanework::fuzz::check_block_answer(json, kThirdWeek);
  lanework::fuzz::plans_on_from(json, kThirdWeek);
  return 0;
}
