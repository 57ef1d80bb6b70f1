#include "core/figure/scene_motion.h"

#include <algorithm>

namespace lanework::figure {
namespace {

JointName swapped(JointName name) {
  if (has_side(name.joint) && name.side != kBothSides) name.side = 1 - name.side;
  return name;
}

void swap_sides(View view, Posture& posture) {
  posture.angles = swapped(view, posture.angles);
  std::swap(posture.ankle_written[0], posture.ankle_written[1]);
  std::swap(posture.wrist_written[0], posture.wrist_written[1]);
  for (Contact& contact : posture.contacts) contact = swapped(contact);
  for (Settle& what : posture.settle) what.side = 1 - what.side;
  for (Hold& hold : posture.holds) hold = {1 - hold.side, swapped(hold.where)};
}

// The pose half a cycle later: near and far exchanged, or seen in a mirror.
Pose with_sides_swapped(Pose pose) {
  const double way = pose.view == View::kFront ? -1 : 1;
  swap_sides(pose.view, pose.posture);
  pose.at += 0.5;
  pose.posture.shift *= way;
  for (Prop& prop : pose.props) {
    if (prop.at) prop.at = swapped(*prop.at);
    if (prop.to) prop.to = swapped(*prop.to);
    prop.forward *= way;
  }
  if (pose.partner) {
    swap_sides(pose.view, pose.partner->posture);
    pose.partner->forward *= way;
  }
  return pose;
}

std::vector<Pose> cycle_of(const Figure& figure, View view) {
  std::vector<Pose> out;
  for (const Pose& pose : figure.poses) {
    if (pose.view == view) out.push_back(pose);
  }
  if (!figure.swap_sides) return out;
  const std::size_t half = out.size();
  for (std::size_t i = 0; i < half; ++i) out.push_back(with_sides_swapped(out[i]));
  return out;
}

std::vector<Scene> scenes_of(const std::vector<Pose>& poses) {
  std::vector<Scene> out;
  for (const Pose& pose : poses) out.push_back(scene_of(pose));
  return out;
}

// The first ball of one pose is the first ball of the next.
std::vector<std::vector<std::optional<Prop>>> slots_of(const std::vector<Pose>& poses) {
  std::vector<PropKind> kinds;
  std::vector<std::vector<std::optional<Prop>>> out(poses.size());
  for (std::size_t i = 0; i < poses.size(); ++i) {
    out[i].resize(kinds.size());
    for (const Prop& prop : poses[i].props) {
      std::size_t slot = 0;
      while (slot < kinds.size() && (kinds[slot] != prop.kind || out[i][slot])) ++slot;
      if (slot == kinds.size()) {
        kinds.push_back(prop.kind);
        out[i].resize(kinds.size());
      }
      out[i][slot] = prop;
    }
  }
  for (auto& row : out) row.resize(kinds.size());
  return out;
}

std::vector<std::size_t> partnered_of(const std::vector<Pose>& poses) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < poses.size(); ++i) {
    if (poses[i].partner) out.push_back(i);
  }
  return out;
}

std::vector<KeyStance> partner_stances(const std::vector<Pose>& poses, const std::vector<Scene>& scenes) {
  std::vector<KeyStance> out;
  for (const std::size_t i : partnered_of(poses)) {
    const Posture& posture = poses[i].partner->posture;
    out.push_back({poses[i].at, *scenes[i].partner, posture.contacts, posture.lift, 0});
  }
  return out;
}

double mixed(double a, double b, double t) { return a + t * (b - a); }

Place mixed(const Place& from, const Place& to, double t) {
  return {t < 0.5 ? from.mirrored : to.mirrored, mixed(from.size, to.size, t), mixed(from.forward, to.forward, t)};
}

// What both poses hold of the other person.
std::vector<Hold> held_on(const Posture& from, const Posture& to) {
  std::vector<Hold> out;
  for (const Hold& hold : from.holds) {
    const auto same = [&](const Hold& other) {
      return other.side == hold.side && other.where.joint == hold.where.joint && other.where.side == hold.where.side &&
             other.where.of_other;
    };
    if (hold.where.of_other && std::any_of(to.holds.begin(), to.holds.end(), same)) out.push_back(hold);
  }
  return out;
}

}  // namespace

SceneMoment moment_of(const Pose& pose) {
  SceneMoment out{scene_of(pose), pose.partner ? pose.partner->size : 1, {}};
  for (const Prop& prop : pose.props) out.props.emplace_back(placed(prop, out.scene));
  return out;
}

SceneMotion::SceneMotion(const Figure& figure, View view)
    : view_(view),
      poses_(cycle_of(figure, view)),
      scenes_(scenes_of(poses_)),
      props_(slots_of(poses_)),
      figure_(figure, view),
      partner_(view, figure.cycle == Cycle::kLoop, partner_stances(poses_, scenes_)),
      partnered_(partnered_of(poses_)) {}

SceneMoment SceneMotion::at(double fraction) const {
  SceneMoment out;
  out.scene.figure = figure_.at(fraction);
  if (!partnered_.empty()) move_partner(fraction, out);
  const Motion::Between between = figure_.between(fraction);
  for (std::size_t slot = 0; slot < props_.front().size(); ++slot) {
    out.props.push_back(prop_at(slot, between, out.scene));
  }
  return out;
}

void SceneMotion::move_partner(double fraction, SceneMoment& out) const {
  const Motion::Between between = partner_.between(fraction);
  const Partner& from = *poses_[partnered_[between.from % partnered_.size()]].partner;
  const Partner& to = *poses_[partnered_[between.to % partnered_.size()]].partner;
  const Place place = mixed(place_of(from), place_of(to), between.ease);
  Stood partner = partner_.at(fraction);
  const Body waiting = in_scene(partner.body, place);
  const Motion::Between own = figure_.between(fraction);
  const Posture& before = poses_[own.from % poses_.size()].posture;
  const Posture& after = poses_[own.to % poses_.size()].posture;
  take_hold(view_, held_on(before, after), out.scene.figure, &waiting, Place{});
  take_hold(view_, held_on(from.posture, to.posture), partner, &out.scene.figure.body, place);
  partner.body = in_scene(partner.body, place);
  out.scene.partner = std::move(partner);
  out.partner_size = place.size;
}

PlacedProp SceneMotion::placed_first(std::size_t slot) const {
  std::size_t pose = 0;
  while (!props_[pose][slot] || !props_[pose][slot]->at) ++pose;
  return placed(*props_[pose][slot], scenes_[pose]);
}

std::optional<PlacedProp> SceneMotion::prop_at(std::size_t slot, const Motion::Between& between,
                                               const Scene& now) const {
  const std::size_t before = between.from % poses_.size();
  const std::size_t after = between.to % poses_.size();
  const std::optional<Prop>& from = props_[before][slot];
  const std::optional<Prop>& to = props_[after][slot];
  const auto stands = [&](const Prop& prop, std::size_t pose) {
    if (goes_along(prop.kind)) return placed(prop, now);
    return prop.at ? placed_first(slot) : placed(prop, scenes_[pose]);
  };
  if (!from || !to) {
    const bool first = between.share < 0.5;
    const std::optional<Prop>& near = first ? from : to;
    return near ? std::optional(stands(*near, first ? before : after)) : std::nullopt;
  }
  PlacedProp out = stands(*from, before);
  const PlacedProp next = stands(*to, after);
  out.at = lanework::figure::between(out.at, next.at, between.ease);
  out.to = lanework::figure::between(out.to, next.to, between.ease);
  return out;
}

}  // namespace lanework::figure
