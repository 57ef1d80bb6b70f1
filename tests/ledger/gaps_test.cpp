#include "core/ledger/gaps.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <set>

namespace lanework::ledger {
namespace {

using Gaps = std::vector<Gap>;

TEST(Gaps, WithoutWhatWentAreThoseThatNobodyKnowsOf) {
  EXPECT_EQ(gaps_without({{"phone", 2, 9}}, {}), (Gaps{{"phone", 2, 9}}));
  EXPECT_EQ(gaps_without({{"phone", 2, 9}}, {{"phone", 1, 12}}), Gaps{});
  EXPECT_EQ(gaps_without({{"phone", 2, 9}}, {{"phone", 4, 5}, {"phone", 9, 9}}),
            (Gaps{{"phone", 2, 3}, {"phone", 6, 8}}));
  EXPECT_EQ(gaps_without({{"phone", 2, 9}}, {{"tablet", 1, 12}}), (Gaps{{"phone", 2, 9}}));
  EXPECT_EQ(gaps_without({{"phone", 1, 2}, {"phone", 5, 6}}, {{"phone", 2, 5}}),
            (Gaps{{"phone", 1, 1}, {"phone", 6, 6}}))
      << "one range reaches over what is there";
}

// Number by number.
TEST(Gaps, AreTheNumbersInTheOneAndNotInTheOther) {
  EXPECT_TRUE(rc::check([] {
    const auto ranges = [](bool apart) {
      Gaps out;
      for (const char* device : {"a", "b"}) {
        std::int64_t at = 1;
        const int count = *rc::gen::inRange(0, 5);
        for (int i = 0; i < count; ++i) {
          const std::int64_t from = at + *rc::gen::inRange(0, 4);
          const std::int64_t to = from + *rc::gen::inRange(0, 4);
          out.push_back({device, from, to});
          at = to + (apart ? 2 : 1);
        }
      }
      return out;
    };
    const auto numbers = [](const Gaps& gaps) {
      std::set<std::pair<std::string, std::int64_t>> out;
      for (const Gap& gap : gaps) {
        for (std::int64_t n = gap.from; n <= gap.to; ++n) out.emplace(gap.device, n);
      }
      return out;
    };
    const Gaps gaps = ranges(true);
    const Gaps gone = ranges(false);
    auto expected = numbers(gaps);
    for (const auto& one : numbers(gone)) expected.erase(one);
    const Gaps out = gaps_without(gaps, gone);
    RC_ASSERT(numbers(out) == expected);
    for (const Gap& gap : out) RC_ASSERT(gap.from <= gap.to);
  }));
}

}  // namespace
}  // namespace lanework::ledger
