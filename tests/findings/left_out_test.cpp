#include "core/findings/left_out.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

namespace lanework::findings {
namespace {

TEST(LeftOut, TheLeadIsToldWhatWasLeftOut) {
  EXPECT_EQ(left_out_words({0, 0, 0, 0}, Reader::kLead), "");
  EXPECT_EQ(left_out_words({1, 1, 0, 0}, Reader::kLead),
            "Left out for want of consent to statistics: 1 injury and 0 places at sessions.");
  EXPECT_EQ(left_out_words({3, 2, 1, 2}, Reader::kLead),
            "Left out for want of consent to statistics: 3 injuries and 1 place at sessions. 2 records of injuries and "
            "screens, of any day, are closed for want of consent to a record.");
  EXPECT_EQ(left_out_words({0, 0, 0, 1}, Reader::kLead),
            "1 record of an injury or a screen, of any day, is closed for want of consent to a record.");
}

TEST(LeftOut, ABoardIsToldFromFiveInjuriesOfFivePeopleOn) {
  EXPECT_EQ(left_out_words({5, 5, 40, 3}, Reader::kBoard), "Left out for want of consent to statistics: 5 injuries.");
  const std::string nothing = left_out_words({}, Reader::kBoard);
  EXPECT_NE(nothing, "");
  EXPECT_EQ(left_out_words({9, 2, 0, 0}, Reader::kBoard), nothing) << "nine injuries of two children";
}

RC_GTEST_PROP(LeftOut, ABoardCannotTellSmallNumbersFromEachOtherOrFromNone, ()) {
  LeftOut some;
  some.people = *rc::gen::inRange(0, kSmallCell);
  some.injuries = some.people == 0 ? 0 : some.people + *rc::gen::inRange(0, 50);
  some.places = *rc::gen::inRange(0, 1000);
  some.closed = *rc::gen::inRange(0, 1000);
  RC_ASSERT(left_out_words(some, Reader::kBoard) == left_out_words({}, Reader::kBoard));
}

}  // namespace
}  // namespace lanework::findings
