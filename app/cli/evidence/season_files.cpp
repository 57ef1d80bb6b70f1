#include "app/cli/evidence/season_files.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>

#include "app/cli/evening_flags.h"
#include "app/cli/ledger/ledger_state.h"
#include "app/cli/today.h"
#include "app/read/files.h"

namespace lanework::cli {
namespace {

std::string flag_of(const SeasonFlags& flags, const char* name) { return "--" + flags.which + name; }

Fault missing(const char* flag, const char* expected) {
  return {FaultCode::kMissing, {"", 0, 0, flag}, "nothing", expected, {}};
}

Result<Date> date_of(const std::string& flag, const std::string& text) {
  const std::optional<Date> day = parse_iso_date(text);
  if (day) return *day;
  return Fault{
      FaultCode::kBadDate, {"", 0, 0, flag}, text.empty() ? "nothing" : quote(text), "a day such as 2026-06-14", {}};
}

Result<records::Period> period_of(const SeasonFlags& flags) {
  const auto first = date_of(flag_of(flags, "from"), flags.from);
  if (!first) return first.faults();
  const auto last = date_of(flag_of(flags, "to"), flags.to);
  if (!last) return last.faults();
  // What a ledger knows it knows by now.
  const auto known =
      flags.ledger.folder.empty() ? last : Result<Date>(std::max(first.value(), std::min(last.value(), today())));
  const auto as_of = flags.as_of.empty() ? known : date_of(flag_of(flags, "as-of"), flags.as_of);
  if (!as_of) return as_of.faults();
  return records::make_period(
      first.value(), last.value(), as_of.value(),
      {"", 0, 0, flag_of(flags, "from") + ", " + flag_of(flags, "to") + ", " + flag_of(flags, "as-of")});
}

struct Files {
  read::RecordFiles files;
  std::optional<findings::LeftOut> left_out;
  std::string what_went{};
};

// By the same readers as a club's own sheets.
Result<Files> files_of_ledger(const SeasonFlags& flags, const records::Period& period) {
  LedgerFlags place = flags.ledger;
  place.catalogue = flags.catalogue;
  const auto open = open_ledger(place);
  if (!open) return open.faults();
  const auto state = state_of(open.value());
  if (!state) return state.faults();
  SeasonSheetsAsked asked = flags.usual;
  asked.days = {period.first, period.last};
  asked.language = flags.language;
  auto sheets = season_sheets(place, asked, state.value());
  if (!sheets) return sheets.faults();
  const auto named = [&](const char* name) {
    return read::NamedText{"the ledger's " + std::string(name), std::move(sheets.value().files.at(name))};
  };
  return Files{{named("squads.csv"), named("hours.csv"), named("injuries.csv"), {}},
               findings::LeftOut{sheets.value().injuries_left_out, sheets.value().people_left_out,
                                 sheets.value().places_left_out, state.value().closed},
               std::move(sheets.value().what_went)};
}

Result<Files> files_of(const SeasonFlags& flags, const records::Period& period) {
  if (!flags.ledger.folder.empty()) {
    if (flags.records.empty() && flags.squads.empty() && flags.hours.empty() && flags.injuries.empty())
      return files_of_ledger(flags, period);
    return Fault{FaultCode::kUsage, {"", 0, 0, "--ledger"}, "files of records too", "a ledger or files, not both", {}};
  }
  if (!flags.records.empty()) {
    auto found = read::record_files_in(flags.records);
    if (!found) return found.faults();
    return Files{std::move(found).value(), {}, {}};
  }
  read::RecordFiles out;
  Faults faults;
  const auto take = [&](const std::string& path, const char* flag, read::NamedText& where) {
    if (path.empty()) {
      faults.push_back(missing(flag, "a file, or --records with the folder of all"));
      return;
    }
    auto bytes = read::read_file(path, {"", 0, 0, flag});
    if (bytes) {
      where = {path, std::move(bytes).value()};
    } else {
      faults.insert(faults.end(), bytes.faults().begin(), bytes.faults().end());
    }
  };
  take(flags.squads, "--squads", out.squads);
  take(flags.hours, "--hours", out.hours);
  take(flags.injuries, "--injuries", out.injuries);
  if (!flags.players.empty()) take(flags.players, "--players", out.players.emplace());
  if (!faults.empty()) return faults;
  return Files{std::move(out), {}, {}};
}

}  // namespace

void add_season_flags(CLI::App& command, SeasonFlags& flags) {
  command.add_option("--records", flags.records,
                     "folder with squads.csv, hours.csv, injuries.csv and perhaps players.csv");
  command.add_option("--squads", flags.squads, "the sheet of squads");
  command.add_option("--hours", flags.hours, "the sheet of hours");
  command.add_option("--injuries", flags.injuries, "the sheet of injuries");
  command.add_option("--players", flags.players, "the sheet of players, where there is one");
  command.add_option("--mapping", flags.mapping, "how the sheets' own headings and words are to be read (TOML)");
  command.add_option("--catalogue", flags.catalogue, "folder of the catalogue, if not the shipped one");
  command.add_option("--from", flags.from, "the season's first day, such as 2025-08-25")->required();
  command.add_option("--to", flags.to, "its last day")->required();
  command.add_option("--as-of", flags.as_of,
                     "the last day that anything was written down; the season's last if not said");
}

void add_season_ledger(CLI::App& command, SeasonFlags& flags) {
  add_ledger_source(command, flags.ledger);
  add_usual_hours(command, flags.usual);
}

Result<SeasonRead> read_season_files(const SeasonFlags& flags) {
  const auto catalogue = catalogue_folder(flags.catalogue);
  if (!catalogue) return catalogue.faults();
  auto terms = read::read_record_terms(catalogue.value());
  if (!terms) return terms.faults();
  records::Mapping mapping;
  if (!flags.mapping.empty()) {
    auto stated = read::read_record_mapping(flags.mapping, terms.value());
    if (!stated) return stated.faults();
    mapping = std::move(stated).value();
  }
  const auto period = period_of(flags);
  if (!period) return period.faults();
  const auto files = files_of(flags, period.value());
  if (!files) return files.faults();
  SeasonRead out{std::move(terms).value(), {}, files.value().left_out, files.value().what_went};
  out.read = read::read_records(files.value().files, out.terms, mapping, period.value(), flags.language);
  return out;
}

}  // namespace lanework::cli
