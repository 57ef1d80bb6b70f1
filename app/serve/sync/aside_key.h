// The key of why something is kept aside, for whoever says it in another language.
#pragma once

#include <string>

namespace lanework::serve::sync {

// 'revoked', 'other-content', 'clock-ahead', 'too-old', 'day-to-come', 'nobody-listed', 'not-their-squad',
// 'not-their-role', or 'not-an-entry', which is all that has no words of its own (app/store/aside.h).
const char* aside_key(const std::string& why);

}  // namespace lanework::serve::sync
