// What ten times the squads cost, and whether threads change the answers.
#pragma once

namespace lanework::bench {

// False when one and two threads differ. To be called first: memory is counted at its highest so far.
bool measure_growth(int squads);

}  // namespace lanework::bench
