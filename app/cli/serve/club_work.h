// What the server does with the club's folder and with its ledger's season, for the house to call.
#pragma once

#include <string>

#include "app/cli/ledger/ledger_folder.h"
#include "app/planning/squad_plan.h"
#include "app/serve/house.h"

namespace lanework::cli {

// Evenings for phones and desks, the catalogue, and the documents to change.
void give_folder(serve::House& house, const planning::PlanningFiles& files);

struct SeasonOfHouse {
  LedgerFlags ledger;
  std::string calendar;      // the club's folder; empty: none
  int training_minutes = 0;  // usual ones, where nobody confirmed them
  int match_minutes = 0;
};

serve::SeasonReports season_reports(const SeasonOfHouse& season);
serve::SeasonExports season_exports(const SeasonOfHouse& season);
serve::PlannedEvenings planned_evenings(const planning::PlanningFiles& files);

}  // namespace lanework::cli
