// catalogue/care/return_rules.toml, or a club's own file of that form, to ReturnRules.
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/return_to_sport/return_rules.h"
#include "core/catalogue/catalogue.h"

namespace lanework::care {

// sources: the rows of sources.toml. Faults: fewer than two steps, a step that sets back to a later one or to none, a
// gate that guards no step or two, a risk that falls, words for the coach that say what is the matter, names that
// nothing bears. Whether contact can be reached without a gate is not judged here: explore.h does.
Result<ReturnRules> read_return_rules(const Document& document, const std::vector<catalogue::Source>& sources);

}  // namespace lanework::care
