#include "core/plan/landings_tonight.h"

#include <gtest/gtest.h>

#include "tests/catalogue/shipped.h"

namespace lanework::plan {
namespace {

session::Evening at_age(int age, std::optional<int> days_to_match = {}) {
  session::Evening evening;
  evening.age = age;
  evening.days_to_match = days_to_match;
  return evening;
}

session::Weekly week_of(std::size_t slots, bool matches) {
  session::Weekly weekly;
  weekly.slots.resize(slots);
  if (matches) weekly.matches.emplace_back();
  return weekly;
}

// catalogue/limits.toml: 80 landings in a session of 12-year-olds, 160 in their week, four tenths of them in the
// warm-up.
TEST(LandingsTonight, TheSessionsCeilingAndAnEvenShareOfTheWeeks) {
  const catalogue::Catalogue& catalogue = catalogue::test::shipped_catalogue();
  const auto most = [&](const session::Evening& evening, const session::Weekly& weekly) {
    return most_landings_tonight(catalogue, evening, weekly);
  };
  EXPECT_EQ(most(at_age(12), week_of(0, false)), 32'000);
  EXPECT_EQ(most(at_age(12), week_of(2, false)), 32'000);
  EXPECT_EQ(most(at_age(12), week_of(3, false)), 64'000 / 3);
  EXPECT_EQ(most(at_age(12), week_of(2, true)), 25'600);     // a match day may ask half
  EXPECT_EQ(most(at_age(12, 1), week_of(2, true)), 16'000);  // the day before as well
  EXPECT_EQ(most(at_age(12, 0), week_of(2, false)), 16'000);
}

// Half of each session is at most half of the week, however many sessions it has.
TEST(LandingsTonight, SharesOfAllSessionsAreAShareOfTheWeek) {
  const catalogue::Catalogue& catalogue = catalogue::test::shipped_catalogue();
  for (int age = 8; age <= 19; ++age) {
    for (std::size_t slots = 1; slots <= 7; ++slots) {
      for (const bool matches : {false, true}) {
        const session::Weekly weekly = week_of(slots, matches);
        const std::int64_t of_slots =
            static_cast<std::int64_t>(slots) * most_landings_tonight(catalogue, at_age(age), weekly);
        const std::int64_t of_match = matches ? most_landings_tonight(catalogue, at_age(age, 0), weekly) : 0;
        EXPECT_LE(of_slots + of_match, 1000 * catalogue.ceilings_for(age).contacts_week) << age << " " << slots;
      }
    }
  }
}

}  // namespace
}  // namespace lanework::plan
