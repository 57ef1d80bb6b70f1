#include "core/door/squad_block.h"

#include <algorithm>
#include <map>

namespace lanework::door {

namespace {

// By drill and week of the block: the last one confirmed for it before the week begins.
std::map<std::string, std::vector<std::string>> rungs_by_week(const std::vector<session::ConfirmedRung>& confirmed,
                                                              Date monday, int weeks) {
  std::map<std::string, std::vector<std::string>> out;
  for (const session::ConfirmedRung& one : confirmed) {  // ascending dates
    std::vector<std::string>& by_week = out[one.drill];
    by_week.resize(static_cast<std::size_t>(weeks));
    for (int week = 0; week < weeks; ++week) {
      if (days_between(one.from, monday) + 7 * week >= 0) by_week[static_cast<std::size_t>(week)] = one.rung;
    }
  }
  return out;
}

}  // namespace

Result<SquadWishes> wishes_of(const club::Club& club, const club::ClubSquad& squad, const club::Calendar& calendar) {
  SquadWishes out;
  out.club = &club;
  out.squad = &squad;
  out.slots = calendar.slots;
  out.missed = calendar.missed;
  out.outline.catalogue = &club.catalogue_of(squad);
  out.outline.routine = &squad.routine;
  out.outline.match_day_routine = &squad.match_day_routine;
  out.outline.monday = club.settings.block_from;
  out.outline.weeks = club.settings.block_weeks;
  out.outline.free_composition = squad.squad.weekly.free_composition;
  out.outline.rungs = rungs_by_week(squad.squad.weekly.rungs, out.outline.monday, out.outline.weeks);
  Faults faults;
  for (const club::PlannedSlot& slot : out.slots) {
    Result<session::Evening> evening = club::evening_of(club, squad, slot);
    if (!evening) {
      for (const Fault& fault : evening.faults()) {
        const auto same = [&](const Fault& other) { return to_line(other) == to_line(fault); };
        if (std::none_of(faults.begin(), faults.end(), same)) faults.push_back(fault);
      }
      continue;
    }
    out.outline.evenings.push_back(std::move(evening).value());
  }
  if (!faults.empty()) return faults;
  return out;
}

namespace {

// What the swaps of a block that is over have cost; its problem has no drills to count them by.
block::Points swaps_behind(const SquadBlock& block) {
  if (!block.wishes.outline.rolling) return 0;
  std::vector<int> before;
  for (const catalogue::RoutineLine& line : block.wishes.outline.routine->lines) before.push_back(line.drill);
  block::Points lost = 0;
  for (const std::vector<int>& set : block.wishes.outline.rolling->standing.sets) {
    for (const int drill : set) {
      if (std::find(before.begin(), before.end(), drill) == before.end()) lost += block.built.problem.swap;
    }
    before = set;
  }
  return lost;
}

}  // namespace

SquadBlock plan_block(SquadWishes wishes, const block::Work& work, plan::KernelWorkspace& workspace,
                      const block::Progress& progress) {
  SquadBlock out;
  out.wishes = std::move(wishes);
  out.built = block::build_problem(out.wishes.outline, workspace);
  const bool rolls = out.wishes.outline.rolling.has_value();
  if (out.built.problem.sessions.empty()) {
    out.answer.plan = block::empty_plan(out.built.problem);
    out.answer.feasible = true;
    // Match days alone: what they give is all there can be.
    out.answer.value = block::evaluate(out.built.problem, out.answer.plan).value - swaps_behind(out);
    out.answer.bound_fine = out.answer.value * block::kFine;
  } else if (rolls) {
    out.replanned = block::replan(out.wishes.outline, out.built, {});
    out.answer = out.replanned->answer;
  } else {
    out.answer = block::solve(out.built.problem, work, progress);
    constexpr int kMinutesMore = 5;
    constexpr int kMinutesFewer = 3;
    out.prices =
        block::minute_prices(out.wishes.outline, out.built, out.answer, kMinutesMore, kMinutesFewer, work.week);
  }
  return out;
}

const block::PastSession* past_of(const SquadBlock& block, std::size_t slot) {
  const std::optional<block::Rolling>& rolling = block.wishes.outline.rolling;
  return rolling && slot < rolling->past.size() ? &rolling->past[slot] : nullptr;
}

std::vector<BlockItem> items_of(const SquadBlock& block, std::size_t slot) {
  std::vector<BlockItem> out;
  if (const block::PastSession* past = past_of(block, slot)) {
    for (const block::PastItem& item : past->items)
      out.push_back({item.planned.drill, item.planned.rung, item.planned.dose, item.planned.steps, item.done});
    return out;
  }
  for (const block::FixedSession& fixed : block.built.fixed) {
    if (fixed.evening != slot) continue;
    for (const session::Item& item : fixed.session.items) out.push_back({item.drill, item.rung, item.dose, 0, {}});
  }
  const block::Problem& problem = block.built.problem;
  for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
    if (block.built.evening_of[s] != slot) continue;
    const block::Kind& kind = problem.kinds[static_cast<std::size_t>(problem.sessions[s].kind)];
    for (std::size_t d = 0; d < problem.drills.size(); ++d) {
      const int choice = block.answer.plan.choice[s][d];
      if (choice < 0) continue;
      const block::Option& option = kind.options[d][static_cast<std::size_t>(choice)];
      out.push_back({problem.drills[d].drill, option.rung, option.dose, option.steps, {}});
    }
  }
  return out;
}

}  // namespace lanework::door
