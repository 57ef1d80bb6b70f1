#include "app/cli/catalogue_rows.h"

#include "app/cli/describe_drill.h"

namespace lanework::cli {
namespace {

std::vector<std::string> emphasis_row(const catalogue::FamilyRow& family) {
  return {family.name + ", the club's emphasis", "in place of " + std::to_string(family.emphasis->catalogue_weight),
          "accepted by the lead, from the injuries of " + to_iso(family.emphasis->from) + " to " +
              to_iso(family.emphasis->to) + "; emphasis.toml"};
}

}  // namespace

Rows constant_rows(const std::vector<clock::ConstantRow>& constants, const catalogue::Catalogue& catalogue) {
  Rows rows;
  for (const clock::ConstantRow& row : constants) {
    rows.push_back({row.why, row.value + " " + row.unit, source_words(row.source, catalogue)});
  }
  return rows;
}

Rows family_rows(const catalogue::Catalogue& catalogue, int age) {
  Rows rows;
  for (const catalogue::FamilyRow& family : catalogue.families) {
    rows.push_back({family.name,
                    "weight " + std::to_string(family.weight) + ", " + std::to_string(family.session_work.count) +
                        " s of work" + (family.required ? ", required" : ""),
                    source_words(family.sources, catalogue)});
    if (family.emphasis) rows.push_back(emphasis_row(family));
    if (!family.eccentric_first || age < family.eccentric_first->from_age) continue;
    rows.push_back({family.name + ", not eccentric",
                    "counts " + std::to_string(family.eccentric_first->other_work_percent) + " %",
                    source_words(family.eccentric_first->sources, catalogue)});
  }
  return rows;
}

std::string ages_text(const catalogue::Ceilings& band) {
  return "ages " + std::to_string(band.age_from) + " to " + std::to_string(band.age_to);
}

std::vector<std::string> match_row(const catalogue::MatchDistance& row, const catalogue::Catalogue& catalogue) {
  const std::string when = row.days == 0   ? "on a match day"
                           : row.days == 1 ? "the day before a match"
                                           : std::to_string(row.days) + " days before a match";
  return {when,
          std::to_string(row.contacts_percent) + " / " + std::to_string(row.eccentric_percent) + " / " +
              std::to_string(row.hard_running_percent) + " %",
          source_words(row.sources, catalogue)};
}

}  // namespace lanework::cli
