#include "tests/block/drawn_squads.h"

#include <algorithm>

#include "tests/catalogue/shipped.h"
#include "tests/plan/random_problem.h"
#include "tests/plan/referee_evenings.h"

namespace lanework::block {
namespace {

using session::Evening;

class SquadDraw {
 public:
  SquadDraw(std::uint64_t seed, const SquadShape& shape) : dice_(seed * 0x9E3779B97F4A7C15ULL + 77), shape_(shape) {}

  Outline draw() {
    outline_.catalogue = &catalogue_;
    outline_.monday = *make_date(2026, 11, 30);
    outline_.weeks = shape_.weeks;
    squad_.age = dice_.roll(9, 18);
    choose_routines();
    squad_.club = "Quillmere Juniors";
    squad_.turnout = dice_.roll(8, 24);
    squad_.pace_thousandths = dice_.roll(950, 1100);
    set_strip();
    squad_.kit = {dice_.roll(16, 40), chance(70) ? 25 : 10, 0};
    set_past();
    set_days();
    return std::move(outline_);
  }

 private:
  const catalogue::Catalogue& catalogue_ = catalogue::test::shipped_catalogue();
  plan::Dice dice_;
  SquadShape shape_;
  Outline outline_;
  Evening squad_;

  bool chance(int percent) { return dice_.roll(1, 100) <= percent; }

  void choose_routines() {
    for (const catalogue::Routine& routine : plan::shipped_routines()) {
      const bool fits = routine.age_from <= squad_.age && squad_.age <= routine.age_to;
      if (routine.id == "match-day") outline_.match_day_routine = &routine;
      const bool squad_kind = routine.id != "match-day" && routine.id != "hall" && routine.id != "long-practice";
      if (fits && squad_kind) outline_.routine = &routine;
    }
  }

  void set_strip() {
    session::Strip& strip = squad_.strip;
    strip.lane_length = Millimetres(1000 * (chance(60) ? 15 : 20));
    strip.cone_spacing = Millimetres(5000);
    strip.lanes = dice_.roll(2, 4);
    strip.lane_gap = Millimetres(3000);
    strip.area_width = Millimetres(1000 * dice_.roll(14, 24));
    strip.area_length = Millimetres(15'000);
    strip.soft_ground = chance(85);
    strip.wall = chance(20);
    strip.line = chance(30);
  }

  void set_past() {
    for (const catalogue::RoutineLine& line : outline_.routine->lines) {
      squad_.exposures[catalogue_.drills[static_cast<std::size_t>(line.drill)].id] = {dice_.roll(4, 12)};
    }
    for (const catalogue::Drill& drill : catalogue_.drills) {
      if (chance(30)) squad_.exposures[drill.id].times += dice_.roll(1, 4);
    }
  }

  void set_days() {
    static const std::vector<std::vector<int>> patterns = {{1, 3},    {0, 2},    {1, 4},   {0, 2, 4},
                                                           {1, 3, 4}, {1, 2, 4}, {0, 3, 4}};
    std::vector<int> days;
    do {
      days = patterns[static_cast<std::size_t>(dice_.roll(0, static_cast<int>(patterns.size()) - 1))];
    } while (shape_.sessions_a_week != 0 && static_cast<int>(days.size()) != shape_.sessions_a_week);
    std::vector<int> minutes;
    for (std::size_t i = 0; i < days.size(); ++i) minutes.push_back(dice_.roll(12, 22));
    const int match_day = shape_.matches && chance(80) ? dice_.roll(5, 6) : -1;
    for (int week = 0; week < shape_.weeks; ++week) {
      const bool match = match_day >= 0 && chance(75);
      for (std::size_t i = 0; i < days.size(); ++i) {
        add(week * 7 + days[i], minutes[i], match ? std::optional<int>(match_day - days[i]) : std::nullopt);
      }
      if (match) add(week * 7 + match_day, 12, 0);
    }
  }

  void add(int day, int minutes, std::optional<int> days_to_match) {
    Evening evening = squad_;
    evening.date = Date{outline_.monday.days_since_epoch + day};
    evening.start = TimeOfDay{18 * 60};
    evening.slot = Seconds(60 * minutes);
    evening.days_to_match = days_to_match && *days_to_match <= 3 ? days_to_match : std::nullopt;
    outline_.evenings.push_back(std::move(evening));
  }
};

}  // namespace

Outline draw_squad(std::uint64_t seed, const SquadShape& shape) { return SquadDraw(seed, shape).draw(); }

}  // namespace lanework::block
