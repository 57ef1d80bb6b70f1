// The kinds that ship, and entries made of a few words, for the tests of the ledger.
#pragma once

#include <fstream>
#include <sstream>
#include <string>

#include "core/ledger/fold.h"

namespace lanework::ledger::test {

inline const KindTable& shipped_kinds() {
  static const KindTable kTable = [] {
    const std::string file = std::string(LANEWORK_SOURCE_DIR) + "/catalogue/ledger/kinds.toml";
    std::ifstream in(file, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return read_kinds(parse_toml(file, bytes.str()).value()).value();
  }();
  return kTable;
}

// The nth id of a device's clock.
inline EntryId id_of(int n) {
  std::array<std::uint8_t, 10> random{};
  random[8] = static_cast<std::uint8_t>(n >> 8);
  random[9] = static_cast<std::uint8_t>(n);
  return make_entry_id(1'795'700'000'000ULL + static_cast<std::uint64_t>(n), random);
}

// 'fields' as JSON members: "squad":"u13", "day":"2026-11-26".
inline std::string entry_text(int n, const std::string& kind, const std::string& fields, int sequence = 1) {
  return "{\"id\":\"" + to_text(id_of(n)) + "\",\"sequence\":" + std::to_string(sequence) +
         ",\"device_time\":\"2026-11-26T18:04:10+01:00\",\"kind\":\"" + kind + "\"" + (fields.empty() ? "" : ",") +
         fields + "}";
}

inline Result<Entry> read(const std::string& text) {
  const auto document = parse_json("entry", text);
  if (!document) return document.faults();
  return read_entry(document.value().root, "entry", shipped_kinds());
}

inline const char* kSession = "\"squad\":\"u13\",\"day\":\"2026-11-26\",\"start\":\"18:00\"";

inline std::string about_session(const std::string& more = "") {
  return kSession + (more.empty() ? std::string() : "," + more);
}

inline std::string corrects(int n) { return "\"corrects\":\"" + to_text(id_of(n)) + "\""; }

inline Received received(int receipt, Entry entry, const std::string& device = "phone",
                         const std::string& author = "ann", Role role = Role::kCoach) {
  return {std::move(entry), receipt, "2026-11-26T18:05:00+01:00", device, author, role};
}

}  // namespace lanework::ledger::test
