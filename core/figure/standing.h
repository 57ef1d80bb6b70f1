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

// Where a partner's body stands in the scene, and how its points are seen from its own frame.
struct Place {
  bool mirrored = false;
  double size = 1;
  double forward = 0;
};
Place place_of(const Partner& partner);
Body in_scene(const Body& body, const Place& place);

// Shoulder and elbow set so that each hand is where it holds; 'stood' is in its own frame, 'other' in the scene. A hand
// that holds somebody who is not there stays as it is.
void take_hold(View view, const std::vector<Hold>& holds, Stood& stood, const Body* other, const Place& own);

// A contact that stays above the ground, or a hand that does not reach what it holds, by more than 1.5 % of
// stature, in words: 'knee_far stays 4 % of height above the ground'. For the writers of poses.
std::vector<std::string> remarks_on(const Pose& pose);

std::string name_of(View view, const Contact& contact);

}  // namespace lanework::figure
