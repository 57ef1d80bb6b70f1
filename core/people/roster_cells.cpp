#include "core/people/roster_cells.h"

#include <algorithm>
#include <array>

namespace lanework::people {
namespace {

bool blank(const SheetCell& cell) { return tidy(cell.text).empty(); }

constexpr std::array<std::string_view, 21> kTotalWords = {
    "total",   "totals", "sum",        "summe",        "gesamt",  "anzahl", "count",
    "average", "mean",   "mittelwert", "durchschnitt", "moyenne", "somme",  "totale",
    "razem",   "totaal", "aantal",     "gemiddelde",   "итого",   "всего",  "συνολο"};

// 'Total', 'Total: 16', 'Total players'. Of the other words only the bare word with a number: some of them
// begin people's names.
bool is_total_word(const std::string& cell, const TextForms& forms) {
  const std::string text = loose_form(forms, tidy(cell));
  const std::string word = text.substr(0, text.find_first_of(" :=.(0123456789"));
  if (std::find(kTotalWords.begin(), kTotalWords.end(), word) == kTotalWords.end()) return false;
  const std::string rest = text.substr(word.size());
  return word == "total" || word == "average" || rest.find_first_not_of(" :=.,()0123456789") == std::string::npos;
}

// A sum or a count under a column of ids or dates.
bool is_short_number(const std::string& text) {
  return text.size() < 4 && text.find_first_not_of("0123456789") == std::string::npos;
}

bool repeats_headings(const SheetRow& row, const Headings& headings) {
  const auto same = [&row](const Heading& heading) { return tidy(cell_at(row, heading).text) == heading.as_written; };
  return std::all_of(headings.known.begin(), headings.known.end(), same);
}

bool is_name_part(RosterColumn meaning) {
  return meaning == RosterColumn::kName || meaning == RosterColumn::kGivenName || meaning == RosterColumn::kFamilyName;
}

// A row of sums: a total word for a name, or in a row without one, and nobody's birth date or id.
bool is_total(const SheetRow& row, const Headings& headings, const TextForms& forms) {
  for (const RosterColumn own : {RosterColumn::kBirth, RosterColumn::kId}) {
    const Heading* heading = headings.find(own);
    if (heading == nullptr) continue;
    const std::string text = tidy(cell_at(row, *heading).text);
    if (!is_short_number(text) && !is_total_word(text, forms)) return false;
  }
  const auto total = [&](const SheetCell& cell) { return is_total_word(cell.text, forms); };
  // A count of players often stands under the names, with its 'Total' in the column before.
  const std::string name = name_in(row, headings);
  if (!name.empty() && !is_short_number(name)) return total(SheetCell{name, row.line});
  return std::any_of(row.cells.begin(), row.cells.end(), total);
}

// Numbers under the columns, or remarks beside them, without anything that tells of a player.
bool tells_of_nobody(const SheetRow& row, const Headings& headings) {
  for (const Heading& heading : headings.known) {
    const bool measure = heading.meaning == RosterColumn::kBodyMass || heading.meaning == RosterColumn::kHeight ||
                         heading.meaning == RosterColumn::kAge;
    if (!measure && !blank(cell_at(row, heading))) return false;
  }
  return true;
}

// A remark below the table: one cell of the row, at most.
bool is_remark(const SheetRow& row, const Headings& headings) {
  const auto filled = [&row](const Heading& heading) { return !blank(cell_at(row, heading)); };
  return headings.known.size() > 1 && std::count_if(headings.known.begin(), headings.known.end(), filled) <= 1;
}

bool contains_word(const std::string& text, const std::string& word) {
  return !word.empty() && (" " + text + " ").find(" " + word + " ") != std::string::npos;
}

std::string text_under(const SheetRow& row, const Heading* heading) {
  return heading != nullptr ? tidy(cell_at(row, *heading).text) : std::string();
}

}  // namespace

SheetCell cell_at(const SheetRow& row, const Heading& heading) {
  const auto column = static_cast<std::size_t>(heading.column);
  if (column < row.cells.size()) return row.cells[column];
  return {{}, row.cells.empty() ? row.line : row.cells.back().line};
}

std::vector<const SheetRow*> player_rows(const Sheet& sheet, const Headings& headings, const TextForms& forms) {
  std::vector<const SheetRow*> rows;
  bool after_total = false;
  for (std::size_t i = static_cast<std::size_t>(headings.row) + 1; i < sheet.rows.size(); ++i) {
    const SheetRow& row = sheet.rows[i];
    if (std::all_of(row.cells.begin(), row.cells.end(), blank)) continue;
    if (repeats_headings(row, headings) || tells_of_nobody(row, headings)) continue;
    if (is_total(row, headings, forms)) {
      after_total = true;
      continue;
    }
    if (after_total && is_remark(row, headings)) continue;
    rows.push_back(&row);
  }
  return rows;
}

const Heading& name_heading_of(const Headings& headings) {
  const auto found = std::find_if(headings.known.begin(), headings.known.end(),
                                  [](const Heading& heading) { return is_name_part(heading.meaning); });
  return found != headings.known.end() ? *found : headings.known.front();
}

std::string name_in(const SheetRow& row, const Headings& headings) {
  std::string given = text_under(row, headings.find(RosterColumn::kGivenName));
  std::string family = text_under(row, headings.find(RosterColumn::kFamilyName));
  std::string name = text_under(row, headings.find(RosterColumn::kName));
  if (!name.empty()) {
    // 'Name' beside 'Vorname' is the family name, 'Nombre' beside 'Apellidos' the given name; but a whole
    // name may stand beside its parts.
    const bool both_parts = !given.empty() && !family.empty();
    const bool whole = both_parts || contains_word(name, given) || contains_word(name, family);
    if (whole) return name;
    (given.empty() ? given : family) = name;
  }
  if (given.empty() || family.empty()) return given + family;
  return given + " " + family;
}

std::vector<std::string> split_squads(const std::string& text) {
  std::vector<std::string> squads;
  std::string squad;
  for (const char c : text + ";") {
    if (c != ';' && c != '/' && c != ',' && c != '|' && c != '+') {
      squad += c;
      continue;
    }
    squad = tidy(squad);
    if (!squad.empty()) squads.push_back(squad);
    squad.clear();
  }
  return squads;
}

std::optional<bool> read_yes_no(const std::string& text, const TextForms& forms) {
  constexpr std::array<std::string_view, 24> kYes = {"yes", "y",    "true", "1",   "x",   "ok",        "ja",  "j",
                                                     "oui", "o",    "vrai", "si",  "s",   "verdadero", "sim", "tak",
                                                     "ano", "igen", "да",   "так", "ναι", "evet",      "✓",   "✔"};
  constexpr std::array<std::string_view, 18> kNo = {"",    "no",   "n",   "false", "0",     "-",
                                                    "–",   "nein", "non", "faux",  "falso", "nee",
                                                    "nao", "nie",  "nej", "nei",   "нет",   "οχι"};
  const std::string word = loose_form(forms, tidy(text));
  if (std::find(kYes.begin(), kYes.end(), word) != kYes.end()) return true;
  if (std::find(kNo.begin(), kNo.end(), word) != kNo.end()) return false;
  return {};
}

}  // namespace lanework::people
