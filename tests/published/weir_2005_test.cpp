// Squats of eight people on two days: Weir JP 2005, J Strength Cond Res 19:231-240, doi 10.1519/15184.1. The data from
// memory; a lecture page prints the correlation of the mean (consistency) as 0.973. Further digits by R.
#include <gtest/gtest.h>

#include "core/evidence/reliability.h"

namespace lanework::evidence {
namespace {

const Scores kKilograms = {{146, 140}, {148, 152}, {170, 152}, {90, 99},
                           {157, 145}, {156, 153}, {176, 167}, {205, 218}};

TEST(Weir2005, CorrelationsAndErrors) {
  const Correlations found = intraclass_correlations(kKilograms, 0.95);
  EXPECT_NEAR(found.mean_consistency.estimate, 0.973, 5e-4);
  EXPECT_NEAR(found.mean_consistency.estimate, 0.972787, 5e-7);
  EXPECT_NEAR(found.one_agreement.estimate, 0.949975, 5e-7);
  EXPECT_NEAR(found.one_consistency.estimate, 0.947016, 5e-7);
  EXPECT_NEAR(error_of_consistency(found.mean_squares), 7.556927, 5e-7);
  EXPECT_NEAR(detectable_change(error_of_consistency(found.mean_squares), 0.95), 20.946732, 1e-3);  // with 1.96
}

}  // namespace
}  // namespace lanework::evidence
