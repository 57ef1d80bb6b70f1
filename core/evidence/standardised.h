// One rate for squads of different make-up, as if each part had the share of the hours that a standard gives it: rates
// by part, weighted (direct standardisation). Limits by the gamma distribution (Fay MP, Feuer EJ, Stat Med 1997, doi
// 10.1002/(SICI)1097-0258(19970415)16:7<791::AID-SIM500>3.0.CO;2-#).
#pragma once

#include <cstdint>
#include <span>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct StandardPart {
  std::int64_t events = 0;
  double hours = 0;           // > 0
  double standard_hours = 0;  // of this part in the standard, >= 0
};

struct Standardised {
  double crude = 0;  // per hour
  double rate = 0;   // per hour
  Interval limits;
};

// REQUIRES: standard hours in some part.
Standardised standardised_rate(std::span<const StandardPart> parts, double level);

}  // namespace lanework::evidence
