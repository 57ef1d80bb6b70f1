#include "core/door/figure_answer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "core/door/figure_picture.h"

namespace lanework::door {
namespace {

using figure::Cycle;
using figure::Pose;
using figure::SceneMoment;

constexpr int kMostFrames = 60;

// Of the rung, else the drill's.
figure::Figure read_figure_of(TableReader& drill, const std::string& rung) {
  TableReader of_rungs = drill.table("rung_figure");
  if (of_rungs.present() && of_rungs.has(rung)) return figure::read_figure(of_rungs.table(rung));
  return figure::read_figure(drill.table("figure"));
}

const Pose& main_pose(const figure::Figure& figure) { return figure.poses[static_cast<std::size_t>(figure.main)]; }

// Of how many equal parts of the cycle the frames are the beginnings; what is done once ends with its last frame.
double parts_of(Cycle cycle, std::int64_t frames) {
  return static_cast<double>(cycle == Cycle::kLoop ? frames : std::max<std::int64_t>(1, frames - 1));
}

std::vector<SceneMoment> moments_of(const figure::Figure& figure, std::int64_t frames) {
  if (figure.cycle == Cycle::kHold) return {figure::moment_of(main_pose(figure))};
  const figure::SceneMotion motion(figure, main_pose(figure).view);
  std::vector<SceneMoment> out;
  for (std::int64_t i = 0; i < frames; ++i) {
    out.push_back(motion.at(static_cast<double>(i) / parts_of(figure.cycle, frames)));
  }
  return out;
}

// The frame nearest to the card's pose.
std::int64_t main_frame(const figure::Figure& figure, std::int64_t frames) {
  if (figure.cycle == Cycle::kHold) return 0;
  const std::int64_t nearest = std::lround(main_pose(figure).at * parts_of(figure.cycle, frames));
  return figure.cycle == Cycle::kLoop ? nearest % frames : std::min(nearest, frames - 1);
}

}  // namespace

Result<Node> answer_figure(const Document& request) {
  Faults faults;
  TableReader reader(request.file, &request.root, "", faults);
  reader.text("request");
  TableReader drill = reader.table("drill");
  const std::string rung = reader.text("rung");
  const auto frames = reader.integer_or("frames", 24, 1, kMostFrames);
  const bool props = reader.boolean_or("props", false);
  reader.finish();
  const figure::Figure figure = read_figure_of(drill, rung);
  if (figure.empty() && faults.empty()) {
    reader.fault(FaultCode::kMissing, "drill", "no figure", "a drill with a [figure] table");
  }
  if (!faults.empty()) return faults;

  static constexpr std::array<const char*, 3> kCycles = {"loop", "once", "hold"};
  const figure::View view = main_pose(figure).view;
  Node out = Node::make_table();
  out.set("answer", Node::make_text("figure"));
  out.set("version", Node::make_integer(1));
  out.set("view", Node::make_text(view == figure::View::kSide ? "side" : "front"));
  out.set("cycle", Node::make_text(kCycles.at(static_cast<std::size_t>(figure.cycle))));
  out.set("main", Node::make_integer(main_frame(figure, frames)));
  FigurePicture(view, figure.turned, moments_of(figure, frames), props).write_to(out);
  return out;
}

}  // namespace lanework::door
