// Who comes, and whether they may: the one place where a request is let through. In this order: where it comes from,
// who it is, whether the role may at all, whether the second factor was shown, whether the squad is theirs.
#pragma once

#include <optional>

#include "app/serve/call.h"

namespace lanework::serve {

inline constexpr const char* kCookie = "__Host-lanework";
inline constexpr const char* kPlainCookie =
    "lanework";  // on this machine without TLS, where no browser takes the other

// Empty: let through, with the call's viewer filled in.
std::optional<Response> turned_away(Call& call);

// From whatever may have been sent by another site's page: JSON and a header of our own, which no form can send.
std::optional<Response> not_from_our_pages(const Call& call);

std::string session_cookie(const House& house, const std::string& secret);
std::string cleared_cookie(const House& house);
std::string secret_in_cookie(const House& house, const Request& request);

access::Viewer viewer_of(const store::Account& account, Date today);

// The wait that failures under this name cost now, as an answer; empty: none.
std::optional<Response> must_wait(Call& call, const std::string& name, const struct ThrottleRule& rule);

}  // namespace lanework::serve
