#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/card_matter.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/page_files.h"
#include "app/cli/print_plan.h"
#include "app/cli/venue_matter.h"

namespace lanework::cli {
namespace {

struct CardFlags {
  EveningFlags evening;
  std::string out;
  std::string paper = "a4";
};

int write_files(const std::vector<PageFile>& files, const std::string& folder, int status) {
  const auto written = write_page_files(files, folder);
  if (!written) return report(written.faults());
  for (const std::string& path : written.value()) std::printf("%s\n", path.c_str());
  return status;
}

// The page in the card's place; no slip, and the exit status says that there is no session.
int notice(const CardFlags& flags, const door::EveningMatter& matter) {
  const auto pages = draw::draw_notice(notice_matter(matter), paper_named(flags.paper));
  if (!pages) return report(pages.faults());
  std::vector<PageFile> files;
  if (const auto faults = add_page_files("card", pages.value(), {}, files)) return report(*faults);
  return write_files(files, flags.out, kAnswerIsNo);
}

int card(const CardFlags& flags) {
  auto documents = load_evening(flags.evening);
  if (!documents) return report(documents.faults());
  const auto matter = door::read_evening(std::move(documents).value());
  if (!matter) return report(matter.faults());
  if (!matter.value().evening.no_session.empty()) return notice(flags, matter.value());
  plan::KernelWorkspace workspace;
  const door::PlanAnswer answer = door::answer_plan(matter.value(), workspace);
  if (answer.plan.outcome == plan::Outcome::kInfeasible) {
    std::fputs(plan_text(answer, matter.value()).c_str(), stderr);
    return kAnswerIsNo;
  }
  const auto slip = door::answer_slip(matter.value(), answer);
  if (!slip) return report(slip.faults());
  const auto venue = venue_plan_of(matter.value().evening.strip);
  if (!venue) return report(venue.faults());
  draw::CardMatter card = card_matter(answer, matter.value());
  if (venue.value()) card.action_plan = action_plan_matter(*venue.value(), matter.value().evening.date);
  const draw::Paper paper = paper_named(flags.paper);
  const auto card_pages = draw::draw_card(card, paper);
  if (!card_pages) return report(card_pages.faults());
  const auto slip_pages = draw::draw_slip(slip_matter(slip.value(), answer, matter.value()), paper);
  if (!slip_pages) return report(slip_pages.faults());
  std::vector<PageFile> files;
  if (const auto faults = add_page_files("card", card_pages.value(), {}, files)) return report(*faults);
  if (const auto faults = add_page_files("slip", slip_pages.value(), {}, files)) return report(*faults);
  return write_files(files, flags.out, kDone);
}

}  // namespace

void add_card_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("card", "the card to print, and the slip with names");
  const auto flags = std::make_shared<CardFlags>();
  add_evening_flags(*command, flags->evening);
  command->add_option("--out", flags->out, "folder for the pages")->required();
  command->add_option("--paper", flags->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  command->callback([flags, &exit_status] { exit_status = card(*flags); });
}

}  // namespace lanework::cli
