// The shipped rules of care, read from the source tree.
#pragma once

#include <gtest/gtest.h>

#include "core/care/pain/read_pain_rule.h"
#include "core/care/return_to_sport/read_return_rules.h"
#include "tests/catalogue/shipped.h"

namespace lanework::care::test {

inline Document care_document(const char* name) {
  return catalogue::test::read_toml(catalogue::test::shipped_folder() / "care" / name);
}

template <class T>
T sound(Result<T> read) {
  if (!read.ok()) throw std::runtime_error(catalogue::test::all_lines(read.faults()));
  return std::move(read).value();
}

inline const PainRule& pain_rule() {
  static const PainRule kRule =
      sound(read_pain_rule(care_document("pain.toml"), catalogue::test::shipped_catalogue().sources));
  return kRule;
}

inline const ReturnRules& return_rules() {
  static const ReturnRules kRules =
      sound(read_return_rules(care_document("return_rules.toml"), catalogue::test::shipped_catalogue().sources));
  return kRules;
}

}  // namespace lanework::care::test
