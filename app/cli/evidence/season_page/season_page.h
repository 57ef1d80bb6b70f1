// A season's findings as a page to read, show and print.
#pragma once

#include <map>
#include <string>

#include "app/report/page.h"
#include "core/findings/claims.h"
#include "core/findings/season_findings.h"

namespace lanework::cli {

// What a drill is called, by its id; others are shown as they were written.
using DrillNames = std::map<std::string, std::string>;

struct SeasonPageMatter {
  std::string club;
  const records::Season* season = nullptr;
  const records::Terms* terms = nullptr;
  const findings::SeasonFindings* found = nullptr;
  findings::Reader reader = findings::Reader::kLead;
  const DrillNames* drill_names = nullptr;
  std::string left_out;     // for want of consent, in words; empty: nothing to say
  bool of_ledger = false;   // then no row is named by its file: nobody has one
  std::string what_went{};  // a sentence, where entries about some of its days went by their time
};

report::Page season_page(const SeasonPageMatter& matter);

}  // namespace lanework::cli
