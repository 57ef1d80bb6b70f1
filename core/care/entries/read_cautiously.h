// Entries of a ledger as a server has them: it cannot ask whoever wrote them any more, so what it does not understand
// holds back rather than nothing.
#pragma once

#include <vector>

#include "core/base/document.h"
#include "core/care/entries/entry.h"

namespace lanework::care {

// document: 'entry', as read_entries reads it. An entry of a kind that adds caution and cannot be understood counts as
// a hurt at a place that is not known; one that would take caution away is passed over.
std::vector<Entry> read_cautiously(const Node& document, const ReturnRules& rules);

}  // namespace lanework::care
