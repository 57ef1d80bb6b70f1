#include "core/base/random.h"

#include "core/base/elementary.h"

namespace lanework {

double NormalStream::next() {
  if (used_ == 4) {
    words_ = philox(counter_, key_);
    ++counter_[0];
    used_ = 0;
  }
  return normal_quantile(uniform_from(words_[static_cast<std::size_t>(used_++)]));
}

}  // namespace lanework
