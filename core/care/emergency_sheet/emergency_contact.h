// What a family lets the coach know for an emergency, on paper, sealed, and on the coach's phone where the family
// agreed to that too. Health data of a child: it goes there and nowhere else.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"

namespace lanework::care {

// Empty texts are not stated, which is not 'none'.
struct EmergencyContact {
  std::string player;  // the roster's id
  std::string guardian;
  std::string phone;
  std::string allergy;
  std::string inhaler;
  std::string other;
  bool on_phone = false;  // the family agreed to it on the day's phones besides
};

struct EmergencyConsent {
  std::optional<Date> given;
  std::optional<Date> withdrawn;
};

// On the day. A date in the future gives nothing, but takes away at once; after a withdrawal consent has to be given
// anew, on a later day. From 18 on only what the player has agreed to since the 18th birthday counts.
bool consent_stands(const EmergencyConsent& consent, std::optional<Date> born, Date day);

}  // namespace lanework::care
