// Every text of a card or slip, made safe to draw.
#pragma once

#include "app/draw/card.h"

namespace lanework::draw {

CardMatter cleaned(CardMatter matter);
SlipMatter cleaned(SlipMatter matter);

}  // namespace lanework::draw
