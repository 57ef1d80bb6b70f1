// Placeholder contract of the figure room: see docs/formats/figure.md for the grammar.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"

namespace lanework::figure {

struct Figure {};

// Reads the [figure] table of a drill; faults are collected in the reader.
Figure read_figure(TableReader table);

}  // namespace lanework::figure
