// Any bytes as a TOML document: handed on where they are one, else clear faults.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

#include "core/base/document.h"
#include "fuzz/promise.h"

namespace lanework::fuzz {

inline constexpr const char* kFile = "a.toml";

// What a fuzzer's entry gives back.
template <class Check>
int with_toml(const std::uint8_t* data, std::size_t size, Check check) {
  const auto document = parse_toml(kFile, std::string(data, data + size));
  if (document) {
    check(document.value());
  } else {
    promise_clear_faults(document.faults(), kFile);
  }
  return 0;
}

// Faults of a document say where, too: a line, or at least the field.
inline void promise_placed_faults(const Faults& faults) {
  promise_clear_faults(faults, kFile);
  for (const Fault& fault : faults) {
    promise(fault.place.line > 0 || !fault.place.field.empty(), "a fault says where");
  }
}

}  // namespace lanework::fuzz
