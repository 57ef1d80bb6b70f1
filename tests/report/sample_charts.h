// Charts of invented data, one of each kind and more, each with the table of its numbers.
#pragma once

#include "app/report/page.h"

namespace lanework::report {

// The table that goes with any chart: its numbers as they are drawn.
Table table_of(const std::string& caption, const ChartData& data);

Chart rates_by_age();
Chart rates_of_squads(int squads);
Chart ratios_by_region();
Chart season_weeks();
Chart watched_weeks();
Chart squads_in_funnel(int squads);
Chart growth_curve();
Chart warm_ups_done();

}  // namespace lanework::report
