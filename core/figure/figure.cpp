#include "core/figure/figure.h"

namespace lanework::figure {

Figure read_figure(TableReader /*table*/) { return {}; }

}  // namespace lanework::figure
