// catalogue/care/pain.toml to a PainRule.
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/pain/pain_rule.h"
#include "core/catalogue/catalogue.h"

namespace lanework::care {

// sources: the rows of sources.toml. Faults: cut-offs that do not ascend, a sign or place that lacks, stands twice or
// is not known, an instruction with a word that a coach should not see, a source that is not there.
Result<PainRule> read_pain_rule(const Document& document, const std::vector<catalogue::Source>& sources);

}  // namespace lanework::care
