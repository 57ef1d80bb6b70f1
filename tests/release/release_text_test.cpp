#include "core/release/release_text.h"

#include <gtest/gtest.h>

#include "core/release/make_release.h"
#include "tests/release/club_of_test.h"

namespace lanework::release {
namespace {

using test::hurt_many;
using test::kSeason;
using test::wanted;

Release some_release() {
  ledger::State state;
  hurt_many(state, 3, "u11", "2026-09-10", "training", "knee");
  hurt_many(state, 9, "u13", "2026-09-10", "match", "ankle");
  hurt_many(state, 20, "u16", "2026-09-10", "match", "thigh");
  for (int i = 10; i < 20; ++i) {
    state.sessions[{"u16", "2026-09-" + std::to_string(i), "18:00"}] = test::session("held", "most", 60, 20);
  }
  return make_release(state, wanted(kSeason), {}).value().release;
}

Document as_document(const Node& node) { return parse_json("a release", to_json(node)).value(); }

TEST(ReleaseText, ComesBackAsItWas) {
  const Release release = some_release();
  const auto back = read_release(as_document(shown_node(release)), as_document(counted_node(release)));
  ASSERT_TRUE(back) << to_line(back.faults().front());
  EXPECT_EQ(back.value().whole, release.whole);
  EXPECT_EQ(back.value().own, release.own);
  EXPECT_EQ(back.value().hidden, release.hidden);
  EXPECT_EQ(back.value().period, release.period);
  EXPECT_EQ(to_json(shown_node(back.value())), to_json(shown_node(release)));
}

TEST(ReleaseText, WhatIsHiddenHasNoNumberAndNoRate) {
  const Node shown = shown_node(some_release());
  for (const Node& row : shown.find("injuries")->find("squads")->items) {
    const bool hidden = row.find("hidden") != nullptr;
    EXPECT_EQ(hidden, row.find("count") == nullptr);
    EXPECT_TRUE(!hidden || row.find("per_1000_hours") == nullptr);
  }
  EXPECT_EQ(to_json(shown).find("u13-1"), std::string::npos) << "nobody's id";
}

TEST(ReleaseText, ARateHasItsLimitsAndKnownHours) {
  const Node shown = shown_node(some_release());
  const Node& u16 = shown.find("injuries")->find("squads")->items[2];
  ASSERT_NE(u16.find("per_1000_hours"), nullptr) << to_json(shown);
  EXPECT_DOUBLE_EQ(u16.find("per_1000_hours")->find("rate")->real, 100.0) << "20 in 200 hours";
  EXPECT_LT(u16.find("per_1000_hours")->find("low")->real, 100);
  EXPECT_EQ(shown.find("sessions")->find("squads")->items[2].find("most_did_it_percent")->integer, 100);
}

TEST(ReleaseText, ANumberThatIsNotWhatWasCountedIsAFault) {
  const Release release = some_release();
  Release other = release;
  other.whole.of(Table::kSquads)["u16"].injuries = 21;
  EXPECT_FALSE(read_release(as_document(shown_node(other)), as_document(counted_node(release))));
}

}  // namespace
}  // namespace lanework::release
