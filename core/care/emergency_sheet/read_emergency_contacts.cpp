#include "core/care/emergency_sheet/read_emergency_contacts.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/care/sheet/care_sheet.h"

namespace lanework::care {
namespace {

enum Column : std::size_t { kPlayer, kGuardian, kPhone, kAllergy, kInhaler, kOther, kConsent, kWithdrawn, kOnPhone };

constexpr int kDaysAhead = 3660;  // a consent dated for later is read, and gives nothing yet
constexpr int kOfAgeAt = 18;
constexpr int kFewestDigits = 3;

bool is_phone(const std::string& text) {
  const auto digits = std::count_if(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
  return digits >= kFewestDigits && text.find_first_not_of("0123456789 +-()/.") == std::string::npos;
}

std::size_t letters(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

EmergencyContact contact_of(CareSheet& cells, const people::SheetRow& row, const std::string& player) {
  EmergencyContact out{player,
                       cells.name(row, kGuardian, "the name of a guardian"),
                       cells.name(row, kPhone, "a phone number"),
                       cells.text(row, kAllergy),
                       cells.text(row, kInhaler),
                       cells.text(row, kOther)};
  if (!out.phone.empty() && !is_phone(out.phone)) cells.fault(FaultCode::kWrongType, row, kPhone, "a phone number");
  const std::pair<std::size_t, const std::string*> texts[] = {{kGuardian, &out.guardian},
                                                              {kPhone, &out.phone},
                                                              {kAllergy, &out.allergy},
                                                              {kInhaler, &out.inhaler},
                                                              {kOther, &out.other}};
  for (const auto& [column, text] : texts) {
    if (letters(*text) <= kMostContactLetters) continue;
    cells.fault(FaultCode::kOutOfRange, row, column, "at most " + std::to_string(kMostContactLetters) + " letters");
  }
  return out;
}

}  // namespace

bool consent_stands(const EmergencyConsent& consent, std::optional<Date> born, Date day) {
  if (!consent.given || *consent.given > day) return false;
  if (consent.withdrawn && *consent.withdrawn >= *consent.given) return false;
  const bool of_age = born && age_in_years(*born, day) >= kOfAgeAt;
  return !of_age || age_in_years(*born, *consent.given) >= kOfAgeAt;
}

const people::KnownColumns& emergency_columns() {
  static const people::KnownColumns kKnown = {{{"player", "player|player id|id|member no", true},
                                               {"guardian", "guardian|guardian name|parent", true},
                                               {"phone", "phone|guardian phone|telephone|mobile", true},
                                               {"allergy", "allergy|allergies"},
                                               {"inhaler", "inhaler"},
                                               {"other", "other"},
                                               {"consent", "consent|consent date", true},
                                               {"withdrawn", "withdrawn|taken back", true},
                                               {"on_phone", "on phone|on the phone"}},
                                              "docs/formats/emergency.md",
                                              {}};
  return kKnown;
}

Faults without_cells(Faults faults) {
  for (Fault& fault : faults) {
    if (fault.code != FaultCode::kMissing && fault.place.line > 0) fault.found = "a cell that is not shown here";
  }
  return faults;
}

Result<EmergencyContacts> read_emergency_contacts(const people::Sheet& sheet, const people::TextForms& forms,
                                                  const std::vector<people::Player>& squad, Date day) {
  Faults faults;
  CareSheet cells(sheet, emergency_columns(), forms, faults);
  const DateLimits any_day{*make_date(2000, 1, 1), Date{day.days_since_epoch + kDaysAhead}};
  const auto given = cells.dates(cells.rows(), kConsent, any_day, false);
  const auto withdrawn = cells.dates(cells.rows(), kWithdrawn, any_day, false);
  std::vector<std::optional<Date>> on_phone(cells.rows().size());
  if (cells.has(kOnPhone)) on_phone = cells.dates(cells.rows(), kOnPhone, any_day, false);
  std::map<std::string, const people::Player*> players;
  for (const people::Player& player : squad) players.emplace(player.id, &player);
  EmergencyContacts out;
  std::map<std::string, EmergencyContact> may_be_shown;
  std::set<std::string> seen;
  for (std::size_t i = 0; i < cells.rows().size(); ++i) {
    const people::SheetRow& row = *cells.rows()[i];
    const std::string id = cells.name(row, kPlayer, "the id of a player");
    if (!id.empty() && !seen.insert(id).second) cells.fault(FaultCode::kDuplicate, row, kPlayer, "each player once");
    const auto player = players.find(id);
    if (player == players.end()) {
      ++out.of_others;
    } else if (consent_stands({given[i], withdrawn[i]}, player->second->birth, day)) {
      EmergencyContact contact = contact_of(cells, row, id);
      contact.on_phone = consent_stands({on_phone[i], withdrawn[i]}, player->second->birth, day);
      may_be_shown.emplace(id, std::move(contact));
    }
  }
  if (!faults.empty()) return without_cells(people::faults_by_line(sheet, std::move(faults), kMostCareFaults));
  for (const people::Player& player : squad) {
    const auto found = may_be_shown.find(player.id);
    if (found != may_be_shown.end()) {
      out.contacts.push_back(found->second);
    } else {
      ++out.without_consent;
    }
  }
  return out;
}

}  // namespace lanework::care
