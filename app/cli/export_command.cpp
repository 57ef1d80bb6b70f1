#include <CLI/CLI.hpp>
#include <chrono>
#include <cstdio>
#include <memory>

#include "app/cli/calendar_events.h"
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
  const std::string stamp = flags.stamp.empty() ? calendar_stamp(std::chrono::system_clock::now()) : flags.stamp;
  std::vector<PageFile> files;
  std::vector<const read::SquadBlock*> blocks;
  for (const std::size_t at : plan.asked) {
    const club::ClubSquad& squad = plan.club.squads[at];
    const club::SquadEvents events = calendar_events(plan, squad);
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
