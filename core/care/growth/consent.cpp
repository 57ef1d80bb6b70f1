#include "core/care/growth/consent.h"

#include <algorithm>

namespace lanework::care::growth {
namespace {

constexpr int kAsksAgainAt = 16;
constexpr int kOfAgeAt = 18;

// Given by the day, and not taken back since.
bool holds(std::optional<Date> given, std::optional<Date> withdrawn, Date day) {
  return given && *given <= day && (!withdrawn || *given > *withdrawn);
}

bool is_of_age(std::optional<Date> born, Date day) { return born && age_in_years(*born, day) >= kOfAgeAt; }

}  // namespace

AgreementState agreement_state(const Agreement& agreement, std::optional<Date> born, Date day) {
  const bool child = holds(agreement.assent, agreement.withdrawn, day);
  const bool guardian = holds(agreement.consent, agreement.withdrawn, day);
  if (is_of_age(born, day)) {
    if (child && is_of_age(born, *agreement.assent)) return AgreementState::kOn;
    return agreement.withdrawn ? AgreementState::kWithdrawn : AgreementState::kOfAge;
  }
  if (child && guardian) return AgreementState::kOn;
  if (agreement.withdrawn) return AgreementState::kWithdrawn;
  if (!child && !guardian) return AgreementState::kNeitherGiven;
  return child ? AgreementState::kNoConsent : AgreementState::kNoAssent;
}

Date agreed_since(const Agreement& agreement, std::optional<Date> born, Date day) {
  if (is_of_age(born, day)) return *agreement.assent;
  return std::max(*agreement.consent, *agreement.assent);
}

bool should_be_renewed(const Agreement& agreement, std::optional<Date> born, Date day) {
  if (!born || !agreement.assent || age_in_years(*born, day) < kAsksAgainAt) return false;
  return age_in_years(*born, *agreement.assent) < kAsksAgainAt;
}

const char* in_words(AgreementState state) {
  switch (state) {
    case AgreementState::kOn:
      return "on: the guardian's consent and the child's assent are recorded";
    case AgreementState::kNeitherGiven:
      return "off: neither the guardian's consent nor the child's assent is recorded";
    case AgreementState::kNoConsent:
      return "off: the guardian's consent is not recorded";
    case AgreementState::kNoAssent:
      return "off: the child's own assent is not recorded";
    case AgreementState::kWithdrawn:
      return "off: taken back; values are not shown, and should be deleted";
    case AgreementState::kOfAge:
      return "off: of age, and the player's own agreement since the 18th birthday is not recorded";
  }
  return "off";
}

}  // namespace lanework::care::growth
