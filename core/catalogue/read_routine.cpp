#include <algorithm>

#include "core/catalogue/fields.h"
#include "core/catalogue/loads.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::catalogue {
namespace {

constexpr std::size_t kMostLines = 40;

// Position by id, or -1 with a fault.
int find_drill(TableReader& table, const Catalogue& catalogue) {
  const std::string id = table.text("id");
  if (id.empty()) return -1;
  const Drill* drill = catalogue.find(id);
  if (drill != nullptr) return static_cast<int>(drill - catalogue.drills.data());
  table.fault(FaultCode::kUnknownName, "id", quote(id), "the id of a drill of the catalogue");
  return -1;
}

int find_rung(TableReader& table, const Drill& drill) {
  const std::string key = table.text("rung");
  if (key.empty()) return -1;
  const int rung = rung_index(drill, key);
  if (rung >= 0) return rung;
  std::vector<std::string> known;
  for (const Rung& row : drill.rungs) known.push_back(row.key);
  table.fault(FaultCode::kUnknownName, "rung", quote(key), one_of(known));
  return -1;
}

int find_dose(TableReader& table, const Drill& drill) {
  const std::size_t before = table.faults_so_far();
  const int sets = static_cast<int>(table.integer("sets", 1, 6));
  const int amount = static_cast<int>(table.integer("amount", 1, 180));
  if (table.faults_so_far() != before) return -1;
  const int dose = dose_index(drill, sets, amount);
  if (dose >= 0) return dose;
  std::vector<std::string> known;
  for (const DoseStep& step : drill.dose.steps) {
    known.push_back(std::to_string(step.sets) + " x " + std::to_string(step.amount));
  }
  table.fault(FaultCode::kUnknownName, "amount", std::to_string(sets) + " x " + std::to_string(amount), one_of(known));
  return -1;
}

// Sound as a line by itself; the place of its faults is its table.
struct ReadLine {
  RoutineLine line;
  TableReader table;
};

void check_ages(const Routine& routine, const Drill& drill, const Rung& rung, TableReader& table) {
  const int floor = std::max(drill.age_from, rung.age_from);
  if (routine.age_from < floor) {
    const bool by_rung = rung.age_from > drill.age_from;
    table.fault(
        FaultCode::kContradiction, by_rung ? "rung" : "id", quote(by_rung ? rung.key : drill.id),
        "one for age " + std::to_string(routine.age_from) + ": this is for " + std::to_string(floor) + " and older");
  }
  if (routine.age_to > drill.age_to) {
    table.fault(
        FaultCode::kContradiction, "id", quote(drill.id),
        "one for age " + std::to_string(routine.age_to) + ": this is for up to " + std::to_string(drill.age_to));
  }
}

void check_order(std::vector<ReadLine>& lines, const Catalogue& catalogue) {
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const Drill& drill = catalogue.drills[static_cast<std::size_t>(lines[i].line.drill)];
    const Drill& before = catalogue.drills[static_cast<std::size_t>(lines[i - 1].line.drill)];
    for (std::size_t j = 0; j < i; ++j) {
      if (lines[j].line.drill != lines[i].line.drill) continue;
      lines[i].table.fault(FaultCode::kDuplicate, "id", quote(drill.id), "each drill once");
      break;
    }
    if (drill.phase < before.phase) {
      lines[i].table.fault(FaultCode::kContradiction, "id", quote(drill.id),
                           "a drill of phase " + std::string(word(phase_words(), before.phase)) + " or later, not of " +
                               std::string(word(phase_words(), drill.phase)));
    }
  }
}

std::string thousandths_in_words(std::int64_t thousandths) {
  std::string out = std::to_string(thousandths / 1000);
  if (thousandths % 1000 != 0) out += "." + std::to_string(thousandths % 1000 / 100);
  return out;
}

// Names the line at which a ceiling of the youngest is first passed.
void check_loads(const Routine& routine, const Catalogue& catalogue, std::vector<ReadLine>& lines) {
  const Ceilings& ceilings = catalogue.ceilings_for(routine.age_from);
  LoadSum before;
  for (ReadLine& line : lines) {
    const Drill& drill = catalogue.drills[static_cast<std::size_t>(line.line.drill)];
    const Rung& rung = drill.rungs[static_cast<std::size_t>(line.line.rung)];
    const DoseStep& step = drill.dose.steps[static_cast<std::size_t>(line.line.dose)];
    LoadSum after = before;
    after += load_of(drill, rung, step, kUsualLane, catalogue.limits);
    const auto check = [&](std::int64_t sum_before, std::int64_t sum, std::int64_t ceiling, const std::string& what) {
      if (sum <= ceiling * 1000 || sum_before > ceiling * 1000) return;
      line.table.fault(
          FaultCode::kCeiling, "amount", thousandths_in_words(sum) + " " + what + " up to here",
          "at most " + std::to_string(ceiling) + " in a session at age " + std::to_string(routine.age_from));
    };
    check(before.contacts, after.contacts, ceilings.contacts_session, "landings (weighted)");
    check(before.eccentric, after.eccentric, ceilings.eccentric_session, "eccentric repetitions");
    check(before.hard_running, after.hard_running, ceilings.hard_running_session, "metres of hard running");
    before = after;
  }
}

std::vector<ReadLine> read_lines_of(TableReader& root, const Routine& routine, const Catalogue& catalogue) {
  std::vector<ReadLine> lines;
  for (TableReader& table : read_tables(root, "drill", 1, kMostLines)) {
    RoutineLine line{find_drill(table, catalogue), -1, -1};
    if (line.drill < 0) {
      // The rung and the dose cannot be judged without the drill, but their types can.
      table.text_or("rung", "");
      table.integer_or("sets", 1, 1, 6);
      table.integer_or("amount", 1, 1, 180);
    } else {
      const Drill& drill = catalogue.drills[static_cast<std::size_t>(line.drill)];
      line.rung = find_rung(table, drill);
      line.dose = find_dose(table, drill);
      if (line.rung >= 0) check_ages(routine, drill, drill.rungs[static_cast<std::size_t>(line.rung)], table);
    }
    table.finish();
    if (line.drill >= 0 && line.rung >= 0 && line.dose >= 0) lines.push_back({line, table});
  }
  return lines;
}

}  // namespace

Result<Routine> read_routine(const Document& document, const Catalogue& catalogue) {
  Faults faults;
  TableReader root(document.file, &document.root, {}, faults);
  Routine routine{};
  routine.file = document.file;
  routine.id = read_id(root, document.file);
  routine.name = root.text("name");
  const AgeRange ages = read_ages(root);
  routine.age_from = ages.from;
  routine.age_to = ages.to;
  routine.minutes = static_cast<int>(root.integer("minutes", 5, 60));
  routine.note = root.text_or("note", "");
  std::vector<ReadLine> lines = read_lines_of(root, routine, catalogue);
  root.finish();
  if (faults.empty()) {
    check_order(lines, catalogue);
    check_loads(routine, catalogue, lines);
  }
  if (!faults.empty()) return faults;
  for (const ReadLine& line : lines) routine.lines.push_back(line.line);
  return routine;
}

}  // namespace lanework::catalogue
