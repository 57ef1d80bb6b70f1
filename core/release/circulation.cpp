#include "core/release/circulation.h"

#include <algorithm>
#include <limits>

namespace lanework::release {
namespace {

constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();
constexpr std::int64_t kNoLimit = std::numeric_limits<std::int64_t>::max();

}  // namespace

std::size_t Circulation::add(std::size_t from, std::size_t to, std::int64_t flow, bool known) {
  arcs_.push_back({from, to, flow, 0, known});
  at_[from].push_back(arcs_.size() - 1);
  at_[to].push_back(arcs_.size() - 1);
  return arcs_.size() - 1;
}

std::int64_t Circulation::rise(std::size_t arc, std::int64_t enough) const {
  return arcs_[arc].known ? 0 : moved(arcs_[arc].to, arcs_[arc].from, arc, enough);
}

std::int64_t Circulation::fall(std::size_t arc, std::int64_t enough) const {
  const Arc& one = arcs_[arc];
  return one.known ? 0 : moved(one.from, one.to, arc, std::min(enough, one.flow - one.least));
}

// Shortest paths first; each step moves as much as the path lets through.
std::int64_t Circulation::moved(std::size_t from, std::size_t to, std::size_t without, std::int64_t enough) const {
  std::vector<std::int64_t> flow;
  flow.reserve(arcs_.size());
  for (const Arc& arc : arcs_) flow.push_back(arc.flow);
  std::int64_t out = 0;
  while (out < enough) {
    std::vector<std::size_t> came_by(at_.size(), kNone);
    std::vector<std::size_t> queue = {from};
    for (std::size_t next = 0; next < queue.size() && came_by[to] == kNone; ++next) {
      const std::size_t place = queue[next];
      for (const std::size_t position : at_[place]) {
        const Arc& arc = arcs_[position];
        const bool forward = arc.from == place;
        const std::size_t other = forward ? arc.to : arc.from;
        if (position == without || arc.known || other == from || came_by[other] != kNone) continue;
        if (!forward && flow[position] <= arc.least) continue;
        came_by[other] = position;
        queue.push_back(other);
      }
    }
    if (came_by[to] == kNone) return out;
    std::int64_t step = enough - out;
    for (std::size_t place = to; place != from;) {
      const Arc& arc = arcs_[came_by[place]];
      const bool forward = arc.to == place;
      step = std::min(step, forward ? kNoLimit : flow[came_by[place]] - arc.least);
      place = forward ? arc.from : arc.to;
    }
    for (std::size_t place = to; place != from;) {
      const std::size_t position = came_by[place];
      const bool forward = arcs_[position].to == place;
      flow[position] += forward ? step : -step;
      place = forward ? arcs_[position].from : arcs_[position].to;
    }
    out += step;
  }
  return out;
}

}  // namespace lanework::release
