// Freeman, Young, Talpey et al. 2019, J Sports Med Phys Fitness 59(7): adolescents of 16, kneeling eccentric
// lowers twice a week: 2 x 5, 3 x 4, 3 x 5, 3 x 6; 110 repetitions in eight sessions. As tabulated by
// Cuthbert et al. 2020, Sports Med 50(1).
#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "core/catalogue/loads.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue {
namespace {

struct Week {
  int sets;
  int reps;
};
constexpr std::array<Week, 4> kWeeks = {{{2, 5}, {3, 4}, {3, 5}, {3, 6}}};
constexpr int kSessionsAWeek = 2;

TEST(Freeman2019, TheScheduleAddsUp) {
  int total = 0;
  for (const Week& week : kWeeks) total += week.sets * week.reps * kSessionsAWeek;
  EXPECT_EQ(total, 110);
}

TEST(Freeman2019, NoAgeMayDoMoreThanTheTrialsLastWeek) {
  const Week& last = kWeeks.back();
  for (int age = 8; age <= 19; ++age) {
    const Ceilings& ceilings = test::shipped_catalogue().ceilings_for(age);
    EXPECT_LE(ceilings.eccentric_session, last.sets * last.reps) << age;
    EXPECT_LE(ceilings.eccentric_week, last.sets * last.reps * kSessionsAWeek) << age;
  }
}

TEST(Freeman2019, ThoseYoungerThanTheTrialStayBelowItsFirstWeek) {
  const Week& first = kWeeks.front();
  for (int age = 8; age <= 13; ++age) {
    EXPECT_LE(test::shipped_catalogue().ceilings_for(age).eccentric_session, first.sets * first.reps) << age;
  }
}

TEST(Freeman2019, TheFirstWeeksDoseIsInTheCatalogueAndAllowedAtTheTrialsAge) {
  const Catalogue& catalogue = test::shipped_catalogue();
  const Drill* drill = catalogue.find("kneeling-hamstring-lower");
  ASSERT_NE(drill, nullptr);
  const int dose = dose_index(*drill, kWeeks[0].sets, kWeeks[0].reps);
  ASSERT_GE(dose, 0);
  const LoadSum sum = load_of(*drill, drill->rungs.back(), drill->dose.steps[static_cast<std::size_t>(dose)],
                              kUsualLane, catalogue.limits);
  EXPECT_EQ(sum.eccentric, 10'000);
  EXPECT_LE(sum.eccentric, 1000 * catalogue.ceilings_for(16).eccentric_session);
}

}  // namespace
}  // namespace lanework::catalogue
