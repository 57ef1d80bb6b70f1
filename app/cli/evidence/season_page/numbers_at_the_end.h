// The numbers of charts of the same rows, in one table for all of them at the page's end: on paper there is no other.
// Inside this folder only.
#pragma once

#include "app/report/page.h"

namespace lanework::cli {

void move_numbers_to_the_end(report::Page& page);

}  // namespace lanework::cli
