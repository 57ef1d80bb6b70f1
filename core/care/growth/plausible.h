// Slips caught before anything is made of them: a wrong unit, a finger beside the key, a player who shrank. The ranges
// are our own judgement and wide; who lies outside them in truth is better seen by a doctor than by this program.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/care/growth/growth_person.h"
#include "core/care/growth/growth_table.h"

namespace lanework::care::growth {

// Which cell is at fault, what was expected there, and what may have happened.
enum class MeasuredCell { kHeight, kSittingHeight, kMass };
struct Implausible {
  MeasuredCell cell;
  std::string expected;
  std::string hint;  // may be empty
};

// Each by itself. age, in whole years, empty: not known, then the widest range of all ages.
std::vector<Implausible> implausible_in(const GrowthTable& table, const BodyMeasurement& measured,
                                        std::optional<int> age);

// Against the measurement before it: shrunk or shot up by more than the tape's error and growing could make.
std::optional<Implausible> implausible_after(const GrowthTable& table, const BodyMeasurement& before,
                                             const BodyMeasurement& after);

}  // namespace lanework::care::growth
