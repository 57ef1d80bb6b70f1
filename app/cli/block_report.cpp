#include "app/cli/block_report.h"

#include <cstdio>

#include "app/cli/columns.h"
#include "core/door/replan_words.h"

namespace lanework::cli {
namespace {

const catalogue::Catalogue& catalogue_of(const door::SquadBlock& block) { return *block.wishes.outline.catalogue; }

const catalogue::Drill& drill_at(const door::SquadBlock& block, int index) {
  return catalogue_of(block).drills[static_cast<std::size_t>(index)];
}

std::string percent(int ten_thousandths) {
  char out[16];
  std::snprintf(out, sizeof out, "%d.%02d %%", ten_thousandths / 100, ten_thousandths % 100);
  return out;
}

std::string overview(const std::vector<door::SquadBlock>& blocks) {
  std::vector<std::vector<std::string>> rows = {
      {"squad", "routine", "sessions", "missed", "drills changed", "worth", "at most", "gap"}};
  for (const door::SquadBlock& block : blocks) {
    const block::Problem& problem = block.built.problem;
    int changed = 0;
    for (std::size_t p = 0; p < block.answer.plan.sets.size(); ++p) {
      for (std::size_t d = 0; d < problem.drills.size(); ++d) {
        const bool then = p == 0 ? problem.drills[d].current : block.answer.plan.sets[p - 1][d] != 0;
        changed += block.answer.plan.sets[p][d] != 0 && !then ? 1 : 0;
      }
    }
    rows.push_back({block.wishes.squad->id, block.wishes.squad->routine.id, std::to_string(block.wishes.slots.size()),
                    std::to_string(block.wishes.missed.size()), std::to_string(changed),
                    std::to_string(block.answer.value), std::to_string(block::bound_points(block.answer)),
                    block.answer.feasible ? percent(block::gap_ten_thousandths(block.answer)) : "no block found"});
  }
  return in_columns(rows, "");
}

std::string names(const door::SquadBlock& block, std::size_t p, bool coming) {
  const block::Problem& problem = block.built.problem;
  std::string out;
  for (std::size_t d = 0; d < problem.drills.size(); ++d) {
    const bool now = block.answer.plan.sets[p][d] != 0;
    const bool then = p == 0 ? problem.drills[d].current : block.answer.plan.sets[p - 1][d] != 0;
    if (now == then || now != coming) continue;
    out += (out.empty() ? "" : ", ") + drill_at(block, problem.drills[d].drill).name;
  }
  return out;
}

// 'weeks 1-3: Squat hold for Squat'.
std::string spells_text(const door::SquadBlock& block) {
  std::string out;
  const block::Problem& problem = block.built.problem;
  for (std::size_t p = 0; p < block.answer.plan.sets.size(); ++p) {
    std::size_t first = problem.weeks.size();
    std::size_t last = 0;
    for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
      if (problem.weeks[w].spell != static_cast<int>(p)) continue;
      first = std::min(first, w);
      last = w;
    }
    out += "  weeks " + std::to_string(first + 1) + "-" + std::to_string(last + 1) + ": ";
    if (p == 0 && block.wishes.outline.free_composition) out += "composed freely, ";
    const std::string in = names(block, p, true);
    const std::string before = p == 0 ? "the house routine" : "the weeks before";
    out += in.empty() ? "the drills of " + before + "\n" : "new " + in + "; leaves " + names(block, p, false) + "\n";
  }
  return out;
}

// ', cut short after 12 min, half did it'
std::string past_text(const block::PastSession& past) {
  const block::Report& report = past.report;
  std::string out = std::string(", ") + door::to_word(report.happened);
  if (report.minutes) out += " after " + std::to_string(*report.minutes) + " min";
  if (report.quarters == block::kHalfDidIt) out += ", half did it";
  if (report.quarters == block::kFewDidIt) out += ", few did it";
  return out;
}

std::string session_text(const door::SquadBlock& block, std::size_t slot) {
  const club::PlannedSlot& at = block.wishes.slots[slot];
  std::string out =
      "  " + to_words(at.date) + ", " + to_text(at.start) + ", " + std::to_string(at.length.count / 60) + " min";
  if (at.match_day) {
    out += ", before the match";
  } else if (at.days_to_match) {
    out += *at.days_to_match == 1 ? ", match tomorrow" : ", match in " + std::to_string(*at.days_to_match) + " days";
  }
  if (const block::PastSession* past = door::past_of(block, slot)) out += past_text(*past);
  out += "\n";
  std::vector<std::vector<std::string>> rows;
  for (const door::BlockItem& item : door::items_of(block, slot)) {
    const catalogue::Drill& drill = drill_at(block, item.drill);
    const std::string name = item.done && !*item.done ? drill.name + " (not done)" : drill.name;
    rows.push_back({name, drill.rungs[static_cast<std::size_t>(item.rung)].change,
                    catalogue::dose_in_words(drill, drill.dose.steps[static_cast<std::size_t>(item.dose)])});
  }
  return out + in_columns(rows, "    ");
}

}  // namespace

std::string blocks_text(const std::vector<door::SquadBlock>& blocks) {
  std::string out = overview(blocks);
  for (const door::SquadBlock& block : blocks) {
    if (block.wishes.slots.empty()) {
      out += "\n" + block.wishes.squad->squad.name + ": no session in these weeks\n";
      continue;
    }
    out += "\n" + block.wishes.squad->squad.name + "\n";
    if (block.wishes.outline.rolling) {
      out += "  planned on from " + to_words(block.wishes.outline.rolling->today) + "\n";
      for (const std::string& sentence : door::replan_sentences(block)) out += "  " + sentence + "\n";
    }
    if (!block.built.problem.sessions.empty() || !block.wishes.outline.rolling) out += spells_text(block);
    for (const std::string& sentence : door::shortfalls_of(block)) out += "  " + sentence + "\n";
    for (const std::string& sentence : door::price_sentences(block)) out += "  " + sentence + "\n";
    if (blocks.size() > 1) continue;
    for (std::size_t slot = 0; slot < block.wishes.slots.size(); ++slot) out += "\n" + session_text(block, slot);
    for (const club::MissedSlot& missed : block.wishes.missed)
      out += "\n  " + to_words(missed.date) + ", " + to_text(missed.start) + ": no session, " + missed.why + "\n";
  }
  return out;
}

}  // namespace lanework::cli
