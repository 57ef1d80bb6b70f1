#include "app/read/known_sheet.h"

#include "app/read/decode_text.h"
#include "app/read/files.h"
#include "app/read/separated_values.h"

namespace lanework::read {

Result<people::Sheet> known_sheet_of(const std::string& file, const std::string& bytes,
                                     const people::KnownColumns& known, const people::TextForms& forms) {
  const Result<DecodedText> decoded = decode_text(file, bytes);
  if (!decoded) return decoded.faults();
  const auto headings = [&](const people::Sheet& sheet) { return people::count_known(sheet, known, forms); };
  SeparatedValues values = read_best_separated(file, decoded.value().text, headings);
  if (!values.faults.empty()) return values.faults;
  return std::move(values.sheet);
}

Result<people::Sheet> read_known_sheet(const std::string& path, const people::KnownColumns& known,
                                       const people::TextForms& forms, const Place& from) {
  const Result<std::string> bytes = read_file(path, from);
  if (!bytes) return bytes.faults();
  return known_sheet_of(path, bytes.value(), known, forms);
}

}  // namespace lanework::read
