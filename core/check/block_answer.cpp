#include "core/check/block_answer.h"

#include <algorithm>
#include <utility>

namespace lanework::check {
namespace {

constexpr std::int64_t kMany = 1'000'000'000;
constexpr double kMuch = 1e9;
constexpr std::int64_t kMostLanes = 1000;

class AnswerReader {
 public:
  explicit AnswerReader(const Document& document) : document_(document) {}

  Result<StatedAnswer> read() {
    TableReader root(document_.file, &document_.root, "", faults_);
    StatedAnswer out;
    out.club = root.text("club");
    out.monday = day(root, "monday");
    out.weeks = root.integer("weeks", 0, kMany);
    required_list(root, "squads");
    for (TableReader& table : root.tables("squads")) out.squads.push_back(read_block(table));
    // Lists of numbers are not among what a table reader gives.
    if (faults_.empty()) read_lanes(out);
    if (!faults_.empty()) return faults_;
    return out;
  }

 private:
  const Document& document_;
  Faults faults_;

  static void required_list(TableReader& table, std::string_view key) {
    if (!table.has(key)) table.fault(FaultCode::kMissing, key, "nothing", "a list");
  }

  static Date day(TableReader& table, std::string_view key) {
    const std::optional<Date> date = table.date(key);
    if (!date && !table.has(key)) table.fault(FaultCode::kMissing, key, "nothing", "a date");
    return date.value_or(Date{});
  }

  static int start_of(TableReader& table) {
    const std::optional<TimeOfDay> start = table.time("start");
    if (!start && !table.has("start")) table.fault(FaultCode::kMissing, "start", "nothing", "a time of day");
    return start.value_or(TimeOfDay{}).minutes;
  }

  static std::optional<std::int64_t> number_if_stated(TableReader& table, std::string_view key) {
    const std::int64_t value = table.integer_or(key, 0, -kMany, kMany);
    return table.has(key) ? std::optional<std::int64_t>(value) : std::nullopt;
  }

  static bool required_boolean(TableReader& table, std::string_view key) {
    if (!table.has(key)) table.fault(FaultCode::kMissing, key, "nothing", "true or false");
    return table.boolean_or(key, false);
  }

  static StatedSpell read_spell(TableReader& table) {
    StatedSpell spell;
    spell.first_week = table.integer("first_week", -kMany, kMany);
    spell.weeks = table.integer("weeks", -kMany, kMany);
    for (const char* key : {"drills", "comes_in", "leaves"}) required_list(table, key);
    spell.drills = table.texts("drills");
    spell.comes_in = table.texts("comes_in");
    spell.leaves = table.texts("leaves");
    return spell;
  }

  static StatedSession read_session(TableReader& table) {
    StatedSession session;
    session.week = table.integer("week", -kMany, kMany);
    session.date = day(table, "date");
    session.start_minutes = start_of(table);
    session.minutes = table.integer("minutes", -kMany, kMany);
    session.strip = table.text("strip");
    session.turnout = table.integer("turnout", -kMany, kMany);
    session.days_to_match = number_if_stated(table, "days_to_match");
    session.match_day = required_boolean(table, "match_day");
    session.budget_steps = number_if_stated(table, "budget_steps");
    session.planned_steps = number_if_stated(table, "planned_steps");
    required_list(table, "lanes");
    required_list(table, "drills");
    for (TableReader& row : table.tables("drills")) {
      StatedItem item;
      item.named.drill = row.text("drill");
      item.named.rung = row.text("rung");
      item.named.step.sets = static_cast<int>(row.integer("sets", 1, 1000));
      item.named.step.amount = static_cast<int>(row.integer("amount", 1, 1000));
      item.named.where = "drill " + std::to_string(session.items.size() + 1) + " (" + item.named.drill + ")";
      item.steps = number_if_stated(row, "steps");
      if (const bool done = row.boolean_or("done", false); row.has("done")) item.done = done;
      session.items.push_back(std::move(item));
    }
    session.happened = table.text_or("happened", "");
    session.did_it = table.text_or("did_it", "");
    session.minutes_had = number_if_stated(table, "minutes_had");
    return session;
  }

  static StatedRolling read_rolling(TableReader& table) {
    StatedRolling rolling;
    rolling.today = day(table, "today");
    for (TableReader& row : table.tables("sessions")) {
      const auto changes = static_cast<std::int64_t>(row.tables("changes").size());
      rolling.sessions.push_back({day(row, "date"), start_of(row), changes});
    }
    return rolling;
  }

  static std::optional<StatedLoad> read_load(TableReader& week, std::string_view key) {
    TableReader table = week.table(key);
    if (!table.present()) return {};
    return StatedLoad{table.scaled("used", 1000, 0, kMuch), table.integer("ceiling", 0, kMany)};
  }

  static StatedWeek read_week(TableReader& table) {
    StatedWeek week;
    week.week = table.integer("week", -kMany, kMany);
    week.spell = table.integer("spell", -kMany, kMany);
    required_list(table, "families");
    for (TableReader& row : table.tables("families")) {
      week.families.push_back({row.text("family"), row.integer("credits", -kMany, kMany),
                               row.integer("target", -kMany, kMany), row.integer("work_seconds", -kMany, kMany)});
    }
    week.contacts = read_load(table, "contacts");
    week.eccentric = read_load(table, "eccentric");
    week.hard_running = read_load(table, "hard_running_metres");
    return week;
  }

  static StatedBlock read_block(TableReader& table) {
    StatedBlock block;
    block.squad = table.text("squad");
    block.name = table.text("name");
    block.routine = table.text("routine");
    block.feasible = required_boolean(table, "feasible");
    block.value = table.integer("value", -kMany, kMany);
    block.bound = table.integer("bound", -kMany, kMany);
    block.gap_hundredths = table.scaled("gap_percent", 100, -kMuch, kMuch);
    for (const char* key : {"spells", "sessions", "weeks", "missed", "shortfalls"}) required_list(table, key);
    for (TableReader& row : table.tables("spells")) block.spells.push_back(read_spell(row));
    for (TableReader& row : table.tables("sessions")) block.sessions.push_back(read_session(row));
    for (TableReader& row : table.tables("weeks")) block.weeks.push_back(read_week(row));
    for (TableReader& row : table.tables("missed")) {
      block.missed.push_back({day(row, "date"), start_of(row), row.text("why")});
    }
    block.shortfalls = table.texts("shortfalls");
    if (TableReader rolling = table.table("rolling"); rolling.present()) block.rolling = read_rolling(rolling);
    return block;
  }

  void read_lanes(StatedAnswer& out) {
    const Node* squads = document_.root.find("squads");
    for (std::size_t i = 0; i < out.squads.size(); ++i) {
      const Node* sessions = squads->items[i].find("sessions");
      for (std::size_t j = 0; j < out.squads[i].sessions.size(); ++j) {
        const std::string path = "squads." + std::to_string(i + 1) + ".sessions." + std::to_string(j + 1);
        TableReader table(document_.file, &sessions->items[j], path, faults_);
        const Node* lanes = sessions->items[j].find("lanes");
        const std::size_t size = lanes->kind == Node::Kind::kArray ? lanes->items.size() : 0;
        for (const std::int64_t lane : table.scaled_list("lanes", size, 1, 0, kMostLanes)) {
          out.squads[i].sessions[j].lanes.push_back(static_cast<int>(lane));
        }
      }
    }
  }
};

}  // namespace

const StatedBlock* StatedAnswer::find(const std::string& squad) const {
  const auto found =
      std::find_if(squads.begin(), squads.end(), [&](const StatedBlock& block) { return block.squad == squad; });
  return found == squads.end() ? nullptr : &*found;
}

Result<StatedAnswer> read_block_answer(const Document& answer) { return AnswerReader(answer).read(); }

}  // namespace lanework::check
