// Report pages of invented data: the season of Quillmere Juniors as it might be, and one page with whatever is hard to
// draw.
#pragma once

#include "app/report/page.h"

namespace lanework::report {

Page sample_page();

// Each kind of chart without data, with one row, with 40 squads and long names in several scripts, with huge and tiny
// numbers.
Page page_of_extremes();

}  // namespace lanework::report
