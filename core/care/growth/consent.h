// Growth is off until the guardian's consent and the child's own assent are both recorded, and off again once either is
// taken back. trust: measuring a body is opt-in, and taking it back is as easy as giving it.
#pragma once

#include <optional>

#include "core/base/date.h"

namespace lanework::care::growth {

struct Agreement {
  std::optional<Date> consent;    // the guardian's
  std::optional<Date> assent;     // the child's own
  std::optional<Date> withdrawn;  // by either, or refused by another guardian
};

enum class AgreementState {
  kOn,
  kNeitherGiven,
  kNoConsent,
  kNoAssent,
  kWithdrawn,
  kOfAge  // 18 or older, and has not agreed since: what a guardian and a child once said no longer holds
};

// On the day. A date in the future gives nothing, but takes away at once. After a withdrawal both have to be given
// anew, on a later day. From 18 on only an assent given since the 18th birthday counts, and no guardian is asked.
AgreementState agreement_state(const Agreement& agreement, std::optional<Date> born, Date day);
inline bool may_be_shown(const Agreement& agreement, std::optional<Date> born, Date day) {
  return agreement_state(agreement, born, day) == AgreementState::kOn;
}

// The day from which the present agreement holds: what was measured before it is not looked at.
// REQUIRES: may_be_shown.
Date agreed_since(const Agreement& agreement, std::optional<Date> born, Date day);

// Given before the 16th birthday, and the player is 16 by now: the lead should ask the player again. own judgement
bool should_be_renewed(const Agreement& agreement, std::optional<Date> born, Date day);

// 'off: the guardian's consent is not recorded'; never a value.
const char* in_words(AgreementState state);

}  // namespace lanework::care::growth
