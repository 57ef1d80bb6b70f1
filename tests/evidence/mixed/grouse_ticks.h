// Ticks on grouse chicks, broods within places (lme4; Elston DA et al., Parasitology 2001,
// doi 10.1017/S0031182001007740).
#pragma once

#include <cmath>

#include "tests/evidence/mixed/frame_of.h"

namespace lanework::evidence {

// club: empty, or 'LOCATION'.
inline Frame grouse_ticks(const std::string& club) {
  const std::vector<CsvRow> rows = csv_rows(LANEWORK_SOURCE_DIR "/tests/evidence/r/grouseticks.csv");
  // Height centred and in its own standard deviations.
  double mean = 0;
  for (const CsvRow& row : rows) mean += number(row, "HEIGHT") / static_cast<double>(rows.size());
  double square = 0;
  for (const CsvRow& row : rows) square += std::pow(number(row, "HEIGHT") - mean, 2);
  const double deviation = std::sqrt(square / static_cast<double>(rows.size() - 1));
  const Column height = {"height", [=](const CsvRow& row) { return (number(row, "HEIGHT") - mean) / deviation; }};
  return frame_of(rows, {"TICKS", "", "BROOD", club, {ones(), category("YEAR", "96"), category("YEAR", "97"), height}});
}

}  // namespace lanework::evidence
