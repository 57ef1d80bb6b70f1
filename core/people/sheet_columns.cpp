#include "core/people/sheet_columns.h"

#include <algorithm>
#include <optional>

#include "core/people/roster_headings.h"

namespace lanework::people {
namespace {

constexpr std::size_t kRowsSearched = 40;

std::string stated_heading(const KnownColumns& known, std::size_t column) {
  return column < known.stated.size() ? known.stated[column] : std::string();
}

// What the user states goes before what we know, so that a heading of theirs may be one of another column's.
std::optional<std::size_t> column_of(const SheetCell& cell, const KnownColumns& known, const TextForms& forms) {
  const std::string words = plain_words(cell.text, forms);
  if (words.empty()) return {};
  for (std::size_t i = 0; i < known.stated.size(); ++i) {
    if (!known.stated[i].empty() && plain_words(known.stated[i], forms) == words) return i;
  }
  for (std::size_t i = 0; i < known.columns.size(); ++i) {
    if (stated_heading(known, i).empty() && among(known.columns[i].headings, words)) return i;
  }
  return {};
}

int known_in(const SheetRow& row, const KnownColumns& known, const TextForms& forms) {
  return static_cast<int>(std::count_if(row.cells.begin(), row.cells.end(), [&](const SheetCell& cell) {
    return column_of(cell, known, forms).has_value();
  }));
}

// Position of the row with the most known headings among the first ones; empty where none has two.
std::optional<std::size_t> best_row(const Sheet& sheet, const KnownColumns& columns, const TextForms& forms) {
  std::optional<std::size_t> best;
  int most = 1;
  for (std::size_t i = 0; i < std::min(kRowsSearched, sheet.rows.size()); ++i) {
    const int known = known_in(sheet.rows[i], columns, forms);
    if (known <= most) continue;
    most = known;
    best = i;
  }
  return best;
}

// "'squad', 'date' and 'happened'"
std::string required_names(const KnownColumns& known) {
  std::vector<std::string> names;
  for (const KnownColumn& column : known.columns) {
    if (column.required) names.push_back(quote(std::string(column.name)));
  }
  std::string out;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) out += i + 1 == names.size() ? " and " : ", ";
    out += names[i];
  }
  return out;
}

std::string see_page(const KnownColumns& known) { return "see " + known.page + " for the headings that are read"; }

}  // namespace

bool among(std::string_view list, std::string_view word) {
  for (std::size_t from = 0; from <= list.size();) {
    const std::size_t bar = std::min(list.find('|', from), list.size());
    if (list.substr(from, bar - from) == word) return true;
    from = bar + 1;
  }
  return false;
}

int count_known(const Sheet& sheet, const KnownColumns& known, const TextForms& forms) {
  const std::optional<std::size_t> row = best_row(sheet, known, forms);
  return row ? known_in(sheet.rows[*row], known, forms) : 0;
}

Faults faults_by_line(const Sheet& sheet, Faults faults, std::size_t most) {
  std::stable_sort(faults.begin(), faults.end(),
                   [](const Fault& a, const Fault& b) { return a.place.line < b.place.line; });
  if (faults.size() <= most) return faults;
  const std::size_t all = faults.size();
  faults.resize(most);
  faults.push_back(row_fault(FaultCode::kSyntax, sheet, 0, std::to_string(all) + " faults",
                             "none; the first " + std::to_string(most) + " are listed"));
  return faults;
}

bool SheetColumns::find_headings(Faults& faults) {
  const std::size_t before = faults.size();
  const std::optional<std::size_t> best = best_row(*sheet_, *known_, *forms_);
  if (!best) {
    faults.push_back(row_fault(FaultCode::kMissing, *sheet_, 0, "no heading row that we know",
                               "a row of headings with at least " + required_names(*known_), see_page(*known_)));
    return false;
  }
  heading_row_ = *best;
  take(sheet_->rows[heading_row_], faults);
  find_lacking(sheet_->rows[heading_row_], faults);
  return faults.size() == before;
}

void SheetColumns::take(const SheetRow& row, Faults& faults) {
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const std::optional<std::size_t> column = column_of(row.cells[i], *known_, *forms_);
    if (!column) continue;
    Heading& known = headings_[*column];
    const std::string written = tidy(row.cells[i].text);
    if (known.position >= 0) {
      faults.push_back(cell_fault(FaultCode::kDuplicate, *sheet_, row.cells[i], written,
                                  "one column only, and " + quote(known.as_written) + " is read already",
                                  "rename the column that is not meant"));
      continue;
    }
    known = {static_cast<int>(i), written};
  }
}

void SheetColumns::find_lacking(const SheetRow& row, Faults& faults) const {
  for (std::size_t i = 0; i < known_->columns.size(); ++i) {
    if (has(i)) continue;
    const std::string stated = stated_heading(*known_, i);
    if (!stated.empty()) {
      faults.push_back(
          row_fault(FaultCode::kMissing, *sheet_, row.line, "no column " + quote(stated),
                    "the heading that the mapping states for " + quote(std::string(known_->columns[i].name))));
    } else if (known_->columns[i].required) {
      faults.push_back(row_fault(FaultCode::kMissing, *sheet_, row.line,
                                 "no column " + quote(std::string(known_->columns[i].name)),
                                 "columns " + required_names(*known_), see_page(*known_)));
    }
  }
}

bool SheetColumns::repeats_headings(const SheetRow& row) const {
  for (std::size_t i = 0; i < headings_.size(); ++i) {
    if (has(i) && text(row, i) != headings_[i].as_written) return false;
  }
  return true;
}

std::vector<const SheetRow*> SheetColumns::rows(Faults& faults) const {
  std::vector<const SheetRow*> out;
  const std::size_t width = sheet_->rows[heading_row_].cells.size();
  for (std::size_t i = heading_row_ + 1; i < sheet_->rows.size(); ++i) {
    const SheetRow& row = sheet_->rows[i];
    std::size_t used = row.cells.size();
    while (used > 0 && tidy(row.cells[used - 1].text).empty()) --used;
    if (used == 0 || repeats_headings(row)) continue;
    if (used <= width) {
      out.push_back(&row);
      continue;
    }
    faults.push_back(row_fault(FaultCode::kSyntax, *sheet_, row.line, std::to_string(used) + " cells",
                               "at most " + std::to_string(width) + ", as many as headings",
                               "a cell that contains the separator needs quotation marks"));
  }
  return out;
}

SheetCell SheetColumns::cell(const SheetRow& row, std::size_t column) const {
  const int position = headings_[column].position;
  if (position >= 0 && position < static_cast<int>(row.cells.size()))
    return row.cells[static_cast<std::size_t>(position)];
  return {{}, row.line};
}

std::string SheetColumns::text(const SheetRow& row, std::size_t column) const { return tidy(cell(row, column).text); }

std::string SheetColumns::words(const SheetRow& row, std::size_t column) const {
  return plain_words(cell(row, column).text, *forms_);
}

Fault SheetColumns::fault(FaultCode code, const SheetRow& row, std::size_t column, std::string expected,
                          std::string hint) const {
  return cell_fault(code, *sheet_, cell(row, column), headings_[column].as_written, std::move(expected),
                    std::move(hint));
}

}  // namespace lanework::people
