// From a number's own band to the one that is taken, and what it asks. For the judges of this folder.
#pragma once

#include <string>
#include <vector>

#include "core/care/environment/judge.h"

namespace lanework::care::environment {

struct Found {
  Topic topic = Topic::kHeat;
  std::size_t band = 0;
  std::string number;
  std::vector<std::string> cautions;  // each that raises it by a band is counted in 'raised_by'
  std::size_t raised_by = 0;
  bool unused_to_heat = false;
  bool unverified = false;  // besides the table
};

// Stale weather is raised by one band more.
BandVerdict take_band(const BandTable& table, Found found, const MeasuredAge& age);

// Nothing to fear, or nothing to judge by: no change, and the sentence as its reason.
BandVerdict not_judged(Topic topic, const std::string& sentence, const std::string& source, const MeasuredAge& age);

// Nothing to judge by, where that has to be taken for something: the table's second band.
BandVerdict taken_for_second_band(const BandTable& table, Topic topic, const std::string& sentence, bool unused_to_heat,
                                  std::vector<std::string> cautions);

}  // namespace lanework::care::environment
