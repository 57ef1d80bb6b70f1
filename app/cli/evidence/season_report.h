// A season's records, or a ledger's season, as the report's page: what 'evidence report' writes and the desk shows.
#pragma once

#include <string>
#include <vector>

#include "app/cli/evidence/season_files.h"
#include "app/report/page.h"
#include "core/findings/claims.h"

namespace lanework::cli {

struct SeasonReportAsked {
  SeasonFlags season;
  std::string club;
  findings::Reader reader = findings::Reader::kLead;
  double usual_per_1000_h = 0;  // 0: not known
  double level_percent = 95;
};

struct SeasonReport {
  report::Page page;
  std::vector<findings::Claim> claims;
  std::string left_out;  // for want of consent; empty: nothing to say
  std::string what_went;
  bool nothing = false;  // neither hours nor injuries are on record
};

// Faults: of the flags, the records, the ledger, the catalogue.
Result<SeasonReport> season_report(const SeasonReportAsked& asked);

}  // namespace lanework::cli
