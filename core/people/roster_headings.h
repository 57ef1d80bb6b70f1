// The heading row of a roster: which column holds what, in English and the languages of our first clubs.
// A heading that is not known here is not read at all: photo consent, medical notes and telephone numbers
// go no further than the sheet.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/people/roster_dates.h"
#include "core/people/roster_measures.h"
#include "core/people/roster_sheet.h"

namespace lanework::people {

enum class RosterColumn {
  kId,
  kName,  // the whole name, or one half of it beside a column for the other half
  kGivenName,
  kFamilyName,
  kShirt,
  kBirth,
  kAge,
  kSquads,  // may stand in several columns
  kSizeGroup,
  kBodyMass,
  kHeight,  // checked, then forgotten
  kContact
};

struct Heading {
  int column = 0;  // position in the row, from 0
  RosterColumn meaning = RosterColumn::kName;
  std::string as_written;
  MeasureUnit unit = MeasureUnit::kNone;                // 'Weight (kg)'
  DateOrder date_order = DateOrder::kAsTheColumnTells;  // 'Born (dd/mm/yyyy)'
};

struct Headings {
  int row = 0;  // position in Sheet::rows
  std::vector<Heading> known;

  [[nodiscard]] const Heading* find(RosterColumn meaning) const;
};

// A heading, or a word of a cell, as it is compared: without case, accents and punctuation, words one blank apart.
std::string plain_words(std::string_view cell, const TextForms& forms);

// Empty where the cell is no heading we read.
std::optional<Heading> read_heading(std::string_view cell, const TextForms& forms);

// The row among the first 40 with the most known headings, a name among them; rows above it are titles.
std::optional<Headings> find_headings(const Sheet& sheet, const TextForms& forms);

// How well a sheet reads as a roster: known headings in its best row. Tells one delimiter from another.
int count_known_headings(const Sheet& sheet, const TextForms& forms);

}  // namespace lanework::people
