// Any bytes as the files of a season: clear faults, or a season that its canonical files give back, and whose hours the
// stream sums as the reader of sheets does. A line '====' parts squads, hours, injuries, players and mapping.
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "app/read/decode_text.h"
#include "app/read/read_records.h"
#include "core/records/completeness.h"
#include "core/records/hours_stream.h"
#include "fuzz/promise.h"

namespace {

using namespace lanework::records;  // NOLINT(google-build-using-namespace)
using lanework::fuzz::promise;
using lanework::read::NamedText;
using lanework::read::RecordFiles;

const Terms& terms() {
  static const lanework::Result<Terms> kTerms = lanework::read::read_record_terms(LANEWORK_SOURCE_DIR "/catalogue");
  return kTerms.value();
}

const Period& period() {
  static const Period kPeriod = make_period(*lanework::make_date(2026, 8, 3), *lanework::make_date(2027, 5, 30),
                                            *lanework::make_date(2027, 6, 30))
                                    .value();
  return kPeriod;
}

std::vector<std::string> parts_of(const std::string& bytes) {
  constexpr std::string_view kMark = "\n====\n";
  std::vector<std::string> parts;
  for (std::size_t from = 0;;) {
    const std::size_t end = bytes.find(kMark, from);
    parts.push_back(bytes.substr(from, end - from));
    if (end == std::string::npos) return parts;
    from = end + kMark.size();
  }
}

void check_faults(const lanework::Faults& faults) {
  for (const lanework::Fault& fault : faults) lanework::fuzz::promise_clear_faults({fault}, fault.place.file);
}

void check_lines(const std::vector<std::string>& lines) {
  for (const std::string& line : lines) {
    for (const char c : line)
      promise(static_cast<unsigned char>(c) >= 0x20 && c != 0x7F, "a line of the report is one line");
  }
}

void check_season(const ReadSeason& read) {
  check_lines(completeness_lines(completeness(read)));
  const CanonicalFiles files = canonical_files(read.season, terms());
  const RecordFiles named{{"squads.csv", files.squads},
                          {"hours.csv", files.hours},
                          {"injuries.csv", files.injuries},
                          NamedText{"players.csv", files.players}};
  const ReadSeason again = lanework::read::read_records(named, terms(), {}, period());
  promise(again.faults.empty(), "canonical files have no faults");
  promise(again.season == read.season, "canonical files give the season back");
  HoursStream stream("hours.csv", read.season.squads, period());
  stream.take(files.hours);
  const auto table = std::move(stream).finish();
  promise(table.ok() && table.value() == hours_by_week(read.season), "the stream sums what the reader reads");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::vector<std::string> parts = parts_of(std::string(data, data + size));
  parts.resize(5);
  Mapping mapping;
  if (const auto document = lanework::parse_toml("mapping.toml", parts[4])) {
    auto stated = read_mapping(document.value(), terms(), lanework::read::unicode_text_forms());
    if (stated) {
      mapping = std::move(stated).value();
    } else {
      check_faults(stated.faults());
    }
  }
  RecordFiles files{{"squads.csv", parts[0]}, {"hours.csv", parts[1]}, {"injuries.csv", parts[2]}, {}};
  if (!parts[3].empty()) files.players = NamedText{"players.csv", parts[3]};
  const ReadSeason read = lanework::read::read_records(files, terms(), mapping, period());
  check_faults(read.faults);
  if (read.faults.empty()) check_season(read);

  // The stream on bytes of anybody's: never a crash, and its faults are clear.
  HoursStream stream("hours.csv", read.season.squads, period());
  stream.take(canonical_hours_heading() + "\n");
  stream.take(parts[1]);
  const auto table = std::move(stream).finish();
  if (!table) check_faults(table.faults());
  return 0;
}
