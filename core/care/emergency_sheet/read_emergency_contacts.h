// The sheet of emergency contacts (docs/formats/emergency.md), of which only what may be shown is kept.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/care/emergency_sheet/emergency_contact.h"
#include "core/people/player.h"
#include "core/people/sheet_columns.h"

namespace lanework::care {

const people::KnownColumns& emergency_columns();

struct EmergencyContacts {
  std::vector<EmergencyContact> contacts;  // of the squad, with a consent that stands; in the squad's order
  int without_consent = 0;                 // players of the squad who are not among them
  int of_others = 0;                       // rows about nobody of the squad
};

inline constexpr std::size_t kMostContactLetters = 120;  // of a cell

// Of players without a standing consent, and of others, only id and dates are looked at. Every fault is collected and
// none quotes a cell.
Result<EmergencyContacts> read_emergency_contacts(const people::Sheet& sheet, const people::TextForms& forms,
                                                  const std::vector<people::Player>& squad, Date day);

// The same faults without what the cells hold.
Faults without_cells(Faults faults);

}  // namespace lanework::care
