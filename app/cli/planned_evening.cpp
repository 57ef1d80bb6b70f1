#include "app/cli/planned_evening.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace lanework::cli {
namespace {

catalogue::Routine routine_for(const read::BlockSession& session, const catalogue::Catalogue& catalogue,
                               catalogue::Routine house) {
  house.lines.clear();
  for (const read::BlockDrill& drill : session.drills) {
    if (const auto line = planning::line_of(drill, catalogue)) house.lines.push_back(*line);
  }
  const auto phase = [&](const catalogue::RoutineLine& line) {
    return catalogue.drills[static_cast<std::size_t>(line.drill)].phase;
  };
  std::stable_sort(house.lines.begin(), house.lines.end(),
                   [&](const auto& a, const auto& b) { return phase(a) < phase(b); });
  return house;
}

// Drills of the block's earlier sessions have been told and done by then, but for those that are known not to have
// been.
void count_earlier(const read::SquadBlock& block, const club::PlannedSlot& slot, session::Evening& evening) {
  for (const read::BlockSession& session : block.sessions) {
    if (std::tie(session.date, session.start) >= std::tie(slot.date, slot.start)) continue;
    for (const read::BlockDrill& drill : session.drills) {
      if (drill.done.value_or(true)) ++evening.exposures[drill.drill].times;
    }
  }
}

}  // namespace

Result<door::EveningMatter> evening_matter(const ClubPlan& plan, const club::ClubSquad& squad,
                                           const club::PlannedSlot& slot) {
  auto evening = club::evening_of(plan.club, squad, slot);
  if (!evening) return evening.faults();
  const catalogue::Catalogue& catalogue = plan.club.catalogue_of(squad);
  catalogue::Routine routine = club::routine_of(squad, slot);
  const read::SquadBlock* block = plan.block_of(squad);
  const read::BlockSession* session = session_at(block, slot.date, slot.start);
  if (session != nullptr && !session->drills.empty()) routine = routine_for(*session, catalogue, std::move(routine));
  if (block != nullptr) count_earlier(*block, slot, evening.value());
  return door::EveningMatter{
      catalogue,     std::move(routine),        slot.strip, club::squad_on(plan.club, squad, slot), squad.restrictions,
      squad.players, std::move(evening).value()};
}

void mark_new_spell(const ClubPlan& plan, const club::ClubSquad& squad, Date date,
                    const std::vector<std::string>& drill_ids, draw::CardMatter& card) {
  const read::SquadBlock* block = plan.block_of(squad);
  if (block == nullptr) return;
  const int week = days_between(plan.answer->monday, date) / 7 + 1;
  const auto starts = [week](const read::BlockSpell& spell) { return spell.first_week == week; };
  const auto spell = std::find_if(block->spells.begin(), block->spells.end(), starts);
  if (spell == block->spells.end() || spell->comes_in.empty()) return;
  std::vector<std::string> here;
  for (std::size_t i = 0; i < card.drills.size() && i < drill_ids.size(); ++i) {
    const auto& in = spell->comes_in;
    if (std::find(in.begin(), in.end(), drill_ids[i]) == in.end()) continue;
    here.push_back(drill_ids[i]);
    std::string& mark = card.drills[i].mark.mark;
    mark = mark.empty() ? "new from this week" : "new from this week, " + mark;
  }
  const catalogue::Catalogue& catalogue = plan.club.catalogue_of(squad);
  std::string line = "New from this week: " + drill_names(spell->comes_in, catalogue);
  if (!spell->leaves.empty()) line += ", in place of " + drill_names(spell->leaves, catalogue);
  if (!here.empty()) card.changes.insert(card.changes.begin(), line + ".");
}

}  // namespace lanework::cli
