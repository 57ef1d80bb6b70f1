#include "core/records/numbers.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace lanework::records {
namespace {

using Problem = ReadNumber::Problem;

constexpr std::size_t kLongestNumber = 40;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return is_digit(c); });
}

// '1,234,567' is a number apart in threes: one digit to three, then threes.
bool in_threes(std::string_view text, char mark) {
  std::size_t from = 0;
  bool first = true;
  for (;;) {
    const std::size_t end = std::min(text.find(mark, from), text.size());
    const std::string_view group = text.substr(from, end - from);
    if (!all_digits(group) || group.size() > 3 || (!first && group.size() != 3)) return false;
    if (end == text.size()) return !first;
    first = false;
    from = end + 1;
  }
}

std::string without(std::string_view text, std::string_view dropped) {
  std::string out;
  std::copy_if(text.begin(), text.end(), std::back_inserter(out),
               [&](char c) { return dropped.find(c) == std::string_view::npos; });
  return out;
}

// Takes a power of ten off the end, 'E+06'. Empty where what follows the letter is none.
std::optional<int> take_exponent(std::string& text) {
  const std::size_t letter = text.find_first_of("eE");
  if (letter == std::string::npos) return 0;
  std::string_view digits = std::string_view(text).substr(letter + 1);
  const bool negative = !digits.empty() && digits.front() == '-';
  if (negative || (!digits.empty() && digits.front() == '+')) digits.remove_prefix(1);
  if (!all_digits(digits) || digits.size() > 3) return {};
  int value = 0;
  for (const char c : digits) value = value * 10 + (c - '0');
  text.resize(letter);
  return negative ? -value : value;
}

// Digits with at most one decimal point, times a power of ten, in thousandths.
ReadNumber from_digits(std::string_view text, int exponent) {
  const std::size_t point = std::min(text.find('.'), text.size());
  const std::string_view whole = text.substr(0, point);
  const std::string_view decimals = point < text.size() ? text.substr(point + 1) : std::string_view();
  if (!all_digits(whole) || (point < text.size() && !all_digits(decimals))) return {Problem::kNoNumber, 0, {}};
  const std::string digits = std::string(whole) + std::string(decimals);
  const std::int64_t kept =
      static_cast<std::int64_t>(whole.size()) + exponent + 3;  // digits before the thousandths end
  std::int64_t value = 0;
  for (std::int64_t i = 0; i < kept; ++i) {
    const std::size_t at = static_cast<std::size_t>(i);
    value = value * 10 + (at < digits.size() ? digits[at] - '0' : 0);
    if (value > kMostThousandths) return {Problem::kNone, kMostThousandths, {}};
    if (value == 0 && at >= digits.size()) break;
  }
  if (kept >= 0 && kept < static_cast<std::int64_t>(digits.size()) && digits[static_cast<std::size_t>(kept)] >= '5')
    ++value;
  return {Problem::kNone, value, {}};
}

std::optional<DurationUnit> take_unit(std::string& text) {
  struct Unit {
    std::string_view words;
    DurationUnit unit;
  };
  constexpr std::array<Unit, 12> kUnits = {{{"minutes", DurationUnit::kMinutes},
                                            {"minute", DurationUnit::kMinutes},
                                            {"mins", DurationUnit::kMinutes},
                                            {"min.", DurationUnit::kMinutes},
                                            {"min", DurationUnit::kMinutes},
                                            {"m", DurationUnit::kMinutes},
                                            {"'", DurationUnit::kMinutes},
                                            {"hours", DurationUnit::kHours},
                                            {"hour", DurationUnit::kHours},
                                            {"hrs", DurationUnit::kHours},
                                            {"hr", DurationUnit::kHours},
                                            {"h", DurationUnit::kHours}}};
  for (const Unit& unit : kUnits) {
    if (text.size() <= unit.words.size() ||
        std::string_view(text).substr(text.size() - unit.words.size()) != unit.words)
      continue;
    text.resize(text.size() - unit.words.size());
    while (!text.empty() && text.back() == ' ') text.pop_back();
    return unit.unit;
  }
  return {};
}

// '1:30', '1:30:00', '1h30': hours and minutes. Empty where the text is not of that kind.
std::optional<std::int64_t> clock_minutes(std::string text) {
  std::replace(text.begin(), text.end(), 'h', ':');
  text = without(text, " ");
  if (text.size() > 3 && std::count(text.begin(), text.end(), ':') == 2 && text.substr(text.size() - 3) == ":00")
    text.resize(text.size() - 3);
  const std::size_t colon = text.find(':');
  if (colon > 3 || text.size() != colon + 3) return {};
  const std::string hours = text.substr(0, colon);
  const std::string minutes = text.substr(colon + 1);
  if (!all_digits(hours) || !all_digits(minutes) || minutes[0] > '5') return {};
  return std::stoll(hours) * 60 + std::stoll(minutes);
}

}  // namespace

ReadNumber read_number(std::string_view text, DecimalMark mark) {
  if (text.size() > kLongestNumber) return {Problem::kNoNumber, 0, {}};
  constexpr std::string_view kMinusSign = "\u2212";
  const bool minus = !text.empty() && text.front() == '-';
  if (minus || text.substr(0, kMinusSign.size()) == kMinusSign) {
    const ReadNumber rest = read_number(text.substr(minus ? 1 : kMinusSign.size()), mark);
    return {rest.problem == Problem::kNone && rest.thousandths > 0 ? Problem::kNegative : rest.problem, 0, {}};
  }
  std::string digits = without(text, " '");
  const std::optional<int> exponent = take_exponent(digits);
  if (!exponent) return {Problem::kNoNumber, 0, {}};
  const bool comma = digits.find(',') != std::string::npos;
  const bool point = digits.find('.') != std::string::npos;
  const std::string_view whole = std::string_view(digits).substr(0, digits.find('.'));
  if (mark == DecimalMark::kComma) {
    const std::string before = digits.substr(0, digits.find(','));
    if (point && !in_threes(before, '.')) return {Problem::kNoNumber, 0, {}};
    if (point && digits.find('.') > digits.find(',')) return {Problem::kNoNumber, 0, {}};
    digits = without(digits, ".");
    std::replace(digits.begin(), digits.end(), ',', '.');
  } else if (comma && (mark == DecimalMark::kPoint || point || std::count(digits.begin(), digits.end(), ',') > 1)) {
    if (!in_threes(whole, ',')) return {Problem::kNoNumber, 0, {}};
    digits = without(digits, ",");
  } else if (comma) {
    if (in_threes(digits, ',')) return {Problem::kTwoWays, 0, {}};
    std::replace(digits.begin(), digits.end(), ',', '.');
  }
  return from_digits(digits, *exponent);
}

ReadNumber read_duration(std::string_view text, DecimalMark mark) {
  std::string lower(text);
  for (char& c : lower) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  const std::optional<std::int64_t> clock = clock_minutes(lower);
  if (clock) return {Problem::kNone, *clock * 1000, DurationUnit::kMinutes};
  const std::optional<DurationUnit> unit = take_unit(lower);
  ReadNumber number = read_number(lower, mark);
  number.stated = unit;
  return number;
}

}  // namespace lanework::records
