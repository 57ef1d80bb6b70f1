// The small sums behind the screens.
#pragma once

#include "core/care/screens/screen_tests.h"

namespace lanework::care::screens {

// One side as a share of the other, per cent. Where less is the better (a timed hop) the other way round, so that below
// 100 always means that the tested side does less well. Both above 0.
double limb_symmetry_percent(double tested, double other, Wanted wanted);
// The weaker side against the stronger: at most 100.
double weaker_side_percent(double left, double right, Wanted wanted);

// Is the second value the better?
bool better(Wanted wanted, double before, double after);

// Knee bend from straight, of the angle that thigh and shank include: 126.0 is 54.0. And back.
inline double flexion_from_included(double included_degrees) { return 180.0 - included_degrees; }
inline double included_from_flexion(double flexion_degrees) { return 180.0 - flexion_degrees; }

// Gap between the knees as a share of the gap between the hips at the deepest point of a landing, per cent:
// Noyes FR, et al. 2005, doi 10.1177/0363546504266484. hip_gap above 0, both in one unit.
inline double knee_separation_percent(double knee_gap, double hip_gap) { return 100.0 * knee_gap / hip_gap; }

// What a change has to pass before it is told: 1.96 x root 2 x standard error of measurement.
double detectable_change_of(double standard_error);

}  // namespace lanework::care::screens
