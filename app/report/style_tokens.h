// The inks of the card (app/draw/tokens.h) as the style's own variables: --ink, --soft, --chalk, --accent, --paper.
#pragma once

#include <string>

namespace lanework::report {

std::string style_tokens();

}  // namespace lanework::report
