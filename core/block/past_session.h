// A session that is over: what it really gave and used. docs/model/rolling.md.
#pragma once

#include <optional>
#include <vector>

#include "core/block/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/session/evening.h"

namespace lanework::block {

// What is known of it. Where there is no word, loads count as planned and nothing counts as given.
struct Report {
  enum class Happened { kNoWord, kHeld, kMissed, kCutShort };
  Happened happened = Happened::kNoWord;
  std::optional<int> minutes;  // that there really were; a session cut short without any gives nothing
  int quarters = kMostDidIt;   // of the credits, by how many did it
  std::vector<int> left_out;   // drills of the catalogue
};

// One drill as it was planned.
struct PlannedItem {
  int drill = 0;  // index into Catalogue::drills
  int rung = 0;
  int dose = 0;
  int steps = 0;  // of five seconds; 0: as the clock has it
  bool operator==(const PlannedItem&) const = default;
};

struct PastItem {
  PlannedItem planned;
  bool used = false;  // its loads count
  bool done = false;  // its credits count, and it is no longer new
};

struct PastSession {
  std::size_t evening = 0;  // index into Outline::evenings
  Report report;
  std::vector<PastItem> items;
  std::vector<int> promised;  // quarter-credits as planned, by family
  std::vector<int> given;     // as they came about
  Loads used{};
};

PastSession past_session(const catalogue::Catalogue& catalogue, const session::Evening& evening, std::size_t index,
                         const std::vector<PlannedItem>& planned, const Report& report);

}  // namespace lanework::block
