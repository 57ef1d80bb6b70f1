// How a club's own sheets are to be read where our headings and words do not do: a mapping file (TOML), per sheet its
// headings, its words, its order of dates, its unit of durations and its decimal mark. docs/formats/records.md.
#pragma once

#include <array>
#include <map>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/people/roster_dates.h"
#include "core/people/roster_sheet.h"
#include "core/records/columns.h"
#include "core/records/numbers.h"
#include "core/records/terms.h"

namespace lanework::records {

struct SheetMapping {
  std::vector<std::string> headings;  // by column, as the user wrote them; empty where ours do
  // Words of cells as plain_words leaves them, to the id of a squad or the position of a term.
  std::map<std::string, std::string> squads;
  std::array<std::map<std::string, std::uint8_t>, kFields> terms;
  people::DateOrder dates = people::DateOrder::kAsTheColumnTells;
  people::SerialSystem serials = people::SerialSystem::k1900;
  bool iso_dates_only = false;
  DurationUnit duration = DurationUnit::kMinutes;
  DecimalMark decimal = DecimalMark::kAsTheCellTells;
};

struct Mapping {
  std::array<SheetMapping, kSheets> sheets;
  [[nodiscard]] const SheetMapping& of(SheetKind kind) const { return sheets[static_cast<std::size_t>(kind)]; }
};

// Faults: sheets, columns, terms there are not; one word or heading for two things.
Result<Mapping> read_mapping(const Document& document, const Terms& terms, const people::TextForms& forms);

}  // namespace lanework::records
