#include "core/figure/motion.h"

#include <algorithm>
#include <cmath>

#include "core/figure/trigonometry.h"

namespace lanework::figure {
namespace {

constexpr std::size_t kSlots = kMiddleAngles + 2 * kLimbAngles;

double& slot(Angles& a, std::size_t i) {
  if (i < kMiddleAngles) return a.middle[i];
  const std::size_t j = i - kMiddleAngles;
  return a.limbs[j / kLimbAngles][j % kLimbAngles];
}
double slot(const Angles& a, std::size_t i) { return slot(const_cast<Angles&>(a), i); }

// Slope at a key between two spans, such that the cubic does not overshoot.
double monotone_slope(double left_width, double left_rise, double right_width, double right_rise) {
  if (left_width <= 0 || right_width <= 0) return 0;
  const double left = left_rise / left_width;
  const double right = right_rise / right_width;
  if (left * right <= 0) return 0;
  const double w_left = 2 * right_width + left_width;
  const double w_right = right_width + 2 * left_width;
  return (w_left + w_right) / (w_left / left + w_right / right);
}

double hermite(double y0, double y1, double m0, double m1, double width, double t) {
  const double t2 = t * t;
  const double t3 = t2 * t;
  return y0 * (2 * t3 - 3 * t2 + 1) + m0 * width * (t3 - 2 * t2 + t) + y1 * (3 * t2 - 2 * t3) + m1 * width * (t3 - t2);
}

struct Offset {
  double right;
  double up;
};

Offset standing_on(const Body& body, const std::vector<Contact>& contacts, double lift, double shift) {
  double low = contacts.empty() ? lowest(body) : lowest(body, contacts[0]);
  for (const Contact& contact : contacts) low = std::min(low, lowest(body, contact));
  const double anchor = contacts.empty() ? body.pelvis.x : ground_place(body, contacts[0]);
  return {shift - anchor, lift - low};
}

double mixed(double a, double b, double t) { return a + t * (b - a); }

std::vector<KeyStance> stances_of(const Figure& figure, View view) {
  std::vector<KeyStance> out;
  for (const Pose& pose : figure.poses) {
    if (pose.view != view) continue;
    out.push_back({pose.at, scene_of(pose).figure, pose.posture.contacts, pose.posture.lift, pose.posture.shift});
  }
  if (!figure.swap_sides) return out;
  const std::size_t half = out.size();
  for (std::size_t i = 0; i < half; ++i) {
    KeyStance stance = out[i];
    stance.at += 0.5;
    stance.stood.angles = swapped(view, stance.stood.angles);
    std::swap(stance.stood.feet[0], stance.stood.feet[1]);
    for (Contact& contact : stance.contacts) contact = swapped(contact);
    if (view == View::kFront) stance.shift = -stance.shift;
    out.push_back(std::move(stance));
  }
  return out;
}

}  // namespace

Contact swapped(Contact contact) {
  return contact.part <= ContactPart::kHip ? Contact{contact.part, 1 - contact.side} : contact;
}

Angles swapped(View view, const Angles& angles) {
  Angles out = angles;
  std::swap(out.limbs[0], out.limbs[1]);
  out[MiddleAngle::kTurn] = -out[MiddleAngle::kTurn];
  if (view == View::kFront) {
    for (const MiddleAngle a : {MiddleAngle::kTrunk, MiddleAngle::kSpine, MiddleAngle::kNeck}) out[a] = -out[a];
  }
  return out;
}

Motion::Motion(const Figure& figure, View view)
    : Motion(view, figure.cycle == Cycle::kLoop, stances_of(figure, view)) {}

Motion::Motion(View view, bool loop, std::vector<KeyStance> stances) : view_(view), loop_(loop) {
  for (KeyStance& one : stances) {
    keys_.push_back({one.at, one.stood.angles, one.stood.feet, std::move(one.contacts), one.lift, one.shift, {}});
  }
  if (keys_.empty()) return;
  if (loop_) {
    keys_.push_back(keys_.front());
    keys_.back().at += 1;
  }
  for (std::size_t i = 1; i < keys_.size(); ++i) {
    for (std::size_t k = 0; k < kSlots; ++k) {
      const double before = slot(keys_[i - 1].angles, k);
      double& angle = slot(keys_[i].angles, k);
      angle = before + wrapped(angle - before);
    }
  }
  add_slopes();
}

void Motion::add_slopes() {
  const std::size_t n = keys_.size();
  for (std::size_t k = 0; k < kSlots; ++k) {
    const auto rise = [&](std::size_t i) { return slot(keys_[i + 1].angles, k) - slot(keys_[i].angles, k); };
    const auto width = [&](std::size_t i) { return keys_[i + 1].at - keys_[i].at; };
    for (std::size_t i = 1; i + 1 < n; ++i) {
      slot(keys_[i].slope, k) = monotone_slope(width(i - 1), rise(i - 1), width(i), rise(i));
    }
    if (loop_ && n > 2) {
      const double seam = monotone_slope(width(n - 2), rise(n - 2), width(0), rise(0));
      slot(keys_.front().slope, k) = seam;
      slot(keys_.back().slope, k) = seam;
    }
  }
}

Motion::Between Motion::between(double fraction) const {
  double f = fraction;
  if (loop_) {
    f = fraction - std::floor(fraction);
    if (f < keys_.front().at) f += 1;
  }
  f = std::clamp(f, keys_.front().at, keys_.back().at);
  std::size_t i = 0;
  while (i + 2 < keys_.size() && keys_[i + 1].at <= f) ++i;
  const std::size_t next = std::min(i + 1, keys_.size() - 1);
  const double width = keys_[next].at - keys_[i].at;
  const double t = width > 0 ? (f - keys_[i].at) / width : 0;
  return {i, next, t, t * t * (3 - 2 * t)};
}

Stood Motion::at(double fraction) const {
  const auto [before, after, t, ease] = between(fraction);
  const Key& from = keys_[before];
  const Key& to = keys_[after];
  const double width = to.at - from.at;

  Stood out;
  for (std::size_t k = 0; k < kSlots; ++k) {
    slot(out.angles, k) =
        hermite(slot(from.angles, k), slot(to.angles, k), slot(from.slope, k), slot(to.slope, k), width, t);
  }
  out.feet = t < 0.5 ? from.feet : to.feet;
  const Body body = body_of(view_, out.angles, out.feet);
  const double lift = mixed(from.lift, to.lift, ease);
  const double shift = mixed(from.shift, to.shift, ease);
  const Offset first = standing_on(body, from.contacts, lift, shift);
  const Offset second = standing_on(body, to.contacts, lift, shift);
  out.body = moved(body, mixed(first.right, second.right, ease), mixed(first.up, second.up, ease));
  return out;
}

}  // namespace lanework::figure
