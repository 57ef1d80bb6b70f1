#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/page_files.h"
#include "app/cli/summary_matter.h"

namespace lanework::cli {
namespace {

struct SummaryFlags {
  ClubPlanFlags plan;
  std::string out;
  std::string paper = "a4";
};

int summary(const SummaryFlags& flags) {
  const auto plan = load_club_plan(flags.plan);
  if (!plan) return report(plan.faults());
  const std::vector<std::size_t>& asked = plan.value().asked;
  const auto known = [&](std::size_t at) { return plan.value().block_of(plan.value().club.squads[at]) != nullptr; };
  if (std::none_of(asked.begin(), asked.end(), known)) {
    return report({{FaultCode::kMissing,
                    {flags.plan.block, 0, 0, "squads"},
                    "none of the squads asked for",
                    "at least one of them",
                    {}}});
  }
  const auto pages = draw::draw_summary(summary_matter(plan.value()), paper_named(flags.paper));
  if (!pages) return report(pages.faults());
  std::vector<PageFile> files;
  if (const auto faults = add_page_files("block-summary", pages.value(), {}, files)) return report(*faults);
  files.push_back({"block-summary.txt", summary_text(plan.value())});
  const auto written = write_page_files(files, flags.out);
  if (!written) return report(written.faults());
  for (const std::string& path : written.value()) std::printf("%s\n", path.c_str());
  return kDone;
}

}  // namespace

void add_summary_command(CLI::App& app, int& exit_status) {
  CLI::App* command =
      app.add_subcommand("summary", "one page on a club's block: what is met, what is short, what changes");
  const auto flags = std::make_shared<SummaryFlags>();
  add_club_plan_flags(*command, flags->plan, true);
  command->add_option("--out", flags->out, "folder for the page")->required();
  command->add_option("--paper", flags->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  command->callback([flags, &exit_status] { exit_status = summary(*flags); });
}

}  // namespace lanework::cli
