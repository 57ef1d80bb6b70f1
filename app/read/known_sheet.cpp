#include "app/read/known_sheet.h"

#include "app/read/decode_text.h"
#include "app/read/files.h"
#include "app/read/separated_values.h"

namespace lanework::read {

Result<people::Sheet> read_known_sheet(const std::string& path, const people::KnownColumns& known,
                                       const people::TextForms& forms, const Place& from) {
  const Result<std::string> bytes = read_file(path, from);
  if (!bytes) return bytes.faults();
  const Result<DecodedText> decoded = decode_text(path, bytes.value());
  if (!decoded) return decoded.faults();
  const auto headings = [&](const people::Sheet& sheet) { return people::count_known(sheet, known, forms); };
  SeparatedValues values = read_best_separated(path, decoded.value().text, headings);
  if (!values.faults.empty()) return values.faults;
  return std::move(values.sheet);
}

}  // namespace lanework::read
