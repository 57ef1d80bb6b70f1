#include "app/serve/sign_in/password_hash.h"

#include <sodium.h>

#include <array>
#include <new>

namespace lanework::serve {
namespace {

constexpr unsigned long long kPasses = crypto_pwhash_OPSLIMIT_INTERACTIVE;  // 2
constexpr std::size_t kMemory = crypto_pwhash_MEMLIMIT_INTERACTIVE;         // 64 MiB

class Turn {
 public:
  explicit Turn(std::counting_semaphore<64>& gate) : gate_(gate) { gate_.acquire(); }
  Turn(const Turn&) = delete;
  Turn& operator=(const Turn&) = delete;
  ~Turn() { gate_.release(); }

 private:
  std::counting_semaphore<64>& gate_;
};

struct Place {
  explicit Place(std::atomic<int>& all) : here(all), number(++all) {}
  Place(const Place&) = delete;
  Place& operator=(const Place&) = delete;
  ~Place() { --here; }
  std::atomic<int>& here;
  const int number;
};

}  // namespace

PasswordHashes::PasswordHashes(int at_once)
    : at_once_(at_once), most_here_(2 * at_once), nobody_(make("nobody has this password")) {}

std::string PasswordHashes::make(std::string_view password) {
  const Turn turn(at_once_);
  std::array<char, crypto_pwhash_STRBYTES> out{};
  if (crypto_pwhash_str(out.data(), password.data(), password.size(), kPasses, kMemory) != 0) throw std::bad_alloc();
  return out.data();
}

std::optional<bool> PasswordHashes::fits(const std::string& hash, std::string_view password) {
  const Place place(here_);
  if (place.number > most_here_) return {};
  const Turn turn(at_once_);
  const std::string& against = hash.empty() ? nobody_ : hash;
  const bool right = crypto_pwhash_str_verify(against.c_str(), password.data(), password.size()) == 0;
  return right && !hash.empty();
}

bool PasswordHashes::is_old(const std::string& hash) {
  return crypto_pwhash_str_needs_rehash(hash.c_str(), kPasses, kMemory) != 0;
}

}  // namespace lanework::serve
