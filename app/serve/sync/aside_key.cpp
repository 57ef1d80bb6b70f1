#include "app/serve/sync/aside_key.h"

#include <array>
#include <utility>

#include "app/store/aside.h"

namespace lanework::serve::sync {

const char* aside_key(const std::string& why) {
  namespace aside = store::aside;
  constexpr std::array<std::pair<const char*, const char*>, 7> kKeys = {{{aside::kRevoked, "revoked"},
                                                                         {aside::kOtherContent, "other-content"},
                                                                         {aside::kClockAhead, "clock-ahead"},
                                                                         {aside::kTooOld, "too-old"},
                                                                         {aside::kDayToCome, "day-to-come"},
                                                                         {aside::kNobodyListed, "nobody-listed"},
                                                                         {aside::kNotTheirSquad, "not-their-squad"}}};
  for (const auto& [words, key] : kKeys) {
    if (why == words) return key;
  }
  // A role is one word: what an entry lacks begins with its place.
  const bool role = why.rfind("a ", 0) == 0 || why.rfind("an ", 0) == 0;
  return role && why.find(aside::kDoesNotEnter) != std::string::npos ? "not-their-role" : "not-an-entry";
}

}  // namespace lanework::serve::sync
