// Standing: from a posture as written to a body on the ground. Flat feet and hands, levelling, settling and
// held hands (docs/formats/figure.md) are worked out here, so that poses can be written without trigonometry.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/figure/body.h"

namespace lanework::figure {

// A posture with every comfort worked out: angles as they are seen, and the body they give.
struct Stood {
  Angles angles;
  std::array<FootRule, 2> feet{};
  Body body;
};

// The figure of a pose and, where there is one, its partner: both on the ground (y = 0), the figure's first
// contact at x = its shift.
struct Scene {
  Stood figure;
  std::optional<Stood> partner;
};

Scene scene_of(const Pose& pose);

// A contact that stays above the ground, or a hand that does not reach what it holds, by more than 1.5 % of
// stature, in words: 'knee_far stays 4 % of height above the ground'. For the writers of poses.
std::vector<std::string> remarks_on(const Pose& pose);

std::string name_of(View view, const Contact& contact);

}  // namespace lanework::figure
