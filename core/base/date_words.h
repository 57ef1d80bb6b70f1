// Days in words, in a language. In English alone: date.h.
#pragma once

#include <string>

#include "core/base/date.h"
#include "core/base/two_languages.h"

namespace lanework {

std::string to_words(Date date, Language language);      // 'jueves 26 de noviembre de 2026'
std::string weekday_name(Date date, Language language);  // 'jueves'

}  // namespace lanework
