// Numbers as spreadsheets export them: decimal point or comma, thousands apart, '1e6', '90 min', '1.5 h', '1:30'.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace lanework::records {

// Which mark stands before the decimals. As the cell tells: a point always does; a comma does unless three digits
// follow it, then the number can be read in two ways.
enum class DecimalMark { kAsTheCellTells, kPoint, kComma };

enum class DurationUnit { kMinutes, kHours };

struct ReadNumber {
  enum class Problem { kNone, kNoNumber, kTwoWays, kNegative } problem = Problem::kNone;
  std::int64_t thousandths = 0;        // rounded to the nearest; at most kMostThousandths
  std::optional<DurationUnit> stated;  // durations: the unit that the cell itself states
};
inline constexpr std::int64_t kMostThousandths = 1'000'000'000'000'000;

// text: tidied (people::tidy) and not empty.
ReadNumber read_number(std::string_view text, DecimalMark mark);

// In thousandths of the unit that the cell states, or else of an unknown one. '1:30' and '1h30' are stated in minutes.
ReadNumber read_duration(std::string_view text, DecimalMark mark);

}  // namespace lanework::records
