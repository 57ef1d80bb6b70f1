// What a coach reads about a restriction: what to avoid and until when. Never an area of the body, never a
// reason.
#pragma once

#include <optional>
#include <string>

#include "core/base/date.h"
#include "core/people/player.h"

namespace lanework::people {

// 'no jumping until 3 Dec': the lead's words, or words made from the kinds of stress. The year stands there
// only when the end is more than half a year from tonight.
std::string instruction_for(const Restriction& restriction, std::optional<Date> tonight = {});

// A word of the lead's instruction that a coach should not see, an area of the body or an illness or injury
// by name; empty when there is none. English, and a net rather than a wall: it knows the usual words only.
std::string private_word_in(const std::string& instruction);

}  // namespace lanework::people
