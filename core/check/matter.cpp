#include "core/check/matter.h"

#include <algorithm>

namespace lanework::check {
namespace {

template <class List, class Same>
int position(const List& list, Same same) {
  const auto at = std::find_if(list.begin(), list.end(), same);
  return at == list.end() ? -1 : static_cast<int>(at - list.begin());
}

}  // namespace

int rung_position(const Drill& drill, const std::string& key) {
  return position(drill.rungs, [&](const Rung& rung) { return rung.key == key; });
}

int step_position(const Drill& drill, const Step& step) {
  return position(drill.steps, [&](const Step& s) { return s.sets == step.sets && s.amount == step.amount; });
}

int routine_position(const Matter& matter, const std::string& drill) {
  return position(matter.routine, [&](const RoutineLine& line) { return line.drill == drill; });
}

int phase_position(const std::string& phase) {
  static const std::vector<std::string> kPhases = {"start", "loosen", "build", "spring", "run"};
  return position(kPhases, [&](const std::string& word) { return word == phase; });
}

const Family* find_family(const Matter& matter, const std::string& key) {
  for (const Family& family : matter.families) {
    if (family.key == key) return &family;
  }
  return nullptr;
}

bool holds(const std::vector<std::string>& list, const std::string& word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

}  // namespace lanework::check
