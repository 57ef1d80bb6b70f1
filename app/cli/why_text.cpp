#include "app/cli/why_text.h"

#include "app/cli/card_matter.h"
#include "app/cli/catalogue_rows.h"
#include "app/cli/columns.h"
#include "app/cli/describe_drill.h"
#include "core/clock/constants.h"
#include "core/plan/constants.h"

namespace lanework::cli {
namespace {

using door::EveningMatter;
using door::PlanAnswer;

Rows limit_rows(const PlanAnswer& answer, const EveningMatter& matter) {
  const catalogue::Catalogue& catalogue = matter.catalogue;
  const catalogue::Ceilings& band = catalogue.ceilings_for(matter.evening.age);
  const std::string ages = ages_text(band);
  const std::string source = source_words(band.sources, catalogue);
  Rows rows = {{"contacts, " + ages, std::to_string(band.contacts_session), source},
               {"eccentric repetitions, " + ages, std::to_string(band.eccentric_session), source},
               {"hard-running metres, " + ages, std::to_string(band.hard_running_session), source},
               {"new drills", std::to_string(answer.plan.problem.ceiling[3]),
                source_words(catalogue.limits.sources, catalogue)}};
  for (const catalogue::MatchDistance& row : catalogue.limits.match) {
    if (!matter.evening.days_to_match || row.days != *matter.evening.days_to_match) continue;
    rows.push_back(match_row(row, catalogue));
  }
  return rows;
}

Rows weight_rows(const EveningMatter& matter) {
  const session::ChangeWeights& w = matter.evening.weights;
  return {{"a dose step", std::to_string(w.dose_step), "own judgement, in quarters; [weights] of the squad file"},
          {"a rung step", std::to_string(w.rung_step), "own judgement"},
          {"a drill left out", std::to_string(w.left_out), "own judgement"},
          {"a drill not of the routine", std::to_string(w.new_drill), "own judgement"}};
}

Rows card_rows(const EveningMatter& matter) {
  return {{"an adult's walking step, for metres as paces", std::to_string(kPaceMillimetres) + " mm",
           source_words("common-practice", matter.catalogue)}};
}

Rows drill_rows(const PlanAnswer& answer, const EveningMatter& matter) {
  Rows rows;
  for (const session::Item& item : answer.plan.session.items) {
    const catalogue::Drill& drill = matter.catalogue.drills[static_cast<std::size_t>(item.drill)];
    rows.push_back({drill.name, "dose", source_words(drill.sources.dose, matter.catalogue)});
    rows.push_back({"", "timing", source_words(drill.sources.timing, matter.catalogue)});
    rows.push_back({"", "loads", source_words(drill.sources.loads, matter.catalogue)});
    if (drill.formation == catalogue::Formation::kLane) {
      const catalogue::Gait* gait = matter.catalogue.gait(drill.lane.out_gait);
      if (gait != nullptr)
        rows.push_back({"", "speed of " + gait->name, source_words(gait->sources, matter.catalogue)});
    }
  }
  return rows;
}

}  // namespace

std::string why_text(const PlanAnswer& answer, const EveningMatter& matter) {
  std::string out = "Where the numbers come from\n\nCeilings tonight\n";
  out += in_columns(limit_rows(answer, matter), "  ");
  out += "\nFamilies: what a short dose of each weighs, and the work that counts as a full one\n";
  out += in_columns(family_rows(matter.catalogue, matter.evening.age), "  ");
  out += "\nDepartures from the routine\n" + in_columns(weight_rows(matter), "  ");
  out += "\nHow the plan counts (docs/model/session.md)\n";
  out += in_columns(constant_rows(plan::constant_rows(), matter.catalogue), "  ");
  out += "\nDrills of this session\n" + in_columns(drill_rows(answer, matter), "  ");
  out +=
      "\nThe clock (docs/model/clock.md)\n" + in_columns(constant_rows(clock::constant_rows(), matter.catalogue), "  ");
  out += "\nThe card\n" + in_columns(card_rows(matter), "  ");
  return out;
}

}  // namespace lanework::cli
