#include <algorithm>
#include <array>
#include <utility>

#include "core/figure/figure.h"

namespace lanework::figure {
namespace {

constexpr std::size_t kMostPoses = 12;

struct ContactWord {
  std::string_view one;
  std::string_view many;
  ContactPart part;
  bool sided;
};
constexpr std::array<ContactWord, 13> kContactWords = {{
    {"foot", "feet", ContactPart::kFoot, true},
    {"toes", "toes", ContactPart::kToes, true},
    {"heel", "heels", ContactPart::kHeel, true},
    {"knee", "knees", ContactPart::kKnee, true},
    {"hand", "hands", ContactPart::kHand, true},
    {"forearm", "forearms", ContactPart::kForearm, true},
    {"elbow", "elbows", ContactPart::kElbow, true},
    {"shoulder", "shoulders", ContactPart::kShoulder, true},
    {"hip", "hips", ContactPart::kHip, true},
    {"seat", "seat", ContactPart::kSeat, false},
    {"back", "back", ContactPart::kBack, false},
    {"chest", "chest", ContactPart::kChest, false},
    {"head", "head", ContactPart::kHead, false},
}};

struct JointWord {
  std::string_view one;
  std::string_view many;
  Joint joint;
};
constexpr std::array<JointWord, 14> kJointWords = {{
    {"head", "", Joint::kHead},
    {"neck", "", Joint::kNeck},
    {"chest", "", Joint::kChest},
    {"pelvis", "", Joint::kPelvis},
    {"shoulder", "shoulders", Joint::kShoulder},
    {"elbow", "elbows", Joint::kElbow},
    {"wrist", "wrists", Joint::kWrist},
    {"hand", "hands", Joint::kHand},
    {"hip", "hips", Joint::kHip},
    {"knee", "knees", Joint::kKnee},
    {"ankle", "ankles", Joint::kAnkle},
    {"foot", "feet", Joint::kFoot},
    {"toes", "toes", Joint::kToes},
    {"heel", "heels", Joint::kHeel},
}};

constexpr std::string_view kSideExpected = "names such as head, chest, pelvis, hand_near, knee_far, hands";

// Splits 'knee_far' into 'knee' and a side; the whole name and -1 where there is none.
std::pair<std::string_view, int> split_side(View view, std::string_view name) {
  for (int side = 0; side < 2; ++side) {
    const std::string_view word = side_name(view, side);
    if (name.size() > word.size() + 1 && name.substr(name.size() - word.size()) == word &&
        name[name.size() - word.size() - 1] == '_') {
      return {name.substr(0, name.size() - word.size() - 1), side};
    }
  }
  return {name, -1};
}

std::optional<JointName> joint_named(View view, std::string_view text, std::string_view other) {
  JointName out;
  const std::string prefix = std::string(other) + ".";
  if (!other.empty() && text.substr(0, prefix.size()) == prefix) {
    out.of_other = true;
    text.remove_prefix(prefix.size());
  }
  const auto [base, side] = split_side(view, text);
  for (const JointWord& word : kJointWords) {
    if (!has_side(word.joint) && base == word.one && side < 0) {
      out.joint = word.joint;
      return out;
    }
    if (!has_side(word.joint)) continue;
    if (side >= 0 && base == word.one) {
      out.joint = word.joint;
      out.side = side;
      return out;
    }
    if (side < 0 && (base == word.many || base == word.one)) {
      out.joint = word.joint;
      out.side = kBothSides;
      return out;
    }
  }
  return {};
}

// A joint under a key; faults where the name is not one. Only absent keys give nothing without a fault.
std::optional<JointName> read_joint(TableReader& table, std::string_view key, View view, std::string_view other) {
  if (!table.has(key)) {
    table.text_or(key, {});
    return {};
  }
  const std::string text = table.text(key);
  const auto joint = joint_named(view, text, other);
  if (!joint && !text.empty()) table.fault(FaultCode::kUnknownName, key, quote(text), std::string(kSideExpected));
  return joint;
}

double read_number(TableReader& table, std::string_view key, double fallback, double least, double most) {
  return static_cast<double>(table.scaled_or(key, 1000, fallback, least, most)) / 1000.0;
}

double& slot_of(Angles& angles, const AngleRow& row, int side) {
  return row.limb ? angles.at(static_cast<LimbAngle>(row.slot), side) : angles[static_cast<MiddleAngle>(row.slot)];
}

// Fills the angles written, and says by 'written' which limb slots were.
void read_angles(TableReader table, View view, Angles& angles, std::array<std::array<bool, kLimbAngles>, 2>& written,
                 double least_all, double most_all) {
  for (const AngleRow& row : angle_rows(view)) {
    const double least = least_all < most_all ? least_all : row.least;
    const double most = least_all < most_all ? most_all : row.most;
    const std::string base(row.name);
    if (!row.limb) {
      slot_of(angles, row, 0) = read_number(table, base, slot_of(angles, row, 0), least, most);
      continue;
    }
    const bool both = table.has(base);
    const double shared = read_number(table, base, 0, least, most);
    for (int side = 0; side < 2; ++side) {
      double& angle = slot_of(angles, row, side);
      if (both) angle = shared;
      const std::string name = base + "_" + std::string(side_name(view, side));
      const bool own = table.has(name);
      angle = read_number(table, name, std::clamp(angle, least, most), least, most);
      written[static_cast<std::size_t>(side)][static_cast<std::size_t>(row.slot)] = both || own;
    }
  }
  table.finish();
}

void read_contacts(TableReader& table, View view, Posture& posture) {
  for (const std::string& text : table.texts("contacts")) {
    const auto [base, side] = split_side(view, text);
    bool known = false;
    for (const ContactWord& word : kContactWords) {
      if (word.sided && side >= 0 && base == word.one) {
        posture.contacts.push_back({word.part, side});
        known = true;
      } else if (side < 0 && (base == word.many || base == word.one)) {
        posture.contacts.push_back({word.part, 0});
        if (word.sided) posture.contacts.push_back({word.part, 1});
        known = true;
      }
      if (known) break;
    }
    if (!known) {
      table.fault(FaultCode::kUnknownName, "contacts", quote(text),
                  "feet, toes, heels, knees, hands, forearms, elbows, shoulders, hips (or one side: foot_" +
                      std::string(side_name(view, 0)) + "), seat, back, chest, head");
    }
  }
}

void read_settle(TableReader& table, View view, Posture& posture) {
  for (const std::string& text : table.texts("settle")) {
    const auto [base, side] = split_side(view, text);
    bool known = false;
    for (const AngleRow& row : angle_rows(view)) {
      if (!row.limb || row.name != base) continue;
      known = true;
      for (int each = 0; each < 2; ++each) {
        if (side < 0 || side == each) posture.settle.push_back({static_cast<LimbAngle>(row.slot), each});
      }
    }
    if (!known) {
      table.fault(FaultCode::kUnknownName, "settle", quote(text),
                  "a joint, such as knee_" + std::string(side_name(view, 1)));
    }
  }
}

void read_holds(TableReader holds, View view, std::string_view other, Posture& posture) {
  for (int side = 0; side < 2; ++side) {
    const std::string key = "hand_" + std::string(side_name(view, side));
    if (const auto joint = read_joint(holds, key, view, other)) posture.holds.push_back({side, *joint});
  }
  holds.finish();
}

Posture read_posture(TableReader& table, View view, std::string_view other) {
  Posture posture;
  std::array<std::array<bool, kLimbAngles>, 2> written{};
  read_angles(table.table("angles"), view, posture.angles, written, 0, 0);
  for (std::size_t side = 0; side < 2; ++side) {
    posture.ankle_written[side] = written[side][static_cast<std::size_t>(LimbAngle::kAnkle)];
    posture.wrist_written[side] = written[side][static_cast<std::size_t>(LimbAngle::kWrist)];
  }
  read_contacts(table, view, posture);
  read_settle(table, view, posture);
  read_holds(table.table("hold"), view, other, posture);
  return posture;
}

Prop read_prop(TableReader& table, View view) {
  Prop prop{};
  prop.kind = static_cast<PropKind>(table.word("kind", {"ball", "wall", "cone", "line", "mat", "bench", "band"}));
  prop.forward = read_number(table, "forward", 0, -2, 2);
  if (prop.kind == PropKind::kBand) {
    prop.at = read_joint(table, "from", view, "partner");
    prop.to = read_joint(table, "to", view, "partner");
    if (table.present() && (!prop.at || !prop.to)) {
      table.fault(FaultCode::kMissing, {}, "a band without both ends", "from and to, each a joint");
    }
  } else {
    prop.at = read_joint(table, "at", view, "partner");
  }
  if (prop.kind == PropKind::kBench) prop.height = read_number(table, "height", 0.25, 0.03, 0.8);
  table.finish();
  return prop;
}

Partner read_partner(TableReader& table, View view) {
  Partner partner;
  partner.posture = read_posture(table, view, "other");
  partner.posture.lift = read_number(table, "lift", 0, 0, 0.8);
  const std::vector<std::string_view> ways = view == View::kSide ? std::vector<std::string_view>{"right", "left"}
                                                                 : std::vector<std::string_view>{"viewer", "away"};
  partner.mirrored = table.word("facing", ways, 1) == 1;
  partner.forward = read_number(table, "forward", 0.8, -2, 2);
  partner.size = read_number(table, "size", 1, 0.8, 1.2);
  table.finish();
  return partner;
}

Angles read_tolerances(TableReader& table, View view) {
  const double all = read_number(table, "tolerance_degrees", 15, 3, 45);
  Angles out;
  for (double& angle : out.middle) angle = all;
  for (auto& limb : out.limbs) limb.fill(all);
  std::array<std::array<bool, kLimbAngles>, 2> written{};
  read_angles(table.table("tolerances"), view, out, written, 3, 45);
  return out;
}

Pose read_pose(TableReader& table, View main_view, const std::vector<TableReader>& shared_props, std::size_t index,
               double most_at) {
  Pose pose;
  pose.view = static_cast<View>(table.word("view", {"side", "front"}, static_cast<int>(main_view)));
  pose.label = table.text_or("label", "pose " + std::to_string(index + 1));
  pose.at = read_number(table, "at", 0, 0, most_at);
  pose.posture = read_posture(table, pose.view, "partner");
  pose.posture.lift = read_number(table, "lift", 0, 0, 0.8);
  pose.posture.shift = read_number(table, "shift", 0, -2, 2);
  pose.tolerance = read_tolerances(table, pose.view);
  pose.eyes_closed = table.boolean_or("eyes_closed", false);
  for (TableReader prop : shared_props) pose.props.push_back(read_prop(prop, pose.view));
  for (TableReader& prop : table.tables("props")) pose.props.push_back(read_prop(prop, pose.view));
  TableReader partner = table.table("partner");
  if (partner.present()) pose.partner = read_partner(partner, pose.view);
  if (pose.posture.lift > 0 && !pose.posture.contacts.empty()) {
    table.fault(FaultCode::kContradiction, "lift", "a lift with contacts", "no contacts while off the ground");
  }
  table.finish();
  return pose;
}

int pose_labelled(const Figure& figure, TableReader& table, std::string_view key, int absent) {
  const std::string label = table.text_or(key, {});
  if (label.empty()) return absent;
  for (std::size_t i = 0; i < figure.poses.size(); ++i) {
    if (figure.poses[i].label == label) return static_cast<int>(i);
  }
  table.fault(FaultCode::kUnknownName, key, quote(label), "the label of a pose of this figure");
  return absent;
}

void check_order(const Figure& figure, std::vector<TableReader>& tables) {
  for (std::size_t i = 0; i < figure.poses.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Pose& before = figure.poses[j];
      const Pose& pose = figure.poses[i];
      if (before.label == pose.label) {
        tables[i].fault(FaultCode::kDuplicate, "label", quote(pose.label), "labels that stand once");
      }
      if (before.view == pose.view && before.at >= pose.at) {
        tables[i].fault(FaultCode::kContradiction, "at", "a pose not after the one before it",
                        "poses of a view in rising order of 'at'");
      }
    }
  }
}

std::optional<Arrow> read_arrow(TableReader table, const Figure& figure) {
  if (!table.present()) return {};
  Arrow arrow;
  const View view = figure.poses.empty() ? figure.view : figure.poses[static_cast<std::size_t>(figure.main)].view;
  if (const auto joint = read_joint(table, "from", view, "partner")) arrow.from = *joint;
  arrow.to_pose = pose_labelled(figure, table, "to", -1);
  arrow.direction = static_cast<Direction>(table.word(
      "direction",
      {"up", "down", "forward", "back", "left", "right", "forward-up", "forward-down", "back-up", "back-down"},
      table.has("to") ? 0 : -1));
  arrow.length = read_number(table, "length", 0.22, 0.05, 0.8);
  arrow.bend = read_number(table, "bend", 0, -90, 90);
  arrow.gap = read_number(table, "gap", 0.06, 0, 0.4);
  table.finish();
  return arrow;
}

}  // namespace

Figure read_figure(TableReader table) {
  Figure figure;
  if (!table.present()) return figure;
  figure.view = static_cast<View>(table.word("view", {"side", "front"}));
  const std::vector<std::string_view> ways = figure.view == View::kSide
                                                 ? std::vector<std::string_view>{"right", "left"}
                                                 : std::vector<std::string_view>{"viewer", "away"};
  figure.turned = table.word("facing", ways, 0) == 1;
  figure.cycle = static_cast<Cycle>(table.word("cycle", {"loop", "once", "hold"}, 0));
  figure.swap_sides = table.boolean_or("swap_sides", false);
  const std::vector<TableReader> shared_props = table.tables("props");
  std::vector<TableReader> tables = table.tables("pose");
  if (tables.empty() || tables.size() > kMostPoses) {
    table.fault(tables.empty() ? FaultCode::kMissing : FaultCode::kOutOfRange, "pose",
                std::to_string(tables.size()) + " poses", "1 to 12 tables [[figure.pose]]");
  }
  for (std::size_t i = 0; i < tables.size(); ++i) {
    figure.poses.push_back(read_pose(tables[i], figure.view, shared_props, i, figure.swap_sides ? 0.499 : 1));
  }
  check_order(figure, tables);
  figure.main = pose_labelled(figure, table, "main", 0);
  figure.ghost = pose_labelled(figure, table, "ghost", -1);
  figure.arrow = read_arrow(table.table("arrow"), figure);
  if (figure.ghost >= 0 && figure.poses[static_cast<std::size_t>(figure.ghost)].view !=
                               figure.poses[static_cast<std::size_t>(figure.main)].view) {
    table.fault(FaultCode::kContradiction, "ghost", "a ghost in another view",
                "a pose of the same view as the main one");
  }
  table.finish();
  return figure;
}

}  // namespace lanework::figure
