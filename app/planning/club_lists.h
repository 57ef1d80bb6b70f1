// A club's folder to the lists that the server keeps: squads, and who is of which.
#pragma once

#include <string>

#include "app/store/directory.h"
#include "core/club/club.h"

namespace lanework::planning {

store::Lists lists_of(const club::Club& club);

// What keeping the one in place of the other changes, in lines for whoever does it; empty: nothing.
std::string changes_in_words(const store::Lists& before, const store::Lists& after);

}  // namespace lanework::planning
