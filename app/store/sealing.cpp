#include "app/store/sealing.h"

#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <stdexcept>

namespace lanework::store {
namespace {

constexpr char kXChaCha20Poly1305 = 1;
constexpr std::size_t kNonceBytes = crypto_aead_xchacha20poly1305_ietf_NPUBBYTES;
constexpr std::size_t kSealBytes = crypto_aead_xchacha20poly1305_ietf_ABYTES;
static_assert(crypto_aead_xchacha20poly1305_ietf_KEYBYTES == kKeyBytes);

void need_sodium() {
  if (sodium_init() < 0) throw std::runtime_error("libsodium cannot be started");
}

const unsigned char* raw(std::string_view text) { return reinterpret_cast<const unsigned char*>(text.data()); }

Fault cannot_read(const std::string& path, std::string found, std::string expected) {
  return {FaultCode::kFileUnreadable, {path, 0, 0, {}}, std::move(found), std::move(expected), {}};
}

}  // namespace

Key Key::made() {
  need_sodium();
  Key out;
  randombytes_buf(out.bytes_.data(), out.bytes_.size());
  return out;
}

std::optional<Key> Key::of(std::string_view bytes) {
  if (bytes.size() != kKeyBytes) return {};
  Key out;
  std::copy(bytes.begin(), bytes.end(), out.bytes_.begin());
  return out;
}

Key::Key(Key&& other) noexcept : bytes_(other.bytes_) { sodium_memzero(other.bytes_.data(), other.bytes_.size()); }

Key& Key::operator=(Key&& other) noexcept {
  if (this != &other) {
    bytes_ = other.bytes_;
    sodium_memzero(other.bytes_.data(), other.bytes_.size());
  }
  return *this;
}

Key::~Key() { sodium_memzero(bytes_.data(), bytes_.size()); }

Result<Key> read_key_file(const std::string& path) {
  constexpr const char* kExpected = "a key file of 32 bytes, mode 0400";
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW);
  if (file < 0) return cannot_read(path, std::strerror(errno), kExpected);
  struct stat state {};
  std::array<char, kKeyBytes + 1> bytes{};
  const bool stated = ::fstat(file, &state) == 0;
  const ssize_t length = ::read(file, bytes.data(), bytes.size());
  ::close(file);
  const std::string_view text(bytes.data(), length < 0 ? 0 : static_cast<std::size_t>(length));
  auto key = Key::of(text);
  sodium_memzero(bytes.data(), bytes.size());
  if (!stated || (state.st_mode & 077U) != 0) return cannot_read(path, "a file that others may read", kExpected);
  if (!key) return cannot_read(path, "a file of another length", kExpected);
  return std::move(*key);
}

Result<Key> make_key_file(const std::string& path) {
  Key key = Key::made();
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0400);
  if (file < 0) {
    return Fault{FaultCode::kCannotWrite, {path, 0, 0, {}}, std::strerror(errno), "a name that nothing has yet", {}};
  }
  const bool written = ::write(file, key.bytes().data(), kKeyBytes) == static_cast<ssize_t>(kKeyBytes);
  const bool kept = written && ::fsync(file) == 0;
  ::close(file);
  if (!kept) {
    ::unlink(path.c_str());
    return Fault{FaultCode::kCannotWrite, {path, 0, 0, {}}, "a disk that does not keep it", "room for 32 bytes", {}};
  }
  return key;
}

std::string sealed(const Key& key, std::string_view text, std::string_view context) {
  need_sodium();
  std::string out(1 + kNonceBytes + text.size() + kSealBytes, '\0');
  out[0] = kXChaCha20Poly1305;
  auto* bytes = reinterpret_cast<unsigned char*>(out.data());
  randombytes_buf(bytes + 1, kNonceBytes);
  crypto_aead_xchacha20poly1305_ietf_encrypt(bytes + 1 + kNonceBytes, nullptr, raw(text), text.size(), raw(context),
                                             context.size(), nullptr, bytes + 1, key.bytes().data());
  return out;
}

std::optional<std::string> opened(const Key& key, std::string_view sealed_text, std::string_view context) {
  need_sodium();
  if (sealed_text.size() < 1 + kNonceBytes + kSealBytes || sealed_text[0] != kXChaCha20Poly1305) return {};
  const unsigned char* nonce = raw(sealed_text) + 1;
  const unsigned char* text = nonce + kNonceBytes;
  const std::size_t length = sealed_text.size() - 1 - kNonceBytes;
  std::string out(length - kSealBytes, '\0');
  const int failed =
      crypto_aead_xchacha20poly1305_ietf_decrypt(reinterpret_cast<unsigned char*>(out.data()), nullptr, nullptr, text,
                                                 length, raw(context), context.size(), nonce, key.bytes().data());
  if (failed != 0) return {};
  return out;
}

std::array<std::uint8_t, kTagBytes> person_tag(const Key& key, std::string_view person) {
  need_sodium();
  std::array<std::uint8_t, kTagBytes> out{};
  crypto_generichash(out.data(), out.size(), raw(person), person.size(), key.bytes().data(), key.bytes().size());
  return out;
}

std::string digest_of(std::string_view secret) {
  need_sodium();
  std::string out(kDigestBytes, '\0');
  crypto_generichash(reinterpret_cast<unsigned char*>(out.data()), out.size(), raw(secret), secret.size(), nullptr, 0);
  return out;
}

std::string keyed_digest(const Key& key, std::string_view purpose, std::string_view text) {
  need_sodium();
  std::array<std::uint8_t, kKeyBytes> derived{};
  crypto_generichash(derived.data(), derived.size(), raw(purpose), purpose.size(), key.bytes().data(),
                     key.bytes().size());
  std::string out(kDigestBytes, '\0');
  crypto_generichash(reinterpret_cast<unsigned char*>(out.data()), out.size(), raw(text), text.size(), derived.data(),
                     derived.size());
  sodium_memzero(derived.data(), derived.size());
  return out;
}

std::string made_id(std::string_view prefix) {
  need_sodium();
  std::string bytes(8, '\0');
  randombytes_buf(bytes.data(), bytes.size());
  return std::string(prefix) + hexadecimal(bytes);
}

std::string hexadecimal(std::string_view bytes) {
  std::string out(bytes.size() * 2 + 1, '\0');
  sodium_bin2hex(out.data(), out.size(), raw(bytes), bytes.size());
  out.pop_back();
  return out;
}

std::string chained(const std::vector<std::string>& parts) {
  std::string out;
  for (const std::string& part : parts) out += std::to_string(part.size()) + ":" + part;
  return out;
}

std::array<std::uint8_t, kDigestBytes> next_link(const std::array<std::uint8_t, kDigestBytes>& last,
                                                 std::string_view stored) {
  need_sodium();
  std::array<std::uint8_t, kDigestBytes> out{};
  crypto_generichash_state state;
  crypto_generichash_init(&state, nullptr, 0, out.size());
  crypto_generichash_update(&state, last.data(), last.size());
  crypto_generichash_update(&state, raw(stored), stored.size());
  crypto_generichash_final(&state, out.data(), out.size());
  return out;
}

}  // namespace lanework::store
