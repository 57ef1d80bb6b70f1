#include "core/care/sheet/care_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "core/people/roster_dates.h"
#include "core/people/roster_headings.h"

namespace lanework::care {
namespace {

// More digits than a lead's number ever has; a sum of so many stays exact.
constexpr std::size_t kMostDigits = 15;

std::string day_words(const DateLimits& limits) {
  return "a day from " + to_iso(limits.earliest) + " to " + to_iso(limits.latest);
}

}  // namespace

std::optional<double> decimal_number(std::string_view text) {
  double sign = 1;
  if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
    sign = text.front() == '-' ? -1 : 1;
    text.remove_prefix(1);
  }
  double whole = 0;
  double below = 1;
  std::size_t digits = 0;
  bool after_mark = false;
  for (const char c : text) {
    if ((c == '.' || c == ',') && !after_mark && digits > 0) {
      after_mark = true;
      continue;
    }
    if (c < '0' || c > '9' || ++digits > kMostDigits) return {};
    whole = whole * 10 + (c - '0');
    if (after_mark) below *= 10;
  }
  if (digits == 0 || (after_mark && below == 1)) return {};
  return sign * whole / below;
}

std::string short_decimal(double value, int decimals) {
  std::array<char, 48> digits{};
  std::snprintf(digits.data(), digits.size(), "%.*f", decimals, value);
  std::string out = digits.data();
  if (out.find('.') != std::string::npos) {
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
  }
  return out == "-0" ? "0" : out;
}

CareSheet::CareSheet(const people::Sheet& sheet, const people::KnownColumns& known, const people::TextForms& forms,
                     Faults& faults)
    : sheet_(&sheet), forms_(&forms), columns_(sheet, known, forms), faults_(&faults) {
  if (!columns_.find_headings(faults)) return;
  rows_ = columns_.rows(faults);
  if (rows_.empty()) {
    faults.push_back(
        people::row_fault(FaultCode::kMissing, sheet, 0, "headings only", "rows below the headings", known.page));
  }
  if (rows_.size() <= kMostCareRows) return;
  faults.push_back(people::row_fault(FaultCode::kOutOfRange, sheet, 0, std::to_string(rows_.size()) + " rows",
                                     "at most " + std::to_string(kMostCareRows)));
  rows_.clear();
}

std::string CareSheet::text(const people::SheetRow& row, std::size_t column) const {
  return columns_.text(row, column);
}

std::string CareSheet::name(const people::SheetRow& row, std::size_t column, const std::string& expected) {
  std::string out = text(row, column);
  if (out.empty()) fault(FaultCode::kMissing, row, column, expected);
  return out;
}

std::optional<double> CareSheet::number(const people::SheetRow& row, std::size_t column, const NumberLimits& limits) {
  const std::string cell = text(row, column);
  if (cell.empty()) return {};
  const std::optional<double> value = decimal_number(cell);
  if (value && *value >= limits.least && *value <= limits.most) return value;
  fault(value ? FaultCode::kOutOfRange : FaultCode::kWrongType, row, column, limits.expected);
  return {};
}

std::optional<std::size_t> CareSheet::word(const people::SheetRow& row, std::size_t column,
                                           const std::vector<std::string_view>& words) {
  const std::string cell = text(row, column);
  if (cell.empty()) return {};
  const std::string plain = people::plain_words(cell, *forms_);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (people::plain_words(words[i], *forms_) == plain) return i;
  }
  std::string list;
  for (const std::string_view one : words) list += (list.empty() ? "one of " : ", ") + std::string(one);
  fault(FaultCode::kUnknownName, row, column, list);
  return {};
}

std::vector<std::optional<Date>> CareSheet::dates(const std::vector<const people::SheetRow*>& rows, std::size_t column,
                                                  const DateLimits& limits, bool required) {
  people::DateReading how;
  how.heading = heading(column);
  how.latest = limits.latest;
  how.accepted = [&limits](Date day) { return day >= limits.earliest && day <= limits.latest; };
  how.accepted_words = day_words(limits);
  how.order_hint = "write the year first: 2026-11-24";
  how.serial_hint = "write the date as 2026-11-24";
  how.example = "2026-11-24";
  how.accepted_tells_order = true;
  std::vector<people::SheetCell> cells;
  cells.reserve(rows.size());
  for (const people::SheetRow* row : rows) {
    cells.push_back(columns_.cell(*row, column));
    if (required && text(*row, column).empty()) {
      fault(FaultCode::kMissing, *row, column, "a date such as " + how.example);
    }
  }
  return people::read_dates(*sheet_, cells, {}, how, *forms_, *faults_);
}

void CareSheet::fault(FaultCode code, const people::SheetRow& row, std::size_t column, std::string expected,
                      std::string hint) {
  faults_->push_back(columns_.fault(code, row, column, std::move(expected), std::move(hint)));
}

}  // namespace lanework::care
