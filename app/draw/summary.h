// The summary of a club's block for the lead: what every squad gets, falls short of, changes, and how near to the best.
#pragma once

#include <string>
#include <vector>

#include "app/draw/card.h"

namespace lanework::draw {

struct SummaryRow {
  std::string squad;
  std::string met;       // '34 of 45 met'
  std::string short_of;  // 'trunk 30 s'; may be empty
  std::string changes;   // 'Step and hold for Squat'; may be empty
  std::string gap;       // '0.6 %'
};

struct SummaryMatter {
  std::string club;
  std::string facts;  // '24 squads, 6 weeks from Monday 23 November 2026'
  std::string date_iso;
  std::vector<std::string> overall;  // sentences
  std::vector<SummaryRow> rows;      // 1 .. 1000
};

// One page for some 25 squads, further ones after it. Faults: no row or more than 1000.
Result<Pages> draw_summary(const SummaryMatter& matter, Paper paper);

}  // namespace lanework::draw
