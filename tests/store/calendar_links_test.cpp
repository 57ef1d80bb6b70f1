// Addresses of calendars: one open of a squad, by the digest of a secret, and what was taken back does not come again.
#include <gtest/gtest.h>

#include "tests/store/gate_people.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using test::add;
using test::kMorning;
using test::must;
using test::said;

class CalendarLinks : public test::GateOn {
 protected:
  std::string ann = add(*gate, "ann", ledger::Role::kLead);
  std::string bo = add(*gate, "bo", ledger::Role::kLead);

  CalendarLink link(const std::string& secret, const std::string& squad = "u13", Moment made = kMorning) {
    return {digest_of(secret), squad, made, ann, made + 600, 0, 0, ""};
  }
};
INSTANTIATE_TEST_SUITE_P(Stores, CalendarLinks, testing::Values("SQLite", "PostgreSQL"), test::name_of);

TEST_P(CalendarLinks, AreFoundByTheirDigestAsTheyWereMade) {
  ASSERT_TRUE(must(gate->add_calendar_link(link("one"))));
  EXPECT_EQ(must(gate->calendar_link(digest_of("one"))), link("one"));
  EXPECT_EQ(must(gate->calendar_link(digest_of("on"))), std::nullopt);
  EXPECT_EQ(must(gate->calendar_link("")), std::nullopt);
  EXPECT_EQ(must(gate->calendar_links()), std::vector<CalendarLink>{link("one")});
}

TEST_P(CalendarLinks, ANewOneEndsTheSquadsOldOneAndNoOther) {
  must(gate->add_calendar_link(link("one")));
  must(gate->add_calendar_link(link("other", "u10")));
  must(gate->add_calendar_link(link("two", "u13", kMorning + 60)));
  const CalendarLink old = must(gate->calendar_link(digest_of("one"))).value();
  EXPECT_EQ(old.ended, kMorning + 60);
  EXPECT_EQ(old.ended_by, ann);
  EXPECT_EQ(must(gate->calendar_link(digest_of("two")))->ended, 0);
  EXPECT_EQ(must(gate->calendar_link(digest_of("other")))->ended, 0);
  const auto all = must(gate->calendar_links());
  ASSERT_EQ(all.size(), 3U);
  EXPECT_EQ(all[0].squad, "u10");
  EXPECT_EQ(all[1], must(gate->calendar_link(digest_of("two")))) << "the latest first";
}

TEST_P(CalendarLinks, WhoTookOneBackIsKeptAndItDoesNotComeAgain) {
  must(gate->add_calendar_link(link("one")));
  EXPECT_TRUE(must(gate->end_calendar_link("u13", bo, kMorning + 5)));
  EXPECT_FALSE(must(gate->end_calendar_link("u13", ann, kMorning + 6))) << "twice";
  EXPECT_FALSE(must(gate->end_calendar_link("u10", ann, kMorning + 6))) << "none is there";
  const CalendarLink ended = must(gate->calendar_link(digest_of("one"))).value();
  EXPECT_EQ(ended.ended, kMorning + 5);
  EXPECT_EQ(ended.ended_by, bo);
  EXPECT_FALSE(must(gate->calendar_link_asked(digest_of("one"), kMorning + 7)));
  for (const char* statement : {"UPDATE calendar_link SET ended = 0", "DELETE FROM calendar_link"}) {
    EXPECT_NE(said(backend, statement), "") << statement;
  }
  EXPECT_EQ(must(gate->calendar_link(digest_of("one"))), ended);
}

TEST_P(CalendarLinks, TheLastDayOnWhichOneWasAskedForOnlyGoesUp) {
  must(gate->add_calendar_link(link("one")));
  EXPECT_TRUE(must(gate->calendar_link_asked(digest_of("one"), 200)));
  EXPECT_TRUE(must(gate->calendar_link_asked(digest_of("one"), 100)));
  EXPECT_EQ(must(gate->calendar_link(digest_of("one")))->asked, 200);
  EXPECT_FALSE(must(gate->calendar_link_asked(digest_of("two"), 300)));
}

TEST_P(CalendarLinks, AreMadeAndTakenBackByWhoIsThere) {
  CalendarLink nobodys = link("one");
  nobodys.made_by = "a-0000000000000000";
  EXPECT_FALSE(must(gate->add_calendar_link(nobodys)));
  must(gate->add_calendar_link(link("two")));
  must(gate->end_account(ann, kMorning));
  EXPECT_FALSE(must(gate->add_calendar_link(link("three"))));
  EXPECT_FALSE(must(gate->end_calendar_link("u13", ann, kMorning)));
  EXPECT_EQ(must(gate->calendar_link(digest_of("two")))->ended, 0)
      << "the squad's, not hers: who is left takes it back";
  EXPECT_TRUE(must(gate->end_calendar_link("u13", bo, kMorning)));
}

}  // namespace
}  // namespace lanework::store
