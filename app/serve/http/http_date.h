// When an answer was made, as the protocol writes it (RFC 9110, 5.6.7 and 6.6.1).
#pragma once

#include <cstdint>
#include <string>

namespace lanework::serve {

// 'Sun, 06 Nov 1994 08:49:37 GMT' of seconds since 1970, from the year 0 to 9999; English whatever the machine speaks.
std::string http_date(std::int64_t seconds);

}  // namespace lanework::serve
