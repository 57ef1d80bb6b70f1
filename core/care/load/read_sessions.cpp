#include "core/care/load/read_sessions.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "core/care/sheet/care_sheet.h"
#include "core/people/roster_headings.h"

namespace lanework::care::load {
namespace {

enum Column : std::size_t { kPlayer, kDate, kMinutes, kEffort, kEnteredBy, kSession, kAge };

const NumberLimits kMinutesLimits{1, 600, "whole minutes of one session, from 1 to 600"};
const NumberLimits kEffortLimits{0, 10, "the effort of the whole session, from 0 (rest) to 10 (as hard as can be)"};
const NumberLimits kAgeLimits{5, 25, "an age in whole years, from 5 to 25"};

class SessionReader {
 public:
  SessionReader(const people::Sheet& sheet, const people::TextForms& forms, Date day)
      : sheet_(sheet), forms_(forms), cells_(sheet, session_columns(), forms, faults_), day_(day) {}

  Result<Sessions> read() {
    std::vector<const people::SheetRow*> fed;
    for (const people::SheetRow* row : cells_.rows()) {
      if (is_a_feed(*row)) {
        fed.push_back(row);
      } else {
        out_.kept_out.push_back({cells_.text(*row, kPlayer), row->line, cells_.text(*row, kEnteredBy)});
      }
    }
    const auto dates = cells_.dates(fed, kDate, {*make_date(2000, 1, 1), day_}, true);
    for (std::size_t i = 0; i < fed.size(); ++i) take(*fed[i], dates[i]);
    if (!faults_.empty()) return people::faults_by_line(sheet_, std::move(faults_), kMostCareFaults);
    std::stable_sort(out_.sessions.begin(), out_.sessions.end(), [](const SessionEffort& a, const SessionEffort& b) {
      return std::tie(a.player, a.date) < std::tie(b.player, b.date);
    });
    return std::move(out_);
  }

 private:
  const people::Sheet& sheet_;
  const people::TextForms& forms_;
  Faults faults_;
  CareSheet cells_;
  const Date day_;
  Sessions out_;
  std::map<std::tuple<std::string, Date, std::string>, int> line_of_;

  [[nodiscard]] bool is_a_feed(const people::SheetRow& row) const {
    const std::string words = people::plain_words(cells_.text(row, kEnteredBy), forms_);
    return words == "player" || words == "lead";
  }

  std::optional<int> whole(const people::SheetRow& row, Column column, const NumberLimits& limits) {
    const std::optional<double> value = cells_.number(row, column, limits);
    if (!value) return {};
    if (*value == std::floor(*value)) return static_cast<int>(*value);
    cells_.fault(FaultCode::kWrongType, row, column, limits.expected);
    return {};
  }

  void require(const people::SheetRow& row, Column column, const std::string& expected) {
    if (cells_.text(row, column).empty()) cells_.fault(FaultCode::kMissing, row, column, expected);
  }

  void take(const people::SheetRow& row, std::optional<Date> date) {
    SessionEffort one;
    one.player = cells_.name(row, kPlayer, "the id of a player");
    one.session = people::plain_words(cells_.text(row, kSession), forms_);
    require(row, kMinutes, kMinutesLimits.expected);
    require(row, kEffort, kEffortLimits.expected);
    const std::optional<int> minutes = whole(row, kMinutes, kMinutesLimits);
    const std::optional<double> effort = cells_.number(row, kEffort, kEffortLimits);
    one.age = whole(row, kAge, kAgeLimits);
    one.line = row.line;
    if (one.player.empty() || !date || !minutes || !effort) return;
    one.date = *date;
    one.minutes = *minutes;
    one.effort = *effort;
    const auto [first, is_new] = line_of_.emplace(std::tuple(one.player, one.date, one.session), row.line);
    if (!is_new) {
      cells_.fault(FaultCode::kDuplicate, row, kDate,
                   "each session once; line " + std::to_string(first->second) + " is of the same player and day",
                   "two sessions of one day need a word each in the column 'session'");
      return;
    }
    out_.sessions.push_back(std::move(one));
  }
};

}  // namespace

const people::KnownColumns& session_columns() {
  static const people::KnownColumns kKnown = {{{"player", "player|player id|id|member no", true},
                                               {"date", "date|day", true},
                                               {"minutes", "minutes|min|duration min", true},
                                               {"effort", "effort|rpe|effort 0 10", true},
                                               {"entered_by", "entered by|by|source", true},
                                               {"session", "session"},
                                               {"age", "age"}},
                                              "docs/formats/load.md",
                                              {}};
  return kKnown;
}

Result<Sessions> read_sessions(const people::Sheet& sheet, const people::TextForms& forms, Date day) {
  return SessionReader(sheet, forms, day).read();
}

}  // namespace lanework::care::load
