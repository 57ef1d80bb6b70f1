// What a player's measurements say on a day, put together for the lead's eyes, and whether the careful side is taken.
// Nothing here predicts an injury or clears anybody.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/care/growth/adult_height.h"
#include "core/care/growth/growth_person.h"
#include "core/care/growth/growth_table.h"
#include "core/care/growth/height_velocity.h"
#include "core/care/growth/maturity.h"

namespace lanework::care::growth {

// Does the interval of the velocity clear the fast cut?
enum class GrowsFast {
  kLikely,        // all of it lies at or above the cut
  kCannotBeTold,  // the cut lies inside, or there is no velocity, or it is old
  kUnlikely       // all of it lies below
};

struct FastGrowth {
  GrowsFast grows_fast = GrowsFast::kCannotBeTold;
  bool on = false;  // the player is spared
  std::string why;  // for the lead: one line, holds no measure of the body
};

// The rule (own judgement):
// on where the velocity is at or above the cut, or where it cannot be told apart from it and growing fast is plausible:
// the birth date is not known, or some equation puts the spurt within two years (one for its breadth, one for the
// equations' published error). With one measurement only, on where the band of the equations holds the spurt itself.
FastGrowth fast_growth(const GrowthTable& table, const GrowthPerson& person,
                       const std::vector<BodyMeasurement>& measured, Date day);

struct GrowthReading {
  std::string player;
  AgreementState state = AgreementState::kNeitherGiven;
  bool ask_again = false;         // the agreement is from before the 16th birthday
  int from_before_agreement = 0;  // measurements that are not looked at
  bool sex_known = false;
  std::vector<BodyMeasurement> measured;  // all below is empty unless the state is kOn and something was measured
  std::vector<OffsetEstimate> offsets;    // of the last measurement
  std::optional<MaturityRatio> ratio;
  std::optional<AdultHeightAnswer> adult;
  std::optional<HeightVelocity> velocity;
  std::optional<FastGrowth> fast;
  std::optional<Date> due;
};

// measured: by date, ascending, none after the day. Where the state is not on, the reading holds the player and the
// state and nothing else, whatever was measured.
GrowthReading read_growth(const GrowthTable& table, const GrowthPerson& person,
                          const std::vector<BodyMeasurement>& measured, Date day);

}  // namespace lanework::care::growth
