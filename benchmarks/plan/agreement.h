// The planner's answers against CBC and HiGHS, level by level, and how long each took.
#pragma once

namespace lanework::bench {

// Compares on 'count' varied evenings with CBC, on 'highs_count' of them with HiGHS, then times on the same.
// False when an answer differs, or when too few of the evenings were hard to say anything.
bool compare_with_referees(int count, int highs_count);

// The same with CBC on evenings where every drill, rung and dose of the catalogue may enter.
bool compare_hardest(int count);

}  // namespace lanework::bench
