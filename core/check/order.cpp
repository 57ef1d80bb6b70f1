#include "core/check/order.h"

#include <string>
#include <tuple>

namespace lanework::check {
namespace {

// Families of a phase stand as the routine has them first; those it lacks follow by rank.
int family_place(const Drill& drill, const Matter& matter) {
  const auto lines = static_cast<int>(matter.routine.size());
  for (int i = 0; i < lines; ++i) {
    const Drill& other = matter.drills.at(matter.routine[static_cast<std::size_t>(i)].drill);
    if (other.family == drill.family && other.phase == drill.phase) return i;
  }
  const Family* family = find_family(matter, drill.family);
  return lines + (family == nullptr ? 0 : family->rank);
}

std::tuple<int, int, bool, int, std::string> place_of(const Drill& drill, const Matter& matter) {
  const int line = routine_position(matter, drill.id);
  return {phase_position(drill.phase), family_place(drill, matter), line < 0, line, drill.id};
}

std::string why_after(const Drill& first, const Drill& second) {
  if (first.phase != second.phase) return "phase " + first.phase + " before phase " + second.phase;
  if (first.family != second.family) return first.family + " before " + second.family + ", as in the routine";
  return first.id + " before " + second.id;
}

bool same_group(const Drill& a, const Drill& b) { return a.phase == b.phase && a.family == b.family; }

}  // namespace

bool stands_before(const Drill& first, const Drill& second, const Matter& matter) {
  return place_of(first, matter) < place_of(second, matter);
}

void judge_order(const Selection& selection, const Matter& matter, std::vector<Violation>& violations) {
  for (std::size_t i = 1; i < selection.size(); ++i) {
    const Drill& here = *selection[i].drill;
    const Drill& before = *selection[i - 1].drill;
    if (stands_before(here, before, matter)) {
      violations.push_back({"order", selection[i].where, "after " + before.id, why_after(here, before)});
    }
    if (same_group(here, before)) continue;
    for (std::size_t j = 0; j + 1 < i; ++j) {
      if (!same_group(*selection[j].drill, here)) continue;
      violations.push_back({"family-split", selection[i].where, here.family + " again after " + before.family,
                            "the drills of a family together"});
      break;
    }
  }
}

}  // namespace lanework::check
