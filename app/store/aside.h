// Why something is kept aside, in words that stay as they are: who looks at them later goes by them. Beside these there
// is only what an entry lacks to be one.
#pragma once

namespace lanework::store::aside {

inline constexpr const char* kRevoked = "the device was revoked";
inline constexpr const char* kOtherContent = "an entry of this id is there and says something else";
inline constexpr const char* kClockAhead = "the device's clock is ahead of the server's";
inline constexpr const char* kTooOld = "more than 14 days old by the device's clock";
inline constexpr const char* kDayToCome = "about a day that has not come";
inline constexpr const char* kNobodyListed = "about nobody on the club's lists";
inline constexpr const char* kNotTheirSquad = "about a squad that the sender was not charged with";
inline constexpr const char* kDoesNotEnter = " does not enter ";  // 'a coach does not enter visit'

}  // namespace lanework::store::aside
