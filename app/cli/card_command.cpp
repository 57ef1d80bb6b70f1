#include <CLI/CLI.hpp>
#include <cstdio>
#include <filesystem>
#include <memory>

#include "app/cli/card_matter.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/print_plan.h"
#include "app/read/files.h"

namespace lanework::cli {
namespace {

struct CardFlags {
  EveningFlags evening;
  std::string out;
  std::string paper = "a4";
};

struct File {
  std::string name;
  std::string bytes;
};

std::optional<Faults> add(std::vector<File>& files, const std::string& name, Result<std::string> bytes) {
  if (!bytes) return bytes.faults();
  files.push_back({name, std::move(bytes).value()});
  return {};
}

// Every page as PDF, SVG and PNG; nothing is written before all of it is drawn.
std::optional<Faults> draw_files(const std::string& stem, const draw::Pages& pages, std::vector<File>& files) {
  if (auto faults = add(files, stem + ".pdf", draw::write_pdf(pages))) return faults;
  for (int side = 0; side < static_cast<int>(pages.sides.size()); ++side) {
    const std::string name = stem + "-side-" + std::to_string(side + 1);
    if (auto faults = add(files, name + ".svg", draw::write_svg(pages, side))) return faults;
    if (auto faults = add(files, name + ".png", draw::write_png(pages, side))) return faults;
  }
  return {};
}

int write(const std::vector<File>& files, const std::string& folder) {
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error)
    return report({{FaultCode::kCannotWrite, {folder, 0, 0, "--out"}, error.message(), "a folder to write to", {}}});
  for (const File& file : files) {
    const std::string path = (std::filesystem::path(folder) / file.name).string();
    if (const auto fault = read::write_file_atomically(path, file.bytes)) return report({*fault});
    std::printf("%s\n", path.c_str());
  }
  return kDone;
}

int card(const CardFlags& flags) {
  auto documents = load_evening(flags.evening);
  if (!documents) return report(documents.faults());
  const auto matter = door::read_evening(std::move(documents).value());
  if (!matter) return report(matter.faults());
  plan::KernelWorkspace workspace;
  const door::PlanAnswer answer = door::answer_plan(matter.value(), workspace);
  if (answer.plan.outcome == plan::Outcome::kInfeasible) {
    std::fputs(plan_text(answer, matter.value()).c_str(), stderr);
    return kAnswerIsNo;
  }
  const auto slip = door::answer_slip(matter.value(), answer);
  if (!slip) return report(slip.faults());
  const draw::Paper paper = flags.paper == "letter" ? draw::Paper::kUsLetter : draw::Paper::kA4;
  const auto card_pages = draw::draw_card(card_matter(answer, matter.value()), paper);
  if (!card_pages) return report(card_pages.faults());
  const auto slip_pages = draw::draw_slip(slip_matter(slip.value(), answer, matter.value()), paper);
  if (!slip_pages) return report(slip_pages.faults());
  std::vector<File> files;
  if (const auto faults = draw_files("card", card_pages.value(), files)) return report(*faults);
  if (const auto faults = draw_files("slip", slip_pages.value(), files)) return report(*faults);
  return write(files, flags.out);
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
