// How long a new plan takes after one evening has changed.
#pragma once

namespace lanework::bench {

void measure_replan(int squads);

}  // namespace lanework::bench
