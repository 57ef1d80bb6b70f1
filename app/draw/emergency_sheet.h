// The sealed sheet for an emergency: a cover to fold, and inside names and phones of those whose family agreed.
#pragma once

#include <string>
#include <vector>

#include "app/draw/card.h"

namespace lanework::draw {

struct EmergencyRowMatter {
  std::string player;  // the name
  std::string guardian;
  std::string phone;
  std::string allergy;  // empty texts are printed as 'not stated'
  std::string inhaler;
  std::string other;
};

struct EmergencySheetMatter {
  std::string club;
  std::string squad;
  std::string printed;  // 'Thursday 26 November 2026'
  std::string printed_iso;
  std::string expires;  // 'Wednesday 24 February 2027'
  int without_consent = 0;
  std::vector<EmergencyRowMatter> rows;  // 1 .. 200
};

// The first side is the cover and names nobody. Faults: no row, or too many.
Result<Pages> draw_emergency_sheet(const EmergencySheetMatter& matter, Paper paper);

}  // namespace lanework::draw
