#include "core/ledger/sheets.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string_view>
#include <vector>

#include "core/ledger/consent.h"

namespace lanework::ledger {
namespace {

std::string cell(const std::string& text) {
  std::string out = "\"";
  constexpr std::string_view kFormula = "=+-@\t\r\n";
  if (!text.empty() && kFormula.find(text.front()) != std::string_view::npos) out += '\'';
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

bool within(const SheetDays& days, const std::string& day) {
  const auto date = parse_iso_date(day);
  return date && days.from <= *date && *date <= days.until;
}

std::string text_in(const std::optional<Node>& entry, std::string_view key) {
  const Node* found = entry ? entry->find(key) : nullptr;
  return found != nullptr && found->kind == Node::Kind::kText ? found->text : std::string();
}

std::optional<std::int64_t> whole_at(const std::optional<Node>& entry, std::string_view key) {
  const Node* found = entry ? entry->find(key) : nullptr;
  return found != nullptr && found->kind == Node::Kind::kInteger ? std::optional(found->integer) : std::nullopt;
}

std::string whole_in(const std::optional<Node>& entry, std::string_view key) {
  const auto whole = whole_at(entry, key);
  return whole ? std::to_string(*whole) : std::string();
}

bool may_count(const State& state, const std::string& player) {
  return consent_of(state, player, kStatistics) == Consent::kGiven;
}

// Of those whom the attendance names, how many must not be counted.
std::int64_t not_to_count(const State& state, const SessionState& session) {
  const Node* named = session.attendance ? session.attendance->find("players") : nullptr;
  if (named == nullptr) return 0;
  return std::count_if(named->items.begin(), named->items.end(),
                       [&](const Node& player) { return !may_count(state, player.text); });
}

bool was_skipped(const DrillMarks& marks) { return marks.done == "skipped"; }
bool needs_help(const DrillMarks& marks) { return marks.needs_help; }

std::string drills_marked(const SessionState& session, bool (*is_it)(const DrillMarks&)) {
  std::string out;
  for (const auto& [drill, marks] : session.drills) {
    if (is_it(marks)) out += (out.empty() ? "" : "; ") + drill;
  }
  return out;
}

// Held with nobody doing it is a warm-up that did not happen.
bool was_missed(const SessionState& session) {
  return text_in(session.wrap_up, "happened") == "missed" || text_in(session.wrap_up, "did_it") == "nobody";
}

std::string warm_up_word(const SessionState& session) {
  if (!session.wrap_up) return {};
  if (was_missed(session)) return "no";
  return text_in(session.wrap_up, "did_it");
}

// 'region knee' of the injury's terms: what stands after the column's own word.
std::string term(const Injury& injury, std::string_view column) {
  for (const std::string& what : injury.what) {
    if (what.size() > column.size() + 1 && what.compare(0, column.size(), column) == 0 && what[column.size()] == ' ') {
      return what.substr(column.size() + 1);
    }
  }
  return {};
}

}  // namespace

std::string sheet_row(const std::vector<std::string>& cells) {
  std::string out;
  for (const std::string& one : cells) out += (out.empty() ? "" : ",") + cell(one);
  return out + "\r\n";
}

std::string sessions_sheet(const State& state, const SheetDays& days) {
  std::string out = sheet_row({"squad", "date", "start", "happened", "minutes", "did it", "left out", "note"});
  for (const auto& [key, session] : state.sessions) {
    if (!session.wrap_up || !within(days, key.day)) continue;
    const bool missed = was_missed(session);
    const std::string happened = text_in(session.wrap_up, "happened");
    const std::string minutes = whole_in(session.wrap_up, "minutes");
    out += sheet_row({key.squad, key.day, key.start,
                      missed                    ? "missed"
                      : happened == "cut-short" ? "cut short"
                                                : "held",
                      missed || minutes == "0" ? "" : minutes, missed ? "" : text_in(session.wrap_up, "did_it"),
                      missed ? "" : drills_marked(session, was_skipped), text_in(session.wrap_up, "note")});
  }
  return out;
}

EvidenceSheet hours_sheet(const State& state, const SheetDays& days, const std::vector<CalendarSession>& calendar) {
  struct Row {
    const SessionState* session = nullptr;  // what was said; null: nothing
    bool match = false;                     // by the calendar
  };
  std::map<SessionKey, Row> rows;
  for (const CalendarSession& one : calendar) rows[one.key].match = one.match;
  for (const auto& [key, session] : state.sessions) {
    const bool said = session.wrap_up || session.attendance || session.confirmed;
    if (!said) continue;
    rows[key].session = &session;
    // Rained off: there was no session, so no hours.
    const bool none = text_in(session.wrap_up, "happened") == "missed" && !session.attendance && !session.confirmed;
    if (none) rows.erase(key);
  }
  static const SessionState kNothingSaid;
  EvidenceSheet out;
  out.text = sheet_row({"squad", "date", "setting", "minutes", "players", "warm-up", "warm-up minutes", "left out",
                        "needing help", "confirmed"});
  for (const auto& [key, one] : rows) {
    if (!within(days, key.day)) continue;
    const SessionState& session = one.session == nullptr ? kNothingSaid : *one.session;
    const bool confirmed = session.confirmed.has_value();
    const std::string setting = text_in(session.confirmed, "setting");
    const bool missed = session.wrap_up && was_missed(session);
    const auto counted = confirmed ? whole_at(session.confirmed, "players") : whole_at(session.attendance, "there");
    const std::int64_t off = std::min(not_to_count(state, session), counted.value_or(0));
    out.left_out += off;
    out.text += sheet_row({key.squad, key.day,
                           !setting.empty() ? setting
                           : one.match      ? "match"
                                            : "training",
                           whole_in(session.confirmed, "minutes"), counted ? std::to_string(*counted - off) : "",
                           warm_up_word(session), missed ? "" : whole_in(session.wrap_up, "minutes"),
                           missed ? "" : drills_marked(session, was_skipped), drills_marked(session, needs_help),
                           confirmed ? "yes" : ""});
  }
  return out;
}

EvidenceSheet injuries_sheet(const State& state, const SheetDays& days) {
  constexpr std::array<const char*, 8> kTerms = {"setting", "onset", "contact",  "region",
                                                 "tissue",  "side",  "activity", "recurrence"};
  std::vector<std::string> heading = {"squad", "player", "date"};
  heading.insert(heading.end(), kTerms.begin(), kTerms.end());
  heading.insert(heading.end(), {"loss began", "returned", "note"});
  EvidenceSheet out{sheet_row(heading), 0, 0};
  std::set<std::string> left_out;
  std::set<std::string> named;
  for (const auto& [id, injury] : state.injuries) {
    if (!within(days, injury.day)) continue;
    if (!may_count(state, injury.player)) {
      ++out.left_out;
      left_out.insert(injury.player);
      continue;
    }
    named.insert(injury.player);
    std::vector<std::string> cells = {injury.squad, injury.player, injury.day};
    for (const char* column : kTerms) cells.push_back(term(injury, column));
    cells.insert(cells.end(), {injury.loss_began, injury.returned, injury.note});
    out.text += sheet_row(cells);
  }
  out.left_out_people = static_cast<std::int64_t>(left_out.size());
  out.people = static_cast<std::int64_t>(named.size());
  return out;
}

}  // namespace lanework::ledger
