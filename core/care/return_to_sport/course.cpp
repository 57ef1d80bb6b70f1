#include "core/care/return_to_sport/course.h"

#include <algorithm>

namespace lanework::care {
namespace {

bool blank(const std::string& text) { return text.find_first_not_of(" \t") == std::string::npos; }

std::string quoted(const std::string& text) { return "'" + text + "'"; }

std::string exposures_words(int count) {
  return count == 1 ? "a session at it without symptoms" : std::to_string(count) + " sessions at it without symptoms";
}

class Machine {
 public:
  Machine(const Course& course, const CourseState& state, By by, Moment received)
      : course_(course), state_(state), by_(by), now_(received) {}

  Transition operator()(const BeginStep& begin) {
    if (by_ != By::kLead && by_ != By::kClinician) {
      return refuse("a step is begun by the lead or a clinician", "an entry of theirs");
    }
    if (begin.step < 0 || begin.step > course_.last()) return refuse("no such step", "a step of this course");
    if (begin.step < state_.step) return refuse("it stands further on", "an entry that steps back");
    if (begin.step == state_.step && state_.begun) return refuse("it has begun already", "nothing");
    const int next = state_.begun ? state_.step + 1 : state_.step;
    if (begin.step > next) {
      return refuse("no step is passed over", quoted(course_.step(next).name) + " first");
    }
    const auto waiting = waiting_at(course_, state_);
    const auto unmet = unmet_at(*waiting);
    if (unmet) return refuse("too early for " + quoted(course_.step(next).name), *unmet);
    state_.step = next;
    state_.begun = true;
    state_.rests = false;
    state_.since = now_;
    state_.exposures = 0;
    state_.checked = Checked::kNotYet;
    return state_;
  }

  Transition operator()(const Check& check) {
    Symptoms symptoms = check.symptoms;
    if (symptoms == Symptoms::kMild && !course_.mild) symptoms = Symptoms::kWorse;
    const StepRule& rule = course_.step(state_.step);
    if (symptoms == Symptoms::kWorse || (symptoms != Symptoms::kNone && rule.symptom_free)) {
      set_back(rule.back_to);
      return state_;
    }
    if (symptoms == Symptoms::kNone) {
      if (!state_.free_since) state_.free_since = now_;
      state_.checked = Checked::kFree;
    } else {
      state_.free_since.reset();
      shut_gates_of_symptom_free_steps();
      // Mild and brief would go on by the book; a rule that nobody has read holds the step instead.
      if (symptoms == Symptoms::kMild && course_.mild->unverified) {
        hold();
        return state_;
      }
      state_.checked = Checked::kNoWorse;
    }
    if (check.exposure && state_.begun) state_.exposures = std::min(state_.exposures + 1, rule.least_exposures);
    return state_;
  }

  Transition operator()(const StepBack& back) {
    if (back.step < 0 || back.step > state_.step) return refuse("that is no step back", "a step that it has reached");
    const std::optional<Moment> free_since = state_.free_since;
    const bool rests = state_.rests;
    set_back(back.step);
    state_.free_since = free_since;
    state_.rests = rests;
    return state_;
  }

  Transition operator()(const AnotherHurt& /*hurt*/) {
    set_back(0);
    state_.open_gates = 0;
    return state_;
  }

  Transition operator()(const Clearance& clearance) {
    if (by_ != By::kClinician || blank(clearance.clinician) || blank(clearance.profession)) {
      return refuse("a gate opens by the clearance of a named clinician only", "the clinician's name and profession");
    }
    if (clearance.gate < 0 || clearance.gate >= static_cast<int>(course_.gates.size())) {
      return refuse("no such gate", "a gate of this course");
    }
    if (!clearance.names_every_hurt) {
      return refuse("it does not name every hurt that this course carries", "a clearance that names each of them");
    }
    if (state_.is_open(clearance.gate)) return state_;
    const GateRule& gate = course_.gate(clearance.gate);
    const auto guarded = std::find_if(course_.steps.begin(), course_.steps.end(),
                                      [&](const StepRule& step) { return step.gate == clearance.gate; });
    const int before = static_cast<int>(guarded - course_.steps.begin()) - 1;
    if (guarded == course_.steps.end() || before < 0)
      return refuse("no step stands behind it", "a gate that guards one");
    if (!state_.begun || state_.step != before) {
      return refuse("a clearance opens the next gate only", quoted(course_.step(before).name) + " begun first");
    }
    if (guarded->symptom_free && state_.checked != Checked::kFree) {
      return refuse("symptoms are not known to be gone", "a check without any symptoms since this step began");
    }
    if (state_.exposures < course_.step(before).least_exposures) {
      return refuse("not tried yet", exposures_words(course_.step(before).least_exposures));
    }
    if (gate.symptom_free_hours > 0 &&
        (!state_.free_since || now_ < hours_after(*state_.free_since, gate.symptom_free_hours))) {
      return refuse("not free of symptoms for long enough", std::to_string(gate.symptom_free_hours / kHoursADay) +
                                                                " days without symptoms before " + quoted(gate.name));
    }
    state_.open_gates |= 1U << static_cast<unsigned>(clearance.gate);
    return state_;
  }

 private:
  const Course& course_;
  CourseState state_;
  By by_;
  Moment now_;

  static Transition refuse(std::string reason, std::string needed) {
    return Refusal{std::move(reason), std::move(needed)};
  }

  void hold() {
    state_.since = now_;
    state_.exposures = 0;
    state_.checked = Checked::kNotYet;
  }

  void set_back(int to) {
    state_.step = std::min(state_.step, to);
    state_.begun = false;
    state_.rests = true;
    state_.free_since.reset();
    hold();
    shut_gates_after(state_.step);
  }

  void shut(const StepRule& step) {
    if (step.gate) state_.open_gates &= ~(1U << static_cast<unsigned>(*step.gate));
  }
  void shut_gates_after(int step) {
    for (int later = step + 1; later <= course_.last(); ++later) shut(course_.step(later));
  }
  void shut_gates_of_symptom_free_steps() {
    for (int later = state_.step + 1; later <= course_.last(); ++later) {
      if (course_.step(later).symptom_free) shut(course_.step(later));
    }
  }

  [[nodiscard]] std::optional<std::string> unmet_at(const Waiting& waiting) const {
    if (!waiting.needs.empty()) {
      std::string all;
      for (const std::string& need : waiting.needs) all += (all.empty() ? "" : "; ") + need;
      return all;
    }
    if (!waiting.not_before || now_ < *waiting.not_before) {
      const int hours = state_.begun ? course_.step(state_.step).least_hours : course_.rest_hours;
      return "at least " + std::to_string(hours) + " h " + (state_.begun ? "at the step before" : "of rest");
    }
    return {};
  }
};

}  // namespace

const std::vector<std::string_view>& by_words() {
  static const std::vector<std::string_view> kWords = {"clinician", "lead", "coach", "player"};
  return kWords;
}

CourseState opened(Moment at) {
  CourseState out;
  out.since = at;
  return out;
}

Transition transition(const Course& course, const CourseState& state, const CourseEvent& event, By by,
                      Moment received) {
  return std::visit(Machine(course, state, by, received), event);
}

Symptoms symptoms_of(const Course& course, std::optional<int> worse_points, std::optional<int> worse_minutes) {
  if (worse_points && *worse_points == 0) return Symptoms::kNoWorse;
  const bool mild = course.mild && worse_points && worse_minutes && *worse_points <= course.mild->most_points &&
                    *worse_minutes < course.mild->less_than_minutes;
  return mild ? Symptoms::kMild : Symptoms::kWorse;
}

std::vector<people::Restriction> restrictions_at(const Course& course, const CourseState& state,
                                                 const std::vector<catalogue::BodyArea>& at) {
  std::vector<people::Restriction> out;
  if (!state.begun) {
    people::Restriction sits_out;
    sits_out.sits_out = true;
    sits_out.instruction = course.waiting;
    out.push_back(std::move(sits_out));
    return out;
  }
  for (const StepRestriction& row : course.step(state.step).restrictions) {
    out.push_back(row.restriction);
    if (row.at_place) out.back().areas = at;
  }
  return out;
}

std::optional<Waiting> waiting_at(const Course& course, const CourseState& state) {
  if (state.begun && state.step == course.last()) return {};
  Waiting out;
  out.step = state.begun ? state.step + 1 : state.step;
  const StepRule& next = course.step(out.step);
  const StepRule& now = course.step(state.step);
  const bool asked_again = state.begun || state.rests;
  if (next.symptom_free && state.checked != Checked::kFree) {
    out.needs.emplace_back("a check without any symptoms");
  } else if (asked_again && state.checked == Checked::kNotYet) {
    out.needs.emplace_back("a check of symptoms");
  }
  if (state.begun && state.exposures < now.least_exposures) {
    out.needs.push_back(exposures_words(now.least_exposures - state.exposures));
  }
  for (int step = 0; step <= out.step; ++step) {
    const std::optional<int>& gate = course.step(step).gate;
    if (!gate || state.is_open(*gate)) continue;
    out.gate = gate;
    out.needs.push_back(course.gate(*gate).name + ": the clearance of a named clinician");
    break;
  }
  const int hours = state.begun ? now.least_hours : (state.rests ? course.rest_hours : 0);
  out.not_before = hours_after(state.since, hours);
  // A gate that wants time without symptoms waits longer.
  if (out.gate && course.gate(*out.gate).symptom_free_hours > 0) {
    out.not_before =
        state.free_since
            ? std::optional<Moment>(
                  std::max(*out.not_before, hours_after(*state.free_since, course.gate(*out.gate).symptom_free_hours)))
            : std::nullopt;
  }
  return out;
}

}  // namespace lanework::care
