// How long a session lasts, by role: without a request, and in all (OWASP ASVS 5.0, 7.1.1). Own judgement, none above
// the ceilings of NIST SP 800-63B; docs/security.md has both side by side. One table, which the tests read too.
#pragma once

#include <array>
#include <cstdint>

#include "core/ledger/kinds.h"

namespace lanework::serve {

struct SessionLimits {
  std::int64_t idle_seconds;
  std::int64_t whole_seconds;
  bool second_factor;  // must be shown before anything else is open
};

inline constexpr std::int64_t kMinute = 60;
inline constexpr std::int64_t kHour = 3600;

// By role: lead, coach, recorder, board, operator.
inline constexpr std::array<SessionLimits, 5> kSessionLimits = {{{30 * kMinute, 8 * kHour, true},
                                                                 {30 * kMinute, 8 * kHour, false},
                                                                 {30 * kMinute, 8 * kHour, false},
                                                                 {15 * kMinute, 4 * kHour, true},
                                                                 {10 * kMinute, 4 * kHour, true}}};

inline constexpr std::int64_t kStepUpSeconds = 5 * kMinute;      // a second factor shown is good for so long
inline constexpr std::int64_t kPairingSeconds = 10 * kMinute;    // a link to pair a device
inline constexpr std::int64_t kAccountLinkSeconds = 24 * kHour;  // a link to set a password: one evening is too short

inline constexpr std::int64_t kCalendarLinkSeconds = 400 * 24 * kHour;  // a calendar's address: a season and a summer

inline constexpr std::int64_t kLeaseSeconds = 7 * 24 * kHour;  // a phone shows names so long without another contact

constexpr const SessionLimits& limits_of(ledger::Role role) { return kSessionLimits[static_cast<std::size_t>(role)]; }

}  // namespace lanework::serve
