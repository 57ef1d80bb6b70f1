// Where the numbers of a plan come from: every one that advises, limits or scores, with its source.
#pragma once

#include <string>

#include "core/door/plan_answer.h"

namespace lanework::cli {

std::string why_text(const door::PlanAnswer& answer, const door::EveningMatter& matter);

}  // namespace lanework::cli
