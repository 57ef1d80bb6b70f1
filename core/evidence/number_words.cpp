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

std::string counted(long long count, const std::string& one, const std::string& many) {
  return count == 1 ? "one " + one : std::to_string(count) + " " + many;
}

std::string NumberWords::in_own_mark(std::string digits) const {
  if (language() == Language::kSpanish) std::replace(digits.begin(), digits.end(), '.', ',');
  return digits;
}

std::string NumberWords::in_digits(double value, int digits) const {
  if (!std::isfinite(value))
    return value > 0 ? say(Words{"without limit", "sin límite"}) : say(Words{"unknown", "desconocido"});
  return in_own_mark(evidence::in_digits(value, digits));
}

std::string NumberWords::as_counted(double value) const { return in_own_mark(evidence::as_counted(value)); }

std::string NumberWords::from_to(const std::string& from, const std::string& to) const {
  return say({"{} to {}", "{} a {}"}, from, to);
}

std::string NumberWords::limits_words(const Interval& limits, double scale) const {
  if (!std::isfinite(limits.high)) return say({"{} and upwards", "{} o más"}, in_digits(limits.low * scale));
  return from_to(in_digits(limits.low * scale), in_digits(limits.high * scale));
}

std::string NumberWords::hours_words(double hours) const {
  const std::string number = in_own_mark(evidence::hours_words(hours));
  return language() == Language::kEnglish ? number
                                          : number.substr(0, number.find(' ')) + (hours == 1 ? " hora" : " horas");
}

std::string NumberWords::level_words(double level) const { return in_own_mark(evidence::level_words(level)); }

std::string NumberWords::percent(double share) const { return in_own_mark(evidence::percent(share)); }

std::string NumberWords::grouped(double value) const {
  constexpr double kApartFrom = 10'000;
  if (language() == Language::kSpanish && std::abs(value) < kApartFrom) return std::to_string(std::llround(value));
  return evidence::grouped(value);
}

std::string NumberWords::counted(long long count, const Words& one, const Sentence<1>& several) const {
  return count == 1 ? say(one) : say(several, count);
}

// Less than one season for one event: said the other way round, several a season.
std::string NumberWords::several_a_season(const NeededToTreat& needed, const EventWords& event,
                                          const Words& seasons) const {
  const auto a_season = [&](double value) { return in_digits(1 / std::abs(value), 2); };
  const Sentence<3> several = *needed.estimate > 0
                                  ? Sentence<3>{"{} {} fewer in each of {}", "{} {} menos en cada una de las {}"}
                                  : Sentence<3>{"{} {} more in each of {}", "{} {} más en cada una de las {}"};
  const std::string out = say(several, a_season(*needed.estimate), say(event.many), say(seasons));
  if (!needed.most_benefit || !needed.least_benefit) return out;
  const double most = 1 / std::abs(*needed.most_benefit);
  const double least = 1 / std::abs(*needed.least_benefit);
  if (!needed.through_infinity)
    return out + " (" + from_to(in_digits(std::min(most, least), 2), in_digits(std::max(most, least), 2)) + ")";
  return out + say({"; as far as can be told, anything from {} fewer, over no difference, to {} more",
                    "; hasta donde puede saberse, desde {} menos, pasando por ninguna diferencia, hasta {} más"},
                   in_digits(most, 2), in_digits(least, 2));
}

std::string NumberWords::needed_words(const NeededToTreat& needed, const EventWords& event,
                                      const Words& seasons) const {
  const auto number = [&](double value) { return in_digits(std::abs(value), 2); };
  if (!needed.estimate)
    return say({"no difference, so that no number of seasons makes {} fewer",
                "ninguna diferencia, así que ningún número de temporadas da {} menos"},
               say(event.one));
  if (std::abs(*needed.estimate) < 1) return several_a_season(needed, event, seasons);
  const Sentence<3> one = *needed.estimate > 0 ? Sentence<3>{"{} fewer in every {} {}", "{} menos por cada {} {}"}
                                               : Sentence<3>{"{} more in every {} {}", "{} más por cada {} {}"};
  const std::string out = say(one, say(event.one), number(*needed.estimate), say(seasons));
  if (!needed.most_benefit || !needed.least_benefit) return out;
  if (!needed.through_infinity) {
    const double low = std::min(std::abs(*needed.most_benefit), std::abs(*needed.least_benefit));
    const double high = std::max(std::abs(*needed.most_benefit), std::abs(*needed.least_benefit));
    return out + " (" + from_to(number(low), number(high)) + ")";
  }
  return out + say({"; as far as can be told, anything from one fewer in {}, over no difference, to one more in {}",
                    "; hasta donde puede saberse, desde una menos en {}, pasando por ninguna diferencia, hasta una más "
                    "en {}"},
                   number(*needed.most_benefit), number(*needed.least_benefit));
}

}  // namespace lanework::evidence
