// A report as data, for a screen that lays it out itself: the same words, tables and charts as the page.
#pragma once

#include "app/report/page.h"
#include "core/base/document.h"

namespace lanework::report {

// {"title", "club", "season", "as_of", "language", "sections": [{"heading", "level", "blocks": [...]}]}; a block is
// {"kind": "paragraph", "text"}, {"kind": "list", "items"}, {"kind": "notice", "lead", "text"},
// {"kind": "table", "caption", "columns": [{"heading", "numeric"}], "rows"} or
// {"kind": "chart", "id", "title", "says", "data", "table"}. Texts are cleaned as on the page.
Node to_node(const Page& page);

}  // namespace lanework::report
