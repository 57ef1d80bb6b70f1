#include "app/serve/sign_in/time_code.h"

#include <openssl/evp.h>
#include <openssl/hmac.h>

#include <array>
#include <stdexcept>

#include "app/serve/sign_in/secret.h"

namespace lanework::serve {
namespace {

std::string percent(std::string_view text) {
  constexpr std::string_view kHex = "0123456789ABCDEF";
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
                       c == '.' || c == '_' || c == '~';
    if (plain) {
      out += c;
    } else {
      out += '%';
      out += kHex[byte >> 4U];
      out += kHex[byte & 15U];
    }
  }
  return out;
}

}  // namespace

std::string counted_code(std::string_view secret, std::uint64_t counter, int digits) {
  std::array<unsigned char, 8> message{};
  for (std::size_t i = 0; i < message.size(); ++i) message[i] = static_cast<unsigned char>(counter >> (56 - 8 * i));
  std::array<unsigned char, EVP_MAX_MD_SIZE> mac{};
  unsigned int size = 0;
  if (HMAC(EVP_sha1(), secret.data(), static_cast<int>(secret.size()), message.data(), message.size(), mac.data(),
           &size) == nullptr) {
    throw std::runtime_error("HMAC failed");
  }
  const std::size_t offset = mac[size - 1] & 15U;
  std::uint32_t number = mac.at(offset) & 0x7FU;
  for (std::size_t i = 1; i < 4; ++i) number = number << 8U | mac.at(offset + i);
  std::uint32_t modulus = 1;
  for (int i = 0; i < digits; ++i) modulus *= 10;
  const std::string text = std::to_string(number % modulus);
  return std::string(static_cast<std::size_t>(digits) - text.size(), '0') + text;
}

std::optional<std::int64_t> step_of_code(std::string_view secret, std::string_view code, std::int64_t now_seconds) {
  const std::int64_t now = now_seconds / kTimeStepSeconds;
  std::optional<std::int64_t> out;
  for (std::int64_t step = now - 1; step <= now + 1; ++step) {
    if (step >= 0 && same_secret(counted_code(secret, static_cast<std::uint64_t>(step)), code)) out = step;
  }
  return out;
}

std::string authenticator_link(std::string_view club, std::string_view sign_in, std::string_view secret) {
  return "otpauth://totp/" + percent(club) + ":" + percent(sign_in) + "?secret=" + base32(secret) +
         "&issuer=" + percent(club);
}

}  // namespace lanework::serve
