// The shipped screens.
#pragma once

#include "core/care/screens/screen_tests.h"
#include "tests/catalogue/shipped.h"

namespace lanework::care::screens::test {

inline const ScreenTests& shipped_tests() {
  static const ScreenTests kTests = [] {
    const Document document = catalogue::test::read_toml(catalogue::test::shipped_folder() / "care" / "screens.toml");
    Result<ScreenTests> tests = read_screen_tests(document);
    if (!tests.ok()) throw std::runtime_error(catalogue::test::all_lines(tests.faults()));
    return std::move(tests).value();
  }();
  return kTests;
}

inline const ScreenTest& test_named(const char* key) { return *shipped_tests().find(key); }

}  // namespace lanework::care::screens::test
