// Which squads the lead sees first: at most three, each with its reasons, from what was planned and what was heard in
// the last four weeks. It says where to look and judges nobody. The weights are own judgement; docs/model/visits.md.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/units.h"
#include "core/ledger/fold.h"

namespace lanework::loop {

inline constexpr int kVisitLookBackDays = 28;
inline constexpr std::size_t kMostVisits = 3;

// What the plan that stands has for one squad on one day.
struct PlannedEvening {
  std::string squad;
  Date date;
  TimeOfDay start;
};

enum class VisitReason : std::uint8_t {
  kNotRun,        // wrapped up as missed, or with nobody doing it
  kNothingHeard,  // planned, over for a day, and nothing entered
  kFewDidIt,
  kAskedHelp,  // a coach asked for help with a drill
  kCutShort,
  kNotSeen  // no visit in the time looked back on
};

struct VisitCause {
  VisitReason reason;
  int count = 0;               // evenings; drills where help was asked; 0 where nothing is counted
  std::optional<Date> latest;  // of these; of kNotSeen the last visit, if there was one
};

struct VisitWish {
  std::string squad;
  std::vector<VisitCause> causes;  // the weightiest first, never only kNotSeen
  int weight = 0;
};

// state: of at least the days looked back on. The weightiest first, ties by squad; a squad without a cause is not among
// them, and what lies before the last visit counts no more.
// O(evenings log evenings).
std::vector<VisitWish> squads_to_visit(const ledger::State& state, const std::vector<PlannedEvening>& planned,
                                       Date today);

}  // namespace lanework::loop
