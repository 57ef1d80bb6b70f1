// The keys of a restriction that say what it bars and for how long, wherever a restriction is written: in the club's
// restrictions (docs/formats/squad.md) and among entries (docs/formats/entries.md).
#pragma once

#include "core/base/document.h"
#include "core/people/player.h"

namespace lanework::people {

// The words of 'allowed', by grade: none light moderate heavy.
const std::vector<std::string_view>& allowed_words();

// Everything but whom it is for. Faults go to the reader's list: unknown words, an instruction with a private word.
// A row that only counts (landings, new eccentric work) and names no area, kind or grade bars nothing besides.
void read_what_is_barred(TableReader& reader, Restriction& restriction);

}  // namespace lanework::people
