// A lead's own sheet (measurements, sessions, screens) read cell by cell: what is not understood is a fault with its
// line and heading, and all faults are collected.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/people/sheet_columns.h"

namespace lanework::care {

// A decimal point or one decimal comma, perhaps a sign; no unit, no thousands apart, no exponent.
std::optional<double> decimal_number(std::string_view text);
// As short as it can be: '158', '79.5', '-0.93' (decimals: at most so many).
std::string short_decimal(double value, int decimals = 1);

struct NumberLimits {
  double least = 0;
  double most = 0;
  std::string expected;  // 'minutes from 1 to 300'
};

struct DateLimits {
  Date earliest;
  Date latest;
};

class CareSheet {
 public:
  // Sheet, columns and forms outlive it. Columns are positions in KnownColumns::columns.
  CareSheet(const people::Sheet& sheet, const people::KnownColumns& known, const people::TextForms& forms,
            Faults& faults);

  // Below the headings; empty after faults of the headings.
  [[nodiscard]] const std::vector<const people::SheetRow*>& rows() const { return rows_; }
  [[nodiscard]] bool has(std::size_t column) const { return columns_.has(column); }
  [[nodiscard]] std::string text(const people::SheetRow& row, std::size_t column) const;
  [[nodiscard]] const std::string& heading(std::size_t column) const { return columns_.heading(column); }

  // Text that has to be there; empty after the fault.
  std::string name(const people::SheetRow& row, std::size_t column, const std::string& expected);
  // Empty where the cell is blank, or after a fault.
  std::optional<double> number(const people::SheetRow& row, std::size_t column, const NumberLimits& limits);
  // The position among words, which are compared as plain words; empty where the cell is blank, or after a fault.
  std::optional<std::size_t> word(const people::SheetRow& row, std::size_t column,
                                  const std::vector<std::string_view>& words);
  // One value for each of these rows; empty where the cell is blank or at fault. required: a blank cell is a fault.
  std::vector<std::optional<Date>> dates(const std::vector<const people::SheetRow*>& rows, std::size_t column,
                                         const DateLimits& limits, bool required);
  void fault(FaultCode code, const people::SheetRow& row, std::size_t column, std::string expected,
             std::string hint = {});
  [[nodiscard]] std::size_t faults_so_far() const { return faults_->size(); }

 private:
  const people::Sheet* sheet_;
  const people::TextForms* forms_;
  people::SheetColumns columns_;
  std::vector<const people::SheetRow*> rows_;
  Faults* faults_;
};

inline constexpr std::size_t kMostCareRows = 50'000;
inline constexpr std::size_t kMostCareFaults = 50;  // that are listed; then the rest is counted

}  // namespace lanework::care
