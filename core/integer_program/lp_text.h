// An integer program in the LP text format, for readers that do not take MPS.
#pragma once

#include <string>

#include "core/integer_program/program.h"

namespace lanework::integer_program {

std::string lp_text(const Program& program);

}  // namespace lanework::integer_program
