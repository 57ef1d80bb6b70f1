#include "core/people/contact.h"

#include <gtest/gtest.h>

namespace lanework::people {
namespace {

Restriction of(std::vector<catalogue::StressKind> kinds) {
  Restriction out;
  out.kinds = std::move(kinds);
  return out;
}

TEST(Contact, AmongTheKindsOrEveryKind) {
  EXPECT_TRUE(bars_contact(of({catalogue::StressKind::kContact})));
  EXPECT_TRUE(bars_contact(of({catalogue::StressKind::kImpact, catalogue::StressKind::kContact})));
  EXPECT_TRUE(bars_contact(of({})));
  EXPECT_FALSE(bars_contact(of({catalogue::StressKind::kImpact, catalogue::StressKind::kSpeed})));
}

TEST(Contact, WhereEverythingIsAllowedSoIsContact) {
  Restriction out = of({});
  out.allowed_grade = 3;
  EXPECT_FALSE(bars_contact(out));
  out.sits_out = true;
  EXPECT_TRUE(bars_contact(out));
}

}  // namespace
}  // namespace lanework::people
