// Numbers of evidence as people read them: as many digits as they are worth, never 'inf' or 'nan'.
#pragma once

#include <string>

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
// 'one event fewer in every 8 such seasons (5 to 30)', or of more than one a season '1.9 events fewer in each of such
// seasons': of which the words for events and seasons are handed in.
struct EventWords {
  std::string one;
  std::string many;
};
std::string needed_words(const NeededToTreat& needed, const EventWords& event, const std::string& seasons);
// 'one warm-up', '3 warm-ups'.
std::string counted(long long count, const std::string& one, const std::string& many);

}  // namespace lanework::evidence
