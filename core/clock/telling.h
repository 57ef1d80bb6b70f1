// Telling time shrinks with every time the squad has done a drill.
#pragma once

#include "core/base/units.h"

namespace lanework::clock {

// full: for a squad that has never done it; times: how often it has.
Milliseconds telling_after(Milliseconds full, int times);

}  // namespace lanework::clock
