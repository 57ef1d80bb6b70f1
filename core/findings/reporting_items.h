// What a report of injuries in sport should tell by the checklist of the 2020 consensus (Bahr R et al., Br J Sports Med
// 2020, doi 10.1136/bjsports-2019-101969), item by item, in our own words: where this report tells it, or that it does
// not. Items without a number are recalled; nobody has read their wording for this program.
#pragma once

#include <string>
#include <vector>

#include "core/findings/season_findings.h"

namespace lanework::findings {

struct ReportingItem {
  std::string number;  // empty: recalled
  std::string item;
  bool covered = false;
  std::string how;  // where it is told, or what is wanting
};

std::vector<ReportingItem> reporting_items(const SeasonFindings& found);

}  // namespace lanework::findings
