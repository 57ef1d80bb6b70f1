// Three small drills, one a formation, for tests that get one thing wrong at a time.
#pragma once

#include <string>

#include "core/base/document.h"

namespace lanework::catalogue::test {

inline constexpr const char* kSampleFigure = R"(
[figure]
view = "side"
main = "stand"
[[figure.pose]]
label = "stand"
at = 0.0
contacts = ["feet"]
angles = { trunk = 5 }
[[figure.pose]]
label = "bend"
at = 0.5
contacts = ["feet"]
angles = { trunk = 30, hip = 60, knee = 60 }
)";

inline constexpr const char* kSampleSources = R"(
[sources]
dose = ["common-practice"]
timing = ["own-judgement"]
loads = ["own-judgement"]
stress = ["own-judgement"]
technique = ["common-practice"]
)";

inline Document sample(const std::string& file, const std::string& text) {
  return parse_toml(file, text + kSampleSources + kSampleFigure).value();
}

// Held on the spot, left and right.
inline Document sample_spread() {
  return sample("steady-lean.toml", R"(
id = "steady-lean"
name = "Steady lean"
family = "trunk"
phase = "build"
formation = "spread"
ages = { from = 9, to = 18 }
purpose = "A steady trunk."
how = "Lean and hold."
telling_seconds = 20
space_metres = { width = 2, length = 2.5 }
needs = ["mat"]
not_on = ["wet"]
cues = ["Long back", "Breathe"]
stop_if = ["Sharp pain"]
[[rung]]
key = "near"
change = "feet near"
[[rung]]
key = "far"
change = "feet far"
ages_from = 12
stress = [{ area = "shoulder", kind = "load", grade = 3 }, { area = "knee", kind = "pressure", grade = 0 }]
[dose]
kind = "reps"
sides = true
tempo_seconds = 3
rest_seconds = 10
side_change_seconds = 4
steps = [{ sets = 1, amount = 4 }, { sets = 1, amount = 6 }, { sets = 2, amount = 5 }]
[[watch]]
fault = "hips sag"
cue = "lift the belt"
[[stress]]
area = "shoulder"
kind = "load"
grade = 2
[[stress]]
area = "knee"
kind = "pressure"
grade = 1
[[stress]]
area = "back-thigh"
kind = "load"
grade = 1
[[stress]]
area = "ankle"
kind = "impact"
grade = 1
[loads]
contacts = 0.5
intensity = "medium"
eccentric = 0.5
)");
}

inline Document sample_lane() {
  return sample("quick-lane.toml", R"(
id = "quick-lane"
name = "Quick lane"
family = "run-and-cut"
phase = "run"
formation = "lane"
ages = { from = 8, to = 19 }
purpose = "Fast legs."
how = "Down and back."
telling_seconds = 10
cues = ["Tall"]
stop_if = ["A pull in the thigh"]
[[rung]]
key = "rolling"
change = "from a jog"
[[rung]]
key = "standing"
change = "from standing"
[dose]
kind = "passes"
steps = [{ sets = 1, amount = 1 }, { sets = 1, amount = 2 }]
[lane]
shape = "out-and-back"
out = "run"
share_of_top_speed = 85
back = "jog"
stop_at_cones = true
stop_seconds = 2
turn_seconds = 1
release_gap_seconds = 3
least_lane_metres = 10
[[watch]]
fault = "leans back"
cue = "tall"
[[stress]]
area = "back-thigh"
kind = "speed"
grade = 3
[loads]
hard_running = true
)");
}

inline Document sample_pairs() {
  return sample("slow-pair.toml", R"(
id = "slow-pair"
name = "Slow pair"
family = "hamstring"
phase = "build"
formation = "pairs"
ages = { from = 12, to = 19 }
purpose = "Strong backs of the thighs."
how = "One works, one holds."
telling_seconds = 40
space_metres = { width = 2, length = 3 }
needs = ["partner"]
cues = ["Slow"]
stop_if = ["A pull in the thigh"]
[[rung]]
key = "short"
change = "a short way"
load = 0.5
[[rung]]
key = "long"
change = "all the way"
[dose]
kind = "seconds"
steps = [{ sets = 1, amount = 10 }, { sets = 2, amount = 10 }]
[pair]
both_at_once = false
swap_seconds = 6
[[watch]]
fault = "bends at the hip"
cue = "one line"
[[stress]]
area = "back-thigh"
kind = "load"
grade = 3
[loads]
eccentric = 0.2
)");
}

}  // namespace lanework::catalogue::test
