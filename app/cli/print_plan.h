// A plan as text for people: the session with its clock times, what was changed and why, what is short.
#pragma once

#include <string>

#include "core/door/plan_answer.h"

namespace lanework::cli {

std::string plan_text(const door::PlanAnswer& answer, const door::EveningMatter& matter);

}  // namespace lanework::cli
