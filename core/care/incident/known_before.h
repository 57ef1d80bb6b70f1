// What was known of a player when an incident happened: from the entries that had been received by then. For the
// licensed clinician's eyes: places and signs stand in it, which no coach is shown.
#pragma once

#include <optional>
#include <vector>

#include "core/care/entries/fold.h"
#include "core/care/incident/incident.h"

namespace lanework::care {

struct HeldBefore {
  people::Restriction restriction;
  std::vector<Entry> stems_from;  // restrictions set, numbers told, symptoms; by receipt, at least one
};

struct KnownBefore {
  std::optional<ReceiptTime> as_known;  // of the latest receipt before it, of whomever; empty: nothing was received
  std::vector<HeldBefore> held;         // on the day
  std::vector<Entry> hurts;             // that nobody has lifted, by receipt; also those that a course carries
  std::vector<CourseStanding> courses;  // that are not over
};

// Entries count that were received, by their local time, before the minute of the incident; where its time is not
// known, before its day: one of the same day may be about the incident itself.
KnownBefore known_before(const std::vector<Entry>& entries, const Incident& incident, const PainRule& pain,
                         const ReturnRules& rules, const Ages& ages);

}  // namespace lanework::care
