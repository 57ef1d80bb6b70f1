// What is about a person is kept sealed under a key of that person's own; destroying the key erases the person from
// every copy. Algorithms are libsodium's: XChaCha20-Poly1305 for sealing, keyed BLAKE2b for tags and the chain. The
// layout of what is stored, and the inventory of keys, are docs/model/store.md.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace lanework::store {

inline constexpr std::size_t kKeyBytes = 32;
inline constexpr std::size_t kTagBytes = 16;
inline constexpr std::size_t kDigestBytes = 32;

// Wiped when it goes out of scope; never copied.
class Key {
 public:
  static Key made();  // at random
  static std::optional<Key> of(std::string_view bytes);
  Key(Key&& other) noexcept;
  Key& operator=(Key&& other) noexcept;
  Key(const Key&) = delete;
  Key& operator=(const Key&) = delete;
  ~Key();
  [[nodiscard]] const std::array<std::uint8_t, kKeyBytes>& bytes() const { return bytes_; }

 private:
  Key() = default;
  std::array<std::uint8_t, kKeyBytes> bytes_{};
};

// The key that wraps all others: a file of 32 bytes that its owner alone may read. Faults: not there, of another
// length, readable by others.
Result<Key> read_key_file(const std::string& path);
// Makes one, mode 0400; a fault where something is there already.
Result<Key> make_key_file(const std::string& path);

// One byte that names the algorithm, 24 of nonce, the sealed text with its tag. context: bound to it, not stored in it.
std::string sealed(const Key& key, std::string_view text, std::string_view context);
// Empty where a byte of it, or the context, is another; or the algorithm is not known.
std::optional<std::string> opened(const Key& key, std::string_view sealed_text, std::string_view context);

// A person under the store's own key: the same person has the same tag, and without the key nobody can tell whose it
// is.
std::array<std::uint8_t, kTagBytes> person_tag(const Key& key, std::string_view person);

// 32 bytes of a secret that was made at random: without a salt, and fast.
std::string digest_of(std::string_view secret);

// An id that nobody guesses: the prefix and 16 hexadecimal digits, at random.
std::string made_id(std::string_view prefix);

// 32 bytes that nobody makes without the key, which is derived from the store's for that purpose alone.
std::string keyed_digest(const Key& key, std::string_view purpose, std::string_view text);

std::string hexadecimal(std::string_view bytes);

// Every part with its length before it, so that no two rows have one text.
std::string chained(const std::vector<std::string>& parts);

// The next link of the chain over everything that is stored, as it is stored.
std::array<std::uint8_t, kDigestBytes> next_link(const std::array<std::uint8_t, kDigestBytes>& last,
                                                 std::string_view stored);

}  // namespace lanework::store
