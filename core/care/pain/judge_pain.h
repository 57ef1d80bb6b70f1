// Pain and soreness as reported, to how a player takes part: joins in, joins in with swaps, or sits out and sees a
// clinician. A later report, a higher number now or another sign never gives a less careful answer; what is not known
// takes the careful side and says so. docs/care/pain.md.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/care/pain/pain_rule.h"
#include "core/people/swaps.h"

namespace lanework::care {

// One report about one place: 0 to 10 before, during, the next morning; empty is not asked.
struct PainReport {
  std::optional<Date> day;  // of the session
  std::optional<int> before;
  std::optional<int> during;
  std::optional<int> next_morning;
  std::optional<catalogue::BodyArea> place;  // empty: not known
  std::vector<PainSign> signs;

  // The highest of the numbers known; empty when there is none.
  [[nodiscard]] std::optional<int> number() const;
  bool operator==(const PainReport&) const = default;
};

struct PainJudgement {
  people::TakingPart taking_part = people::TakingPart::kJoinsIn;
  bool at_once = false;                            // no number was weighed: the place or a sign refers at once
  std::vector<std::string> why;                    // for the lead, the weightiest reasons first
  std::vector<std::string> not_known;              // for the lead: 'the place', 'any number', 'the next morning'
  std::optional<people::Restriction> restriction;  // without player; empty when nothing is held back
};

// reports: those of one player about one place, as many as stand, in any order; empty joins in.
PainJudgement judge_pain(const PainRule& rule, const std::vector<PainReport>& reports);

// 'joins in', 'joins in with swaps', 'sits out, see a clinician'
const char* words_of(people::TakingPart taking_part);

}  // namespace lanework::care
