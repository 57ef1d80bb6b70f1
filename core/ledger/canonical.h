// One text for one value: the JSON Canonicalization Scheme (RFC 8785), so that two devices that mean the same entry
// hash the same bytes. Keys in the order of their UTF-16 code units, numbers as ECMAScript writes them, nothing
// between.
#pragma once

#include <optional>
#include <string>

#include "core/base/document.h"

namespace lanework::ledger {

// Empty where it cannot be said in this form: a number that is not finite, a whole number beyond 2^53 - 1 either way
// (but from 1e21 on, where it is written with an exponent), text that is no UTF-8, one key twice in a table.
std::optional<std::string> canonical_json(const Node& value);

// As ECMAScript's Number::toString writes it: '1e+30', '0.002', '-0' as '0'. REQUIRES: finite.
std::string number_text(double value);

}  // namespace lanework::ledger
