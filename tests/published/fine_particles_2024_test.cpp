// Air quality index of fine particles by the breakpoints of 2024 (from memory, unverified), worked from the straight
// lines between them.
#include <gtest/gtest.h>

#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

TEST(FineParticles2024, Index) {
  const FineParticleScale& scale = shipped_tables().fine_particles;
  EXPECT_NEAR(index_of(scale, {20.0}).index, 71.3, 0.05);
  EXPECT_NEAR(index_of(scale, {40.0}).index, 112.1, 0.05);
  EXPECT_NEAR(index_of(scale, {100.0}).index, 182.2, 0.05);
  for (const auto& [concentration, index] : {std::pair{0.0, 0},
                                             {9.0, 50},
                                             {9.1, 51},
                                             {35.4, 100},
                                             {35.5, 101},
                                             {55.4, 150},
                                             {55.5, 151},
                                             {125.4, 200},
                                             {125.5, 201},
                                             {225.4, 300}})
    EXPECT_NEAR(index_of(scale, {concentration}).index, index, 1e-9) << concentration;
  EXPECT_TRUE(index_of(scale, {225.5}).beyond_scale);
  EXPECT_FALSE(index_of(scale, {225.4}).beyond_scale);
}

TEST(FineParticles2024, IsSaidToBeUnverified) {
  EXPECT_EQ(shipped_tables().fine_particles.standing, Standing::kUnverified);
}

}  // namespace
}  // namespace lanework::care::environment::test
