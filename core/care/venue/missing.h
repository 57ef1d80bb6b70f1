// What a venue's action plan lacks on a day, each in words.
#pragma once

#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/care/venue/venue_plan.h"

namespace lanework::care {

// The seven that a plan is not complete without (Andersen 2002), and what is written down about it.
enum class PlanPart { kPeople, kEquipment, kCommunication, kTransport, kVenue, kAmbulanceContact, kRehearsal, kRecord };

struct MissingItem {
  PlanPart part;
  std::string words;  // 'no defibrillator named', 'last rehearsal over a year ago'
};

// Andersen 2002: reviewed and rehearsed at least once a year.
inline constexpr int kMostDaysSinceRehearsal = 365;

// What would be missed first in an emergency stands first. A date after the day has not come yet and counts as absent.
// A plan is complete on a day when nothing is missing; that says nothing about whether it would work.
std::vector<MissingItem> missing_on(const VenuePlan& plan, Date day);

}  // namespace lanework::care
