// A session begins; the second factor is checked.
#pragma once

#include <optional>
#include <string>

#include "app/serve/call.h"

namespace lanework::serve {

// A session under a secret that nobody had before, with its cookie; one that the caller came with ends.
Response begin_session(Call& call, const store::Account& account, bool second_shown);

// Empty: the code is right, and is used up by it. code: six digits of now, or a recovery code.
std::optional<Response> second_refused(Call& call, const store::Account& account, const std::string& code);

}  // namespace lanework::serve
