// Numbers of evidence as people read them: as many digits as they are worth, never 'inf' or 'nan'.
#pragma once

#include <string>

#include "core/base/two_languages.h"
#include "core/evidence/interval.h"
#include "core/evidence/needed_to_treat.h"

namespace lanework::evidence {

std::string in_digits(double value, int digits = 3);  // significant ones, no exponent: '0.0247', '4.00', '1250'
std::string as_counted(double value);                 // as short as it can be to four digits: '61', '6.5'
std::string limits_words(const Interval& limits, double scale = 1);  // '1.30 to 9.33', '0.12 and upwards'
std::string p_words(double p);                                       // 'p = 0.036', 'p < 0.001'
std::string per_1000_hours(double per_hour);                         // '4.00 per 1000 hours'
std::string hours_words(double hours);                               // '1250 hours', '0.5 hours'
std::string level_words(double level);                               // '95 %'
std::string percent(double share);                                   // '61 %'
// '28 350': thousands apart, so that they can be read, by a space at which no line breaks.
std::string grouped(double value);
// 'one warm-up', '3 warm-ups'.
std::string counted(long long count, const std::string& one, const std::string& many);

// What is counted of seasons: {{"one injury", "una lesión"}, {"injuries", "lesiones"}}.
struct EventWords {
  Words one;
  Words many;
};
inline constexpr EventWords kInjuryWords{{"one injury", "una lesión"}, {"injuries", "lesiones"}};

// The same in a language, with its decimal mark; in Spanish, thousands stand apart from five digits on. 'counted' takes
// what is said of one ('one squad') and of several ('{} squads').
class NumberWords : public Speaker {
 public:
  using Speaker::Speaker;

  [[nodiscard]] std::string in_digits(double value, int digits = 3) const;
  [[nodiscard]] std::string as_counted(double value) const;
  [[nodiscard]] std::string limits_words(const Interval& limits, double scale = 1) const;
  [[nodiscard]] std::string from_to(const std::string& from, const std::string& to) const;
  [[nodiscard]] std::string hours_words(double hours) const;
  [[nodiscard]] std::string level_words(double level) const;
  [[nodiscard]] std::string percent(double share) const;
  [[nodiscard]] std::string grouped(double value) const;
  [[nodiscard]] std::string counted(long long count, const Words& one, const Sentence<1>& several) const;
  // 'one event fewer in every 8 such seasons (5 to 30)', or of more than one a season '1.9 events fewer in each of such
  // seasons': of which the words for events and seasons are handed in.
  [[nodiscard]] std::string needed_words(const NeededToTreat& needed, const EventWords& event,
                                         const Words& seasons) const;

 private:
  [[nodiscard]] std::string in_own_mark(std::string digits) const;
  [[nodiscard]] std::string several_a_season(const NeededToTreat& needed, const EventWords& event,
                                             const Words& seasons) const;
};

}  // namespace lanework::evidence
