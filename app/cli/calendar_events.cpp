#include "app/cli/calendar_events.h"

#include <array>
#include <cstdio>
#include <vector>

namespace lanework::cli {
namespace {

club::DrillLines drill_lines(const ClubPlan& plan, const club::ClubSquad& squad) {
  club::DrillLines out;
  const read::SquadBlock* block = plan.block_of(squad);
  if (block == nullptr) return out;
  const catalogue::Catalogue& catalogue = plan.club.catalogue_of(squad);
  for (const read::BlockSession& session : block->sessions) {
    std::vector<std::string>& lines = out[{session.date, session.start}];
    for (const read::BlockDrill& drill : session.drills) {
      if (const auto line = planning::line_of(drill, catalogue)) lines.push_back(drill_in_words(*line, catalogue));
    }
  }
  return out;
}

}  // namespace

club::SquadEvents calendar_events(const ClubPlan& plan, const club::ClubSquad& squad) {
  const auto at = static_cast<std::size_t>(&squad - plan.club.squads.data());
  return club::events_of(plan.club, squad, plan.allocation.calendars[at], drill_lines(plan, squad));
}

std::string calendar_stamp(std::chrono::system_clock::time_point moment) {
  const auto seconds = std::chrono::floor<std::chrono::seconds>(moment);
  const auto day = std::chrono::floor<std::chrono::days>(seconds);
  const std::chrono::year_month_day date(day);
  const std::chrono::hh_mm_ss time(seconds - day);
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%04d%02u%02uT%02d%02d%02dZ", static_cast<int>(date.year()),
                static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                static_cast<int>(time.hours().count()), static_cast<int>(time.minutes().count()),
                static_cast<int>(time.seconds().count()));
  return text.data();
}

}  // namespace lanework::cli
