// What a block planned on from today changes, and why, in words and as JSON (docs/formats/block.md).
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/door/replan_reasons.h"
#include "core/door/squad_block.h"

namespace lanework::door {

// One drill of a session that is not as it stood.
struct ItemChange {
  enum class What { kComesIn, kLeftOut, kOtherDose };
  What what = What::kComesIn;
  int drill = 0;      // index into the squad's catalogue
  std::string words;  // 'Squat left out', 'Side plank 2 x 20 s a side instead of 1 x 20 s a side'
};

struct SessionChange {
  std::size_t slot = 0;  // index into wishes.slots
  std::size_t of = 0;    // drills that stood
  std::vector<ItemChange> changes;
  std::vector<Because> because;
};

// The coming session first, changed or not; then every later one that changes. Empty of a block that is over.
std::vector<SessionChange> session_changes(const SquadBlock& block);

// Sentences: what there is no word of, the coming session, how many others, shortfalls that change, drills swapped.
// REQUIRES: block.wishes.outline.rolling.
std::vector<std::string> replan_sentences(const SquadBlock& block);

Node rolling_node(const SquadBlock& block);

// 'held', 'missed', 'cut short', 'no word'
const char* to_word(block::Report::Happened happened);

}  // namespace lanework::door
