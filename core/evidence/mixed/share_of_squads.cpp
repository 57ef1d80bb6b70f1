#include "core/evidence/mixed/share_of_squads.h"

#include <cmath>
#include <numbers>

namespace lanework::evidence {
namespace {

bool is_picked(std::size_t at, std::size_t one_in) {
  const double steps = static_cast<double>(at) / std::numbers::phi;
  return (steps - std::floor(steps)) * static_cast<double>(one_in) < 1;
}

void append_squad(const Frame& frame, std::size_t squad, Frame& out) {
  const auto first = static_cast<std::ptrdiff_t>(squad == 0 ? 0 : frame.squad_ends[squad - 1]);
  const auto end = static_cast<std::ptrdiff_t>(frame.squad_ends[squad]);
  const auto columns = static_cast<std::ptrdiff_t>(frame.columns());
  out.design.insert(out.design.end(), frame.design.begin() + first * columns, frame.design.begin() + end * columns);
  out.log_hours.insert(out.log_hours.end(), frame.log_hours.begin() + first, frame.log_hours.begin() + end);
  out.events.insert(out.events.end(), frame.events.begin() + first, frame.events.begin() + end);
  out.squad_ends.push_back(out.events.size());
}

}  // namespace

Frame share_of_squads(const Frame& frame, std::size_t one_in) {
  Frame out;
  out.names = frame.names;
  if (frame.club_ends.empty()) {
    for (std::size_t squad = 0; squad < frame.squads(); ++squad)
      if (is_picked(squad, one_in)) append_squad(frame, squad, out);
    return out;
  }
  for (std::size_t club = 0; club < frame.club_ends.size(); ++club) {
    if (!is_picked(club, one_in)) continue;
    for (std::size_t squad = club == 0 ? 0 : frame.club_ends[club - 1]; squad < frame.club_ends[club]; ++squad)
      append_squad(frame, squad, out);
    out.club_ends.push_back(out.squads());
  }
  return out;
}

}  // namespace lanework::evidence
