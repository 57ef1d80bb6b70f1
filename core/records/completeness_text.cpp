#include <algorithm>

#include "core/records/completeness.h"
#include "core/records/hours.h"

namespace lanework::records {
namespace {

std::string counted(int count, const char* one, const char* more) {
  return std::to_string(count) + " " + (count == 1 ? one : more);
}

// ' (37 %)', nothing of nothing.
std::string share(std::int64_t part, std::int64_t whole) {
  if (whole == 0) return {};
  return " (" + std::to_string((part * 200 + whole) / (2 * whole)) + " %)";
}

Node hours_node(PlayerMinutes hours) { return Node::make_real(static_cast<double>(hours.count) / 60); }

Node question_node(const Question& question) {
  Node node = Node::make_table();
  node.set("kind", Node::make_text(question_key(question.kind)));
  node.set("file", Node::make_text(question.place.file));
  if (question.place.line > 0) node.set("line", Node::make_integer(question.place.line));
  if (question.other_line > 0) node.set("other_line", Node::make_integer(question.other_line));
  node.set("sentence", Node::make_text(question.sentence));
  return node;
}

Node hours_table(const Completeness& c) {
  Node node = Node::make_table();
  node.set("sessions", Node::make_integer(c.sessions));
  node.set("player_hours", hours_node(c.hours));
  node.set("defaulted_player_hours", hours_node(c.hours_defaulted()));
  node.set("defaulted_in_minutes_player_hours", hours_node(c.hours_by_default[1]));
  node.set("defaulted_in_players_player_hours", hours_node(c.hours_by_default[2]));
  node.set("defaulted_in_both_player_hours", hours_node(c.hours_by_default[3]));
  node.set("defaulted_and_confirmed_player_hours", hours_node(c.hours_defaulted_and_confirmed));
  node.set("sessions_warm_up_unknown", Node::make_integer(c.sessions_warm_up_unknown));
  return node;
}

Node injuries_table(const Completeness& c) {
  Node node = Node::make_table();
  node.set("events", Node::make_integer(c.events));
  node.set("diagnoses", Node::make_integer(c.diagnoses));
  node.set("open_events", Node::make_integer(c.open_events));
  Node known = Node::make_table();
  for (const FieldKnown& field : c.fields) known.set(field.key, Node::make_integer(field.known));
  node.set("known", std::move(known));
  return node;
}

}  // namespace

std::vector<std::string> completeness_lines(const Completeness& c) {
  std::vector<std::string> out;
  out.push_back(to_iso(c.period.first) + " to " + to_iso(c.period.last) + ", known to " + to_iso(c.period.as_of) +
                ": " + counted(c.squads, "squad", "squads") + ", " + counted(c.sessions, "session", "sessions") + ", " +
                in_hours(c.hours) + ", " + counted(c.events, "injury event", "injury events") + " with " +
                counted(c.diagnoses, "diagnosis", "diagnoses"));
  if (c.sessions > 0) {
    out.push_back("usual values stand in for " + in_hours(c.hours_defaulted()) +
                  share(c.hours_defaulted().count, c.hours.count) + " of the hours: minutes " +
                  in_hours(c.hours_by_default[1]) + ", players " + in_hours(c.hours_by_default[2]) + ", both " +
                  in_hours(c.hours_by_default[3]) + "; confirmed " + in_hours(c.hours_defaulted_and_confirmed));
    out.push_back("warm-up unknown in " + std::to_string(c.sessions_warm_up_unknown) + " of " +
                  counted(c.sessions, "session", "sessions") + share(c.sessions_warm_up_unknown, c.sessions));
  }
  if (c.diagnoses > 0) {
    out.push_back("open at the end: " + counted(c.open_events, "injury event", "injury events") +
                  (c.open_events > 0 ? ", whose days are 'at least'" : ""));
    std::string known = "known of " + counted(c.diagnoses, "diagnosis", "diagnoses") + ":";
    for (const FieldKnown& field : c.fields)
      known += (&field == &c.fields.front() ? " " : ", ") + field.name + " " + std::to_string(field.known);
    out.push_back(std::move(known));
  }
  if (c.rows_outside_period > 0)
    out.push_back(counted(c.rows_outside_period, "row", "rows") + " outside the period left out");
  for (const Question& question : c.questions) out.push_back(to_line(question));
  return out;
}

Node completeness_node(const Completeness& c) {
  Node node = Node::make_table();
  node.set("from", Node::make_text(to_iso(c.period.first)));
  node.set("to", Node::make_text(to_iso(c.period.last)));
  node.set("as_of", Node::make_text(to_iso(c.period.as_of)));
  node.set("hours", hours_table(c));
  node.set("injuries", injuries_table(c));
  node.set("rows_outside_period", Node::make_integer(c.rows_outside_period));
  Node squads = Node::make_array();
  for (std::size_t i = 0; i < c.weeks.size(); ++i) {
    Node squad = Node::make_table();
    squad.set("squad", Node::make_text(c.squad_ids[i]));
    squad.set("weeks_with_rows", Node::make_integer(c.weeks[i].with_rows));
    squad.set("weeks_expected", Node::make_integer(c.weeks[i].expected));
    Node without = Node::make_array();
    for (const Date monday : c.weeks[i].without) without.items.push_back(Node::make_text(to_iso(monday)));
    squad.set("weeks_without_rows", std::move(without));
    squads.items.push_back(std::move(squad));
  }
  node.set("squads", std::move(squads));
  Node questions = Node::make_array();
  for (const Question& question : c.questions) questions.items.push_back(question_node(question));
  node.set("questions", std::move(questions));
  return node;
}

}  // namespace lanework::records
