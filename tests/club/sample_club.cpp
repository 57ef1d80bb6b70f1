#include "tests/club/sample_club.h"

#include <utility>

#include "tests/catalogue/shipped.h"

namespace lanework::club::test {
namespace {

session::Strip strip_of(const std::string& name, int lanes, int width_metres) {
  session::Strip strip;
  strip.name = name;
  strip.lane_length = Millimetres(15000);
  strip.cone_spacing = Millimetres(5000);
  strip.lanes = lanes;
  strip.lane_gap = Millimetres(3000);
  strip.area_width = Millimetres(std::int64_t{1000} * width_metres);
  strip.area_length = Millimetres(15000);
  return strip;
}

catalogue::Routine routine_of(const std::string& id, int minutes, int from, int to) {
  catalogue::Routine routine;
  routine.id = id;
  routine.name = id;
  routine.age_from = from;
  routine.age_to = to;
  routine.minutes = minutes;
  return routine;
}

}  // namespace

Date monday() { return day("2026-11-23"); }

Club empty_club() {
  Club club;
  club.settings.name = "Quillmere Juniors";
  club.settings.season_from = day("2026-08-31");
  club.settings.season_to = day("2027-06-27");
  club.settings.block_from = monday();
  club.settings.strips = {{"hall", strip_of("hall", 2, 10), {}}, {"pitch", strip_of("pitch", 4, 40), {}}};
  club.catalogues = {catalogue::test::shipped_catalogue()};
  return club;
}

session::WeekSlot slot(session::Weekday weekday, const std::string& start, int minutes, const std::string& strip,
                       int lanes) {
  return {weekday, at(start), Seconds(std::int64_t{60} * minutes), strip, lanes, {}};
}

session::Match match(const std::string& date, const std::string& start, bool away) {
  session::Match out;
  out.date = day(date);
  if (!start.empty()) out.start = at(start);
  out.away = away;
  return out;
}

ClubSquad& add_squad(Club& club, const std::string& id, std::vector<session::WeekSlot> week,
                     std::vector<session::Match> matches) {
  ClubSquad squad;
  squad.id = id;
  squad.file = id + ".toml";
  squad.squad.name = "Squad " + id;
  squad.squad.club = club.settings.name;
  squad.squad.has_slot = false;
  squad.squad.in_roster = id;
  squad.squad.weekly.slots = std::move(week);
  squad.squad.weekly.matches = std::move(matches);
  squad.squad.kit = {16, 10, 0};
  squad.squad.places.age.file = squad.file;
  squad.squad.places.name.file = squad.file;
  squad.routine = routine_of("early-teens", 20, 11, 14);
  squad.match_day_routine = routine_of("match-day", 13, 11, 19);
  for (int i = 1; i <= 10; ++i) {
    people::Player player;
    player.id = id + "-" + std::to_string(i);
    player.name = "Player " + player.id;
    player.birth = day("2014-03-14");
    player.squads = {id};
    squad.players.push_back(std::move(player));
  }
  club.squads.push_back(std::move(squad));
  return club.squads.back();
}

}  // namespace lanework::club::test
