#include "app/read/read_sessions.h"

#include "app/read/decode_text.h"
#include "app/read/separated_values.h"

namespace lanework::read {
namespace {

constexpr std::size_t kMostBytes = 4U << 20U;

}  // namespace

Result<std::vector<club::SessionRow>> read_sessions(const std::string& file, std::string_view bytes,
                                                    const club::Club& club, const club::Allocation& allocation,
                                                    Date today) {
  if (bytes.size() > kMostBytes) {
    return Fault{FaultCode::kOutOfRange, {file, 0, 0, {}}, "more than 4 MB", "the sessions of one block", {}};
  }
  const Result<DecodedText> decoded = decode_text(file, bytes);
  if (!decoded) return decoded.faults();
  const club::SessionReading reading{&club, &allocation, today, unicode_text_forms()};
  const auto known = [&](const people::Sheet& sheet) {
    return club::count_known_session_headings(sheet, reading.forms);
  };
  const SeparatedValues values = read_best_separated(file, decoded.value().text, known);
  if (!values.faults.empty()) return values.faults;
  return club::read_session_rows(values.sheet, reading);
}

}  // namespace lanework::read
