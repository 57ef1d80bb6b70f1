#include "app/read/block_table.h"

#include <algorithm>
#include <functional>

#include "app/read/table_package.h"

namespace lanework::read {
namespace {

// A row: a session of a squad, and one of its drills or none.
struct Row {
  const SquadBlock* squad;
  const BlockSession* session;
  const BlockDrill* drill;
  std::size_t place;  // of the drill in its session, from 1
};

std::string lanes_text(const std::vector<int>& lanes) {
  std::string out;
  for (const int lane : lanes) out += (out.empty() ? "" : " ") + std::to_string(lane);
  return out;
}

struct Column {
  const char* name;
  const char* type;  // of Frictionless Table Schema
  const char* description;
  bool required;
  std::function<std::string(const Row&)> text;
};

const std::vector<Column>& columns() {
  const auto of_drill = [](std::string (*text)(const Row&)) {
    return [text](const Row& row) { return row.drill == nullptr ? std::string() : text(row); };
  };
  static const std::vector<Column> kColumns = {
      {"squad", "string", "Id of the squad.", true, [](const Row& r) { return r.squad->squad; }},
      {"week", "integer", "Week of the block, from 1.", true,
       [](const Row& r) { return std::to_string(r.session->week); }},
      {"date", "date", "Day of the session.", true, [](const Row& r) { return to_iso(r.session->date); }},
      {"start", "time", "Start, local time.", true, [](const Row& r) { return to_text(r.session->start) + ":00"; }},
      {"minutes", "integer", "Length of the slot.", true,
       [](const Row& r) { return std::to_string(r.session->minutes); }},
      {"strip", "string", "Id of the strip.", false, [](const Row& r) { return r.session->strip; }},
      {"lanes", "string", "Its lanes, counted from 1, with spaces between.", false,
       [](const Row& r) { return lanes_text(r.session->lanes); }},
      {"turnout", "integer", "Players expected.", true,
       [](const Row& r) { return std::to_string(r.session->turnout); }},
      {"match_day", "boolean", "The warm-up before a match.", true,
       [](const Row& r) { return std::string(r.session->match_day ? "true" : "false"); }},
      {"place", "integer", "Place of the drill in the session, from 1.", false,
       of_drill([](const Row& r) { return std::to_string(r.place); })},
      {"drill", "string", "Id of the drill.", false, of_drill([](const Row& r) { return r.drill->drill; })},
      {"rung", "string", "Key of its rung.", false, of_drill([](const Row& r) { return r.drill->rung; })},
      {"sets", "integer", "Sets.", false, of_drill([](const Row& r) { return std::to_string(r.drill->sets); })},
      {"amount", "integer", "Repetitions, seconds or passes in a set, as the drill counts.", false,
       of_drill([](const Row& r) { return std::to_string(r.drill->amount); })}};
  return kColumns;
}

// Inert in a spreadsheet (common practice against formulas in CSV), then quoted where it must be.
std::string cell(std::string text) {
  if (!text.empty() && std::string("=+-@\t\r").find(text.front()) != std::string::npos) text.insert(0, 1, '\'');
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

void add_row(std::string& out, const std::function<std::string(const Column&)>& text) {
  for (const Column& column : columns()) out += (&column == &columns().front() ? "" : ",") + text(column);
  out += "\r\n";
}

}  // namespace

std::string block_table(const std::vector<const SquadBlock*>& squads) {
  std::string out;
  add_row(out, [](const Column& column) { return std::string(column.name); });
  for (const SquadBlock* squad : squads) {
    for (const BlockSession& session : squad->sessions) {
      for (std::size_t i = 0; i < std::max<std::size_t>(session.drills.size(), 1); ++i) {
        const Row row{squad, &session, session.drills.empty() ? nullptr : &session.drills[i], i + 1};
        add_row(out, [&](const Column& column) { return cell(column.text(row)); });
      }
    }
  }
  return out;
}

std::string block_table_descriptor(const std::string& name) {
  PackagedTable table{"sessions", "One row a session and drill.", {}};
  for (const Column& column : columns()) {
    table.columns.push_back({column.name, column.type, column.description, column.required});
  }
  return package_descriptor({name, "block", name + ": sessions of a block", "", {table}});
}

}  // namespace lanework::read
