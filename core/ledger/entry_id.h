// The id that a device gives an entry when it makes it: a UUID of version 7 (RFC 9562, section 5.7). Its time orders
// nothing; it only keeps ids of one device near each other in an index. An id is a name, never a secret.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace lanework::ledger {

struct EntryId {
  std::array<std::uint8_t, 16> bytes{};
  auto operator<=>(const EntryId&) const = default;
};

// '017f22e2-79b0-7cc3-98c4-dc0c0c07398f', in either case; empty where it is none, or of another version or variant.
std::optional<EntryId> parse_entry_id(std::string_view text);
std::string to_text(const EntryId& id);  // lower case

// milliseconds: since 1970, below 2^48; random: of which 74 bits are used.
EntryId make_entry_id(std::uint64_t milliseconds, const std::array<std::uint8_t, 10>& random);

// By the device's clock, which may be wrong.
std::uint64_t milliseconds_of(const EntryId& id);

}  // namespace lanework::ledger
