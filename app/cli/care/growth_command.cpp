#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/growth_words.h"
#include "app/cli/care/lead_answer.h"
#include "app/cli/command.h"
#include "app/cli/today.h"
#include "app/read/decode_text.h"
#include "app/read/known_sheet.h"
#include "core/care/growth/read_growth_people.h"
#include "core/care/growth/read_measurements.h"

namespace lanework::cli {
namespace {

namespace growth = care::growth;

struct GrowthFlags {
  LeadFlags common;
  std::string people;
  bool restrictions = false;
};

Result<growth::GrowthTable> read_table(const GrowthFlags& flags) {
  const auto document = care_document(flags.common, "growth.toml");
  if (!document) return document.faults();
  return growth::read_growth_table(document.value());
}

Result<GrowthMatter> read_matter(const GrowthFlags& flags, Date day) {
  auto table = read_table(flags);
  if (!table) return table.faults();
  const people::TextForms forms = read::unicode_text_forms();
  const auto people_sheet =
      read::read_known_sheet(flags.people, growth::growth_people_columns(), forms, {"", 0, 0, "--people"});
  if (!people_sheet) return people_sheet.faults();
  const auto people = growth::read_growth_people(people_sheet.value(), table.value(), forms, day);
  if (!people) return people.faults();
  const auto sheet = read::read_known_sheet(flags.common.sheet, growth::measurement_columns(), forms);
  if (!sheet) return sheet.faults();
  const auto measured = growth::read_measurements(sheet.value(), people.value(), table.value(), forms, day);
  if (!measured) return measured.faults();
  GrowthMatter out;
  out.day = day;
  out.rows_not_read = measured.value().rows_not_read;
  for (std::size_t i = 0; i < people.value().size(); ++i) {
    const growth::GrowthPerson& person = people.value()[i];
    if (!flags.common.player.empty() && person.player != flags.common.player) continue;
    out.readings.push_back(growth::read_growth(table.value(), person, measured.value().of[i], day));
  }
  if (out.readings.empty()) return unknown_player(flags.common, flags.people);
  out.table = std::move(table).value();
  return out;
}

Result<LeadAnswer> answer(const GrowthFlags& flags) {
  const auto day = day_or_today("--date", flags.common.day);
  if (!day) return day.faults();
  const auto matter = read_matter(flags, day.value());
  if (!matter) return matter.faults();
  return flags.restrictions ? growth_restrictions(matter.value()) : growth_answer(matter.value());
}

}  // namespace

void add_care_growth_command(CLI::App& care, int& exit_status) {
  CLI::App* command =
      care.add_subcommand("growth", "who may be growing fast, of those who agreed to be measured; the lead only");
  const auto flags = std::make_shared<GrowthFlags>();
  add_lead_flags(*command, flags->common, "measurements: player, date, height_cm and more (docs/formats/growth.md)");
  command->add_option("--people", flags->people, "who agreed: player, born, sex, consent, assent and more")->required();
  command->add_flag("--restrictions", flags->restrictions,
                    "only what the restrictions file takes, without a measure or a reason");
  command->callback([flags, &exit_status] { exit_status = show(answer(*flags), flags->common.json); });
}

}  // namespace lanework::cli
