#include "app/read/block_answer.h"

#include <algorithm>
#include <utility>

#include "core/base/document.h"

namespace lanework::read {
namespace {

constexpr int kMostWeeks = 8;
constexpr int kMany = 1'000'000;
constexpr int kMost = 2'000'000'000;

int number(TableReader& table, std::string_view key, int least, int most) {
  return static_cast<int>(table.integer(key, least, most));
}

Date day(TableReader& table, std::string_view key) {
  const auto date = table.date(key);
  if (!date && !table.has(key)) table.fault(FaultCode::kMissing, key, "nothing", "a date such as 2026-11-24");
  return date.value_or(Date());
}

TimeOfDay clock_time(TableReader& table, std::string_view key) {
  const auto time = table.time(key);
  if (!time && !table.has(key)) table.fault(FaultCode::kMissing, key, "nothing", "a time such as 18:00");
  return time.value_or(TimeOfDay());
}

std::optional<int> number_if_stated(TableReader& table, std::string_view key) {
  const auto value = static_cast<int>(table.integer_or(key, 0, 0, kMany));
  return table.has(key) ? std::optional<int>(value) : std::nullopt;
}

BlockDrill read_drill(TableReader& table) {
  BlockDrill drill;
  drill.drill = table.text("drill");
  drill.rung = table.text("rung");
  drill.sets = number(table, "sets", 1, 20);
  drill.amount = number(table, "amount", 1, 1000);
  drill.steps = static_cast<int>(table.integer_or("steps", 0, 0, kMany));
  if (const bool done = table.boolean_or("done", false); table.has("done")) drill.done = done;
  drill.place = table.place();
  return drill;
}

std::vector<int> whole_numbers(const Node& table, std::string_view key) {
  std::vector<int> out;
  const Node* list = table.find(key);
  if (list == nullptr) return out;
  for (const Node& item : list->items) {
    if (item.kind == Node::Kind::kInteger) out.push_back(static_cast<int>(item.integer));
  }
  return out;
}

BlockSession read_session(TableReader& table, const Node& node) {
  BlockSession session;
  session.week = number(table, "week", 1, kMostWeeks);
  session.date = day(table, "date");
  session.start = clock_time(table, "start");
  session.minutes = number(table, "minutes", 1, 24 * 60);
  session.strip = table.text_or("strip", "");
  session.lanes = whole_numbers(node, "lanes");
  session.turnout = static_cast<int>(table.integer_or("turnout", 0, 0, kMany));
  session.days_to_match = number_if_stated(table, "days_to_match");
  session.budget_steps = number_if_stated(table, "budget_steps");
  session.match_day = table.boolean_or("match_day", false);
  static const std::vector<std::string_view> kHappened = {"held", "cut short", "missed", "no word"};
  if (table.has("happened")) {
    if (const int word = table.word("happened", kHappened, -1); word >= 0)
      session.happened = kHappened[static_cast<std::size_t>(word)];
  }
  for (TableReader& drill : table.tables("drills")) session.drills.push_back(read_drill(drill));
  session.place = table.place();
  return session;
}

BlockSpell read_spell(TableReader& table) {
  BlockSpell spell;
  spell.first_week = number(table, "first_week", 1, kMostWeeks);
  spell.weeks = number(table, "weeks", 1, kMostWeeks);
  spell.drills = table.texts("drills");
  spell.comes_in = table.texts("comes_in");
  spell.leaves = table.texts("leaves");
  return spell;
}

void read_week(TableReader& table, std::vector<BlockFamily>& families) {
  const int week = number(table, "week", 1, kMostWeeks);
  for (TableReader& row : table.tables("families")) {
    BlockFamily family;
    family.week = week;
    family.family = row.text("family");
    family.credits = number(row, "credits", 0, kMany);
    family.target = number(row, "target", 0, kMany);
    families.push_back(std::move(family));
  }
}

// The tables of a list beside their nodes: what the reader of tables does not know is looked up in the node.
std::vector<const Node*> nodes_of(const Node& table, std::string_view key) {
  std::vector<const Node*> out;
  const Node* list = table.find(key);
  if (list == nullptr) return out;
  for (const Node& item : list->items) {
    if (item.kind == Node::Kind::kTable) out.push_back(&item);
  }
  return out;
}

SquadBlock read_squad(TableReader& table, const Node& node) {
  SquadBlock squad;
  squad.squad = table.text("squad");
  squad.place = table.place("squad");
  squad.name = table.text_or("name", squad.squad);
  squad.routine = table.text_or("routine", "");
  squad.feasible = table.boolean_or("feasible", true);
  squad.gap_hundredths = static_cast<int>(table.scaled_or("gap_percent", 100, 0, 0, 100));
  for (TableReader& spell : table.tables("spells")) squad.spells.push_back(read_spell(spell));
  std::vector<TableReader> sessions = table.tables("sessions");
  const std::vector<const Node*> nodes = nodes_of(node, "sessions");
  for (std::size_t i = 0; i < sessions.size() && i < nodes.size(); ++i) {
    squad.sessions.push_back(read_session(sessions[i], *nodes[i]));
  }
  for (TableReader& week : table.tables("weeks")) read_week(week, squad.families);
  squad.shortfalls = table.texts("shortfalls");
  for (TableReader& row : table.tables("minute_prices")) {
    BlockMinutePrice price;
    price.minutes = number(row, "minutes", -kMany, kMany);
    price.before = number(row, "before", -kMost, kMost);
    price.after = number(row, "after", -kMost, kMost);
    price.sentence = row.text("sentence");
    squad.minute_prices.push_back(std::move(price));
  }
  return squad;
}

}  // namespace

const SquadBlock* BlockAnswer::find(const std::string& squad) const {
  const auto same = [&](const SquadBlock& other) { return other.squad == squad; };
  const auto at = std::find_if(squads.begin(), squads.end(), same);
  return at == squads.end() ? nullptr : &*at;
}

Result<BlockAnswer> read_block_answer(const std::string& file, std::string_view text) {
  const auto document = parse_json(file, text);
  if (!document) return document.faults();
  const Node& node = document.value().root;
  Faults faults;
  TableReader root(file, &node, "", faults);
  BlockAnswer answer;
  answer.club = root.text_or("club", "");
  answer.monday = day(root, "monday");
  answer.weeks = number(root, "weeks", 1, kMostWeeks);
  std::vector<TableReader> squads = root.tables("squads");
  const std::vector<const Node*> nodes = nodes_of(node, "squads");
  if (squads.empty()) root.fault(FaultCode::kMissing, "squads", "no squad", "the answer of 'lanework block --json'");
  for (std::size_t i = 0; i < squads.size() && i < nodes.size(); ++i) {
    answer.squads.push_back(read_squad(squads[i], *nodes[i]));
  }
  if (!faults.empty()) return faults;
  return answer;
}

}  // namespace lanework::read
