// Two seasons beside each other, in words and for programs.
#pragma once

#include "app/cli/evidence/answer.h"
#include "core/findings/two_seasons.h"

namespace lanework::cli {

EvidenceAnswer seasons_answer(const findings::TwoSeasons& found, double level);

}  // namespace lanework::cli
