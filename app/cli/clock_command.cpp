#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/read/evening_files.h"
#include "app/read/files.h"
#include "core/clock/clock.h"

namespace lanework::cli {
namespace {

struct ClockFlags {
  std::string catalogue;
  std::string routine;
  int players = 16;
  int age = 0;
  int lanes = 2;
  double lane_length_metres = 15;
  double cone_spacing_metres = 5;
  bool first_time = false;
  bool json = false;
};

struct ClockMatter {
  catalogue::Catalogue catalogue;
  catalogue::Routine routine;
  session::Evening evening;
  session::Session session;
};

std::optional<Fault> out_of_range(const char* flag, double value, double least, double most) {
  if (value >= least && value <= most) return {};
  Node found;
  found.kind = Node::Kind::kReal;
  found.real = value;
  Node from = Node::make_integer(static_cast<std::int64_t>(least));
  Node to = Node::make_integer(static_cast<std::int64_t>(most));
  return Fault{FaultCode::kOutOfRange,
               {"", 0, 0, flag},
               to_json(found),
               "a number from " + to_json(from) + " to " + to_json(to),
               {}};
}

Faults flag_faults(const ClockFlags& flags) {
  Faults faults;
  const auto check = [&](std::optional<Fault> fault) {
    if (fault) faults.push_back(std::move(*fault));
  };
  check(out_of_range("--players", flags.players, 2, 40));
  if (flags.age != 0) check(out_of_range("--age", flags.age, 8, 19));
  check(out_of_range("--lanes", flags.lanes, 1, 12));
  check(out_of_range("--lane-length", flags.lane_length_metres, 5, 60));
  check(out_of_range("--cone-spacing", flags.cone_spacing_metres, 1, 20));
  return faults;
}

session::Evening evening_of(const ClockFlags& flags, const catalogue::Catalogue& catalogue,
                            const catalogue::Routine& routine) {
  session::Evening evening;
  evening.turnout = flags.players;
  evening.age = flags.age != 0 ? flags.age : routine.age_from;
  evening.slot = Seconds(60 * routine.minutes);
  evening.strip.lanes = flags.lanes;
  evening.strip.lane_length = Millimetres(static_cast<std::int64_t>(flags.lane_length_metres * 1000 + 0.5));
  evening.strip.cone_spacing = Millimetres(static_cast<std::int64_t>(flags.cone_spacing_metres * 1000 + 0.5));
  evening.strip.lane_gap = Millimetres(3000);
  evening.strip.area_width = Millimetres(20000);
  evening.strip.area_length = Millimetres(20000);
  evening.strip.soft_ground = true;
  // A squad that knows its routine has done each drill a dozen times.
  if (!flags.first_time) {
    for (const catalogue::RoutineLine& line : routine.lines) {
      evening.exposures[catalogue.drills[static_cast<std::size_t>(line.drill)].id] = session::Exposure{12};
    }
  }
  return evening;
}

Result<ClockMatter> load(const ClockFlags& flags) {
  const auto folder = catalogue_folder(flags.catalogue);
  if (!folder) return folder.faults();
  const auto documents = read::read_catalogue_folders({folder.value()});
  if (!documents) return documents.faults();
  auto catalogue = catalogue::read_catalogue(documents.value());
  if (!catalogue) return catalogue.faults();
  const auto routine_document = read::read_routine_file(flags.routine, {folder.value()});
  if (!routine_document) return routine_document.faults();
  auto routine = catalogue::read_routine(routine_document.value(), catalogue.value());
  if (!routine) return routine.faults();
  ClockMatter matter{std::move(catalogue).value(), std::move(routine).value(), {}, {}};
  matter.evening = evening_of(flags, matter.catalogue, matter.routine);
  for (const catalogue::RoutineLine& line : matter.routine.lines) {
    matter.session.items.push_back({line.drill, line.rung, line.dose, {}, {}, {}, {}});
  }
  clock::lay_out(matter.session, matter.catalogue, matter.evening);
  return matter;
}

std::string clock_text(const ClockMatter& matter, const clock::SessionTime& time) {
  std::vector<std::vector<std::string>> rows = {{"from", "change", "telling", "doing", "moving", "drill", "dose"}};
  for (std::size_t i = 0; i < time.lines.size(); ++i) {
    const session::Item& item = matter.session.items[i];
    const catalogue::Drill& drill = matter.catalogue.drills[static_cast<std::size_t>(item.drill)];
    const clock::SessionLine& line = time.lines[i];
    rows.push_back({minutes_seconds(item.starts.count), minutes_seconds(rounded_up(line.change).count),
                    minutes_seconds(rounded_up(line.time.telling).count),
                    minutes_seconds(rounded_up(line.time.doing).count),
                    std::to_string(line.time.moving_permille / 10) + " %", drill.name,
                    catalogue::dose_in_words(drill, drill.dose.steps[static_cast<std::size_t>(item.dose)])});
  }
  std::string out = matter.routine.name + ": " + std::to_string(matter.evening.turnout) + " players, youngest " +
                    std::to_string(matter.evening.age) + ", " + std::to_string(matter.evening.strip.lanes) +
                    " lanes of " + std::to_string(matter.evening.strip.lane_length.count / 1000) + " m\n\n";
  out += in_columns(rows, "  ");
  out += "\nMedian " + minutes_seconds(time.median.count) + " min, simulated " +
         minutes_seconds(time.simulated_median.count) + ", nine in ten by " + minutes_seconds(time.nine_in_ten.count) +
         ". Players move " + std::to_string(time.moving_permille / 10) + " % of the time.\n";
  if (!time.best_saving.sentence.empty()) out += "What would help most: " + time.best_saving.sentence + ".\n";
  return out;
}

Node clock_node(const ClockMatter& matter, const clock::SessionTime& time) {
  Node out = Node::make_table();
  out.set("answer", Node::make_text("clock"));
  out.set("version", Node::make_integer(1));
  out.set("median_seconds", Node::make_integer(time.median.count));
  out.set("simulated_median_seconds", Node::make_integer(time.simulated_median.count));
  out.set("nine_in_ten_seconds", Node::make_integer(time.nine_in_ten.count));
  out.set("moving_permille", Node::make_integer(time.moving_permille));
  out.set("saving", Node::make_text(time.best_saving.sentence));
  Node items = Node::make_array();
  for (std::size_t i = 0; i < time.lines.size(); ++i) {
    const session::Item& item = matter.session.items[i];
    Node row = Node::make_table();
    row.set("drill", Node::make_text(matter.catalogue.drills[static_cast<std::size_t>(item.drill)].id));
    row.set("starts_seconds", Node::make_integer(item.starts.count));
    row.set("change_milliseconds", Node::make_integer(time.lines[i].change.count));
    row.set("telling_milliseconds", Node::make_integer(time.lines[i].time.telling.count));
    row.set("doing_milliseconds", Node::make_integer(time.lines[i].time.doing.count));
    row.set("moving_permille", Node::make_integer(time.lines[i].time.moving_permille));
    items.items.push_back(std::move(row));
  }
  out.set("items", std::move(items));
  return out;
}

int clock(const ClockFlags& flags) {
  const Faults faults = flag_faults(flags);
  if (!faults.empty()) return report(faults);
  const auto matter = load(flags);
  if (!matter) return report(matter.faults());
  const ClockMatter& m = matter.value();
  const clock::SessionTime time = clock::session_time(m.session, m.catalogue, m.evening, 10000);
  const std::string out = flags.json ? to_json(clock_node(m, time), 2) + "\n" : clock_text(m, time);
  std::fputs(out.c_str(), stdout);
  return kDone;
}

}  // namespace

void add_clock_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("clock", "how long a routine takes, drill by drill");
  const auto flags = std::make_shared<ClockFlags>();
  command->add_option("--routine", flags->routine, "id of a house routine, or a file")->required();
  command->add_option("--catalogue", flags->catalogue, "folder of the catalogue, if not the shipped one");
  command->add_option("--players", flags->players, "players, 2 to 40");
  command->add_option("--age", flags->age, "age that speeds go by; the routine's youngest if not stated");
  command->add_option("--lanes", flags->lanes, "lanes, 1 to 12");
  command->add_option("--lane-length", flags->lane_length_metres, "metres, 5 to 60");
  command->add_option("--cone-spacing", flags->cone_spacing_metres, "metres, 1 to 20");
  command->add_flag("--first-time", flags->first_time, "a squad that has never done any of it");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/clock-answer.schema.json)");
  command->callback([flags, &exit_status] { exit_status = clock(*flags); });
}

}  // namespace lanework::cli
