// Rows of a catalogue's numbers and of constants, each with its source: what 'plan --why' and 'block --why' share.
#pragma once

#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/clock/constants.h"

namespace lanework::cli {

using Rows = std::vector<std::vector<std::string>>;

Rows constant_rows(const std::vector<clock::ConstantRow>& constants, const catalogue::Catalogue& catalogue);
// What a short dose of each family weighs, and the work that counts as a full one; age: of the youngest.
Rows family_rows(const catalogue::Catalogue& catalogue, int age);
// 'ages 12 to 13'.
std::string ages_text(const catalogue::Ceilings& band);
// What a day before a match leaves of the ceilings.
std::vector<std::string> match_row(const catalogue::MatchDistance& row, const catalogue::Catalogue& catalogue);

}  // namespace lanework::cli
