// Whether a restriction keeps a player from holds and pushes of a partner.
#pragma once

#include "core/people/player.h"

namespace lanework::people {

// Contact is among the kinds, or every kind is: wherever it hurts (own judgement).
bool bars_contact(const Restriction& restriction);

}  // namespace lanework::people
