// Why a session of a block planned on from today is not as it stood: in words, and as codes with their values for
// whoever says it in another language (docs/formats/block.md).
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/door/squad_block.h"

namespace lanework::door {

// One reason. words: a clause, 'balance is 40 s short after the cut session of Tuesday 24 November'.
struct Because {
  std::string words;
  Node coded;  // {"code": "behind", "families": [{"family": "balance", "seconds": 40}], "after": [...]}
};

// Of a session of the problem, by its index there; changes: does anything of it change? Empty where nothing need be
// told. REQUIRES: block.wishes.outline.rolling.
std::vector<Because> replan_reasons(const SquadBlock& block, std::size_t session, bool changes);

// Work of a family's quarter-credits, at least a second.
std::int64_t seconds_of_quarters(const SquadBlock& block, std::size_t family, int quarters);

// Has the lead fixed this drill of the catalogue on any evening? What else is fixed is the routine's eccentric work.
bool is_pinned(const SquadBlock& block, int drill);

}  // namespace lanework::door
