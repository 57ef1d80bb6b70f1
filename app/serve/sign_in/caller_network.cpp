#include "app/serve/sign_in/caller_network.h"

#include <arpa/inet.h>

#include <algorithm>
#include <array>

namespace lanework::serve {
namespace {

using Bytes = std::array<unsigned char, 16>;

constexpr std::size_t kNetworkBytes = 8;
constexpr std::size_t kBeforeIpv4 = 12;
constexpr std::array<unsigned char, kBeforeIpv4> kMapped = {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0xff, 0xff};
constexpr std::array<unsigned char, kBeforeIpv4> kTranslated = {0, 0x64, 0xff, 0x9b, 0, 0, 0, 0, 0, 0, 0, 0};

std::string_view without_port_and_zone(std::string_view text) {
  if (!text.empty() && text.front() == '[') {
    text.remove_prefix(1);
    text = text.substr(0, text.find(']'));
  } else if (std::count(text.begin(), text.end(), ':') == 1) {
    text = text.substr(0, text.find(':'));
  }
  return text.substr(0, text.find('%'));
}

std::string written(int family, const unsigned char* bytes) {
  std::array<char, INET6_ADDRSTRLEN> out{};
  return ::inet_ntop(family, bytes, out.data(), out.size()) == nullptr ? std::string() : std::string(out.data());
}

}  // namespace

std::string caller_network(std::string_view address) {
  const std::string bare(without_port_and_zone(address));
  Bytes bytes{};
  if (::inet_pton(AF_INET, bare.c_str(), bytes.data()) == 1) return written(AF_INET, bytes.data());
  if (::inet_pton(AF_INET6, bare.c_str(), bytes.data()) != 1) return std::string(address);
  for (const auto& prefix : {kMapped, kTranslated}) {
    if (std::equal(prefix.begin(), prefix.end(), bytes.begin())) return written(AF_INET, bytes.data() + kBeforeIpv4);
  }
  std::fill(bytes.begin() + kNetworkBytes, bytes.end(), static_cast<unsigned char>(0));
  return written(AF_INET6, bytes.data()) + "/64";
}

}  // namespace lanework::serve
