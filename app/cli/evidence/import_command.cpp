#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/season_files.h"
#include "core/records/completeness.h"
#include "core/records/write_season.h"

namespace lanework::cli {
namespace {

struct ImportFlags {
  SeasonFlags season;
  std::string out;
  bool dry_run = false;
  bool json = false;
};

Node faults_node(const Faults& faults) {
  Node out = Node::make_array();
  for (const Fault& fault : faults) out.items.push_back(Node::make_text(to_line(fault)));
  return out;
}

// What was read, said to the user whether or not it can be written.
void tell(const records::ReadSeason& read, bool json) {
  const records::Completeness complete = records::completeness(read);
  if (json) {
    Node out = Node::make_table();
    out.set("answer", Node::make_text("import"));
    out.set("version", Node::make_integer(1));
    out.set("faults", faults_node(read.faults));
    out.set("completeness", records::completeness_node(complete));
    std::fputs((to_json(out, 2) + "\n").c_str(), stdout);
    return;
  }
  for (const std::string& line : records::completeness_lines(complete)) std::printf("%s\n", line.c_str());
}

int import(const ImportFlags& flags) {
  auto season = read_season_files(flags.season);
  if (!season) return report(season.faults());
  const records::ReadSeason& read = season.value().read;
  if (!read.faults.empty()) {
    if (flags.dry_run) tell(read, flags.json);
    return report(read.faults);
  }
  tell(read, flags.json);
  if (flags.dry_run) return kDone;
  const Faults faults =
      read::write_canonical_files(flags.out, records::canonical_files(read.season, season.value().terms));
  if (!faults.empty()) return report(faults);
  if (!flags.json)
    std::printf("\nWritten to %s: squads.csv, hours.csv, injuries.csv, players.csv\n", flags.out.c_str());
  return kDone;
}

}  // namespace

void add_import_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command =
      evidence.add_subcommand("import", "a club's own sheets of hours and injuries, checked and put in order");
  const auto flags = std::make_shared<ImportFlags>();
  add_season_flags(*command, flags->season);
  CLI::Option* out = command->add_option("--out", flags->out, "folder that the season's files are written into");
  CLI::Option* dry_run =
      command->add_flag("--dry-run", flags->dry_run, "only say what would be read, and every question");
  dry_run->excludes(out);
  command->add_flag("--json", flags->json, "the answer as JSON");
  command->callback([flags, &exit_status] {
    if (!flags->dry_run && flags->out.empty()) throw CLI::RequiredError("--out or --dry-run");
    exit_status = import(*flags);
  });
}

}  // namespace lanework::cli
