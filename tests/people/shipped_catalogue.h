// The catalogue that ships, read once for the tests that need real drills.
#pragma once

#include "core/catalogue/catalogue.h"

namespace lanework::people {

const catalogue::Catalogue& shipped_catalogue();

}  // namespace lanework::people
