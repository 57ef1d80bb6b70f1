// Fields of an action plan in two columns: what is known stands there; for the rest a line to write on.
#pragma once

#include <string>
#include <vector>

#include "app/draw/pen.h"

namespace lanework::draw {

struct PlanField {
  const char* label;
  const std::string* known;  // empty: to be written
};

// In rows of two; returns the height. writing_line: of a field without words.
double draw_plan_fields(const std::vector<PlanField>& fields, double writing_line, Point at, double width,
                        const Pen& pen);

}  // namespace lanework::draw
