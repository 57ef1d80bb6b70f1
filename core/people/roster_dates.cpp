#include "core/people/roster_dates.h"

#include <algorithm>
#include <array>

namespace lanework::people {
namespace {

constexpr const char* kExpectedDate = "a date such as ";  // and an example
constexpr const char* kStateOrder = "state it in the squad file: roster_dates = \"day-first\" or \"month-first\"";
constexpr const char* k1904Hint =
    "if the workbook counts days from 1904, state it in the squad file: roster_dates = \"serial-1904\"";

// What one cell says before the column is known.
struct DateCell {
  enum class Kind { kBlank, kBad, kDate, kSerial, kNumbers } kind = Kind::kBlank;
  std::optional<Date> date;  // kDate; empty: there is no such day
  std::int64_t serial = 0;   // kSerial
  int first = 0;             // kNumbers: first and second of 5/12/2013
  int second = 0;
  int year = 0;
  std::string problem;  // kBad: what was expected instead
};

struct MonthNames {
  std::array<std::string_view, 12> names;
};

// Month names and their usual short forms, as spreadsheets set to these languages export them; compared
// without accents and full stops.
constexpr std::array<MonthNames, 13> kMonthNames = {{
    {{"january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
      "december"}},
    {{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}},
    {{"januar", "februar", "marz", "april", "mai", "juni", "juli", "august", "september", "oktober", "november",
      "dezember"}},
    {{"jan", "feb", "mrz", "apr", "mai", "jun", "jul", "aug", "sept", "okt", "nov", "dez"}},
    {{"janvier", "fevrier", "mars", "avril", "mai", "juin", "juillet", "aout", "septembre", "octobre", "novembre",
      "decembre"}},
    {{"janv", "fevr", "mars", "avr", "mai", "juin", "juil", "aout", "sept", "oct", "nov", "dec"}},
    {{"enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre",
      "diciembre"}},
    {{"ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"}},
    {{"gennaio", "febbraio", "marzo", "aprile", "maggio", "giugno", "luglio", "agosto", "settembre", "ottobre",
      "novembre", "dicembre"}},
    {{"gen", "feb", "mar", "apr", "mag", "giu", "lug", "ago", "set", "ott", "nov", "dic"}},
    {{"januari", "februari", "maart", "april", "mei", "juni", "juli", "augustus", "september", "oktober", "november",
      "december"}},
    {{"jan", "feb", "mrt", "apr", "mei", "jun", "jul", "aug", "sep", "okt", "nov", "dec"}},
    {{"janeiro", "fevereiro", "marco", "abril", "maio", "junho", "julho", "agosto", "setembro", "outubro", "novembro",
      "dezembro"}},
}};

int month_named(std::string_view word) {
  for (const MonthNames& language : kMonthNames) {
    for (std::size_t month = 0; month < language.names.size(); ++month) {
      if (language.names.at(month) == word) return static_cast<int>(month) + 1;
    }
  }
  return 0;
}

struct Piece {
  std::string text;
  bool number = false;
};

// '12. Mai 2013' to 12, mai, 2013; the separators between come back as one string.
std::vector<Piece> pieces_of(const std::string& text, std::string& separators) {
  std::vector<Piece> pieces;
  bool fresh = true;
  for (const char c : text) {
    const bool digit = c >= '0' && c <= '9';
    const bool separator = c == ' ' || c == '/' || c == '.' || c == '-' || c == ',';
    if (separator) {
      if (c != ' ') separators += c;
      fresh = true;
      continue;
    }
    if (fresh || pieces.back().number != digit) pieces.push_back({{}, digit});
    pieces.back().text += c;
    fresh = false;
  }
  return pieces;
}

int value_of(const Piece& piece) {
  int value = 0;
  for (const char c : piece.text) value = value * 10 + (c - '0');
  return value;
}

// The latest year with these last two digits that is not after the evening's.
int full_year(int two_digits, Date day) {
  const int now = civil(day).year;
  const int year = now - now % 100 + two_digits;
  return year > now ? year - 100 : year;
}

DateCell bad(std::string problem) {
  DateCell cell;
  cell.kind = DateCell::Kind::kBad;
  cell.problem = std::move(problem);
  return cell;
}

DateCell fixed(int year, int month, int day) {
  DateCell cell;
  cell.kind = DateCell::Kind::kDate;
  cell.date = make_date(year, month, day);
  return cell;
}

// '2013-05-31T00:00:00' and '2013-05-31 00:00' without their time of day.
std::string without_time(const std::string& text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string::npos) return text;
  const std::size_t start = text.find_last_of("t ", colon);
  return start == std::string::npos ? text : tidy(text.substr(0, start));
}

DateCell read_number(const std::string& text) {
  std::string whole = text.substr(0, text.find_first_of(".,"));
  if (whole.size() == 8) {  // 20130531
    return fixed(std::stoi(whole.substr(0, 4)), std::stoi(whole.substr(4, 2)), std::stoi(whole.substr(6, 2)));
  }
  if (whole.size() == 4) return bad("a date with day, month and year");
  if (whole.size() != 5) return bad(kExpectedDate);
  DateCell cell;
  cell.kind = DateCell::Kind::kSerial;
  cell.serial = std::stoi(whole);
  return cell;
}

DateCell read_three_numbers(const std::vector<Piece>& pieces, const std::string& separators, Date day) {
  for (const Piece& piece : pieces) {
    if (piece.text.size() != 4 && piece.text.size() > 2) return bad(kExpectedDate);
  }
  if (pieces[1].text.size() == 4) return bad(kExpectedDate);
  if (pieces[0].text.size() == 4) {
    if (pieces[2].text.size() == 4) return bad(kExpectedDate);
    return fixed(value_of(pieces[0]), value_of(pieces[1]), value_of(pieces[2]));
  }
  int year = value_of(pieces[2]);
  if (pieces[2].text.size() == 1) return bad(kExpectedDate);
  if (pieces[2].text.size() == 2) {
    // 13-05-12 is year first for some and day first for others.
    if (separators.find('-') != std::string::npos) return bad("a year of four digits");
    year = full_year(year, day);
  }
  // Full stops stand only where the day comes first.
  if (separators.find('.') != std::string::npos) return fixed(year, value_of(pieces[1]), value_of(pieces[0]));
  DateCell cell;
  cell.kind = DateCell::Kind::kNumbers;
  cell.first = value_of(pieces[0]);
  cell.second = value_of(pieces[1]);
  cell.year = year;
  return cell;
}

DateCell read_with_month_name(const std::vector<Piece>& pieces, Date day) {
  constexpr std::array<std::string_view, 5> kBetween = {"de", "st", "nd", "rd", "th"};
  std::vector<Piece> numbers;
  int month = 0;
  for (const Piece& piece : pieces) {
    const int named = piece.number ? 0 : month_named(piece.text);
    if (piece.number) {
      numbers.push_back(piece);
    } else if (named > 0 && month == 0) {
      month = named;
    } else if (std::find(kBetween.begin(), kBetween.end(), piece.text) == kBetween.end()) {
      return bad(kExpectedDate);
    }
  }
  if (month == 0 || numbers.size() != 2) return bad(kExpectedDate);
  if (numbers[0].text.size() == 4) std::swap(numbers[0], numbers[1]);
  const std::size_t year_digits = numbers[1].text.size();
  if (numbers[0].text.size() > 2 || (year_digits != 2 && year_digits != 4)) return bad(kExpectedDate);
  const int year = value_of(numbers[1]);
  return fixed(year_digits == 4 ? year : full_year(year, day), month, value_of(numbers[0]));
}

DateCell read_cell(const std::string& cell_text, Date day, const TextForms& forms) {
  const std::string text = without_time(tidy(loose_form(forms, cell_text)));
  if (text.empty()) return {};
  if (text.size() > 40) return bad(kExpectedDate);
  std::string separators;
  const std::vector<Piece> pieces = pieces_of(text, separators);
  const auto is_number = [](const Piece& piece) { return piece.number; };
  const bool numbers_only = std::all_of(pieces.begin(), pieces.end(), is_number);
  // 41405 or 41405.0, as a cell without a date format is exported
  const bool one_number = pieces.size() == 1 && separators.empty();
  const bool with_fraction = pieces.size() == 2 && (separators == "." || separators == ",");
  if (numbers_only && (one_number || with_fraction)) return read_number(text);
  if (numbers_only && pieces.size() == 3) return read_three_numbers(pieces, separators, day);
  if (!numbers_only && pieces.size() >= 3) return read_with_month_name(pieces, day);
  return bad(kExpectedDate);
}

// Decides the order from the cells that can be read one way only.
class OrderEvidence {
 public:
  void see(const DateCell& cell, std::size_t position) {
    if (cell.kind != DateCell::Kind::kNumbers) return;
    const bool day_first = make_date(cell.year, cell.second, cell.first).has_value();
    const bool month_first = make_date(cell.year, cell.first, cell.second).has_value();
    if (day_first && !month_first && !day_first_at) day_first_at = position;
    if (month_first && !day_first && !month_first_at) month_first_at = position;
    if (day_first && month_first && cell.first != cell.second && !open_at) open_at = position;
  }

  std::optional<std::size_t> day_first_at;    // the first cell that can only be day first
  std::optional<std::size_t> month_first_at;  // the first that can only be month first
  std::optional<std::size_t> open_at;         // the first that can be both
};

struct ColumnReader {
  const Sheet& sheet;
  const std::vector<SheetCell>& cells;
  const DateReading& reading;
  Faults& faults;

  void fault(std::size_t position, std::string expected, std::string hint = {}) const {
    faults.push_back(
        cell_fault(FaultCode::kBadDate, sheet, cells[position], reading.heading, std::move(expected), std::move(hint)));
  }

  // Empty when the column does not tell, or tells both; then the fault is made.
  [[nodiscard]] std::optional<DateOrder> order(const std::vector<DateCell>& read) const {
    if (reading.order != DateOrder::kAsTheColumnTells) return reading.order;
    OrderEvidence evidence;
    for (std::size_t i = 0; i < read.size(); ++i) evidence.see(read[i], i);
    if (evidence.day_first_at && evidence.month_first_at) {
      fault(*evidence.month_first_at,
            "day first as in line " + std::to_string(cells[*evidence.day_first_at].line) + ": one order in the column");
      return {};
    }
    if (evidence.day_first_at) return DateOrder::kDayFirst;
    if (evidence.month_first_at) return DateOrder::kMonthFirst;
    if (!evidence.open_at) return DateOrder::kDayFirst;  // 5/5/2013 only: both orders agree
    if (const std::optional<DateOrder> meant = order_that_is_accepted(read)) return meant;
    fault(*evidence.open_at, "a column in which at least one date shows whether the day or the month stands first",
          reading.order_hint);
    return {};
  }

  [[nodiscard]] std::optional<DateOrder> order_that_is_accepted(const std::vector<DateCell>& read) const {
    if (!reading.accepted_tells_order) return {};
    const auto all = [&](bool day_first) {
      return std::all_of(read.begin(), read.end(), [&](const DateCell& cell) {
        if (cell.kind != DateCell::Kind::kNumbers) return true;
        const auto date =
            day_first ? make_date(cell.year, cell.second, cell.first) : make_date(cell.year, cell.first, cell.second);
        return date && reading.accepted(*date);
      });
    };
    const bool day_first = all(true);
    if (day_first == all(false)) return {};
    return day_first ? DateOrder::kDayFirst : DateOrder::kMonthFirst;
  }

  // Without an order only a cell that no order can save is at fault: the rest was said once for the column.
  [[nodiscard]] std::optional<Date> from_numbers(std::size_t position, const DateCell& cell,
                                                 std::optional<DateOrder> order) const {
    const std::optional<Date> day_first = make_date(cell.year, cell.second, cell.first);
    const std::optional<Date> month_first = make_date(cell.year, cell.first, cell.second);
    if (!day_first && !month_first) return checked(position, {}, {});
    if (!order) return {};
    const std::optional<Date> date = *order == DateOrder::kDayFirst ? day_first : month_first;
    if (date) return checked(position, date, {});
    fault(position, *order == DateOrder::kDayFirst ? "a date with the day first" : "a date with the month first");
    return {};
  }

  [[nodiscard]] std::optional<Date> checked(std::size_t position, std::optional<Date> date,
                                            const std::string& hint) const {
    if (!date) {
      fault(position, "a date that exists, such as " + reading.example);
      return {};
    }
    if (reading.accepted(*date)) return date;
    fault(position, reading.accepted_words, hint);
    return {};
  }
};

// The age column fits the serial numbers on the 1904 system and not on the 1900 system.
bool looks_like_1904(const std::vector<DateCell>& read, const std::vector<std::optional<int>>& ages, Date day) {
  int fits_1900 = 0;
  int fits_1904 = 0;
  for (std::size_t i = 0; i < read.size() && i < ages.size(); ++i) {
    if (read[i].kind != DateCell::Kind::kSerial || !ages[i]) continue;
    const auto near = [&](SerialSystem system) {
      const auto date = date_of_serial(read[i].serial, system);
      return date && std::abs(age_in_years(*date, day) - *ages[i]) <= 1;  // the column may be a season old
    };
    fits_1900 += near(SerialSystem::k1900) ? 1 : 0;
    fits_1904 += near(SerialSystem::k1904) ? 1 : 0;
  }
  return fits_1904 > 0 && fits_1900 == 0;
}

}  // namespace

std::optional<Date> date_of_serial(std::int64_t serial, SerialSystem system) {
  constexpr int kLatest = 110000;  // year 2201 and later
  if (serial < 1 || serial > kLatest) return {};
  const int days = static_cast<int>(serial);
  if (system == SerialSystem::k1904) return Date{make_date(1904, 1, 1)->days_since_epoch + days};
  constexpr int kDayThatNeverWas = 60;
  if (days == kDayThatNeverWas) return {};
  const int after = days > kDayThatNeverWas ? days - 2 : days - 1;
  return Date{make_date(1900, 1, 1)->days_since_epoch + after};
}

DateOrder order_told_by(const std::vector<SheetCell>& cells, Date latest, const TextForms& forms) {
  OrderEvidence evidence;
  for (std::size_t i = 0; i < cells.size(); ++i) evidence.see(read_cell(cells[i].text, latest, forms), i);
  if (evidence.day_first_at.has_value() == evidence.month_first_at.has_value()) return DateOrder::kAsTheColumnTells;
  return evidence.day_first_at ? DateOrder::kDayFirst : DateOrder::kMonthFirst;
}

std::vector<std::optional<Date>> read_dates(const Sheet& sheet, const std::vector<SheetCell>& cells,
                                            const std::vector<std::optional<int>>& ages, const DateReading& reading,
                                            const TextForms& forms, Faults& faults) {
  const ColumnReader column{sheet, cells, reading, faults};
  std::vector<DateCell> read;
  read.reserve(cells.size());
  for (const SheetCell& cell : cells) read.push_back(read_cell(cell.text, reading.latest, forms));

  const std::optional<DateOrder> order = column.order(read);
  const bool is_1904 = reading.serials == SerialSystem::k1900 && looks_like_1904(read, ages, reading.latest);
  std::vector<std::optional<Date>> dates(cells.size());
  bool flagged_1904 = false;
  for (std::size_t i = 0; i < read.size(); ++i) {
    const DateCell& cell = read[i];
    switch (cell.kind) {
      case DateCell::Kind::kBlank:
        break;
      case DateCell::Kind::kBad:
        column.fault(i, cell.problem == kExpectedDate ? cell.problem + reading.example : cell.problem);
        break;
      case DateCell::Kind::kDate:
        dates[i] = column.checked(i, cell.date, {});
        break;
      case DateCell::Kind::kSerial:
        if (is_1904) {
          if (!flagged_1904) column.fault(i, "day numbers that agree with the ages in the file", reading.serial_hint);
          flagged_1904 = true;
          break;
        }
        dates[i] = column.checked(i, date_of_serial(cell.serial, reading.serials), reading.serial_hint);
        break;
      case DateCell::Kind::kNumbers:
        dates[i] = column.from_numbers(i, cell, order);
        break;
    }
  }
  return dates;
}

std::vector<std::optional<Date>> read_births(const Sheet& sheet, const std::vector<SheetCell>& cells,
                                             const std::vector<std::optional<int>>& ages, const BirthReading& reading,
                                             const TextForms& forms, Faults& faults) {
  DateReading column;
  column.heading = reading.heading;
  column.order = reading.order;
  column.serials = reading.serials;
  column.latest = reading.day;
  column.accepted = [day = reading.day](Date birth) {
    if (birth > day) return false;
    const int age = age_in_years(birth, day);
    return age >= kYoungestPlayer && age <= kOldestPlayer;
  };
  column.accepted_words = "a birth date that makes the player " + std::to_string(kYoungestPlayer) + " to " +
                          std::to_string(kOldestPlayer) + " years old on " + to_iso(reading.day);
  column.order_hint = kStateOrder;
  column.serial_hint = k1904Hint;
  return read_dates(sheet, cells, ages, column, forms, faults);
}

}  // namespace lanework::people
