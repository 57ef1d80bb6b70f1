// Can a model's parameters be estimated from these rows at all? What would make them run off to infinity, or be told
// only together, is found before the fit and said in words.
//
// Separation: counts have no finite best coefficient where some sum of columns is 0 in every row with events and of one
// sign elsewhere (Santos Silva JMC, Tenreyro S, Econ Lett 2010, doi 10.1016/j.econlet.2010.02.020; from memory). Found
// exactly, by least squares without negative shares over what no event says anything of: a few columns, so O(rows) a
// step and seldom more steps than columns.
#pragma once

#include <optional>
#include <string>

#include "core/base/two_languages.h"
#include "core/evidence/mixed/frame.h"

namespace lanework::evidence {

// Why not, and what to do about it, to stand after 'cannot be estimated: '.
struct WhyNot {
  std::string why;
  std::string advice;  // of the command line's flags
};

// Empty where they can. squads_differ: the model has an effect of the squad.
std::optional<WhyNot> why_not_estimable(const Frame& frame, bool squads_differ, Language language = Language::kEnglish);
// Both in one.
std::string in_words(const WhyNot& why);

}  // namespace lanework::evidence
