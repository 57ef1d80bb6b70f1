#include "core/people/contact.h"

#include <algorithm>

namespace lanework::people {

bool bars_contact(const Restriction& restriction) {
  if (restriction.barred) return restriction.barred->contact;
  constexpr int kHeavy = 3;
  const std::vector<catalogue::StressKind>& kinds = restriction.kinds;
  if (restriction.allowed_grade >= kHeavy && !restriction.sits_out) return false;
  return kinds.empty() || std::find(kinds.begin(), kinds.end(), catalogue::StressKind::kContact) != kinds.end();
}

}  // namespace lanework::people
