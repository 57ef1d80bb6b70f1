#include "core/people/landings.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <bit>
#include <numeric>

namespace lanework::people {
namespace {

TEST(Landings, TheHeaviestItemsGoFirst) {
  const std::vector<std::int64_t> session = {0, 6'000, 10'000, 6'000};
  EXPECT_TRUE(items_beyond(22'000, session).empty());
  EXPECT_EQ(items_beyond(21'999, session), std::vector<std::size_t>{2});
  EXPECT_EQ(items_beyond(11'000, session), (std::vector<std::size_t>{2, 3}));
  EXPECT_EQ(items_beyond(0, session), (std::vector<std::size_t>{1, 2, 3}));
}

// Against every choice of items: what is left keeps the ceiling, and no smaller choice does.
TEST(Landings, AsFewItemsAsCanBe) {
  EXPECT_TRUE(rc::check([] {
    std::vector<std::int64_t> session(static_cast<std::size_t>(*rc::gen::inRange(0, 9)));
    for (std::int64_t& item : session) item = *rc::gen::inRange(0, 20'000);
    const std::int64_t all = std::accumulate(session.begin(), session.end(), std::int64_t{0});
    const std::int64_t ceiling = *rc::gen::inRange(0, 60'000);
    const std::vector<std::size_t> found = items_beyond(ceiling, session);
    std::int64_t left = all;
    for (const std::size_t item : found) left -= session[item];
    RC_ASSERT(left <= ceiling);
    for (unsigned choice = 0; choice < 1U << session.size(); ++choice) {
      if (std::popcount(choice) >= static_cast<int>(found.size())) continue;
      std::int64_t rest = all;
      for (std::size_t i = 0; i < session.size(); ++i) rest -= (choice >> i & 1U) != 0 ? session[i] : 0;
      RC_ASSERT(rest > ceiling);
    }
  }));
}

}  // namespace
}  // namespace lanework::people
