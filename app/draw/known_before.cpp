#include "app/draw/known_before.h"

#include "app/draw/form_words.h"

namespace lanework::draw {
namespace {

FormField field(const char* label, const std::vector<std::string>& texts) {
  return {label, texts.empty() ? std::vector<std::string>{words::kNothingEntered} : texts, 1, false, {}};
}

}  // namespace

FormSection known_before_section(const KnownBeforeMatter& matter) {
  return {words::kKnownBefore,
          words::kForClinicianOnly + (" " + matter.as_known),
          {field("Hurts that nobody had lifted", matter.hurts),
           field("On the way back: the step, and what was still shut", matter.courses),
           field("Other restrictions and soreness, and since when", matter.held)}};
}

}  // namespace lanework::draw
