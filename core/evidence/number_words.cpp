#include "core/evidence/number_words.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace lanework::evidence {
namespace {

std::string fixed(double value, int decimals) {
  std::array<char, 400> text{};  // the largest double has 309 digits
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals);
  return {text.data(), end.ptr};
}

}  // namespace

std::string in_digits(double value, int digits) {
  if (!std::isfinite(value)) return value > 0 ? "without limit" : "unknown";
  if (value == 0) return "0";
  const int before_point = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  const int decimals = std::clamp(digits - before_point, 0, 12);
  // 9.996 becomes 10.00: one digit less then.
  const double scale = std::pow(10, decimals);
  const bool rounds_up = std::round(std::abs(value) * scale) / scale >= std::pow(10, before_point);
  return fixed(value, rounds_up && decimals > 0 ? decimals - 1 : decimals);
}

std::string as_counted(double value) {
  std::string text = std::abs(value) >= 1000 ? fixed(value, 0) : in_digits(value, 4);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string limits_words(const Interval& limits, double scale) {
  if (!std::isfinite(limits.high)) return in_digits(limits.low * scale) + " and upwards";
  return in_digits(limits.low * scale) + " to " + in_digits(limits.high * scale);
}

std::string p_words(double p) {
  if (p < 0.001) return "p < 0.001";
  return "p = " + fixed(p, p < 0.1 ? 3 : 2);
}

std::string per_1000_hours(double per_hour) { return in_digits(1000 * per_hour) + " per 1000 hours"; }

std::string hours_words(double hours) {
  const bool whole = hours == std::floor(hours) || hours >= 1000;
  return (whole ? fixed(hours, 0) : in_digits(hours)) + (hours == 1 ? " hour" : " hours");
}

std::string level_words(double level) {
  const double percent = 100 * level;
  return as_counted(percent) + " %";
}

std::string percent(double share) { return as_counted(std::round(100 * share)) + " %"; }

std::string grouped(double value) {
  std::string digits = std::to_string(std::llround(value));
  for (std::size_t at = digits.size(); at > 3; at -= 3) digits.insert(at - 3, "\u00A0");
  return digits;
}

namespace {

// Less than one season for one event: said the other way round, several a season.
std::string several_a_season(const NeededToTreat& needed, const std::string& events, const std::string& seasons) {
  const auto a_season = [](double value) { return in_digits(1 / std::abs(value), 2); };
  std::string out = a_season(*needed.estimate) + " " + events + (*needed.estimate > 0 ? " fewer" : " more") +
                    " in each of " + seasons;
  if (!needed.most_benefit || !needed.least_benefit) return out;
  const double most = 1 / std::abs(*needed.most_benefit);
  const double least = 1 / std::abs(*needed.least_benefit);
  if (!needed.through_infinity)
    return out + " (" + in_digits(std::min(most, least), 2) + " to " + in_digits(std::max(most, least), 2) + ")";
  return out + "; as far as can be told, anything from " + in_digits(most, 2) + " fewer, over no difference, to " +
         in_digits(least, 2) + " more";
}

}  // namespace

std::string needed_words(const NeededToTreat& needed, const EventWords& event, const std::string& seasons) {
  const auto number = [](double value) { return in_digits(std::abs(value), 2); };
  if (!needed.estimate) return "no difference, so that no number of seasons makes one " + event.one + " fewer";
  if (std::abs(*needed.estimate) < 1) return several_a_season(needed, event.many, seasons);
  std::string out = "one " + event.one + (*needed.estimate > 0 ? " fewer" : " more") + " in every " +
                    number(*needed.estimate) + " " + seasons;
  if (!needed.most_benefit || !needed.least_benefit) return out;
  if (!needed.through_infinity) {
    const double low = std::min(std::abs(*needed.most_benefit), std::abs(*needed.least_benefit));
    const double high = std::max(std::abs(*needed.most_benefit), std::abs(*needed.least_benefit));
    return out + " (" + number(low) + " to " + number(high) + ")";
  }
  return out + "; as far as can be told, anything from one fewer in " + number(*needed.most_benefit) +
         ", over no difference, to one more in " + number(*needed.least_benefit);
}

std::string counted(long long count, const std::string& one, const std::string& many) {
  return count == 1 ? "one " + one : std::to_string(count) + " " + many;
}

}  // namespace lanework::evidence
