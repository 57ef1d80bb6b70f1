// Paints the marks of a page on any cairo surface.
#pragma once

#include <cairo.h>

#include "app/draw/page.h"
#include "app/draw/tokens.h"

namespace lanework::draw {

// ground: what lies under the marks and inside shapes of paper.
void paint_page(cairo_t* canvas, const Page& page, Colour ground);

}  // namespace lanework::draw
