// When an entry was received, by the receiver's clock: with its offset from universal time, so that hours can be
// counted and the local day can be said.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/date.h"
#include "core/care/return_to_sport/moment.h"

namespace lanework::care {

struct ReceiptTime {
  Moment moment;
  int offset_minutes = 0;  // east of universal time
  bool operator==(const ReceiptTime&) const = default;
};

// '2026-11-22T20:10:00+01:00' or with 'Z'; seconds may be left out, and are dropped. Empty when it is none.
std::optional<ReceiptTime> parse_receipt_time(std::string_view text);

Date local_day(ReceiptTime time);
TimeOfDay local_time(ReceiptTime time);
// Another moment as clocks showed it there.
ReceiptTime at_same_offset(Moment moment, ReceiptTime like);

std::string to_known_words(ReceiptTime time);  // 'Sunday 20:10', as pages print it
std::string to_day_words(ReceiptTime time);    // 'Sunday 22 November 2026 20:10'

}  // namespace lanework::care
