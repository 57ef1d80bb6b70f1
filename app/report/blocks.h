// One block of a page as HTML.
#pragma once

#include "app/report/html_writer.h"
#include "app/report/page.h"

namespace lanework::report {

void write_block(HtmlWriter& html, const Block& block, Language language);

}  // namespace lanework::report
