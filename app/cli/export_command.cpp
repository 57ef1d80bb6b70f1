#include <CLI/CLI.hpp>
#include <array>
#include <chrono>
#include <cstdio>
#include <memory>

#include "app/cli/club_plan.h"
#include "app/cli/command.h"
#include "app/cli/page_files.h"
#include "app/read/block_table.h"
#include "core/club/icalendar.h"

namespace lanework::cli {
namespace {

struct ExportFlags {
  ClubPlanFlags plan;
  std::string out;
  std::string stamp;
};

// '20261120T080000Z', of the clock on the wall.
std::string now() {
  const auto seconds = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
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

bool is_stamp(const std::string& text) {
  const std::string shape = "ddddddddTddddddZ";
  if (text.size() != shape.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool digit = text[i] >= '0' && text[i] <= '9';
    if (shape[i] == 'd' ? !digit : text[i] != shape[i]) return false;
  }
  const std::string day = text.substr(0, 4) + "-" + text.substr(4, 2) + "-" + text.substr(6, 2);
  return parse_iso_date(day) && parse_time_of_day(text.substr(9, 2) + ":" + text.substr(11, 2)) &&
         text.substr(13, 2) <= "59";
}

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

int export_all(const ExportFlags& flags) {
  if (!flags.stamp.empty() && !is_stamp(flags.stamp)) {
    return report({{FaultCode::kBadDate,
                    {"", 0, 0, "--stamp"},
                    quote(flags.stamp),
                    "a moment such as 20261120T080000Z, in Universal Time",
                    {}}});
  }
  const auto loaded = load_club_plan(flags.plan);
  if (!loaded) return report(loaded.faults());
  const ClubPlan& plan = loaded.value();
  const std::string stamp = flags.stamp.empty() ? now() : flags.stamp;
  std::vector<PageFile> files;
  std::vector<const read::SquadBlock*> blocks;
  for (const std::size_t at : plan.asked) {
    const club::ClubSquad& squad = plan.club.squads[at];
    const club::SquadEvents events =
        club::events_of(plan.club, squad, plan.allocation.calendars[at], drill_lines(plan, squad));
    files.push_back({squad.id + ".ics", club::to_icalendar(events, stamp)});
    if (const read::SquadBlock* block = plan.block_of(squad)) blocks.push_back(block);
  }
  if (plan.answer) {
    files.push_back({read::kBlockTableName, read::block_table(blocks)});
    files.push_back({"datapackage.json", read::block_table_descriptor(plan.club.settings.name)});
  }
  const auto written = write_page_files(files, flags.out);
  if (!written) return report(written.faults());
  for (const std::string& path : written.value()) std::printf("%s\n", path.c_str());
  return kDone;
}

}  // namespace

void add_export_command(CLI::App& app, int& exit_status) {
  CLI::App* command =
      app.add_subcommand("export", "a calendar a squad (iCalendar); with a block also its sessions as an open table");
  const auto flags = std::make_shared<ExportFlags>();
  add_club_plan_flags(*command, flags->plan, false);
  command->add_option("--out", flags->out, "folder for the files")->required();
  command->add_option("--stamp", flags->stamp, "when it was made, such as 20261120T080000Z; now if not stated");
  command->callback([flags, &exit_status] { exit_status = export_all(*flags); });
}

}  // namespace lanework::cli
