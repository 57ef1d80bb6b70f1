// An integer program as free MPS. Minimisation is MPS's own default and no OBJSENSE stands in the text,
// because some readers ignore it.
#pragma once

#include <string>

#include "core/integer_program/program.h"

namespace lanework::integer_program {

std::string mps_text(const Program& program);

}  // namespace lanework::integer_program
