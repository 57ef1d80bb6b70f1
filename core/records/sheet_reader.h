// What the readers of the four sheets share: cells by column as dates, numbers, terms, squads. Inside this folder only.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/people/roster_dates.h"
#include "core/people/sheet_columns.h"
#include "core/records/columns.h"
#include "core/records/read_season.h"

namespace lanework::records {

using people::SheetCell;
using people::SheetRow;

// The one mapped heading a column, and ours for the others.
people::KnownColumns known_columns(SheetKind kind, const SheetMapping& mapping);

// Squads by id, or by a name that only one of them has.
class SquadNames {
 public:
  SquadNames(const std::vector<SquadRecord>& squads, const people::TextForms& forms);
  // words: as plain_words leaves them. Empty where there is none, or several have the name.
  [[nodiscard]] std::optional<std::uint32_t> find(const std::string& words) const;

 private:
  std::unordered_map<std::string, std::optional<std::uint32_t>> by_words_;
};

// One spelling a player, the first that is read, in all sheets.
class PlayerNames {
 public:
  explicit PlayerNames(const people::TextForms& forms) : forms_(&forms) {}
  std::string spelled(const std::string& text);

 private:
  const people::TextForms* forms_;
  std::unordered_map<std::string, std::string> first_;  // by same_form
};

class SheetReader {
 public:
  SheetReader(SheetKind kind, const people::Sheet& sheet, const SeasonReading& reading, Faults& faults);
  SheetReader(const SheetReader&) = delete;
  SheetReader& operator=(const SheetReader&) = delete;

  // Empty after faults of the headings.
  [[nodiscard]] const std::vector<const SheetRow*>& rows() const { return rows_; }
  [[nodiscard]] const std::string& file() const { return sheet_.file; }
  [[nodiscard]] std::size_t faults_so_far() const { return faults_.size(); }

  template <class Column>
  [[nodiscard]] std::string text(const SheetRow& row, Column column) const {
    return columns_.text(row, static_cast<std::size_t>(column));
  }
  template <class Column>
  [[nodiscard]] std::string raw(const SheetRow& row, Column column) const {
    return columns_.cell(row, static_cast<std::size_t>(column)).text;
  }
  template <class Column>
  void fault(FaultCode code, const SheetRow& row, Column column, std::string expected, std::string hint = {}) {
    faults_.push_back(
        columns_.fault(code, row, static_cast<std::size_t>(column), std::move(expected), std::move(hint)));
  }

  // Day or month first, told by all columns of dates together; before dates().
  template <class... Columns>
  void tell_date_order(Columns... columns) {
    find_date_order({static_cast<std::size_t>(columns)...});
  }
  // One value a row; empty where the cell is blank or at fault.
  template <class Column>
  std::vector<std::optional<Date>> dates(Column column) {
    return read_dates(cells_of(static_cast<std::size_t>(column)), static_cast<std::size_t>(column));
  }
  // Cells of several dates with ';' between them: ascending, none twice.
  template <class Column>
  std::vector<std::vector<Date>> date_lists(Column column) {
    return read_date_lists(static_cast<std::size_t>(column));
  }

  template <class Column>
  std::optional<int> whole(const SheetRow& row, Column column, int least, int most) {
    return read_whole(row, static_cast<std::size_t>(column), least, most);
  }
  // Of one session, in minutes.
  template <class Column>
  std::optional<int> minutes(const SheetRow& row, Column column, int least, int most) {
    return read_minutes(row, static_cast<std::size_t>(column), least, most);
  }
  template <class Column>
  std::optional<PlayerMinutes> player_hours(const SheetRow& row, Column column) {
    return read_player_hours(row, static_cast<std::size_t>(column));
  }
  // Empty where the cell is blank, says that nobody knows, or is at fault.
  template <class Value, class Column>
  std::optional<Value> term(const SheetRow& row, Column column) {
    const std::optional<std::uint8_t> found = read_term(row, static_cast<std::size_t>(column));
    if (!found) return {};
    return static_cast<Value>(*found);
  }
  template <class Column>
  std::optional<std::uint32_t> squad(const SheetRow& row, Column column, const SquadNames& names) {
    return read_squad(row, static_cast<std::size_t>(column), names);
  }
  template <class Column>
  std::optional<bool> yes_no(const SheetRow& row, Column column) {
    return read_yes_no_or_blank(row, static_cast<std::size_t>(column));
  }

 private:
  const SheetKind kind_;
  const people::Sheet& sheet_;
  const SeasonReading& reading_;
  const SheetMapping& mapping_;
  const people::KnownColumns known_;
  people::SheetColumns columns_;
  Faults& faults_;
  std::vector<const SheetRow*> rows_;
  people::DateOrder date_order_;

  [[nodiscard]] std::vector<SheetCell> cells_of(std::size_t column) const;
  // Parts of cells with the positions of their rows.
  struct Parts {
    std::vector<SheetCell> cells;
    std::vector<std::size_t> rows;
  };
  [[nodiscard]] Parts parts_of(std::size_t column) const;
  void find_date_order(const std::vector<std::size_t>& columns);
  std::vector<std::optional<Date>> read_dates(const std::vector<SheetCell>& cells, std::size_t column);
  std::vector<std::vector<Date>> read_date_lists(std::size_t column);
  std::optional<std::int64_t> read_thousandths(const SheetRow& row, std::size_t column, const ReadNumber& number,
                                               const std::string& expected);
  std::optional<int> read_whole(const SheetRow& row, std::size_t column, int least, int most);
  std::optional<int> read_minutes(const SheetRow& row, std::size_t column, int least, int most);
  std::optional<PlayerMinutes> read_player_hours(const SheetRow& row, std::size_t column);
  std::optional<std::uint8_t> read_term(const SheetRow& row, std::size_t column);
  std::optional<std::uint32_t> read_squad(const SheetRow& row, std::size_t column, const SquadNames& names);
  std::optional<bool> read_yes_no_or_blank(const SheetRow& row, std::size_t column);
};

// Texts of a cell with ';' or line breaks between them, tidied, none empty.
std::vector<std::string> listed_texts(const std::string& cell);

}  // namespace lanework::records
