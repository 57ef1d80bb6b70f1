// A squad's part of a strip. Inside this folder only.
#pragma once

#include "core/session/strip.h"

namespace lanework::club {

// That many of the strip's lanes and the same share of the width for drills on the spot, in whole millimetres.
// REQUIRES: 1 <= lanes <= whole.lanes.
inline session::Strip share_of(const session::Strip& whole, int lanes) {
  session::Strip part = whole;
  part.lanes = lanes;
  part.area_width = Millimetres(whole.area_width.count * lanes / whole.lanes);
  return part;
}

}  // namespace lanework::club
