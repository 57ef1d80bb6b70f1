// JSON that may stand in a script element: nothing in it can end the element, open a comment or turn the reading
// direction, and every JSON reader gets the cleaned texts back.
#pragma once

#include <string>

#include "core/base/document.h"

namespace lanework::report {

// Every text of it as on the card (app/draw/foreign_text.h).
void clean_texts(Node& node);

std::string script_json(const Node& node);

}  // namespace lanework::report
