#include "app/planning/planned_evenings.h"

#include <map>
#include <utility>

#include "app/read/block_answer.h"
#include "core/ledger/timeline.h"

namespace lanework::planning {
std::vector<PlannedEvening> planned_evenings(const std::string& squad, const std::vector<MadePlan>& plans, Date from,
                                             const std::string& now) {
  std::map<std::string, PlannedEvening> by_begin;
  for (const MadePlan& plan : plans) {
    const auto answer = read::read_block_answer("a plan", plan.text);
    const read::SquadBlock* block = answer ? answer.value().find(squad) : nullptr;
    if (block == nullptr) continue;
    const std::string planned = ledger::minute_of(plan.made);
    for (const read::BlockSession& session : block->sessions) {
      PlannedEvening evening{to_iso(session.date) + " " + to_text(session.start), squad, session.minutes, {}, planned};
      if (session.date < from || evening.begins > ledger::minute_of(now) || planned > evening.begins) continue;
      for (const read::BlockDrill& drill : session.drills) evening.drills.push_back(drill.drill);
      by_begin[evening.begins] = std::move(evening);
    }
  }
  std::vector<PlannedEvening> out;
  for (auto& [begins, evening] : by_begin) out.push_back(std::move(evening));
  return out;
}

}  // namespace lanework::planning
