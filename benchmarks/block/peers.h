// CBC and HiGHS on the exported rows of the first squads of the set.
#pragma once

namespace lanework::bench {

// Each solver gets so many seconds a squad; both run at the same time, on a core each. Rows that we lose are printed.
// False: a solver's plan or bound shows that the rows or our bound are wrong.
bool compare_with_solvers(int squads, int seconds);

}  // namespace lanework::bench
