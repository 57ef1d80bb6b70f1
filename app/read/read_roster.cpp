#include "app/read/read_roster.h"

#include <array>

#include "app/read/decode_text.h"
#include "app/read/separated_values.h"
#include "core/people/roster_headings.h"
#include "core/people/roster_rows.h"

namespace lanework::read {
namespace {

constexpr std::size_t kMostBytes = 4U << 20U;

// The separator is the one under which the sheet reads best as a roster; of a file that breaks off, the
// part before.
SeparatedValues read_sheet(const std::string& file, const std::string& text, const people::TextForms& forms) {
  if (const char stated = stated_separator(text); stated != 0) {
    SeparatedValues values = read_separated_values(file, text, stated);
    if (!values.sheet.rows.empty()) values.sheet.rows.erase(values.sheet.rows.begin());
    return values;
  }
  constexpr std::array<char, 3> kSeparators = {',', ';', '\t'};
  SeparatedValues best;
  int most = -1;
  for (const char separator : kSeparators) {
    SeparatedValues values = read_separated_values(file, text, separator);
    const int known = people::count_known_headings(values.sheet, forms);
    if (known <= most) continue;
    most = known;
    best = std::move(values);
  }
  return best;
}

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
  const SeparatedValues values = read_sheet(file, decoded.value().text, reading.forms);
  if (!values.faults.empty()) return values.faults;
  return people::read_roster_rows(values.sheet, reading);
}

}  // namespace lanework::read
