#include "app/read/read_roster.h"

#include "app/read/decode_text.h"
#include "app/read/separated_values.h"
#include "core/people/roster_headings.h"
#include "core/people/roster_rows.h"

namespace lanework::read {
namespace {

constexpr std::size_t kMostBytes = 4U << 20U;

}  // namespace

Result<std::vector<people::Player>> read_roster(const std::string& file, std::string_view bytes, Date evening,
                                                const RosterStatement& stated) {
  if (bytes.size() > kMostBytes) {
    return Fault{FaultCode::kOutOfRange, {file, 0, 0, {}}, "more than 4 MB", "a roster of one club", {}};
  }
  const Result<DecodedText> decoded = decode_text(file, bytes, stated.encoding);
  if (!decoded) return decoded.faults();
  people::RosterReading reading{evening,        stated.squad,         stated.order,
                                stated.serials, unicode_text_forms(), stated.whole_club};
  const auto known = [&](const people::Sheet& sheet) { return people::count_known_headings(sheet, reading.forms); };
  const SeparatedValues values = read_best_separated(file, decoded.value().text, known);
  if (!values.faults.empty()) return values.faults;
  return people::read_roster_rows(values.sheet, reading);
}

}  // namespace lanework::read
