#include "core/care/pain/pain_rule.h"

namespace lanework::care {

const std::vector<std::string_view>& pain_sign_words() {
  static const std::vector<std::string_view> kWords = {"swelling",           "bone",      "bony-tenderness",
                                                       "growth-plate",       "deformity", "cannot-bear-weight",
                                                       "locks-or-gives-way", "limp",      "night-pain"};
  return kWords;
}

}  // namespace lanework::care
