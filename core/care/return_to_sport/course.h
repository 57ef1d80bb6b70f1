// A return course as a guarded state machine: one pure function from state, event and the moment it was received to the
// next state, or a refusal that says what would be needed. Nothing here moves by itself: time alone begins no step.
// docs/care/return.md has the table of transitions; explore.h goes through all of them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/care/return_to_sport/moment.h"
#include "core/care/return_to_sport/return_rules.h"

namespace lanework::care {

// Who made an entry.
enum class By : std::uint8_t { kClinician, kLead, kCoach, kPlayer };
const std::vector<std::string_view>& by_words();  // 'clinician', 'lead', 'coach', 'player'

// How the player was at a check. The order is that of caution.
enum class Symptoms : std::uint8_t { kNone, kNoWorse, kMild, kWorse };

// The newest answer since the step began.
enum class Checked : std::uint8_t { kNotYet, kNoWorse, kFree };

struct CourseState {
  int step = 0;
  bool begun = false;  // by an entry; until then the player sits out
  bool rests = false;  // set back by symptoms or a hurt: nothing begins before the rest is over
  Moment since;        // begun, or opened, or set back
  int exposures = 0;   // without symptoms at this step, counted no further than it asks for
  Checked checked = Checked::kNotYet;
  std::optional<Moment> free_since;  // without any symptoms since; empty: not, as far as is known
  std::uint32_t open_gates = 0;      // bit i: gate i
  bool operator==(const CourseState&) const = default;

  [[nodiscard]] bool is_open(int gate) const { return ((open_gates >> static_cast<unsigned>(gate)) & 1U) != 0; }
};

struct BeginStep {
  int step = 0;
};
struct Check {
  Symptoms symptoms = Symptoms::kWorse;
  bool exposure = false;  // after a session at this step
};
struct StepBack {
  int step = 0;
};
struct Clearance {
  int gate = 0;
  std::string clinician;
  std::string profession;
  bool names_every_hurt = false;  // that the course carries
};
struct AnotherHurt {};  // one that concerns the course and that no clearance has named

using CourseEvent = std::variant<BeginStep, Check, StepBack, Clearance, AnotherHurt>;

struct Refusal {
  std::string reason;
  std::string needed;
};

using Transition = std::variant<CourseState, Refusal>;

CourseState opened(Moment at);
Transition transition(const Course& course, const CourseState& state, const CourseEvent& event, By by, Moment received);

// Worse by so many points for so long, as the course counts it; what is not known counts as worse.
Symptoms symptoms_of(const Course& course, std::optional<int> worse_points, std::optional<int> worse_minutes);

// What holds at this state, without player. at: the places hurt, as far as known.
std::vector<people::Restriction> restrictions_at(const Course& course, const CourseState& state,
                                                 const std::vector<catalogue::BodyArea>& at);

// What still stands before the next step may begin; empty at the last one.
struct Waiting {
  int step = 0;                      // that would begin next
  std::optional<Moment> not_before;  // empty: not known yet, a check without symptoms comes first
  std::vector<std::string> needs;    // in words: gates, checks, exposures, the entry that begins it
  std::optional<int> gate;           // shut, and before it
};
std::optional<Waiting> waiting_at(const Course& course, const CourseState& state);

}  // namespace lanework::care
