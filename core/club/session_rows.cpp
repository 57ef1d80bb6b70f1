#include "core/club/session_rows.h"

#include <algorithm>
#include <array>
#include <map>
#include <tuple>

#include "core/people/roster_dates.h"
#include "core/people/roster_headings.h"
#include "core/people/roster_rows.h"
#include "core/people/sheet_columns.h"

namespace lanework::club {
namespace {

using people::SheetCell;
using people::SheetRow;

enum class Column { kSquad, kDate, kStart, kHappened, kMinutes, kDidIt, kLeftOut, kNote };

const people::KnownColumns& known_columns() {
  static const people::KnownColumns kKnown = {
      {{"squad", "squad|team|squad id|squad name|team name|group|mannschaft|equipe|equipo|squadra|ploeg", true},
       {"date", "date|day|session date|on|datum|tag|fecha|data|jour", true},
       {"start", "start|time|start time|from|began|beginn|uhrzeit|heure|hora|ora|tijd"},
       {"happened", "happened|what happened|status|outcome|held|took place|session", true},
       {"minutes", "minutes|min|mins|minutes had|length|duration|minutes min|length min|dauer|duree|minuten"},
       {"did it", "did it|who did it|how many did it|how many|done by|fidelity"},
       {"left out", "left out|drills left out|skipped|not done|omitted"},
       {"note", "note|notes|remark|remarks|comment|comments|bemerkung|remarque|nota|opmerking"}},
      "docs/formats/sessions.md",
      {}};
  return kKnown;
}

struct Word {
  std::string_view words;
  int value;
};

constexpr std::array<Word, 3> kHappenedWords = {
    {{"held|yes|y|done|took place|as planned|1|x", static_cast<int>(Happened::kHeld)},
     {"missed|no|n|cancelled|canceled|called off|not held|did not happen|rained off|0",
      static_cast<int>(Happened::kMissed)},
     {"cut short|short|shortened|cut|stopped early|partly", static_cast<int>(Happened::kCutShort)}}};
constexpr std::array<Word, 3> kDidItWords = {
    {{"most|all|everyone|everybody|most did it", static_cast<int>(DidIt::kMost)},
     {"half|about half|half did it", static_cast<int>(DidIt::kHalf)},
     {"few|a few|nobody|none|few did it", static_cast<int>(DidIt::kFew)}}};

class RowReader {
 public:
  RowReader(const people::Sheet& sheet, const SessionReading& reading)
      : sheet_(sheet), reading_(reading), club_(*reading.club), columns_(sheet, known_columns(), reading.forms) {}

  Result<std::vector<SessionRow>> read() {
    if (!columns_.find_headings(faults_)) return std::move(faults_);
    const std::vector<const SheetRow*> rows = columns_.rows(faults_);
    if (rows.size() > kMostSessionRows) {
      faults_.push_back(people::row_fault(FaultCode::kOutOfRange, sheet_, 0, std::to_string(rows.size()) + " rows",
                                          "at most " + std::to_string(kMostSessionRows)));
      return std::move(faults_);
    }
    read_dates(rows);
    for (std::size_t i = 0; i < rows.size(); ++i) read_row(*rows[i], dates_[i]);
    if (faults_.empty()) return std::move(out_);
    return people::faults_by_line(sheet_, std::move(faults_), people::kMostFaultsListed);
  }

 private:
  const people::Sheet& sheet_;
  const SessionReading& reading_;
  const Club& club_;
  people::SheetColumns columns_;
  std::vector<std::optional<Date>> dates_;
  std::vector<SessionRow> out_;
  std::map<std::tuple<std::size_t, Date, TimeOfDay>, int> lines_;  // of the rows of a session
  Faults faults_;

  void fault(FaultCode code, const SheetRow& row, Column column, std::string expected, std::string hint = {}) {
    faults_.push_back(columns_.fault(code, row, index(column), std::move(expected), std::move(hint)));
  }

  static std::size_t index(Column column) { return static_cast<std::size_t>(column); }
  [[nodiscard]] SheetCell cell(const SheetRow& row, Column column) const { return columns_.cell(row, index(column)); }
  [[nodiscard]] std::string text(const SheetRow& row, Column column) const { return columns_.text(row, index(column)); }
  [[nodiscard]] std::string words(const SheetRow& row, Column column) const {
    return columns_.words(row, index(column));
  }
  [[nodiscard]] const std::string& heading(Column column) const { return columns_.heading(index(column)); }

  void read_dates(const std::vector<const SheetRow*>& rows) {
    const Date first = club_.settings.block_from;
    const Date last{first.days_since_epoch + 7 * club_.settings.block_weeks - 1};
    const Date latest = std::min(last, reading_.today);
    people::DateReading column;
    column.heading = heading(Column::kDate);
    column.latest = last;
    column.accepted = [=](Date date) { return first <= date && date <= latest; };
    column.accepted_words = latest < first
                                ? "no row yet: the block begins on " + to_iso(first)
                                : "a day of the block that is not to come: " + to_iso(first) + " to " + to_iso(latest);
    column.order_hint = column.serial_hint = "write dates as 2026-11-24";
    column.example = "2026-11-24";
    column.accepted_tells_order = true;
    std::vector<SheetCell> cells;
    for (const SheetRow* row : rows) cells.push_back(cell(*row, Column::kDate));
    dates_ = people::read_dates(sheet_, cells, {}, column, reading_.forms, faults_);
  }

  void read_row(const SheetRow& row, std::optional<Date> date) {
    SessionRow out;
    out.place = {sheet_.file, row.line, 0, {}};
    const std::size_t before = faults_.size();
    const std::optional<std::size_t> squad = read_squad(row);
    if (!date && text(row, Column::kDate).empty())
      fault(FaultCode::kMissing, row, Column::kDate, "the day of the session, such as 2026-11-24");
    const std::optional<int> happened =
        read_word(row, Column::kHappened, kHappenedWords, "'held', 'missed' or 'cut short'", {});
    const std::optional<int> did_it = read_word(row, Column::kDidIt, kDidItWords, "'most', 'half' or 'few', or nothing",
                                                static_cast<int>(DidIt::kMost));
    const std::optional<TimeOfDay> start = read_start(row);
    out.note = text(row, Column::kNote);
    if (squad) out.left_out = read_left_out(row, club_.catalogue_of(club_.squads[*squad]));
    out.left_out_place = {sheet_.file, cell(row, Column::kLeftOut).line, 0, heading(Column::kLeftOut)};
    if (!squad || !date) return;
    const PlannedSlot* slot = find_slot(row, *squad, *date, start);
    if (slot == nullptr) return;
    out.squad = *squad;
    out.date = slot->date;
    out.start = slot->start;
    if (happened) out.happened = static_cast<Happened>(*happened);
    if (did_it) out.did_it = static_cast<DidIt>(*did_it);
    out.minutes = read_minutes(row, out.happened, static_cast<int>(slot->length.count / 60));
    if (out.happened == Happened::kMissed) check_missed(row);
    const auto [known, is_new] = lines_.emplace(std::tuple{out.squad, out.date, out.start}, row.line);
    if (!is_new) {
      fault(FaultCode::kDuplicate, row, Column::kDate,
            "one row a session, and line " + std::to_string(known->second) + " has it already");
    }
    if (faults_.size() == before) out_.push_back(std::move(out));
  }

  std::optional<std::size_t> read_squad(const SheetRow& row) {
    const std::string wanted = words(row, Column::kSquad);
    if (wanted.empty()) {
      fault(FaultCode::kMissing, row, Column::kSquad, "the id or the name of a squad");
      return {};
    }
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < club_.squads.size(); ++i) {
      if (people::plain_words(club_.squads[i].id, reading_.forms) == wanted) return i;
      if (people::plain_words(club_.squads[i].squad.name, reading_.forms) == wanted) found.push_back(i);
    }
    if (found.size() == 1) return found.front();
    fault(FaultCode::kUnknownName, row, Column::kSquad,
          found.empty() ? "the id or the name of a squad of the club" : "an id: several squads have this name");
    return {};
  }

  template <std::size_t N>
  std::optional<int> read_word(const SheetRow& row, Column column, const std::array<Word, N>& known,
                               const char* expected, std::optional<int> fallback) {
    const std::string found = words(row, column);
    if (found.empty() && fallback) return fallback;
    for (const Word& word : known) {
      if (!found.empty() && people::among(word.words, found)) return word.value;
    }
    fault(found.empty() ? FaultCode::kMissing : FaultCode::kUnknownName, row, column, expected);
    return {};
  }

  // '18:00', '18:00:00', '18.00'.
  std::optional<TimeOfDay> read_start(const SheetRow& row) {
    std::string clock = text(row, Column::kStart);
    if (clock.empty()) return {};
    std::replace(clock.begin(), clock.end(), '.', ':');
    if (std::count(clock.begin(), clock.end(), ':') == 2) clock.resize(clock.rfind(':'));
    if (clock.size() == 4) clock = "0" + clock;
    const std::optional<TimeOfDay> time = parse_time_of_day(clock);
    if (!time) fault(FaultCode::kWrongType, row, Column::kStart, "a time of day such as 18:00, or nothing");
    return time;
  }

  const PlannedSlot* find_slot(const SheetRow& row, std::size_t squad, Date date, std::optional<TimeOfDay> start) {
    const Calendar& calendar = reading_.allocation->calendars[squad];
    std::vector<const PlannedSlot*> that_day;
    std::string starts;
    for (const PlannedSlot& slot : calendar.slots) {
      if (slot.date != date) continue;
      starts += (starts.empty() ? "" : " or ") + to_text(slot.start);
      if (!start || slot.start == *start) that_day.push_back(&slot);
    }
    if (that_day.size() == 1) return that_day.front();
    if (starts.empty()) {
      std::string why;
      for (const MissedSlot& missed : calendar.missed) {
        if (missed.date == date) why = ": " + missed.why;
      }
      fault(FaultCode::kUnknownName, row, Column::kDate,
            "a day with a session of " + club_.squads[squad].id + (why.empty() ? "" : "; it has none that day" + why));
    } else if (start) {
      fault(FaultCode::kUnknownName, row, Column::kStart, "the start of a session that day: " + starts);
    } else {
      fault(FaultCode::kMissing, row, Column::kStart, "which of that day's sessions: " + starts);
    }
    return nullptr;
  }

  std::optional<int> read_minutes(const SheetRow& row, Happened happened, int slot) {
    std::string found = words(row, Column::kMinutes);
    if (text(row, Column::kMinutes).empty()) return {};
    for (const std::string unit : {" min", " mins", " minutes"}) {
      if (found.size() > unit.size() && found.compare(found.size() - unit.size(), unit.size(), unit) == 0)
        found.resize(found.size() - unit.size());
    }
    // plain_words drops signs and decimal marks: they must not be in the cell at all.
    const std::string cell_text = text(row, Column::kMinutes);
    const bool plain = cell_text.find_first_of("-+.,()#") == std::string::npos && found.size() <= 4 && !found.empty() &&
                       found.find_first_not_of("0123456789") == std::string::npos;
    const int minutes = plain ? std::stoi(found) : 0;
    if (happened == Happened::kMissed && plain && minutes == 0) return {};
    if (plain && minutes >= 1 && minutes <= slot) return minutes;
    fault(FaultCode::kOutOfRange, row, Column::kMinutes,
          "a whole number from 1 to " + std::to_string(slot) + ", the minutes of the slot",
          plain && minutes == 0 ? "a session without any is 'missed'" : "");
    return {};
  }

  // What nobody did has no length, and nothing in it was left out.
  void check_missed(const SheetRow& row) {
    for (const Column column : {Column::kMinutes, Column::kLeftOut}) {
      const std::string found = text(row, column);
      if (found.empty() || (column == Column::kMinutes && found == "0")) continue;
      fault(FaultCode::kContradiction, row, column, "nothing: the session is told as missed");
    }
  }

  std::vector<std::string> read_left_out(const SheetRow& row, const catalogue::Catalogue& catalogue) {
    std::vector<std::string> out;
    const std::string list = cell(row, Column::kLeftOut).text;
    for (std::size_t from = 0; from <= list.size();) {
      const std::size_t end = std::min(list.find_first_of(";\n\r", from), list.size());
      const std::string written = people::tidy(std::string_view(list).substr(from, end - from));
      from = end + 1;
      if (written.empty()) continue;
      const std::string wanted = people::plain_words(written, reading_.forms);
      const auto same = [&](const catalogue::Drill& drill) {
        return people::plain_words(drill.id, reading_.forms) == wanted ||
               people::plain_words(drill.name, reading_.forms) == wanted;
      };
      const auto drill = std::find_if(catalogue.drills.begin(), catalogue.drills.end(), same);
      if (drill == catalogue.drills.end()) {
        Fault unknown = people::cell_fault(FaultCode::kUnknownName, sheet_, cell(row, Column::kLeftOut),
                                           heading(Column::kLeftOut), "names or ids of drills, ';' between them");
        unknown.found = quote(written);
        faults_.push_back(std::move(unknown));
      } else if (std::find(out.begin(), out.end(), drill->id) == out.end()) {
        out.push_back(drill->id);
      }
    }
    return out;
  }
};

}  // namespace

Result<std::vector<SessionRow>> read_session_rows(const people::Sheet& sheet, const SessionReading& reading) {
  return RowReader(sheet, reading).read();
}

int count_known_session_headings(const people::Sheet& sheet, const people::TextForms& forms) {
  return people::count_known(sheet, known_columns(), forms);
}

const char* to_word(Happened happened) {
  constexpr std::array<const char*, 3> words = {"held", "missed", "cut short"};
  return words[static_cast<std::size_t>(happened)];
}

const char* to_word(DidIt did_it) {
  constexpr std::array<const char*, 3> words = {"most", "half", "few"};
  return words[static_cast<std::size_t>(did_it)];
}

}  // namespace lanework::club
