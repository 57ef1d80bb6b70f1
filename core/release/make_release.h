// A release of a period: counted, withheld where it must be, and audited beside everything that was given out before.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/release/audit.h"
#include "core/release/release.h"

namespace lanework::release {

struct Wanted {
  Period period;
  Date today;
  std::string club;
  std::string made;  // the receiver's clock with its offset
  Rows rows;
  std::optional<std::vector<ledger::SessionKey>> planned = {};  // evenings of the club's calendar; empty: it has none
  std::string asked = {};
};

struct Made {
  Release release;
  std::vector<NotGiven> not_given;  // of all releases with this one: for the lead alone
  std::vector<std::string> tried;   // what was withheld beyond small numbers, and why: for the lead alone
};

// Faults: the period may not be released; the audit of what was given out before, or with this, fails (which cell).
Result<Made> make_release(const ledger::State& state, const Wanted& wanted, const std::vector<Release>& earlier);

}  // namespace lanework::release
