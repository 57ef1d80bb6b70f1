#include "app/read/read_records.h"

#include <array>
#include <filesystem>

#include "app/read/decode_text.h"
#include "app/read/files.h"
#include "app/read/separated_values.h"
#include "core/records/hours_stream.h"

namespace lanework::read {
namespace {

using records::SheetKind;

std::string in_folder(const std::string& folder, const char* name) {
  return (std::filesystem::path(folder) / (std::string(name) + ".csv")).string();
}

// An empty sheet after faults.
people::Sheet sheet_of(const NamedText& text, SheetKind kind, const records::Mapping& mapping,
                       const people::TextForms& forms, Faults& faults) {
  const auto failed = [&](const Faults& more) {
    faults.insert(faults.end(), more.begin(), more.end());
    return people::Sheet{text.file, {}};
  };
  if (text.bytes.size() > kMostRecordBytes) {
    return failed({Fault{FaultCode::kOutOfRange,
                         {text.file, 0, 0, {}},
                         "more than 16 MB",
                         "one sheet of a season",
                         "hours that are canonical can be summed at any length"}});
  }
  const Result<DecodedText> decoded = decode_text(text.file, text.bytes);
  if (!decoded) return failed(decoded.faults());
  const auto known = [&](const people::Sheet& sheet) {
    return records::count_known_headings(sheet, kind, mapping, forms);
  };
  SeparatedValues values = read_best_separated(text.file, decoded.value().text, known);
  if (!values.faults.empty()) return failed(values.faults);
  return std::move(values.sheet);
}

}  // namespace

Result<records::Terms> read_record_terms(const std::string& catalogue_folder) {
  const auto document = read_toml_file((std::filesystem::path(catalogue_folder) / "record_terms.toml").string());
  if (!document) return document.faults();
  return records::read_terms(document.value());
}

Result<records::Mapping> read_record_mapping(const std::string& path, const records::Terms& terms) {
  const auto document = read_toml_file(path);
  if (!document) return document.faults();
  return records::read_mapping(document.value(), terms, unicode_text_forms());
}

Result<RecordFiles> record_files_in(const std::string& folder) {
  Faults faults;
  const auto named = [&](SheetKind kind) {
    const std::string path = in_folder(folder, records::sheet_name(kind));
    Result<std::string> bytes = read_file(path);
    if (bytes) return NamedText{path, std::move(bytes).value()};
    faults.insert(faults.end(), bytes.faults().begin(), bytes.faults().end());
    return NamedText{path, {}};
  };
  RecordFiles files{named(SheetKind::kSquads), named(SheetKind::kHours), named(SheetKind::kInjuries), {}};
  if (std::filesystem::exists(in_folder(folder, records::sheet_name(SheetKind::kPlayers))))
    files.players = named(SheetKind::kPlayers);
  if (!faults.empty()) return faults;
  return files;
}

records::ReadSeason read_records(const RecordFiles& files, const records::Terms& terms, const records::Mapping& mapping,
                                 const records::Period& period, Language language) {
  const records::SeasonReading reading{&terms, &mapping, period, unicode_text_forms(), language};
  records::ReadSeason failed;
  failed.season.period = period;
  const auto sheet = [&](const NamedText& text, SheetKind kind) {
    return sheet_of(text, kind, mapping, reading.forms, failed.faults);
  };
  records::SeasonSheets sheets{sheet(files.squads, SheetKind::kSquads),
                               sheet(files.hours, SheetKind::kHours),
                               sheet(files.injuries, SheetKind::kInjuries),
                               {}};
  if (files.players) sheets.players = sheet(*files.players, SheetKind::kPlayers);
  if (!failed.faults.empty()) return failed;
  return records::read_season(sheets, reading);
}

Result<std::vector<records::SquadRecord>> read_squad_records(const NamedText& squads, const records::Terms& terms,
                                                             const records::Mapping& mapping,
                                                             const records::Period& period) {
  const records::SeasonReading reading{&terms, &mapping, period, unicode_text_forms()};
  Faults faults;
  const people::Sheet sheet = sheet_of(squads, SheetKind::kSquads, mapping, reading.forms, faults);
  if (!faults.empty()) return faults;
  return records::read_squad_sheet(sheet, reading);
}

Result<records::WeekTable> sum_hours_file(const std::string& path, const std::vector<records::SquadRecord>& squads,
                                          const records::Period& period) {
  records::HoursStream stream(path, squads, period);
  const auto take = [&](std::string_view piece) {
    stream.take(piece);
    return true;
  };
  if (std::optional<Fault> fault = read_in_pieces(path, take)) return std::move(*fault);
  return std::move(stream).finish();
}

Faults write_canonical_files(const std::string& folder, const records::CanonicalFiles& files) {
  const std::array<std::pair<SheetKind, const std::string*>, records::kSheets> all = {
      {{SheetKind::kSquads, &files.squads},
       {SheetKind::kHours, &files.hours},
       {SheetKind::kInjuries, &files.injuries},
       {SheetKind::kPlayers, &files.players}}};
  Faults faults;
  for (const auto& [kind, text] : all) {
    if (std::optional<Fault> fault = write_file_atomically(in_folder(folder, records::sheet_name(kind)), *text))
      faults.push_back(std::move(*fault));
  }
  return faults;
}

}  // namespace lanework::read
