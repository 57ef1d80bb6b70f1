// A sheet whose columns a reader knows by their headings: finds the row of headings, says what lacks or stands twice,
// and hands over cells by column.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/people/roster_sheet.h"

namespace lanework::people {

struct KnownColumn {
  std::string_view name;      // as the format's page has it
  std::string_view headings;  // that mean it: as plain_words leaves them, bars between
  bool required = false;
};

struct KnownColumns {
  std::vector<KnownColumn> columns;
  std::string page;  // that describes them: 'docs/formats/sessions.md'
  // By column, the one heading that means it, as the user wrote it; empty, or not there at all: the known ones do.
  std::vector<std::string> stated;
};

// Is the word one of the list, whose entries have bars between them?
bool among(std::string_view list, std::string_view word);

// How well a sheet reads: known headings in its best row. Tells one delimiter from another.
int count_known(const Sheet& sheet, const KnownColumns& known, const TextForms& forms);

// By line. Of more than 'most' the first ones, and one more that counts them all.
Faults faults_by_line(const Sheet& sheet, Faults faults, std::size_t most);

// Columns are positions in KnownColumns::columns. Sheet, columns and forms outlive it.
class SheetColumns {
 public:
  SheetColumns(const Sheet& sheet, const KnownColumns& known, const TextForms& forms)
      : sheet_(&sheet), known_(&known), forms_(&forms), headings_(known.columns.size()) {}

  // Before all else. False after faults: no row of headings, a required or stated column that lacks, one twice.
  bool find_headings(Faults& faults);

  // Below the headings; blank rows and repeated headings are passed over. A row with more cells than there are
  // headings is a fault: a separator stands in it without quotation marks.
  std::vector<const SheetRow*> rows(Faults& faults) const;

  [[nodiscard]] bool has(std::size_t column) const { return headings_[column].position >= 0; }
  [[nodiscard]] const std::string& heading(std::size_t column) const { return headings_[column].as_written; }
  // An empty cell where the row ends before the column, or the sheet has none.
  [[nodiscard]] SheetCell cell(const SheetRow& row, std::size_t column) const;
  [[nodiscard]] std::string text(const SheetRow& row, std::size_t column) const;   // tidied
  [[nodiscard]] std::string words(const SheetRow& row, std::size_t column) const;  // as plain_words leaves them
  [[nodiscard]] Fault fault(FaultCode code, const SheetRow& row, std::size_t column, std::string expected,
                            std::string hint = {}) const;

 private:
  struct Heading {
    int position = -1;
    std::string as_written;
  };
  const Sheet* sheet_;
  const KnownColumns* known_;
  const TextForms* forms_;
  std::vector<Heading> headings_;
  std::size_t heading_row_ = 0;

  void take(const SheetRow& row, Faults& faults);
  void find_lacking(const SheetRow& row, Faults& faults) const;
  [[nodiscard]] bool repeats_headings(const SheetRow& row) const;
};

}  // namespace lanework::people
