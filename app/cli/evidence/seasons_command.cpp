#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/season_files.h"
#include "app/cli/evidence/seasons_answer.h"

namespace lanework::cli {
namespace {

struct SeasonsFlags {
  EvidenceFlags common;
  SeasonFlags before;
  SeasonFlags after;
};

Result<SeasonRead> read_sound(const SeasonFlags& flags) {
  auto season = read_season_files(flags);
  if (season && !season.value().read.faults.empty()) return season.value().read.faults;
  return season;
}

Result<EvidenceAnswer> compare(const SeasonsFlags& flags) {
  const auto before = read_sound(flags.before);
  if (!before) return before.faults();
  const auto after = read_sound(flags.after);
  if (!after) return after.faults();
  const records::Season& first = before.value().read.season;
  const records::Season& second = after.value().read.season;
  if (second.period.first <= first.period.last)
    return Fault{FaultCode::kContradiction,
                 {"", 0, 0, "--after-from"},
                 to_iso(second.period.first),
                 "a day after the season before ends, " + to_iso(first.period.last),
                 {}};
  const double level = flags.common.level();
  const findings::TwoSeasons found = findings::two_seasons(first, second, before.value().terms, level);
  if (!found.whole.has_hours())
    return cannot("seasons", level,
                  std::string("no hours are on record ") + (found.whole.before.hours > 0 ? "after" : "before"));
  if (found.whole.before.events + found.whole.after.events == 0)
    return cannot("seasons", level, "no injury is on record in either season");
  return seasons_answer(found, level);
}

void add_one(CLI::App& command, SeasonFlags& flags, const std::string& which, const std::string& words) {
  flags.which = which + "-";
  command.add_option("--" + which, flags.records, "folder with the records of the season " + words)->required();
  command.add_option("--" + flags.which + "from", flags.from, "its first day, such as 2025-08-25")->required();
  command.add_option("--" + flags.which + "to", flags.to, "its last day")->required();
  command.add_option("--" + flags.which + "as-of", flags.as_of,
                     "the last day that anything of it was written down; its last day if not said");
  command.add_option("--" + flags.which + "mapping", flags.mapping,
                     "how its sheets' headings and words are to be read");
}

}  // namespace

void add_seasons_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("seasons", "two seasons of a club beside each other, before and after");
  const auto flags = std::make_shared<SeasonsFlags>();
  add_one(*command, flags->before, "before", "before a change");
  add_one(*command, flags->after, "after", "after it");
  command->add_option("--catalogue", flags->before.catalogue, "folder of the catalogue, if not the shipped one");
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] {
    flags->after.catalogue = flags->before.catalogue;
    exit_status = show(compare(*flags), flags->common.json);
  });
}

}  // namespace lanework::cli
