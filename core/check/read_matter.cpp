#include "core/check/read_matter.h"

#include <utility>

namespace lanework::check {

void read_routine(TableReader& request, Matter& matter, Faults& faults) {
  TableReader routine = request.table("routine");
  for (TableReader& row : routine.tables("drill")) {
    RoutineLine line;
    line.drill = row.text("id");
    line.rung = row.text("rung");
    line.step.sets = static_cast<int>(row.integer("sets", 1, 1000));
    line.step.amount = static_cast<int>(row.integer("amount", 1, 1000));
    const auto found = matter.drills.find(line.drill);
    const bool known = found != matter.drills.end() && rung_position(found->second, line.rung) >= 0 &&
                       step_position(found->second, line.step) >= 0;
    if (!known && faults.empty()) {
      row.fault(FaultCode::kUnknownName, "id", quote(line.drill), "a drill, rung and dose of the catalogue");
    }
    matter.routine.push_back(std::move(line));
  }
}

Result<Matter> read_matter(const Node& request) {
  Faults faults;
  TableReader root("request", &request, "", faults);
  for (const char* part : {"catalogue", "routine", "strip", "squad"}) {
    if (!root.has(part)) root.fault(FaultCode::kMissing, part, "nothing", "a table");
  }
  Matter matter;
  TableReader catalogue = root.table("catalogue");
  read_drills(catalogue, matter);
  read_tables(catalogue, matter);
  read_routine(root, matter, faults);
  if (faults.empty()) read_evening(root, matter, faults);
  if (!faults.empty()) return faults;
  return matter;
}

}  // namespace lanework::check
