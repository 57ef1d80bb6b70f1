#include "core/catalogue/drill.h"

#include <algorithm>

namespace lanework::catalogue {

std::vector<Stress> stresses_on(const Drill& drill, const Rung& rung) {
  std::vector<Stress> out = drill.stress;
  for (const Stress& replacement : rung.stress) {
    const auto same = [&](const Stress& s) { return s.area == replacement.area && s.kind == replacement.kind; };
    const auto old = std::find_if(out.begin(), out.end(), same);
    if (old != out.end()) {
      old->grade = replacement.grade;
    } else {
      out.push_back(replacement);
    }
  }
  out.erase(std::remove_if(out.begin(), out.end(), [](const Stress& s) { return s.grade == 0; }), out.end());
  return out;
}

const figure::Figure& figure_on(const Drill& drill, const Rung& rung) {
  return rung.figure.empty() ? drill.figure : rung.figure;
}

int rung_index(const Drill& drill, const std::string& key) {
  for (std::size_t i = 0; i < drill.rungs.size(); ++i) {
    if (drill.rungs[i].key == key) return static_cast<int>(i);
  }
  return -1;
}

int dose_index(const Drill& drill, int sets, int amount) {
  for (std::size_t i = 0; i < drill.dose.steps.size(); ++i) {
    const DoseStep& step = drill.dose.steps[i];
    if (step.sets == sets && step.amount == amount) return static_cast<int>(i);
  }
  return -1;
}

std::string dose_in_words(const Drill& drill, const DoseStep& step) {
  std::string out = step.sets > 1 ? std::to_string(step.sets) + " \u00d7 " : "";
  out += std::to_string(step.amount);
  switch (drill.dose.kind) {
    case DoseKind::kReps:
      out += step.amount == 1 ? " rep" : " reps";
      break;
    case DoseKind::kSeconds:
      out += " s";
      break;
    case DoseKind::kPasses:
      out += step.amount == 1 ? " pass" : " passes";
      break;
  }
  if (drill.dose.sides) out += " a side";
  if (drill.formation == Formation::kPairs && !drill.pair.both_at_once) out += " each";
  return out;
}

}  // namespace lanework::catalogue
