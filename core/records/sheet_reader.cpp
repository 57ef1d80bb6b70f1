#include "core/records/sheet_reader.h"

#include <algorithm>

#include "core/people/roster_cells.h"
#include "core/people/roster_headings.h"
#include "core/records/hours.h"

namespace lanework::records {
namespace {

using Problem = ReadNumber::Problem;

constexpr const char* kPage = "docs/formats/records.md";
constexpr const char* kStateOrder = "state it in the mapping: dates = \"day-first\" or \"month-first\"";
constexpr const char* kState1904 =
    "if the workbook counts days from 1904, state it in the mapping: dates = \"serial-1904\"";
const Date kEarliest = *make_date(1990, 1, 1);

std::string from_to(std::int64_t least, std::int64_t most) {
  return "a whole number from " + std::to_string(least) + " to " + std::to_string(most);
}

std::string terms_in_words(const std::vector<Term>& terms) {
  constexpr std::size_t kListed = 8;
  std::string out = terms.size() > kListed ? "a term such as " : "one of ";
  for (std::size_t i = 0; i < std::min(terms.size(), kListed); ++i) out += (i == 0 ? "" : ", ") + terms[i].key;
  return out;
}

}  // namespace

people::KnownColumns known_columns(SheetKind kind, const SheetMapping& mapping) {
  people::KnownColumns out;
  for (const SheetColumn& column : columns_of(kind)) out.columns.push_back(column.known);
  out.page = kPage;
  out.stated = mapping.headings;
  return out;
}

std::vector<std::string> listed_texts(const std::string& cell) {
  std::vector<std::string> out;
  for (std::size_t from = 0; from <= cell.size();) {
    const std::size_t end = std::min(cell.find_first_of(";\n\r", from), cell.size());
    std::string text = people::tidy(std::string_view(cell).substr(from, end - from));
    if (!text.empty()) out.push_back(std::move(text));
    from = end + 1;
  }
  return out;
}

SquadNames::SquadNames(const std::vector<SquadRecord>& squads, const people::TextForms& forms) {
  for (std::uint32_t i = 0; i < squads.size(); ++i) {
    const auto [known, is_new] = by_words_.emplace(people::plain_words(squads[i].name, forms), i);
    if (!is_new) known->second.reset();
  }
  for (std::uint32_t i = 0; i < squads.size(); ++i) by_words_[people::plain_words(squads[i].id, forms)] = i;
}

std::optional<std::uint32_t> SquadNames::find(const std::string& words) const {
  const auto found = by_words_.find(words);
  if (words.empty() || found == by_words_.end()) return {};
  return found->second;
}

std::string PlayerNames::spelled(const std::string& text) {
  if (text.empty()) return text;
  return first_.emplace(people::same_form(*forms_, text), text).first->second;
}

SheetReader::SheetReader(SheetKind kind, const people::Sheet& sheet, const SeasonReading& reading, Faults& faults)
    : kind_(kind),
      sheet_(sheet),
      reading_(reading),
      mapping_(reading.mapping->of(kind)),
      known_(known_columns(kind, mapping_)),
      columns_(sheet, known_, reading_.forms),
      faults_(faults),
      date_order_(mapping_.dates) {
  if (!columns_.find_headings(faults_)) return;
  rows_ = columns_.rows(faults_);
  if (rows_.size() <= kMostRecordRows) return;
  faults_.push_back(people::row_fault(FaultCode::kOutOfRange, sheet_, 0, std::to_string(rows_.size()) + " rows",
                                      "at most " + std::to_string(kMostRecordRows),
                                      "hours that are canonical can be summed without reading every row"));
  rows_.clear();
}

std::vector<SheetCell> SheetReader::cells_of(std::size_t column) const {
  std::vector<SheetCell> cells;
  cells.reserve(rows_.size());
  for (const SheetRow* row : rows_) cells.push_back(columns_.cell(*row, column));
  return cells;
}

SheetReader::Parts SheetReader::parts_of(std::size_t column) const {
  Parts out;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const SheetCell cell = columns_.cell(*rows_[i], column);
    for (std::string& text : listed_texts(cell.text)) {
      out.cells.push_back({std::move(text), cell.line});
      out.rows.push_back(i);
    }
  }
  return out;
}

void SheetReader::find_date_order(const std::vector<std::size_t>& columns) {
  if (date_order_ != people::DateOrder::kAsTheColumnTells || mapping_.iso_dates_only) return;
  std::vector<SheetCell> cells;
  for (const std::size_t column : columns) {
    for (SheetCell& cell : parts_of(column).cells) {
      if (!parse_iso_date(cell.text)) cells.push_back(std::move(cell));
    }
  }
  date_order_ = people::order_told_by(cells, reading_.period.as_of, reading_.forms);
}

std::vector<std::optional<Date>> SheetReader::read_dates(const std::vector<SheetCell>& cells, std::size_t column) {
  people::DateReading how;
  how.heading = columns_.heading(column);
  how.order = date_order_;
  how.serials = mapping_.serials;
  how.latest = reading_.period.as_of;
  how.accepted = [last = how.latest](Date day) { return kEarliest <= day && day <= last; };
  how.accepted_words = "a day from " + to_iso(kEarliest) + " to " + to_iso(how.latest) + ", the last that is known";
  how.order_hint = kStateOrder;
  how.serial_hint = kState1904;
  how.example = "2026-11-24";
  how.accepted_tells_order = true;

  // Most files are in ISO form throughout, which needs no thought about the column.
  std::vector<std::optional<Date>> dates(cells.size());
  bool iso = true;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string text = people::tidy(cells[i].text);
    if (text.empty()) continue;
    dates[i] = parse_iso_date(text);
    if (!dates[i] && mapping_.iso_dates_only) {
      faults_.push_back(people::cell_fault(FaultCode::kBadDate, sheet_, cells[i], how.heading,
                                           "a date such as " + how.example + ", as the mapping says"));
    }
    iso = iso && ((dates[i] && how.accepted(*dates[i])) || (!dates[i] && mapping_.iso_dates_only));
  }
  if (iso) return dates;
  if (!mapping_.iso_dates_only) return people::read_dates(sheet_, cells, {}, how, reading_.forms, faults_);
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (!dates[i] || how.accepted(*dates[i])) continue;
    faults_.push_back(people::cell_fault(FaultCode::kBadDate, sheet_, cells[i], how.heading, how.accepted_words));
    dates[i].reset();
  }
  return dates;
}

std::vector<std::vector<Date>> SheetReader::read_date_lists(std::size_t column) {
  const Parts parts = parts_of(column);
  const std::vector<std::optional<Date>> dates = read_dates(parts.cells, column);
  std::vector<std::vector<Date>> out(rows_.size());
  for (std::size_t i = 0; i < dates.size(); ++i) {
    if (dates[i]) out[parts.rows[i]].push_back(*dates[i]);
  }
  for (std::vector<Date>& days : out) {
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
  }
  return out;
}

// Empty after the fault of a cell that holds no number, or a negative one.
std::optional<std::int64_t> SheetReader::read_thousandths(const SheetRow& row, std::size_t column,
                                                          const ReadNumber& number, const std::string& expected) {
  switch (number.problem) {
    case Problem::kNone:
      return number.thousandths;
    case Problem::kNoNumber:
      fault(FaultCode::kWrongType, row, column, expected);
      break;
    case Problem::kTwoWays:
      fault(FaultCode::kWrongType, row, column, expected + ", that can be read in one way only",
            "state it in the mapping: decimal = \"point\" or \"comma\"");
      break;
    case Problem::kNegative:
      fault(FaultCode::kOutOfRange, row, column, expected + ", not a negative one");
      break;
  }
  return {};
}

std::optional<int> SheetReader::read_whole(const SheetRow& row, std::size_t column, int least, int most) {
  const std::string text = columns_.text(row, column);
  if (text.empty()) return {};
  const std::string expected = from_to(least, most);
  const auto value = read_thousandths(row, column, read_number(text, mapping_.decimal), expected);
  if (!value) return {};
  if (*value % 1000 == 0 && *value >= least * std::int64_t{1000} && *value <= most * std::int64_t{1000})
    return static_cast<int>(*value / 1000);
  fault(FaultCode::kOutOfRange, row, column, expected);
  return {};
}

std::optional<int> SheetReader::read_minutes(const SheetRow& row, std::size_t column, int least, int most) {
  const std::string text = columns_.text(row, column);
  if (text.empty()) return {};
  const ReadNumber number = read_duration(text, mapping_.decimal);
  const bool hours = number.stated.value_or(mapping_.duration) == DurationUnit::kHours;
  const std::string expected =
      hours ? "hours of one session, at most " + std::to_string(most / 60) : from_to(least, most) + ", in minutes";
  const auto value = read_thousandths(row, column, number, expected);
  if (!value) return {};
  const std::int64_t minutes = hours ? (*value * 60 + 500) / 1000 : *value / 1000;
  if (!hours && *value % 1000 != 0) {
    fault(FaultCode::kWrongType, row, column, expected);
  } else if (minutes < least || minutes > most) {
    fault(
        FaultCode::kOutOfRange, row, column, expected,
        hours ? "these seem to be minutes typed as hours" : "the minutes of one session, not of all players together");
  } else {
    return static_cast<int>(minutes);
  }
  return {};
}

std::optional<PlayerMinutes> SheetReader::read_player_hours(const SheetRow& row, std::size_t column) {
  const std::string text = columns_.text(row, column);
  if (text.empty()) return {};
  const ReadNumber number = read_duration(text, mapping_.decimal);
  const std::string expected =
      "hours of all players together, at most " + std::to_string(kMostSessionHours.count / 60) + " a session";
  const auto value = read_thousandths(row, column, number, expected);
  if (!value) return {};
  const bool minutes = number.stated == DurationUnit::kMinutes;
  const PlayerMinutes hours((*value * (minutes ? 1 : 60) + 500) / 1000);
  if (hours <= kMostSessionHours) return hours;
  fault(FaultCode::kOutOfRange, row, column, expected, "these seem to be minutes typed as hours");
  return {};
}

std::optional<std::uint8_t> SheetReader::read_term(const SheetRow& row, std::size_t column) {
  if (!columns_.has(column) || columns_.text(row, column).empty()) return {};
  const Field field = *columns_of(kind_)[column].field;
  const std::string words = columns_.words(row, column);
  const auto& mapped = mapping_.terms[Terms::index(field)];
  if (const auto own = mapped.find(words); own != mapped.end()) return own->second;
  if (words.empty() || reading_.terms->not_known(words)) return {};
  const std::optional<std::uint8_t> meant = reading_.terms->meant_by(field, words);
  if (meant) return meant;
  fault(FaultCode::kUnknownName, row, column, terms_in_words(reading_.terms->of(field)),
        "the mapping can say what a word of yours means");
  return {};
}

std::optional<std::uint32_t> SheetReader::read_squad(const SheetRow& row, std::size_t column, const SquadNames& names) {
  if (columns_.text(row, column).empty()) {
    fault(FaultCode::kMissing, row, column, "the id or the name of a squad");
    return {};
  }
  std::string words = columns_.words(row, column);
  if (const auto own = mapping_.squads.find(words); own != mapping_.squads.end())
    words = people::plain_words(own->second, reading_.forms);
  const std::optional<std::uint32_t> squad = names.find(words);
  if (!squad) {
    fault(FaultCode::kUnknownName, row, column, "the id of a squad of the squads' sheet, or a name that only one has");
  }
  return squad;
}

std::optional<bool> SheetReader::read_yes_no_or_blank(const SheetRow& row, std::size_t column) {
  const std::string text = columns_.text(row, column);
  if (text.empty() || reading_.terms->not_known(columns_.words(row, column))) return {};
  const std::optional<bool> answer = people::read_yes_no(text, reading_.forms);
  if (!answer) fault(FaultCode::kWrongType, row, column, "yes or no, or nothing");
  return answer;
}

}  // namespace lanework::records
