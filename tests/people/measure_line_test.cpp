#include "core/people/measure_line.h"

#include <gtest/gtest.h>

namespace lanework::people {
namespace {

const Date kTonight = *make_date(2026, 11, 26);

Player player(std::optional<int> age, std::optional<int> group) {
  Player out;
  out.stated_age = age;
  out.size_group = group;
  return out;
}

std::vector<std::int64_t> groups(const std::vector<Player>& players) {
  return measure_line(players, PartnerMeasure::kSizeGroup, kTonight).place;
}

TEST(MeasureLine, MissingOnesStandWithTheMiddleOfTheirAge) {
  EXPECT_EQ(groups({player(12, 1), player(12, 4), player(12, 5), player(14, 9), player(12, {})}),
            (std::vector<std::int64_t>{1, 4, 5, 9, 4}));
  EXPECT_EQ(groups({player(12, 2), player(12, 4), player(12, {})}).back(), 2);  // the lower of two
  EXPECT_EQ(groups({player(11, 1), player(15, 6), player(14, {})}).back(), 6);  // nobody of that age: the nearest
  EXPECT_EQ(groups({player(8, 1), player(16, 4), player(12, {})}).back(), 1);   // two as near: the lower
}

TEST(MeasureLine, WithoutAgeTheNeighbourInTheListCounts) {
  EXPECT_EQ(groups({player({}, {}), player({}, 3), player({}, {}), player({}, {}), player({}, 8)}),
            (std::vector<std::int64_t>{3, 3, 3, 8, 8}));
  EXPECT_EQ(groups({player({}, 1), player({}, {}), player({}, 5)}), (std::vector<std::int64_t>{1, 1, 5}));
  EXPECT_EQ(groups({player({}, {}), player({}, {})}), (std::vector<std::int64_t>{0, 0}));
}

TEST(MeasureLine, CountsWhatWasMissing) {
  const MeasureLine line = measure_line({player(12, {}), player({}, {}), player({}, 2), player(11, 1)},
                                        PartnerMeasure::kSizeGroup, kTonight);
  EXPECT_EQ(line.without_measure, 2);
  EXPECT_EQ(line.without_age, 1);
}

TEST(MeasureLine, AgeIsInDaysAndAStatedAgeItsMiddle) {
  Player born;
  born.birth = make_date(2014, 11, 26);
  const std::vector<std::int64_t> place = measure_line({born, player(12, {})}, PartnerMeasure::kAge, kTonight).place;
  EXPECT_EQ(place, (std::vector<std::int64_t>{4383, 4383 + 183}));
  // Nobody has the measure: the line is age.
  EXPECT_EQ(groups({player(12, {}), player(13, {})}), (std::vector<std::int64_t>{4566, 4931}));
}

}  // namespace
}  // namespace lanework::people
