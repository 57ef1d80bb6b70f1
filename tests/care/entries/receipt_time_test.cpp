#include "core/care/entries/receipt_time.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace lanework::care {
namespace {

TEST(ReceiptTime, OffsetsAreCountedAndLocalDaysSaid) {
  const auto there = parse_receipt_time("2026-11-22T00:10+01:00");
  const auto same = parse_receipt_time("2026-11-21T23:10:59Z");
  ASSERT_TRUE(there && same);
  EXPECT_EQ(there->moment, same->moment);
  EXPECT_EQ(to_day_words(*there), "Sunday 22 November 2026 00:10");
  EXPECT_EQ(to_day_words(*same), "Saturday 21 November 2026 23:10");
  EXPECT_EQ(to_known_words(*there), "Sunday 00:10");
}

// When summer time ends, 02:30 happens twice.
TEST(ReceiptTime, TheHourThatComesTwiceIsTwoMoments) {
  EXPECT_EQ(parse_receipt_time("2026-10-25T02:30+01:00")->moment.minutes -
                parse_receipt_time("2026-10-25T02:30+02:00")->moment.minutes,
            60);
}

TEST(ReceiptTime, WithoutAnOffsetItIsNone) {
  for (const char* text : {"2026-11-22T20:10", "2026-11-22T20:10:00", "2026-11-22 20:10Z", "2026-11-22",
                           "2026-11-31T20:10Z", "2026-11-22T24:10Z", "2026-11-22T20:10+15:00", "2026-11-22T20:10:61Z",
                           "2026-11-22T20:10Z ", "2026-11-22T20:10+0100", ""}) {
    EXPECT_FALSE(parse_receipt_time(text)) << text;
  }
}

TEST(ReceiptTime, RoundTrip) {
  EXPECT_TRUE(rc::check([] {
    const ReceiptTime time{{*rc::gen::inRange<std::int64_t>(20000000, 40000000)}, *rc::gen::inRange(-840, 841)};
    const int apart = time.offset_minutes < 0 ? -time.offset_minutes : time.offset_minutes;
    const std::string text = to_iso(local_day(time)) + "T" + to_text(local_time(time)) +
                             (time.offset_minutes < 0 ? "-" : "+") + to_text(TimeOfDay{apart});
    RC_ASSERT(parse_receipt_time(text) == time);
  }));
}

}  // namespace
}  // namespace lanework::care
