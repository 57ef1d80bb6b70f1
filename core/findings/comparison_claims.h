// Sentences of a season's comparisons, each only as far as its interval allows. Inside this folder only.
#pragma once

#include <string>
#include <vector>

#include "core/evidence/number_words.h"
#include "core/findings/claims.h"

namespace lanework::findings {

// '95 % limits 1.30 to 9.33'.
std::string interval_words(double level, const std::string& limits, const evidence::NumberWords& words);

std::vector<Claim> prevalence_claims(const SeasonFindings& found, Reader reader);
std::vector<Claim> recurrent_claims(const SeasonFindings& found, Reader reader);
std::vector<Claim> taught_claims(const SeasonFindings& found);
std::vector<Claim> often_claims(const SeasonFindings& found, Reader reader);

}  // namespace lanework::findings
