#include "tests/plan/referee_evenings.h"

#include <stdexcept>

#include "core/plan/build_problem.h"
#include "tests/catalogue/shipped.h"
#include "tests/plan/random_problem.h"

namespace lanework::plan {
namespace {

using catalogue::Catalogue;
using session::Evening;

class EveningDraw {
 public:
  EveningDraw(std::uint64_t seed, Drawn kind)
      : dice_(seed * 0x9E3779B97F4A7C15ULL + static_cast<std::uint64_t>(kind)), kind_(kind) {}

  DrawnEvening draw(std::uint64_t seed) {
    evening_.age = kind_ == Drawn::kHardest ? dice_.roll(14, 19) : dice_.roll(8, 19);
    choose_routine();
    set_people();
    set_strip();
    set_kit();
    set_past();
    if (kind_ != Drawn::kHardest) set_restrictions();
    if (kind_ == Drawn::kAny) set_wishes();
    if (kind_ == Drawn::kHardest) {
      evening_.free_composition = true;
      evening_.more_than_routine = chance(50);
    }
    DrawnEvening out{"evening " + std::to_string(seed), evening_, routine_, {}};
    const Seconds margin(evening_.slot.count / 12);
    out.problem = build_problem(catalogue_, *routine_, evening_, evening_.slot - margin);
    return out;
  }

 private:
  const Catalogue& catalogue_ = catalogue::test::shipped_catalogue();
  Dice dice_;
  Drawn kind_;
  Evening evening_;
  const catalogue::Routine* routine_ = nullptr;

  bool chance(int percent) { return dice_.roll(1, 100) <= percent; }
  template <class T>
  T one_of(const std::vector<T>& values) {
    return values[static_cast<std::size_t>(dice_.roll(0, static_cast<int>(values.size()) - 1))];
  }
  const std::string& any_drill() {
    return catalogue_.drills[static_cast<std::size_t>(dice_.roll(0, static_cast<int>(catalogue_.drills.size()) - 1))]
        .id;
  }

  // Of the squad's age; where any evening is asked for, now and then another age's.
  void choose_routine() {
    std::vector<const catalogue::Routine*> fitting;
    const bool any_age = kind_ == Drawn::kAny && chance(30);
    for (const catalogue::Routine& routine : shipped_routines()) {
      if (any_age || (routine.age_from <= evening_.age && evening_.age <= routine.age_to)) fitting.push_back(&routine);
    }
    routine_ = one_of(fitting);
  }

  void set_people() {
    evening_.turnout = dice_.roll(6, 25);
    evening_.late = chance(20) ? dice_.roll(1, 3) : 0;
    evening_.slot = Seconds(60 * dice_.roll(12, 25));
    if (chance(60)) evening_.days_to_match = dice_.roll(0, 3);
    evening_.pace_thousandths = dice_.roll(900, 1150);
  }

  void set_strip() {
    const bool complete = kind_ == Drawn::kHardest;
    session::Strip& strip = evening_.strip;
    strip.lane_length = Millimetres(1000 * one_of<int>({10, 12, 15, 15, 20, 25, 30, 40}));
    if (complete) strip.lane_length = Millimetres(1000 * one_of<int>({20, 25, 30, 40}));
    strip.cone_spacing = Millimetres(1000 * one_of<int>({3, 4, 5}));
    strip.lanes = dice_.roll(2, 6);
    strip.lane_gap = Millimetres(3000);
    strip.area_width = Millimetres(1000 * dice_.roll(10, 30));
    strip.area_length = Millimetres(1000 * dice_.roll(10, 30));
    for (const catalogue::Surface surface : {catalogue::Surface::kWet, catalogue::Surface::kHard,
                                             catalogue::Surface::kUneven, catalogue::Surface::kDark}) {
      if (!complete && chance(12)) strip.surface.push_back(surface);
    }
    strip.wall = complete || chance(40);
    strip.soft_ground = complete || chance(70);
    strip.line = complete || chance(40);
  }

  void set_kit() {
    const bool complete = kind_ == Drawn::kHardest;
    evening_.kit.cones = complete ? 60 : one_of<int>({0, 12, 20, 40});
    evening_.kit.balls = complete ? 25 : one_of<int>({0, 0, 8, 14, 25});
    evening_.kit.mats = complete ? 25 : one_of<int>({0, 0, 0, 25});
  }

  void set_past() {
    for (const catalogue::RoutineLine& line : routine_->lines) {
      if (chance(90)) {
        evening_.exposures[catalogue_.drills[static_cast<std::size_t>(line.drill)].id] = {dice_.roll(3, 20)};
      }
    }
    for (const catalogue::Drill& drill : catalogue_.drills) {
      if (chance(25)) evening_.exposures[drill.id] = {dice_.roll(1, 6)};
    }
  }

  void set_restrictions() {
    if (chance(20)) {
      people::Restriction restriction;
      restriction.areas = {static_cast<catalogue::BodyArea>(dice_.roll(5, 13))};
      restriction.kinds = {static_cast<catalogue::StressKind>(dice_.roll(0, 6))};
      restriction.allowed_grade = dice_.roll(0, 1);
      evening_.restrictions.push_back(std::move(restriction));
    }
    for (const catalogue::RoutineLine& line : routine_->lines) {
      if (chance(4)) evening_.bans.push_back(catalogue_.drills[static_cast<std::size_t>(line.drill)].id);
    }
  }

  void set_wishes() {
    evening_.free_composition = chance(40);
    evening_.more_than_routine = chance(50);
    int pins = chance(15) ? dice_.roll(1, 2) : 0;
    if (chance(10)) pins = dice_.roll(6, 12);
    for (int pin = 0; pin < pins; ++pin) add_pin(any_drill());
  }

  void add_pin(const std::string& id) {
    for (const session::Pin& pin : evening_.pins) {
      if (pin.drill == id) return;
    }
    const catalogue::Drill& drill = *catalogue_.find(id);
    session::Pin pin;
    pin.drill = id;
    if (chance(30)) pin.rung = drill.rungs[static_cast<std::size_t>(dice_.roll(0, 1))].key;
    if (chance(30)) {
      const catalogue::DoseStep& step = drill.dose.steps.back();
      pin.sets = step.sets;
      pin.amount = step.amount;
    }
    evening_.pins.push_back(std::move(pin));
  }
};

}  // namespace

const std::vector<catalogue::Routine>& shipped_routines() {
  static const std::vector<catalogue::Routine> kRoutines = [] {
    std::vector<catalogue::Routine> out;
    for (const Document& document : catalogue::test::read_folder(catalogue::test::shipped_folder() / "routines")) {
      Result<catalogue::Routine> routine = catalogue::read_routine(document, catalogue::test::shipped_catalogue());
      if (!routine.ok()) throw std::runtime_error(catalogue::test::all_lines(routine.faults()));
      out.push_back(std::move(routine).value());
    }
    return out;
  }();
  return kRoutines;
}

DrawnEvening draw_evening(std::uint64_t seed, Drawn kind) { return EveningDraw(seed, kind).draw(seed); }

}  // namespace lanework::plan
