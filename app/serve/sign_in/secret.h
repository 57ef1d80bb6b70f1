// Things that nobody can guess, from libsodium's random bytes, as text.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace lanework::serve {

std::string new_secret();         // 256 bits in base64url, 43 characters: of links, sessions and devices
std::string new_short_code();     // six digits, to compare on two screens
std::string new_recovery_code();  // 80 bits in four groups of base32: 'k3vd-...'
inline constexpr std::size_t kTimeSecretBytes = 20;
std::string new_time_secret();  // as they are

// RFC 4648, upper case, without padding.
std::string base32(std::string_view bytes);
std::optional<std::string> from_base32(std::string_view text);

// Takes as long wherever they differ.
bool same_secret(std::string_view a, std::string_view b);

}  // namespace lanework::serve
