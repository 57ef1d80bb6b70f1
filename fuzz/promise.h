// What a reader promises for any input: said by a fuzzer, checked while it runs.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <string>

#include "core/base/result.h"

namespace lanework::fuzz {

inline void promise(bool kept, const char* what) {
  if (kept) return;
  std::fprintf(stderr, "broken promise: %s\n", what);
  std::abort();
}

inline void promise_one_line(const std::string& text, const char* what) {
  for (const char c : text) promise(static_cast<unsigned char>(c) >= 0x20 && c != 0x7F, what);
}

// Faults are there, name the file, and print as one line each without control characters.
inline void promise_clear_faults(const Faults& faults, const std::string& file) {
  promise(!faults.empty(), "a failed result has faults");
  for (const Fault& fault : faults) {
    promise(fault.place.file == file, "a fault names its file");
    promise(fault.place.line >= 0, "a line is a number from 1");
    promise(!fault.found.empty() || !fault.expected.empty(), "a fault says something");
    promise_one_line(to_line(fault), "a fault is one line of text");
  }
}

}  // namespace lanework::fuzz
