#include "core/figure/standing.h"

#include <algorithm>
#include <cmath>

#include "core/figure/skeleton.h"
#include "core/figure/trigonometry.h"

namespace lanework::figure {
namespace {

namespace s = skeleton;

bool upper_part(ContactPart part) {
  switch (part) {
    case ContactPart::kHand:
    case ContactPart::kForearm:
    case ContactPart::kElbow:
    case ContactPart::kShoulder:
    case ContactPart::kBack:
    case ContactPart::kChest:
    case ContactPart::kHead:
      return true;
    default:
      return false;
  }
}

bool touches(const Posture& posture, ContactPart part, int side) {
  return std::find(posture.contacts.begin(), posture.contacts.end(), Contact{part, side}) != posture.contacts.end();
}

// Angle of the shank or forearm forward of the vertical (side view).
double shank_turn(const Angles& a, int side) {
  return a.at(LimbAngle::kHip, side) - a[MiddleAngle::kTrunk] - a.at(LimbAngle::kKnee, side);
}
double upper_arm_turn(const Angles& a, int side) {
  return a.at(LimbAngle::kShoulder, side) - a[MiddleAngle::kTrunk] - a[MiddleAngle::kSpine];
}

// Of the two ways to lay a segment level, the one within its joint's range; the written angle if neither is.
double laid_level(double turn, double written, double least, double most) {
  const double ahead = wrapped(90 - turn);
  const double behind = wrapped(-90 - turn);
  const bool ahead_fits = ahead >= least && ahead <= most;
  const bool behind_fits = behind >= least && behind <= most;
  if (ahead_fits && behind_fits)
    return std::fabs(ahead - written) <= std::fabs(behind - written) + 1e-9 ? ahead : behind;
  return ahead_fits ? ahead : (behind_fits ? behind : written);
}

// Feet, hands and forearms laid flat, for the side view; the front view only knows flat feet.
void lay_flat(View view, const Posture& posture, Angles& a, std::array<FootRule, 2>& feet) {
  for (int side = 0; side < 2; ++side) {
    FootRule& rule = feet[static_cast<std::size_t>(side)];
    rule = FootRule::kFree;
    const bool sole =
        touches(posture, ContactPart::kFoot, side) && !posture.ankle_written[static_cast<std::size_t>(side)];
    if (touches(posture, ContactPart::kToes, side)) rule = FootRule::kOnBall;
    if (view == View::kFront) {
      const double shank = a.at(LimbAngle::kHip, side) + a.at(LimbAngle::kKnee, side);
      const double tilt = (side == kLeft ? shank : -shank) - a[MiddleAngle::kTrunk];
      if (sole && std::fabs(wrapped(tilt)) < 50) rule = FootRule::kFlat;
      continue;
    }
    if (sole) {
      const double level = wrapped(-shank_turn(a, side));
      a.at(LimbAngle::kAnkle, side) = std::clamp(level, -65.0, 45.0);
      if (level == a.at(LimbAngle::kAnkle, side)) rule = FootRule::kFlat;
    }
    if (touches(posture, ContactPart::kForearm, side)) {
      double& elbow = a.at(LimbAngle::kElbow, side);
      elbow = laid_level(upper_arm_turn(a, side), elbow, -10, 155);
    }
    if ((touches(posture, ContactPart::kHand, side) || touches(posture, ContactPart::kForearm, side)) &&
        !posture.wrist_written[static_cast<std::size_t>(side)]) {
      const double forearm = upper_arm_turn(a, side) + a.at(LimbAngle::kElbow, side);
      a.at(LimbAngle::kWrist, side) = laid_level(forearm, 30, -90, 95);
    }
  }
}

Stood built(View view, const Posture& posture, Angles angles) {
  Stood out;
  lay_flat(view, posture, angles, out.feet);
  out.angles = angles;
  out.body = body_of(view, angles, out.feet);
  return out;
}

double lowest_of(const Body& body, const std::vector<Contact>& contacts) {
  if (contacts.empty()) return lowest(body);
  double low = lowest(body, contacts[0]);
  for (const Contact& contact : contacts) low = std::min(low, lowest(body, contact));
  return low;
}

// The smallest change d, at most 'reach' either way, at which error(d) crosses zero; where it never does,
// the change with the smallest error.
template <class Error>
double smallest_root(const Error& error, double reach) {
  const double here = error(0);
  if (std::fabs(here) < 1e-9) return 0;
  double best = 0;
  double best_error = std::fabs(here);
  std::array<double, 2> last = {here, here};
  for (int step = 1; step <= static_cast<int>(reach); ++step) {
    for (int way = 0; way < 2; ++way) {
      const double d = way == 0 ? step : -step;
      const double e = error(d);
      double& before = last[static_cast<std::size_t>(way)];
      if ((before < 0) != (e < 0)) {
        double low = way == 0 ? d - 1 : d + 1;
        double high = d;
        for (int i = 0; i < 40; ++i) {
          const double middle = (low + high) / 2;
          ((error(middle) < 0) == (before < 0) ? low : high) = middle;
        }
        return (low + high) / 2;
      }
      before = e;
      if (std::fabs(e) < best_error) {
        best_error = std::fabs(e);
        best = d;
      }
    }
  }
  return best;
}

void level(View view, const Posture& posture, Angles& angles) {
  std::vector<Contact> upper;
  std::vector<Contact> lower;
  for (const Contact& contact : posture.contacts) (upper_part(contact.part) ? upper : lower).push_back(contact);
  if (upper.empty() || lower.empty()) return;
  const auto error = [&](double d) {
    Angles tilted = angles;
    tilted[MiddleAngle::kTrunk] += d;
    const Body body = built(view, posture, tilted).body;
    return lowest_of(body, upper) - lowest_of(body, lower);
  };
  angles[MiddleAngle::kTrunk] += smallest_root(error, 60);
}

bool of_leg(LimbAngle angle) { return angle >= LimbAngle::kHip; }
bool on_leg(ContactPart part) {
  return part == ContactPart::kFoot || part == ContactPart::kToes || part == ContactPart::kHeel ||
         part == ContactPart::kKnee;
}

// Changes one joint as little as needed for two groups of contacts to be level.
void settle(View view, const Posture& posture, const Settle& what, const std::vector<Contact>& own,
            const std::vector<Contact>& others, Angles& angles) {
  if (own.empty() || others.empty()) return;
  const auto error = [&](double d) {
    Angles bent = angles;
    bent.at(what.angle, what.side) += d;
    const Body body = built(view, posture, bent).body;
    return lowest_of(body, own) - lowest_of(body, others);
  };
  angles.at(what.angle, what.side) += smallest_root(error, 70);
}

// A leg that stands on its knee and its toes has the knee bend that lets both touch.
void kneel(View view, const Posture& posture, Angles& angles) {
  if (view != View::kSide) return;
  for (int side = 0; side < 2; ++side) {
    if (!touches(posture, ContactPart::kKnee, side) || !touches(posture, ContactPart::kToes, side)) continue;
    // A knee left straight starts where the shank lies level.
    double& knee = angles.at(LimbAngle::kKnee, side);
    if (knee < 20) knee = wrapped(angles.at(LimbAngle::kHip, side) - angles[MiddleAngle::kTrunk] + 90);
    settle(view, posture, {LimbAngle::kKnee, side}, {{ContactPart::kToes, side}}, {{ContactPart::kKnee, side}}, angles);
  }
}

void settle(View view, const Posture& posture, const Settle& what, Angles& angles) {
  std::vector<Contact> own;
  std::vector<Contact> others;
  for (const Contact& contact : posture.contacts) {
    const bool sided = contact.part <= ContactPart::kHip;
    const bool same_limb =
        sided && contact.side == what.side && (of_leg(what.angle) ? on_leg(contact.part) : upper_part(contact.part));
    (same_limb ? own : others).push_back(contact);
  }
  settle(view, posture, what, own, others, angles);
}

// Two-link reach in the picture: shoulder and elbow such that the hand comes to the target.
void reach(View view, int side, Point target, const Stood& stood, Angles& a) {
  const Point shoulder = stood.body.limbs[static_cast<std::size_t>(side)].shoulder;
  const double dx = target.x - shoulder.x;
  const double dy = target.y - shoulder.y;
  const double shortening = view == View::kSide ? cosine(a.at(LimbAngle::kShoulderAside, side)) : 1.0;
  const double upper = s::kUpperArm * shortening;
  const double fore = (s::kForearm + s::kPalm) * shortening;
  const double distance = std::clamp(std::sqrt(dx * dx + dy * dy), std::fabs(upper - fore) + 1e-6, upper + fore);
  const double at_shoulder = arc_cosine((upper * upper + distance * distance - fore * fore) / (2 * upper * distance));
  const double at_elbow = 180 - arc_cosine((upper * upper + fore * fore - distance * distance) / (2 * upper * fore));
  // Direction of the target, measured as 'forward of hanging straight down in the picture'.
  const double straight = direction_of(dx, -dy);
  const double frame = a[MiddleAngle::kTrunk] + a[MiddleAngle::kSpine];
  const double out = view == View::kSide ? 1.0 : (side == kLeft ? 1.0 : -1.0);
  const double bend = a.at(LimbAngle::kElbow, side) < 0 ? -1.0 : 1.0;
  // Side view: bending turns the forearm the same way as the arm is raised; front view: the other way.
  const double back = view == View::kSide ? -bend : bend;
  double turn = wrapped(out * (straight + frame) + back * at_shoulder);
  if (turn < -90) turn += 360;
  a.at(LimbAngle::kShoulder, side) = turn;
  a.at(LimbAngle::kElbow, side) = bend * at_elbow;
  a.at(LimbAngle::kElbowAside, side) = 0;
  if (view == View::kFront) a.at(LimbAngle::kShoulderAside, side) = a[MiddleAngle::kTrunkAside];
  a.at(LimbAngle::kWrist, side) = 0;
}

// Everything but the holds, on the ground, the first contact at x = shift.
Stood grounded(View view, const Posture& posture) {
  Angles angles = posture.angles;
  for (int round = 0; round < 2; ++round) {
    kneel(view, posture, angles);
    for (const Settle& what : posture.settle) settle(view, posture, what, angles);
    level(view, posture, angles);
  }
  Stood out = built(view, posture, angles);
  const double low = lowest_of(out.body, posture.contacts);
  const double anchor = posture.contacts.empty() ? out.body.pelvis.x : ground_place(out.body, posture.contacts[0]);
  out.body = moved(out.body, posture.shift - anchor, posture.lift - low);
  return out;
}

Point in_own_frame(Point p, const Place& place) {
  const double x = (p.x - place.forward) / place.size;
  return {place.mirrored ? -x : x, p.y / place.size, p.z};
}

constexpr double kWorthRemarking = 0.015;

std::string percent(double fraction) { return std::to_string(static_cast<int>(std::lround(fraction * 100))) + " %"; }

void remark_on(View view, const Posture& posture, const Stood& stood, const Body* other, const Place& own,
               const std::string& who, std::vector<std::string>& out) {
  for (const Contact& contact : posture.contacts) {
    const double gap = lowest(stood.body, contact) - posture.lift;
    if (gap > kWorthRemarking) {
      out.push_back(who + name_of(view, contact) + " stays " + percent(gap) + " of height above the ground");
    }
  }
  const double whole = lowest(stood.body) - posture.lift;
  if (whole < -0.03) out.push_back(who + "a part of the body is " + percent(-whole) + " of height under the ground");
  for (const Hold& hold : posture.holds) {
    if (hold.where.of_other && other == nullptr) continue;
    Point target = point_of(hold.where.of_other ? *other : stood.body, hold.where);
    if (hold.where.of_other) target = in_own_frame(target, own);
    const Point hand = stood.body.limbs[static_cast<std::size_t>(hold.side)].hand;
    const double gap = std::sqrt((hand.x - target.x) * (hand.x - target.x) + (hand.y - target.y) * (hand.y - target.y));
    if (gap > 2 * kWorthRemarking) {
      out.push_back(who + "hand_" + std::string(side_name(view, hold.side)) + " misses what it holds by " +
                    percent(gap) + " of height");
    }
  }
}

constexpr Place kMainPlace;

}  // namespace

Place place_of(const Partner& partner) { return {partner.mirrored, partner.size, partner.forward}; }

Body in_scene(const Body& body, const Place& place) {
  const Body turned = place.mirrored ? mirrored(body, 0) : body;
  return moved(scaled(turned, place.size, 0), place.forward, 0);
}

void take_hold(View view, const std::vector<Hold>& holds, Stood& stood, const Body* other, const Place& own) {
  for (const Hold& hold : holds) {
    if (hold.where.of_other && other == nullptr) continue;
    Point target = point_of(hold.where.of_other ? *other : stood.body, hold.where);
    if (hold.where.of_other) target = in_own_frame(target, own);
    Angles angles = stood.angles;
    reach(view, hold.side, target, stood, angles);
    const Body fresh = body_of(view, angles, stood.feet);
    const double dx = stood.body.pelvis.x - fresh.pelvis.x;
    const double dy = stood.body.pelvis.y - fresh.pelvis.y;
    stood.angles = angles;
    stood.body = moved(fresh, dx, dy);
  }
}

Scene scene_of(const Pose& pose) {
  Scene scene;
  scene.figure = grounded(pose.view, pose.posture);
  if (!pose.partner) {
    take_hold(pose.view, pose.posture.holds, scene.figure, nullptr, kMainPlace);
    return scene;
  }
  const Place place = place_of(*pose.partner);
  Stood partner = grounded(pose.view, pose.partner->posture);
  const Body waiting = in_scene(partner.body, place);
  take_hold(pose.view, pose.posture.holds, scene.figure, &waiting, kMainPlace);
  take_hold(pose.view, pose.partner->posture.holds, partner, &scene.figure.body, place);
  partner.body = in_scene(partner.body, place);
  scene.partner = partner;
  return scene;
}

std::vector<std::string> remarks_on(const Pose& pose) {
  std::vector<std::string> out;
  const Scene scene = scene_of(pose);
  const Body* other = scene.partner ? &scene.partner->body : nullptr;
  remark_on(pose.view, pose.posture, scene.figure, other, kMainPlace, "", out);
  if (pose.partner) {
    const Place place = place_of(*pose.partner);
    Stood own = grounded(pose.view, pose.partner->posture);
    take_hold(pose.view, pose.partner->posture.holds, own, &scene.figure.body, place);
    remark_on(pose.view, pose.partner->posture, own, &scene.figure.body, place, "partner: ", out);
  }
  return out;
}

std::string name_of(View view, const Contact& contact) {
  static constexpr std::array<std::string_view, 13> names = {
      "foot", "toes", "heel", "knee", "hand", "forearm", "elbow", "shoulder", "hip", "seat", "back", "chest", "head"};
  std::string name(names[static_cast<std::size_t>(contact.part)]);
  if (contact.part <= ContactPart::kHip) name += "_" + std::string(side_name(view, contact.side));
  return name;
}

}  // namespace lanework::figure
