// What a password must be (OWASP ASVS 5.0, 6.2.1, 6.2.4, 6.2.5, 6.2.8, 6.2.9, 6.2.11; NIST SP 800-63B): long enough,
// and none that is known. No rule about kinds of characters; taken as typed, byte for byte.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace lanework::serve {

inline constexpr std::size_t kFewestCharacters = 8;  // the least that the standards allow
inline constexpr std::size_t kFewestForHealth = 15;  // for whoever sees more than their own squads
inline constexpr std::size_t kMostPasswordBytes = 1024;

class KnownPasswords {
 public:
  // list: one password a line, lines that begin with '#!' are remarks. own_words: of the club, of its squads, its town.
  KnownPasswords(std::string_view list, const std::vector<std::string>& own_words);
  // In either case, and with digits or marks hung on: 'Password1!' is 'password'.
  [[nodiscard]] bool knows(std::string_view password) const;
  [[nodiscard]] std::size_t size() const { return known_.size(); }

 private:
  std::set<std::string, std::less<>> known_;
};

// Why it cannot be taken, in words for whoever chose it; empty: it can. fewest: characters, as code points.
std::optional<std::string> why_not_password(std::string_view password, std::size_t fewest, const KnownPasswords& known);

}  // namespace lanework::serve
