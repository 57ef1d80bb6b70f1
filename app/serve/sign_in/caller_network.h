// Under what a caller's failures are counted. Whoever has one IPv6 address has as a rule a whole /64 of them (RFC 4291,
// 2.5.4; RFC 6177), a new one for each try: these count as one. An IPv4 address counts by itself, also where it came
// mapped into IPv6 (RFC 4291, 2.5.5.2) or through a translator under the well-known prefix (RFC 6052, 2.1).
#pragma once

#include <string>
#include <string_view>

namespace lanework::serve {

// '192.0.2.7' or '2001:db8:0:1::/64', the form of RFC 5952 whatever was written. A zone ('%eth0'), brackets and a port,
// as some proxies write them, do not count. What is no address is returned as it is.
std::string caller_network(std::string_view address);

}  // namespace lanework::serve
