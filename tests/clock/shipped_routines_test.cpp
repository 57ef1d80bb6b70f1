// The shipped house routines: what the plan keeps free, from moments, against simulated evenings.
#include <gtest/gtest.h>

#include "core/clock/clock.h"
#include "tests/catalogue/shipped.h"
#include "tests/clock/an_evening.h"

namespace lanework::clock {
namespace {

TEST(ShippedRoutines, MomentsFindTheNinetyPerCentFinish) {
  const catalogue::Catalogue& catalogue = catalogue::test::shipped_catalogue();
  int routines = 0;
  for (const Document& document : catalogue::test::read_folder(catalogue::test::shipped_folder() / "routines")) {
    const Result<catalogue::Routine> routine = catalogue::read_routine(document, catalogue);
    ASSERT_TRUE(routine.ok()) << catalogue::test::all_lines(routine.faults());
    session::Session session;
    for (const catalogue::RoutineLine& line : routine.value().lines) {
      session.items.push_back({line.drill, line.rung, line.dose});
    }
    for (const int turnout : {9, 14, 22}) {
      session::Evening evening = an_evening();
      evening.turnout = turnout;
      evening.age = routine.value().age_from;
      const SessionTime simulated = session_time(session, catalogue, evening, 1000);
      const SessionTime moments = session_time(session, catalogue, evening, 0);
      const auto share = [](Seconds a, Seconds b) {
        return static_cast<double>(a.count) / static_cast<double>(b.count);
      };
      EXPECT_NEAR(share(moments.nine_in_ten, simulated.nine_in_ten), 1.0, 0.02) << routine.value().id << ' ' << turnout;
      EXPECT_NEAR(share(moments.simulated_median, simulated.simulated_median), 1.0, 0.02)
          << routine.value().id << ' ' << turnout;
    }
    ++routines;
  }
  EXPECT_GE(routines, 3);
}

}  // namespace
}  // namespace lanework::clock
