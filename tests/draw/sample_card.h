// An invented evening of the invented club Quillmere Juniors, for tests and benchmarks of the card.
#pragma once

#include "app/draw/card.h"

namespace lanework::draw {

// drills: 1 to 14, in order of time; times and slot follow from them.
CardMatter sample_card(int drills);
SlipMatter sample_slip();

}  // namespace lanework::draw
