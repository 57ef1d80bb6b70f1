// When to stop a drill, in a form to be read in 20 seconds: what holds for the whole body first, then from head
// to foot, since a child says where it hurts and not in which drill.
#pragma once

#include <string>
#include <vector>

namespace lanework::draw {

struct StopGroup {
  std::string where;               // 'Knee'; 'In any drill' where no one area is named
  std::vector<std::string> signs;  // 'pain in the knee', 'the knee gives way'
};

// Groups the lines of drills ('Sharp pain in the groin or knee'); each place of a line goes to its area with what
// is said of it. Lines that name no area, or that are worded in a way not known here, stay as they are. 'Sharp
// pain' is not said again of a place where another drill already stops for any pain, nor 'the low back' beside 'the
// back'. Groups without a sign are left out.
std::vector<StopGroup> stop_groups(const std::vector<std::string>& lines);

}  // namespace lanework::draw
