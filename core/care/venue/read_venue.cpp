#include "core/care/venue/read_venue.h"

#include <algorithm>

namespace lanework::care {
namespace {

std::size_t letters(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string words(TableReader& table, std::string_view key) {
  std::string text = table.text_or(key, "");
  if (letters(text) > kMostVenueLetters) {
    table.fault(FaultCode::kOutOfRange, key, std::to_string(letters(text)) + " letters",
                "at most " + std::to_string(kMostVenueLetters));
  }
  return text;
}

}  // namespace

Result<VenuePlan> read_venue(const Document& document) {
  Faults faults;
  TableReader root(document.file, &document.root, "", faults);
  VenuePlan plan;
  if (root.has("name")) plan.name = words(root, "name");
  if (plan.name.empty() && faults.empty()) (void)root.text("name");
  plan.address = words(root, "address");
  plan.map = words(root, "map");
  plan.way_in = words(root, "way_in");
  plan.emergency_number = words(root, "emergency_number");
  plan.phone = words(root, "phone_with_signal");
  plan.defibrillator = words(root, "defibrillator");
  plan.first_aid_bag = words(root, "first_aid_bag");
  TableReader roles = root.table("roles");
  plan.stays_with_player = words(roles, "stays_with_player");
  plan.calls = words(roles, "calls");
  plan.meets_ambulance = words(roles, "meets_ambulance");
  plan.minds_others = words(roles, "minds_others");
  plan.responsible = words(roles, "responsible");
  roles.finish();
  plan.ambulance_contact = root.date("ambulance_service_contacted");
  plan.last_rehearsal = root.date("last_rehearsal");
  plan.last_review = root.date("last_review");
  root.finish();
  if (!faults.empty()) return faults;
  return plan;
}

}  // namespace lanework::care
