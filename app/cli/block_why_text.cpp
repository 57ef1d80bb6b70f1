#include "app/cli/block_why_text.h"

#include <algorithm>
#include <set>
#include <utility>

#include "app/cli/catalogue_rows.h"
#include "app/cli/columns.h"
#include "app/cli/describe_drill.h"
#include "core/block/build_problem.h"
#include "core/block/constants.h"

namespace lanework::cli {
namespace {

using catalogue::Catalogue;

// Squads that go by one catalogue.
struct Going {
  const Catalogue* catalogue;
  std::string squads;  // 'Under-10 Wrens, Under-13 Kestrels'
  std::set<int> ages;  // of the youngest, over all evenings
};

std::vector<Going> by_catalogue(const std::vector<door::SquadBlock>& blocks) {
  std::vector<Going> out;
  for (const door::SquadBlock& block : blocks) {
    const Catalogue* catalogue = block.wishes.outline.catalogue;
    auto going = std::find_if(out.begin(), out.end(), [&](const Going& one) { return one.catalogue == catalogue; });
    if (going == out.end()) going = out.insert(out.end(), {catalogue, "", {}});
    going->squads += (going->squads.empty() ? "" : ", ") + block.wishes.squad->squad.name;
    for (const session::Evening& evening : block.wishes.outline.evenings) going->ages.insert(evening.age);
  }
  return out;
}

Rows target_rows(const Catalogue& catalogue) {
  Rows rows;
  for (const catalogue::FamilyRow& family : catalogue.families) {
    const std::vector<std::string>& sources = family.week_sources.empty() ? family.sources : family.week_sources;
    rows.push_back(
        {family.name, std::to_string(family.week_work.count) + " s of work", source_words(sources, catalogue)});
  }
  return rows;
}

std::vector<std::string> ceiling_row(const std::string& what, std::int64_t session, std::int64_t week,
                                     const catalogue::Ceilings& band, const Catalogue& catalogue) {
  return {what + ", " + ages_text(band), std::to_string(session) + " a session, " + std::to_string(week) + " a week",
          source_words(band.sources, catalogue)};
}

Rows ceiling_rows(const Going& going) {
  const Catalogue& catalogue = *going.catalogue;
  Rows rows;
  const catalogue::Ceilings* last = nullptr;
  for (const int age : going.ages) {
    const catalogue::Ceilings& band = catalogue.ceilings_for(age);
    if (&band == last) continue;
    last = &band;
    rows.push_back(ceiling_row("contacts", band.contacts_session, band.contacts_week, band, catalogue));
    rows.push_back(ceiling_row("eccentric repetitions", band.eccentric_session, band.eccentric_week, band, catalogue));
    rows.push_back(
        ceiling_row("hard-running metres", band.hard_running_session, band.hard_running_week, band, catalogue));
  }
  const std::string new_drills = std::to_string(catalogue.limits.most_new_drills) + " a session, " +
                                 std::to_string(block::most_new_in_week(catalogue.limits)) + " a week";
  rows.push_back({"drills never done before", new_drills, source_words(catalogue.limits.sources, catalogue)});
  for (const catalogue::MatchDistance& row : catalogue.limits.match) rows.push_back(match_row(row, catalogue));
  return rows;
}

std::string catalogue_text(const Going& going, bool alone) {
  const std::string whose = alone ? "" : ", for " + going.squads;
  const int oldest = going.ages.empty() ? 0 : *going.ages.rbegin();
  std::string out = "\nTargets of a week" + whose + ": work a player\n";
  out += in_columns(target_rows(*going.catalogue), "  ");
  out += "\nFamilies" + whose + ": what a quarter-credit of each weighs, and the work that counts as four\n";
  out += in_columns(family_rows(*going.catalogue, oldest), "  ");
  out +=
      "\nCeilings" + whose + ", and what is left of a session's near a match (contacts / eccentric / hard running)\n";
  return out + in_columns(ceiling_rows(going), "  ");
}

// Of squads that weigh alike.
Rows weight_rows(const session::ChangeWeights& weights) {
  const std::string source = "own judgement, in quarters; [weights] of the squad file";
  return {{"a dose step", std::to_string(weights.dose_step), source},
          {"a drill left out", std::to_string(weights.left_out), source},
          {"a drill that comes in", std::to_string(weights.new_drill), source}};
}

std::string weights_text(const std::vector<door::SquadBlock>& blocks) {
  std::vector<std::pair<Rows, std::string>> groups;  // rows, names of squads
  for (const door::SquadBlock& block : blocks) {
    const Rows rows = weight_rows(block.wishes.squad->squad.weights);
    auto group = std::find_if(groups.begin(), groups.end(), [&](const auto& one) { return one.first == rows; });
    if (group == groups.end()) group = groups.insert(groups.end(), {rows, ""});
    group->second += (group->second.empty() ? "" : ", ") + block.wishes.squad->squad.name;
  }
  std::string out;
  for (const auto& [rows, squads] : groups)
    out += "\nChanges" + (groups.size() == 1 ? "" : ", for " + squads) + "\n" + in_columns(rows, "  ");
  return out;
}

}  // namespace

std::string block_why_text(const std::vector<door::SquadBlock>& blocks) {
  const std::vector<Going> all = by_catalogue(blocks);
  std::string out = "Where the numbers of the block come from\n";
  for (const Going& going : all) out += catalogue_text(going, all.size() == 1);
  if (all.empty()) return out;
  const Catalogue& catalogue = *all.front().catalogue;
  out += weights_text(blocks);
  out += "\nHow the block counts (docs/model/block.md)\n";
  out += in_columns(constant_rows(block::constant_rows(), catalogue), "  ");
  out += "\nA block that has begun (docs/model/rolling.md)\n";
  return out + in_columns(constant_rows(block::rolling_constant_rows(), catalogue), "  ");
}

}  // namespace lanework::cli
