#include "core/care/return_to_sport/return_rules.h"

#include <algorithm>
#include <stdexcept>

#include "core/care/return_to_sport/moment.h"

namespace lanework::care {
namespace {

template <class T>
std::optional<int> position(const std::vector<T>& list, std::string_view key) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const T& one) { return one.key == key; });
  if (found == list.end()) return {};
  return static_cast<int>(found - list.begin());
}

}  // namespace

const std::vector<std::string_view>& risk_words() {
  static const std::vector<std::string_view> kWords = {"apart", "no-impact-risk", "impact-risk", "contact", "full"};
  return kWords;
}

std::optional<int> Course::step_with(std::string_view key) const { return position(steps, key); }
std::optional<int> Course::gate_with(std::string_view key) const { return position(gates, key); }

const Course* ReturnRules::course(std::string_view id) const {
  const auto found = std::find_if(courses.begin(), courses.end(), [&](const Course& one) { return one.id == id; });
  return found == courses.end() ? nullptr : &*found;
}

CourseInForce course_in_force(const ReturnRules& rules, std::string_view course, const std::string& rule_set,
                              std::optional<int> age) {
  const Course* plain = rules.course(course);
  if (plain == nullptr) throw std::logic_error("no such course");
  CourseInForce out{*plain, {}};
  const bool known = std::any_of(rules.rule_sets.begin(), rules.rule_sets.end(),
                                 [&](const RuleSet& set) { return set.id == rule_set; });
  bool age_mattered = false;
  bool set_mattered = false;
  for (const RuleSet& set : rules.rule_sets) {
    if (known && set.id != rule_set) continue;
    for (const Demand& demand : set.demands) {
      if (demand.course != course || (age && *age > demand.ages_up_to)) continue;
      age_mattered = age_mattered || !age;
      set_mattered = set_mattered || !known;
      GateRule& gate = out.course.gates.at(static_cast<std::size_t>(out.course.gate_with(demand.gate).value()));
      gate.symptom_free_hours =
          std::max(gate.symptom_free_hours, demand.symptom_free_days * static_cast<int>(kHoursADay));
      gate.sources.insert(gate.sources.end(), set.sources.begin(), set.sources.end());
    }
  }
  if (set_mattered) {
    out.notes.push_back(rule_set.empty()
                            ? "no local rules are named: the strictest that are known hold"
                            : "the rules '" + rule_set + "' are not known: the strictest that are known hold");
  }
  if (age_mattered) out.notes.emplace_back("the age is not known: held as for a child");
  return out;
}

}  // namespace lanework::care
