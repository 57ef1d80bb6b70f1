// Sentences of a season's comparisons, each only as far as its interval allows. Inside this folder only.
#pragma once

#include <string>
#include <vector>

#include "core/findings/claims.h"

namespace lanework::findings {

std::vector<std::string> prevalence_sentences(const SeasonFindings& found, Reader reader);
std::vector<std::string> recurrent_sentences(const SeasonFindings& found, Reader reader);
std::vector<std::string> taught_sentences(const SeasonFindings& found);
std::vector<std::string> often_sentences(const SeasonFindings& found, Reader reader);

}  // namespace lanework::findings
