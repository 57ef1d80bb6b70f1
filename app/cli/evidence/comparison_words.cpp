#include "app/cli/evidence/comparison_words.h"

#include "core/evidence/number_words.h"

namespace lanework::cli {

std::string chance_sentence(const evidence::Interval& limits) {
  if (limits.low > 1 || limits.high < 1)
    return "The limits leave out 1: chance alone would seldom do this. What else differed between the two is not "
           "told.\n";
  return "The limits hold 1: this may be chance. It does not show that there is no difference: " +
         evidence::limits_words(limits) + " times are all possible.\n";
}

}  // namespace lanework::cli
