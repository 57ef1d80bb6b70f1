// A season's findings as a page to read, show and print.
#pragma once

#include <string>

#include "app/report/page.h"
#include "core/findings/claims.h"
#include "core/findings/season_findings.h"

namespace lanework::cli {

struct SeasonPageMatter {
  std::string club;
  const records::Season* season = nullptr;
  const records::Terms* terms = nullptr;
  const findings::SeasonFindings* found = nullptr;
  findings::Reader reader = findings::Reader::kLead;
};

report::Page season_page(const SeasonPageMatter& matter);

}  // namespace lanework::cli
