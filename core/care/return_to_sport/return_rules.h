// Return to sport as data: catalogue/care/return_rules.toml, with the source of every number. docs/care/return.md.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/words.h"
#include "core/people/player.h"

namespace lanework::care {

// What a step exposes the player to; the order is that of the words, and of caution.
enum class Risk : std::uint8_t { kApart, kNoImpactRisk, kImpactRisk, kContact, kFull };
const std::vector<std::string_view>& risk_words();  // 'apart', 'no-impact-risk', 'impact-risk', 'contact', 'full'

struct StepRestriction {
  people::Restriction restriction;  // without player
  bool at_place = false;            // only the place hurt; every area where that is not known
};

struct StepRule {
  std::string key;
  std::string name;
  Risk risk = Risk::kApart;
  std::optional<int> gate;    // of the course's gates: must be open before the step begins
  bool symptom_free = false;  // begins only without any symptoms; any symptom at it sets back
  int least_hours = 0;        // at it, before the next
  int least_exposures = 0;    // at it without symptoms, before the next
  int back_to = 0;            // the step that symptoms set back to; never a later one
  bool back_to_unverified = false;
  std::vector<int> heart_rate_percent;  // of 220 - age, ascending; empty: no cap
  std::string allows;                   // for the lead
  std::vector<StepRestriction> restrictions;
  std::vector<std::string> sources;
};

struct GateRule {
  std::string key;
  std::string name;
  int symptom_free_hours = 0;  // before a clearance opens it
  std::vector<std::string> sources;
};

// Worse with activity, but mild and brief. Unverified, it holds the step instead of letting it go on.
struct MildRule {
  int most_points = 0;
  int less_than_minutes = 0;
  bool unverified = true;
  std::vector<std::string> sources;
};

struct Course {
  std::string id;
  std::string name;
  std::vector<catalogue::BodyArea> places;        // a later hurt here starts it anew; empty: those of its own hurts
  std::vector<catalogue::BodyArea> never_places;  // a hurt here it does not carry
  int rest_hours = 0;                             // after symptoms, before anything begins again
  std::string waiting;                            // the coach's words until a step has begun
  std::optional<MildRule> mild;                   // empty: every worsening counts
  std::vector<GateRule> gates;
  std::vector<StepRule> steps;  // at least two
  std::vector<std::string> sources;

  [[nodiscard]] const StepRule& step(int index) const { return steps.at(static_cast<std::size_t>(index)); }
  [[nodiscard]] const GateRule& gate(int index) const { return gates.at(static_cast<std::size_t>(index)); }
  [[nodiscard]] int last() const { return static_cast<int>(steps.size()) - 1; }
  // Position by key; empty when there is none.
  [[nodiscard]] std::optional<int> step_with(std::string_view key) const;
  [[nodiscard]] std::optional<int> gate_with(std::string_view key) const;
};

// What a place's own rules add to a course; they never take away.
struct Demand {
  std::string course;
  std::string gate;
  int ages_up_to = 0;
  int symptom_free_days = 0;
};
struct RuleSet {
  std::string id;
  std::string name;
  std::vector<Demand> demands;
  std::vector<std::string> sources;
};

struct ReturnRules {
  std::vector<catalogue::BodyArea> same_day_places;  // a hurt here is not lifted before same_day_hours
  int same_day_hours = 0;
  bool same_day_unverified = true;
  std::vector<Course> courses;
  std::vector<RuleSet> rule_sets;

  [[nodiscard]] const Course* course(std::string_view id) const;
};

// A course as it holds for one player, and what was not known.
struct CourseInForce {
  Course course;
  std::vector<std::string> notes;  // 'the age is not known: as for a child'
};

// course: an id of the rules. rule_set: where it is none of the rules, all of them together hold; age: where it is not
// known, every age's demands.
CourseInForce course_in_force(const ReturnRules& rules, std::string_view course, const std::string& rule_set,
                              std::optional<int> age);

}  // namespace lanework::care
