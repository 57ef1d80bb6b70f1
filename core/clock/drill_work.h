// The work of one drill for a number of players on a strip, before pace and telling: what drill_time
// reports and what the simulation varies. Formulas: docs/model/clock.md, same names.
#pragma once

#include "core/base/units.h"
#include "core/catalogue/catalogue.h"
#include "core/clock/lane.h"
#include "core/session/strip.h"

namespace lanework::clock {

struct DrillWork {
  Milliseconds raw{};       // at pace 1.000, until the last player is done
  int moving_permille = 0;  // of raw
  double log_spread = 0;    // from moments
  Milliseconds hold_up{};   // how much longer half the evenings are than raw: nobody overtakes the slowest
  // On the spot and in pairs.
  int waves = 1;
  Milliseconds each_wave{};  // raw, were there room for all at once
  // In lanes.
  bool in_lanes = false;
  LaneRun lane;  // the longest file; facing: its longer half
  bool facing = false;
  int sets = 1;
  Milliseconds beside_sets{};  // rests and side changes: raw = sets * time of the lane + this
  double player_spread = 0;    // standard deviation of log speed between players
};

// Who does it where.
struct Staging {
  int players;  // 1 or more
  int age;
  const session::Strip& strip;
};

DrillWork drill_work(const catalogue::Catalogue& catalogue, const catalogue::Drill& drill,
                     const catalogue::DoseStep& step, const Staging& staging);

// Players of file j (from 0) when they are dealt to the lanes like cards; 0 for a lane nobody needs.
int file_players(int players, int lanes, int j);

// Speed of a gait at an age.
MillimetresPerSecond speed_of(const catalogue::Catalogue& catalogue, const std::string& gait, int age);

}  // namespace lanework::clock
