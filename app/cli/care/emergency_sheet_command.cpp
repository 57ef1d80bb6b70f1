#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/private_pages.h"
#include "app/cli/command.h"
#include "app/cli/page_files.h"
#include "app/cli/today.h"
#include "app/draw/emergency_sheet.h"
#include "app/read/decode_text.h"
#include "app/read/known_sheet.h"
#include "app/read/squad_roster.h"
#include "core/care/emergency_sheet/read_emergency_contacts.h"

namespace lanework::cli {
namespace {

constexpr int kExpiresAfterDays = 90;  // phones change; own judgement
constexpr int kMostDays = 366;

struct EmergencyFlags {
  std::string sheet;
  std::string squad;
  std::string day;
  std::string expires;
  std::string out;
  std::string paper = "a4";
};

Result<Date> expiry(const EmergencyFlags& flags, Date day) {
  const Date usual{day.days_since_epoch + kExpiresAfterDays};
  if (flags.expires.empty()) return usual;
  const auto stated = day_or_today("--expires", flags.expires);
  if (!stated) return stated.faults();
  const int days = days_between(day, stated.value());
  if (days > 0 && days <= kMostDays) return stated.value();
  return Fault{FaultCode::kOutOfRange,
               {"", 0, 0, "--expires"},
               to_iso(stated.value()),
               "a day after " + to_iso(day) + ", at most a year later",
               {}};
}

draw::EmergencySheetMatter matter_of(const read::SquadRoster& squad, const care::EmergencyContacts& contacts, Date day,
                                     Date expires) {
  draw::EmergencySheetMatter out;
  out.club = squad.club;
  out.squad = squad.squad;
  out.printed = to_words(day);
  out.printed_iso = to_iso(day);
  out.expires = to_words(expires);
  out.without_consent = contacts.without_consent;
  for (const care::EmergencyContact& contact : contacts.contacts) {
    const auto player = std::find_if(squad.players.begin(), squad.players.end(),
                                     [&](const people::Player& one) { return one.id == contact.player; });
    out.rows.push_back(
        {player->name, contact.guardian, contact.phone, contact.allergy, contact.inhaler, contact.other});
  }
  return out;
}

int emergency_sheet(const EmergencyFlags& flags) {
  const auto day = day_or_today("--date", flags.day);
  if (!day) return report(day.faults());
  const auto expires = expiry(flags, day.value());
  if (!expires) return report(expires.faults());
  const auto squad = read::read_squad_roster(flags.squad, day.value());
  if (!squad) return report(squad.faults());
  const people::TextForms forms = read::unicode_text_forms();
  const auto sheet = read::read_known_sheet(flags.sheet, care::emergency_columns(), forms);
  if (!sheet) return report(care::without_cells(sheet.faults()));
  const auto contacts = care::read_emergency_contacts(sheet.value(), forms, squad.value().players, day.value());
  if (!contacts) return report(contacts.faults());
  const care::EmergencyContacts& found = contacts.value();
  if (found.contacts.empty()) {
    std::printf("No player of the squad has a consent that stands: nothing is written.\n");
    return kAnswerIsNo;
  }
  const auto pages = draw::draw_emergency_sheet(matter_of(squad.value(), found, day.value(), expires.value()),
                                                paper_named(flags.paper));
  if (!pages) return report(pages.faults());
  const auto written = write_private_pages("emergency-sheet", pages.value(), flags.out);
  if (!written) return report(written.faults());
  std::printf("%s\n%zu of %zu players; %d without a consent that stands are counted and not named.\n",
              written.value().c_str(), found.contacts.size(), squad.value().players.size(), found.without_consent);
  if (found.of_others > 0) std::printf("Rows about nobody of this squad: %d.\n", found.of_others);
  std::printf("Print it once, fold and close it, and delete the file. Local rules and licensed practice come first.\n");
  return kDone;
}

}  // namespace

void add_care_emergency_sheet_command(CLI::App& care, int& exit_status) {
  CLI::App* command = care.add_subcommand(
      "emergency-sheet", "a sealed page for the coach: phones and allergies of those whose family agreed");
  const auto flags = std::make_shared<EmergencyFlags>();
  command->add_option("sheet", flags->sheet, "player, guardian, phone, consent and more (docs/formats/emergency.md)")
      ->required();
  command->add_option("--squad", flags->squad, "the squad file")->required();
  command->add_option("--date", flags->day, "the day of printing, such as 2026-11-26 (today)");
  command->add_option("--expires", flags->expires, "the day after which it is destroyed (90 days on)");
  command->add_option("--out", flags->out, "folder for the page")->required();
  command->add_option("--paper", flags->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  command->callback([flags, &exit_status] { exit_status = emergency_sheet(*flags); });
}

}  // namespace lanework::cli
