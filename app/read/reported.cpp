#include "app/read/reported.h"

#include <filesystem>
#include <optional>

#include "app/read/files.h"
#include "core/care/entries/read_entries.h"
#include "core/care/pain/read_pain_rule.h"
#include "core/care/return_to_sport/read_return_rules.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::read {
namespace {

template <class T>
void collect(const Result<T>& result, Faults& faults) {
  if (!result) faults.insert(faults.end(), result.faults().begin(), result.faults().end());
}

}  // namespace

Result<PainAndReturn> read_care_rules(const CareRuleFiles& files) {
  const std::filesystem::path folder = files.catalogue;
  const auto source_file = read_toml_file((folder / "sources.toml").string());
  if (!source_file) return source_file.faults();
  const auto sources = catalogue::read_sources(source_file.value());
  if (!sources) return sources.faults();
  const auto pain = read_toml_file((folder / "care" / "pain.toml").string());
  const auto returns = files.return_rules.empty() ? read_toml_file((folder / "care" / "return_rules.toml").string())
                                                  : read_toml_file(files.return_rules, files.return_rules_from);
  Faults faults;
  collect(pain, faults);
  collect(returns, faults);
  if (!faults.empty()) return faults;
  auto pain_rule = care::read_pain_rule(pain.value(), sources.value());
  auto rules = care::read_return_rules(returns.value(), sources.value());
  collect(pain_rule, faults);
  collect(rules, faults);
  if (!faults.empty()) return faults;
  return PainAndReturn{std::move(pain_rule).value(), std::move(rules).value()};
}

Result<care::Knowledge> fold_entries_file(const EntriesFile& file, const PainAndReturn& rules, const care::Ages& ages,
                                          const std::vector<std::string>& players) {
  const auto document = read_toml_file(file.path, file.from);
  if (!document) return document.faults();
  auto entries = care::read_entries(document.value(), rules.returns, players);
  if (!entries) return entries.faults();
  return care::fold(std::move(entries).value(), rules.pain, rules.returns, ages);
}

care::Ages ages_on(const std::vector<people::Player>& roster, Date day) {
  care::Ages out;
  for (const people::Player& player : roster) {
    if (const auto age = people::age_on(player, day)) out.emplace(player.id, *age);
  }
  return out;
}

}  // namespace lanework::read
