// The independent checker's judgement of a plan, as text for people.
#pragma once

#include <string>

#include "core/check/check_session.h"

namespace lanework::cli {

std::string check_text(const check::Report& report);

}  // namespace lanework::cli
