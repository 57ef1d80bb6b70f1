// Entries in, what stands out: the same set gives the same answer in whatever order it is handed in, since the
// receiver's numbers order it. A later report always wins towards caution; nothing is lifted but by the lead, and where
// it stems from a hurt or a course only with the clearance of a named clinician that names it. docs/care/entries.md.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/care/entries/standing.h"
#include "core/care/pain/pain_rule.h"
#include "core/care/return_to_sport/return_rules.h"

namespace lanework::care {

// Whole years, where they are known.
using Ages = std::map<std::string, int>;

// Receipt numbers are the receiver's, one for each entry. An id that comes again with the same content changes nothing;
// with other content the first stands, and what adds caution counts too, under the id with its receipt number
// ('e-3#7').
Knowledge fold(std::vector<Entry> entries, const PainRule& pain, const ReturnRules& rules, const Ages& ages = {});

// Of these the ones that hold on a day.
std::vector<Standing> holding_on(const std::vector<Standing>& standing, Date day);

}  // namespace lanework::care
