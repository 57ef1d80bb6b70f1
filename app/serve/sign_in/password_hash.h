// Passwords as they are kept: Argon2id by libsodium, 64 MiB and two passes (above what OWASP asks: 19 MiB and two). One
// check takes about a tenth of a second, so only so many go on at once, and only so many wait: whoever floods the
// sign-in takes neither the memory nor the threads that the others need.
#pragma once

#include <atomic>
#include <optional>
#include <semaphore>
#include <string>
#include <string_view>

namespace lanework::serve {

class PasswordHashes {
 public:
  explicit PasswordHashes(int at_once);  // as many again may wait
  std::string make(std::string_view password);
  // Checked against something even where there is no hash, so that a name that nobody has takes as long.
  // Empty: too many at once; nothing was checked.
  std::optional<bool> fits(const std::string& hash, std::string_view password);
  // Made with less than what is asked now: to be made anew at the next sign-in.
  static bool is_old(const std::string& hash);

 private:
  std::counting_semaphore<64> at_once_;
  const int most_here_;
  std::atomic<int> here_{0};
  std::string nobody_;
};

}  // namespace lanework::serve
