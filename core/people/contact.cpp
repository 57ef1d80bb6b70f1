#include "core/people/contact.h"

#include <algorithm>

namespace lanework::people {

bool bars_contact(const Restriction& restriction) {
  const std::vector<catalogue::StressKind>& kinds = restriction.kinds;
  return kinds.empty() || std::find(kinds.begin(), kinds.end(), catalogue::StressKind::kContact) != kinds.end();
}

}  // namespace lanework::people
