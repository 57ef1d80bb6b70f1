// A block answer given to everything that reads one, for the demo club with one squad.
#pragma once

#include <cstdint>
#include <string>

namespace lanework::fuzz {

inline constexpr const char* kAnswerFile = "block.json";

// So much of a block is over when it is planned on.
struct HowFar {
  int days = 0;                // after its first Monday
  std::uint32_t happened = 0;  // two bits a session that is over, from the first: held, half did it, missed, no word
};

// The squad's block as it is planned, with little work; the independent check finds it sound.
const std::string& sound_answer();

// The readers of cards, summaries and exports, the independent check, and a block planned on from there: values that
// keep their promises, or clear faults.
void check_block_answer(const std::string& json, const HowFar& how_far);

// Any text as an answer that is planned on from, and what comes of it read again; false: it cannot be.
bool plans_on_from(const std::string& json, const HowFar& how_far);

}  // namespace lanework::fuzz
