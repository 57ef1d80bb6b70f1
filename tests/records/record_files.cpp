#include "tests/records/record_files.h"

#include <gtest/gtest.h>

#include "app/read/decode_text.h"
#include "core/records/completeness.h"

namespace lanework::records::test {

const Terms& shipped_terms() {
  static const Result<Terms> kTerms = read::read_record_terms(LANEWORK_SOURCE_DIR "/catalogue");
  return kTerms.value();
}

Date day(const std::string& iso) { return *parse_iso_date(iso); }

Period season_2026() { return make_period(day("2026-08-03"), day("2027-05-30"), day("2027-06-30")).value(); }

ReadSeason read(const Files& files, const Period& period) {
  Mapping mapping;
  if (!files.mapping.empty()) {
    const auto document = parse_toml("mapping.toml", files.mapping);
    auto stated = read_mapping(document.value(), shipped_terms(), read::unicode_text_forms());
    for (const Fault& fault : stated ? Faults{} : stated.faults()) ADD_FAILURE() << to_line(fault);
    if (stated) mapping = std::move(stated).value();
  }
  read::RecordFiles named{
      {"squads.csv", files.squads}, {"hours.csv", files.hours}, {"injuries.csv", files.injuries}, {}};
  if (files.players) named.players = read::NamedText{"players.csv", *files.players};
  return read::read_records(named, shipped_terms(), mapping, period);
}

ReadSeason read_well(const Files& files, const Period& period) {
  ReadSeason out = read(files, period);
  for (const Fault& fault : out.faults) ADD_FAILURE() << to_line(fault);
  return out;
}

std::vector<std::string> fault_lines(const ReadSeason& read) {
  std::vector<std::string> lines;
  for (const Fault& fault : read.faults) lines.push_back(to_line(fault));
  return lines;
}

std::string joined(const std::vector<std::string>& lines) {
  std::string out;
  for (const std::string& line : lines) out += line + "\n";
  return out;
}

std::vector<std::string> question_lines(const ReadSeason& read) {
  std::vector<std::string> lines;
  for (const Question& question : completeness(read).questions) {
    if (question.kind != QuestionKind::kWeeksWithoutRows) lines.push_back(to_line(question));
  }
  return lines;
}

}  // namespace lanework::records::test
