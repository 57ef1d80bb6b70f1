// A drill as text, and the sources of its numbers.
#pragma once

#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"

namespace lanework::cli {

std::string describe_drill(const catalogue::Drill& drill, const catalogue::Catalogue& catalogue);

// 'Behm DG, ... (2016), doi 10.1139/...'; 'common practice'; 'own judgement'; 'unverified, from memory'; '(unverified)'
// where so.
std::string source_words(const std::string& key, const catalogue::Catalogue& catalogue);
std::string source_words(const std::vector<std::string>& keys, const catalogue::Catalogue& catalogue);

}  // namespace lanework::cli
