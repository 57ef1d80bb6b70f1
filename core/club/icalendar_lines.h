// Lines of iCalendar (RFC 5545), whatever stands in them.
#pragma once

#include <string>
#include <string_view>

#include "core/base/date.h"

namespace lanework::club {

// TEXT of RFC 5545, 3.3.11: control characters are dropped, broken UTF-8 becomes U+FFFD.
std::string calendar_text(std::string_view text);

// With CRLF, folded between characters to at most 75 octets. REQUIRES: valid UTF-8.
std::string calendar_line(std::string_view line);

// A floating local time, '20261124T180000'; minutes: since midnight of the date, may go past the next.
std::string calendar_time(Date date, int minutes);

// A club as it stands in a UID: tells clubs apart, nothing secret.
std::string calendar_owner(std::string_view club);

}  // namespace lanework::club
