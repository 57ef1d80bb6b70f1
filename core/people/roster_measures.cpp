#include "core/people/roster_measures.h"

#include <array>
#include <cstdint>
#include <vector>

#include "core/people/roster_dates.h"

namespace lanework::people {
namespace {

struct UnitWord {
  std::string_view word;
  MeasureUnit unit;
};
constexpr std::array<UnitWord, 43> kUnitWords = {{
    {"kg", MeasureUnit::kKilogram},
    {"kgs", MeasureUnit::kKilogram},
    {"kilo", MeasureUnit::kKilogram},
    {"kilos", MeasureUnit::kKilogram},
    {"kilogram", MeasureUnit::kKilogram},
    {"kilograms", MeasureUnit::kKilogram},
    {"kilogramm", MeasureUnit::kKilogram},
    {"кг", MeasureUnit::kKilogram},
    {"lb", MeasureUnit::kPound},
    {"lbs", MeasureUnit::kPound},
    {"pound", MeasureUnit::kPound},
    {"pounds", MeasureUnit::kPound},
    {"st", MeasureUnit::kStone},
    {"stone", MeasureUnit::kStone},
    {"stones", MeasureUnit::kStone},
    {"cm", MeasureUnit::kCentimetre},
    {"cms", MeasureUnit::kCentimetre},
    {"centimetre", MeasureUnit::kCentimetre},
    {"centimetres", MeasureUnit::kCentimetre},
    {"centimeters", MeasureUnit::kCentimetre},
    {"см", MeasureUnit::kCentimetre},
    {"m", MeasureUnit::kMetre},
    {"metre", MeasureUnit::kMetre},
    {"metres", MeasureUnit::kMetre},
    {"meter", MeasureUnit::kMetre},
    {"meters", MeasureUnit::kMetre},
    {"м", MeasureUnit::kMetre},
    {"ft", MeasureUnit::kFoot},
    {"foot", MeasureUnit::kFoot},
    {"feet", MeasureUnit::kFoot},
    {"'", MeasureUnit::kFoot},
    {"in", MeasureUnit::kInch},
    {"ins", MeasureUnit::kInch},
    {"inch", MeasureUnit::kInch},
    {"inches", MeasureUnit::kInch},
    {"\"", MeasureUnit::kInch},
    {"year", MeasureUnit::kYear},
    {"years", MeasureUnit::kYear},
    {"yrs", MeasureUnit::kYear},
    {"y", MeasureUnit::kYear},
    {"jahre", MeasureUnit::kYear},
    {"ans", MeasureUnit::kYear},
    {"anos", MeasureUnit::kYear},
}};

constexpr const char* kExpectedMass = "a body mass of 12 to 150 kg, such as 38.5 kg, 84 lb or 6 st 4 lb";
constexpr const char* kExpectedHeight = "a height of 0.80 to 2.30 m, such as 152 cm, 1.52 m or 5'2\"";

struct Part {
  std::int64_t thousandths = 0;
  MeasureUnit unit = MeasureUnit::kNone;
};

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

// Straight quotation marks for the curled ones and the primes of feet and inches.
std::string plain_marks(std::string text) {
  for (const std::string_view mark : {"\u2019", "\u2018", "\u2032", "\u00B4"}) replace_all(text, mark, "'");
  for (const std::string_view mark : {"\u201D", "\u201C", "\u2033", "''"}) replace_all(text, mark, "\"");
  return text;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// A number with at most three decimals after one point or comma; -1 where there is none.
std::int64_t take_number(std::string_view& text) {
  std::size_t at = 0;
  std::int64_t whole = 0;
  while (at < text.size() && is_digit(text[at]) && at < 6) whole = whole * 10 + (text[at++] - '0');
  if (at == 0) return -1;
  std::int64_t thousandths = whole * 1000;
  if (at + 1 < text.size() && (text[at] == '.' || text[at] == ',') && is_digit(text[at + 1])) {
    ++at;
    for (std::int64_t place = 100; at < text.size() && is_digit(text[at]); ++at, place /= 10) {
      if (place == 0) return -1;
      thousandths += place * (text[at] - '0');
    }
  }
  text.remove_prefix(at);
  return thousandths;
}

// '6 st 4 lb' to two parts; false where anything else stands in the cell.
bool split_parts(std::string_view text, std::vector<Part>& parts) {
  while (!text.empty()) {
    Part part;
    part.thousandths = take_number(text);
    if (part.thousandths < 0 || parts.size() == 2) return false;
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    std::size_t end = 0;
    while (end < text.size() && !is_digit(text[end]) && text[end] != ' ' && text[end] != '.') ++end;
    if (end > 0) {
      part.unit = unit_named(text.substr(0, end));
      if (part.unit == MeasureUnit::kNone) return false;
      text.remove_prefix(end);
    }
    while (!text.empty() && (text.front() == ' ' || text.front() == '.')) text.remove_prefix(1);
    parts.push_back(part);
  }
  return !parts.empty();
}

// Thousandths of a unit of so many hundred-thousandths of a gram, in grams to the nearest.
std::int64_t scaled(std::int64_t thousandths, std::int64_t size) {
  return (thousandths * size + 50'000'000) / 100'000'000;
}

std::int64_t grams_of(const Part& part) {
  switch (part.unit) {
    case MeasureUnit::kKilogram:
      return part.thousandths;
    case MeasureUnit::kPound:
      return scaled(part.thousandths, 45'359'237);  // 0.45359237 kg, exact
    case MeasureUnit::kStone:
      return scaled(part.thousandths, 14LL * 45'359'237);
    default:
      return -1;
  }
}

std::int64_t millimetres_of(const Part& part) {
  switch (part.unit) {
    case MeasureUnit::kMetre:
      return part.thousandths;
    case MeasureUnit::kCentimetre:
      return (part.thousandths + 50) / 100;
    case MeasureUnit::kFoot:
      return (part.thousandths * 3048 + 5000) / 10000;  // 0.3048 m, exact
    case MeasureUnit::kInch:
      return (part.thousandths * 254 + 5000) / 10000;  // 25.4 mm, exact
    default:
      return -1;
  }
}

Measured expected(std::string words, bool unit_missing = false) { return {{}, std::move(words), unit_missing}; }

Measured within(std::int64_t value, std::int64_t least, std::int64_t most, const char* words) {
  if (value < least || value > most) return expected(words);
  return {static_cast<int>(value), {}, false};
}

// The second part of a pair without a unit takes the smaller one: '6 st 4', 5'2.
bool complete_pair(std::vector<Part>& parts, MeasureUnit large, MeasureUnit small) {
  if (parts.size() == 1) return true;
  if (parts[1].unit == MeasureUnit::kNone) parts[1].unit = small;
  return parts[0].unit == large && parts[1].unit == small && parts[0].thousandths % 1000 == 0;
}

}  // namespace

MeasureUnit unit_named(std::string_view word) {
  for (const UnitWord& known : kUnitWords) {
    if (known.word == word) return known.unit;
  }
  return MeasureUnit::kNone;
}

Measured read_body_mass(std::string_view cell, MeasureUnit heading_unit, const TextForms& forms) {
  std::vector<Part> parts;
  if (!split_parts(tidy(loose_form(forms, cell)), parts)) return expected(kExpectedMass);
  if (parts[0].unit == MeasureUnit::kNone) {
    if (heading_unit == MeasureUnit::kNone || parts.size() > 1) {
      return expected("a unit, kg or lb, in the heading or in the cell", true);
    }
    parts[0].unit = heading_unit;
  } else if (heading_unit == MeasureUnit::kKilogram && parts[0].unit != heading_unit) {
    return expected("kilograms, as the heading says");
  } else if ((heading_unit == MeasureUnit::kPound || heading_unit == MeasureUnit::kStone) &&
             parts[0].unit == MeasureUnit::kKilogram) {
    return expected("the unit of the heading");
  }
  if (!complete_pair(parts, MeasureUnit::kStone, MeasureUnit::kPound)) return expected(kExpectedMass);
  std::int64_t grams = 0;
  for (const Part& part : parts) {
    const std::int64_t more = grams_of(part);
    if (more < 0) return expected(kExpectedMass);
    grams += more;
  }
  return within(grams, 12'000, 150'000, kExpectedMass);
}

Measured read_height(std::string_view cell, MeasureUnit heading_unit, const TextForms& forms) {
  std::vector<Part> parts;
  if (!split_parts(plain_marks(tidy(loose_form(forms, plain_marks(std::string(cell))))), parts)) {
    return expected(kExpectedHeight);
  }
  if (parts[0].unit == MeasureUnit::kNone) parts[0].unit = heading_unit;
  if (parts[0].unit == MeasureUnit::kNone && parts.size() == 1) {
    const bool metres = parts[0].thousandths >= 800 && parts[0].thousandths <= 2'300;
    const bool centimetres = parts[0].thousandths >= 80'000 && parts[0].thousandths <= 230'000;
    if (!metres && !centimetres) return expected("a unit, cm or m, in the heading or in the cell", true);
    parts[0].unit = metres ? MeasureUnit::kMetre : MeasureUnit::kCentimetre;
  }
  if (parts.size() == 2 && parts[0].unit == MeasureUnit::kMetre) {  // 1 m 52
    if (!complete_pair(parts, MeasureUnit::kMetre, MeasureUnit::kCentimetre)) return expected(kExpectedHeight);
  } else if (!complete_pair(parts, MeasureUnit::kFoot, MeasureUnit::kInch)) {
    return expected(kExpectedHeight);
  }
  std::int64_t millimetres = 0;
  for (const Part& part : parts) {
    const std::int64_t more = millimetres_of(part);
    if (more < 0) return expected(kExpectedHeight);
    millimetres += more;
  }
  return within(millimetres, 800, 2'300, kExpectedHeight);
}

Measured read_age(std::string_view cell, const TextForms& forms) {
  const std::string words =
      "an age from " + std::to_string(kYoungestPlayer) + " to " + std::to_string(kOldestPlayer) + " years";
  std::vector<Part> parts;
  if (!split_parts(tidy(loose_form(forms, cell)), parts) || parts.size() != 1) return expected(words);
  if (parts[0].unit != MeasureUnit::kNone && parts[0].unit != MeasureUnit::kYear) return expected(words);
  return within(parts[0].thousandths / 1000, kYoungestPlayer, kOldestPlayer, words.c_str());
}

}  // namespace lanework::people
