// The codes of a second factor: one-time passwords by time, RFC 6238 over RFC 4226, SHA-1, six digits, 30 seconds.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace lanework::serve {

inline constexpr std::int64_t kTimeStepSeconds = 30;

// RFC 4226, section 5.3. digits: 6 to 8.
std::string counted_code(std::string_view secret, std::uint64_t counter, int digits = 6);

// The step whose code it is: now's, the one before or the one after (clocks differ); empty: of none.
std::optional<std::int64_t> step_of_code(std::string_view secret, std::string_view code, std::int64_t now_seconds);

// 'otpauth://totp/...', as authenticator programs read it from a QR code. Characters that are none of a URI's own are
// written with a percent sign.
std::string authenticator_link(std::string_view club, std::string_view sign_in, std::string_view secret);

}  // namespace lanework::serve
