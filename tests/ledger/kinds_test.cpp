#include <gtest/gtest.h>

#include <set>

#include "tests/ledger/shipped_kinds.h"

namespace lanework::ledger {
namespace {

using test::shipped_kinds;

TEST(Kinds, WhatIsAboutABodyIsHealthAndNoBoardEntersIt) {
  for (const Kind& kind : shipped_kinds().kinds) {
    if (kind.care) {
      EXPECT_EQ(kind.data_class, DataClass::kHealth) << kind.key;
    }
    for (const Role role : kind.enter) {
      EXPECT_NE(role, Role::kBoard) << kind.key;
      EXPECT_NE(role, Role::kOperator) << kind.key;
    }
  }
}

// Only the lead lifts, clears and sets: core/care/entries rests on it.
TEST(Kinds, WhatLessensCautionIsTheLeadsAlone) {
  for (const char* key : {"restriction", "reviewed", "lifted", "clearance", "course-opened", "step-begun", "consent"}) {
    const Kind* kind = shipped_kinds().find(key);
    ASSERT_NE(kind, nullptr) << key;
    EXPECT_EQ(kind->enter, std::vector<Role>{Role::kLead}) << key;
  }
}

TEST(Kinds, EverybodyOnTheGrassMayHoldBack) {
  for (const char* key : {"hurt", "soreness", "symptom-check", "stepped-back"}) {
    const Kind* kind = shipped_kinds().find(key);
    ASSERT_NE(kind, nullptr) << key;
    EXPECT_EQ(kind->enter.size(), 3U) << key;
  }
}

TEST(Kinds, EveryMistakeIsTold) {
  const auto read = read_kinds(parse_toml("kinds.toml", R"([[kind]]
key = "a"
class = "secret"
about = "player"
enter = ["parent"]
fields = [{ key = "id", type = "text", most = 5 }, { key = "b", type = "word", words = ["one"] }, { key = "c", type = "whole", least = 5, most = 4 }]
[[kind]]
key = "a"
class = "club"
about = "session"
enter = ["lead"]
fields = [{ key = "day", type = "day" }, { key = "d", type = "shape" }]
)")
                                   .value());
  ASSERT_FALSE(read.ok());
  std::set<std::string> fields;
  for (const Fault& fault : read.faults()) fields.insert(fault.place.field);
  EXPECT_EQ(fields, (std::set<std::string>{"kind.1.class", "kind.1.enter", "kind.1.fields.1.key",
                                           "kind.1.fields.2.words", "kind.1.fields.3.most", "kind.2.key",
                                           "kind.2.fields.1.key", "kind.2.fields.2.type"}));
}

}  // namespace
}  // namespace lanework::ledger
