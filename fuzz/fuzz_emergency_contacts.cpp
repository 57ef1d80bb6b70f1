// Any bytes as the sheet of emergency contacts: only what may be shown of a squad, or clear faults that show no cell.
#include <cstddef>
#include <cstdint>
#include <string>

#include "app/read/decode_text.h"
#include "app/read/known_sheet.h"
#include "core/care/emergency_sheet/read_emergency_contacts.h"
#include "fuzz/promise.h"

namespace {

using namespace lanework;
using fuzz::promise;

constexpr const char* kFile = "emergency.csv";

// One without a birth date, one of age on the day, one who is not.
std::vector<people::Player> squad() {
  std::vector<people::Player> out(3);
  out[0].id = "Q06";
  out[1].id = "Q07";
  out[1].birth = make_date(2008, 11, 26);
  out[2].id = "Q08";
  out[2].birth = make_date(2013, 3, 14);
  return out;
}

void check_contact(const care::EmergencyContact& contact) {
  for (const std::string* text :
       {&contact.guardian, &contact.phone, &contact.allergy, &contact.inhaler, &contact.other}) {
    fuzz::promise_one_line(*text, "a cell is one line");
    promise(text->size() <= care::kMostContactLetters * 4, "a cell is no longer than may be");
  }
  promise(contact.phone.find_first_not_of("0123456789 +-()/.") == std::string::npos, "a phone number can be dialled");
}

void check_sheet(const people::Sheet& sheet, const people::TextForms& forms) {
  static const std::vector<people::Player> kSquad = squad();
  const auto read = care::read_emergency_contacts(sheet, forms, kSquad, *make_date(2026, 11, 26));
  if (!read) {
    fuzz::promise_clear_faults(read.faults(), kFile);
    for (const Fault& fault : read.faults()) {
      // What lacks is a column's name in our words.
      const bool lacks = fault.code == FaultCode::kMissing || fault.place.line == 0;
      promise(lacks || fault.found.find('\'') == std::string::npos, "no fault shows a cell");
    }
    return;
  }
  const care::EmergencyContacts& contacts = read.value();
  const auto count = static_cast<std::size_t>(contacts.without_consent) + contacts.contacts.size();
  promise(count == kSquad.size(), "each of the squad is there, or counted");
  std::size_t next = 0;
  for (const care::EmergencyContact& contact : contacts.contacts) {
    while (next < kSquad.size() && kSquad[next].id != contact.player) ++next;
    promise(next < kSquad.size(), "contacts are of the squad, in its order, each once");
    ++next;
    check_contact(contact);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const people::TextForms kForms = read::unicode_text_forms();
  const auto sheet = read::known_sheet_of(kFile, std::string(data, data + size), care::emergency_columns(), kForms);
  if (sheet) {
    check_sheet(sheet.value(), kForms);
  } else {
    fuzz::promise_clear_faults(sheet.faults(), kFile);
  }
  return 0;
}
