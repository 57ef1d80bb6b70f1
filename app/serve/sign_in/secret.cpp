#include "app/serve/sign_in/secret.h"

#include <sodium.h>

#include <array>
#include <cstdint>
#include <cstdio>
#include <vector>

namespace lanework::serve {
namespace {

constexpr std::string_view kBase32 = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

std::string random_bytes(std::size_t count) {
  std::string out(count, '\0');
  randombytes_buf(out.data(), out.size());
  return out;
}

}  // namespace

std::string new_secret() {
  const std::string bytes = random_bytes(32);
  std::vector<char> text(sodium_base64_encoded_len(bytes.size(), sodium_base64_VARIANT_URLSAFE_NO_PADDING));
  sodium_bin2base64(text.data(), text.size(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size(),
                    sodium_base64_VARIANT_URLSAFE_NO_PADDING);
  return text.data();
}

std::string new_short_code() {
  constexpr std::uint32_t kCodes = 1'000'000;
  std::array<char, 8> text{};
  std::snprintf(text.data(), text.size(), "%06u", randombytes_uniform(kCodes));
  return text.data();
}

std::string new_recovery_code() {
  std::string out;
  for (const char c : base32(random_bytes(10))) {
    if (out.size() % 5 == 4) out += '-';
    out += static_cast<char>(c >= 'A' ? c - 'A' + 'a' : c);
  }
  return out;
}

std::string new_time_secret() { return random_bytes(kTimeSecretBytes); }

std::string base32(std::string_view bytes) {
  std::string out;
  std::uint32_t held = 0;
  int bits = 0;
  for (const char c : bytes) {
    held = held << 8U | static_cast<std::uint8_t>(c);
    bits += 8;
    for (; bits >= 5; bits -= 5) out += kBase32[held >> (bits - 5) & 31U];
    held &= (1U << bits) - 1U;
  }
  if (bits > 0) out += kBase32[held << (5 - bits) & 31U];
  return out;
}

std::optional<std::string> from_base32(std::string_view text) {
  std::string out;
  std::uint32_t held = 0;
  int bits = 0;
  for (const char c : text) {
    const std::size_t at = kBase32.find(c);
    if (at == std::string_view::npos) return {};
    held = held << 5U | static_cast<std::uint32_t>(at);
    bits += 5;
    if (bits < 8) continue;
    bits -= 8;
    out += static_cast<char>(held >> bits & 255U);
    held &= (1U << bits) - 1U;
  }
  if (bits >= 5 || held != 0) return {};
  return out;
}

bool same_secret(std::string_view a, std::string_view b) {
  return a.size() == b.size() && sodium_memcmp(a.data(), b.data(), a.size()) == 0;
}

}  // namespace lanework::serve
