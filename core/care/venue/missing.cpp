#include "core/care/venue/missing.h"

namespace lanework::care {
namespace {

bool has_come(const std::optional<Date>& date, Date day) { return date && *date <= day; }

// Empty when it is recent.
std::string yearly(const std::string& what, const std::optional<Date>& last, Date day) {
  if (!has_come(last, day)) return "no " + what + " yet";
  if (days_between(*last, day) > kMostDaysSinceRehearsal) return "last " + what + " over a year ago";
  return {};
}

}  // namespace

std::vector<MissingItem> missing_on(const VenuePlan& plan, Date day) {
  std::vector<MissingItem> out;
  const auto want = [&](PlanPart part, const std::string& text, const char* words) {
    if (text.empty()) out.push_back({part, words});
  };
  want(PlanPart::kCommunication, plan.emergency_number, "no emergency number");
  want(PlanPart::kVenue, plan.address, "no address");
  want(PlanPart::kTransport, plan.way_in, "no way in for the ambulance");
  want(PlanPart::kEquipment, plan.defibrillator, "no defibrillator named");
  want(PlanPart::kCommunication, plan.phone, "no phone with signal named");
  want(PlanPart::kEquipment, plan.first_aid_bag, "no first-aid bag named");
  want(PlanPart::kPeople, plan.stays_with_player, "nobody stays with the player");
  want(PlanPart::kPeople, plan.calls, "nobody calls");
  want(PlanPart::kPeople, plan.meets_ambulance, "nobody meets the ambulance");
  want(PlanPart::kPeople, plan.minds_others, "nobody minds the others");
  if (!has_come(plan.ambulance_contact, day)) {
    out.push_back({PlanPart::kAmbulanceContact, "ambulance service not asked"});
  }
  if (const std::string words = yearly("rehearsal", plan.last_rehearsal, day); !words.empty()) {
    out.push_back({PlanPart::kRehearsal, words});
  }
  want(PlanPart::kVenue, plan.map, "no map in words");
  want(PlanPart::kRecord, plan.responsible, "nobody responsible for the record");
  if (const std::string words = yearly("review", plan.last_review, day); !words.empty()) {
    out.push_back({PlanPart::kRecord, words});
  }
  return out;
}

}  // namespace lanework::care
