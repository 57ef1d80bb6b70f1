#include "core/care/entries/entry.h"

#include <tuple>

namespace lanework::care {
namespace {

auto parts_of(const people::Restriction& r) {
  return std::tie(r.areas, r.kinds, r.allowed_grade, r.until, r.review, r.sits_out, r.instruction, r.landings_percent,
                  r.new_eccentric_ok);
}

}  // namespace

bool operator==(const RestrictionSet& a, const RestrictionSet& b) {
  return parts_of(a.restriction) == parts_of(b.restriction);
}

const std::vector<std::string_view>& kind_words() {
  static const std::vector<std::string_view> kWords = {"hurt",         "soreness",      "restriction", "reviewed",
                                                       "lifted",       "course-opened", "step-begun",  "symptom-check",
                                                       "stepped-back", "clearance",     "withdrawn"};
  return kWords;
}

bool same_content(const Entry& a, const Entry& b) {
  return std::tie(a.id, a.device_time, a.by, a.author, a.player, a.corrects, a.what) ==
         std::tie(b.id, b.device_time, b.by, b.author, b.player, b.corrects, b.what);
}

}  // namespace lanework::care
