#include "core/people/measure_line.h"

#include <algorithm>
#include <cstdlib>
#include <optional>

namespace lanework::people {
namespace {

using Values = std::vector<std::optional<std::int64_t>>;

// Age in days: a stated age counts as its middle, since the birthday is not known.
std::optional<std::int64_t> days_of_age(const Player& player, Date day) {
  if (player.birth) return days_between(*player.birth, day);
  if (player.stated_age) return std::int64_t{*player.stated_age} * 1461 / 4 + 183;
  return {};
}

std::optional<std::int64_t> measured(const Player& player, PartnerMeasure measure, Date day) {
  switch (measure) {
    case PartnerMeasure::kAge:
      return days_of_age(player, day);
    case PartnerMeasure::kSizeGroup:
      return player.size_group ? std::optional<std::int64_t>(*player.size_group) : std::nullopt;
    case PartnerMeasure::kBodyMass:
      return player.body_mass_grams ? std::optional<std::int64_t>(*player.body_mass_grams) : std::nullopt;
  }
  return {};
}

// The measure of those nearest in age who have it: the lower middle of their values.
std::optional<std::int64_t> by_age(std::int64_t age, const Values& ages, const Values& values) {
  std::int64_t least = -1;
  std::vector<std::int64_t> nearest;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!values[i] || !ages[i]) continue;
    const std::int64_t apart = std::abs(*ages[i] - age);
    if (least >= 0 && apart > least) continue;
    if (apart != least) nearest.clear();
    least = apart;
    nearest.push_back(*values[i]);
  }
  if (nearest.empty()) return {};
  std::sort(nearest.begin(), nearest.end());
  return nearest[(nearest.size() - 1) / 2];
}

// The value of the nearest in the list that has one, the earlier of two; 0 where nobody has.
std::int64_t by_neighbour(std::size_t self, const Values& values) {
  for (std::size_t step = 1; step < values.size(); ++step) {
    if (self >= step && values[self - step]) return *values[self - step];
    if (self + step < values.size() && values[self + step]) return *values[self + step];
  }
  return 0;
}

}  // namespace

MeasureLine measure_line(const std::vector<Player>& players, PartnerMeasure measure, Date day) {
  Values ages;
  Values values;
  for (const Player& player : players) {
    ages.push_back(days_of_age(player, day));
    values.push_back(measured(player, measure, day));
  }
  MeasureLine line;
  const bool anybody = std::any_of(values.begin(), values.end(), [](const auto& value) { return value.has_value(); });
  const Values& known = anybody ? values : ages;
  Values placed;
  for (std::size_t i = 0; i < players.size(); ++i) {
    if (!values[i]) {
      ++line.without_measure;
      if (!ages[i]) ++line.without_age;
    }
    placed.push_back(known[i] || !ages[i] ? known[i] : by_age(*ages[i], ages, known));
  }
  for (std::size_t i = 0; i < players.size(); ++i) {
    line.place.push_back(placed[i] ? *placed[i] : by_neighbour(i, placed));
  }
  return line;
}

}  // namespace lanework::people
