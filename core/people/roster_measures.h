// Numbers with units as people type them: '38,5 kg', '84 lb', '6 st 4', '1,52 m', 5'2". The unit stands
// in the cell or in the heading; pounds are never guessed.
#pragma once

#include <optional>
#include <string>

#include "core/people/roster_sheet.h"

namespace lanework::people {

enum class MeasureUnit { kNone, kKilogram, kPound, kStone, kCentimetre, kMetre, kFoot, kInch, kYear };

// The unit a loosely written word names: 'kg', 'lbs', "'"; kNone where it names none.
MeasureUnit unit_named(std::string_view word);

// What a measure came to, or what was expected instead.
struct Measured {
  std::optional<int> value;
  std::string expected;  // set where value is empty
  bool unit_missing = false;
};

// Body mass in grams, 12 to 150 kg (own judgement: a slip of the finger or of the unit lies outside).
// heading_unit: from the heading; a unit in the cell must be of the same kind.
Measured read_body_mass(std::string_view cell, MeasureUnit heading_unit, const TextForms& forms);

// Standing height in millimetres, 0.80 to 2.30 m (own judgement). Without a unit, 1,52 can only be metres
// and 152 only centimetres.
Measured read_height(std::string_view cell, MeasureUnit heading_unit, const TextForms& forms);

// Whole years; 12.5 is 12.
Measured read_age(std::string_view cell, const TextForms& forms);

}  // namespace lanework::people
