#include "core/check/dose_words.h"

namespace lanework::check {

std::string dose_words(const Drill& drill, const Step& step) {
  const std::string amount = std::to_string(step.amount);
  std::string words = step.sets == 1 ? amount : std::to_string(step.sets) + " \u00d7 " + amount;
  if (drill.dose_kind == "seconds") words += " s";
  if (drill.dose_kind == "passes") words += step.amount == 1 ? " pass" : " passes";
  if (drill.dose_kind == "reps") words += step.amount == 1 ? " rep" : " reps";
  if (drill.sides) words += " a side";
  if (drill.formation == "pairs" && !drill.both_at_once) words += " each";
  return words;
}

}  // namespace lanework::check
