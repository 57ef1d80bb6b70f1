#include "app/read/separated_values.h"

#include <csv.h>

#include <algorithm>
#include <array>

namespace lanework::read {
namespace {

// libcsv hands over cells without places, so it is fed byte by byte while the lines are counted here.
class SheetBuilder {
 public:
  SheetBuilder(std::string file, char separator) {
    sheet_.file = std::move(file);
    csv_init(&parser_, kOptions);
    csv_set_delim(&parser_, static_cast<unsigned char>(separator));
  }
  ~SheetBuilder() { csv_free(&parser_); }
  SheetBuilder(const SheetBuilder&) = delete;
  SheetBuilder& operator=(const SheetBuilder&) = delete;

  SeparatedValues build(std::string_view text) {
    char before = 0;
    for (const char c : text) {
      if (at_cell_start_ && c != ' ') {
        cell_line_ = line_;
        at_cell_start_ = false;
      }
      // Strict inside quoted cells only: an inch mark in a plain cell is just text.
      csv_set_opts(&parser_, static_cast<unsigned char>(parser_.quoted != 0 ? kOptions | CSV_STRICT : kOptions));
      if (csv_parse(&parser_, &c, 1, on_cell, on_row, this) != 1) return with(broken_quotation());
      if (c == '\n' ? before != '\r' : c == '\r') ++line_;
      before = c;
    }
    if (csv_fini(&parser_, on_cell, on_row, this) != 0) return with(unclosed_quotation());
    return {std::move(sheet_), {}};
  }

 private:
  static constexpr unsigned char kOptions = CSV_STRICT_FINI | CSV_REPALL_NL;
  csv_parser parser_{};
  people::Sheet sheet_;
  people::SheetRow row_;
  int line_ = 1;
  int cell_line_ = 1;
  bool at_cell_start_ = true;

  static void on_cell(void* text, std::size_t size, void* self) {
    auto& builder = *static_cast<SheetBuilder*>(self);
    if (builder.row_.cells.empty()) builder.row_.line = builder.cell_line_;
    builder.row_.cells.push_back({std::string(static_cast<const char*>(text), size), builder.cell_line_});
    builder.at_cell_start_ = true;
  }
  static void on_row(int /*separator*/, void* self) {
    auto& builder = *static_cast<SheetBuilder*>(self);
    builder.at_cell_start_ = true;
    if (builder.row_.cells.empty()) return;
    builder.sheet_.rows.push_back(std::move(builder.row_));
    builder.row_ = {};
  }

  SeparatedValues with(Fault fault) {
    if (csv_error(&parser_) != CSV_EPARSE) {
      fault = {FaultCode::kSyntax, {sheet_.file, line_, 0, {}}, "a cell that is too large", "a spreadsheet's cell", {}};
    }
    return {std::move(sheet_), {std::move(fault)}};
  }
  [[nodiscard]] Fault broken_quotation() const {
    return {FaultCode::kSyntax,
            {sheet_.file, line_, 0, {}},
            "text behind a closing quotation mark",
            "the separator or the end of the line",
            "a quotation mark inside a quoted cell is doubled"};
  }
  [[nodiscard]] Fault unclosed_quotation() const {
    return {FaultCode::kSyntax,
            {sheet_.file, cell_line_, 0, {}},
            "a quoted cell that never closes",
            "a closing quotation mark",
            "the file may be half-written"};
  }
};

}  // namespace

SeparatedValues read_separated_values(const std::string& file, std::string_view text, char separator) {
  return SheetBuilder(file, separator).build(text);
}

SeparatedValues read_best_separated(const std::string& file, const std::string& text,
                                    const std::function<int(const people::Sheet&)>& known_headings) {
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
    const int known = known_headings(values.sheet);
    if (known <= most) continue;
    most = known;
    best = std::move(values);
  }
  return best;
}

char stated_separator(std::string_view text) {
  constexpr std::string_view kStart = "sep=";
  if (text.size() < kStart.size() + 2 || text.substr(0, kStart.size()) != kStart) return 0;
  const char next = text[kStart.size() + 1];
  return next == '\r' || next == '\n' ? text[kStart.size()] : '\0';
}

}  // namespace lanework::read
