#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/print_plan.h"
#include "app/read/files.h"
#include "core/door/plan_answer.h"

namespace lanework::cli {
namespace {

struct PlanFlags {
  EveningFlags evening;
  bool json = false;
  bool why = false;
  std::string save_request;
};

int plan(const PlanFlags& flags) {
  auto documents = load_evening(flags.evening);
  if (!documents) return report(documents.faults());
  const Node request = door::request_of("plan", documents.value());
  const auto matter = door::read_evening(std::move(documents).value());
  if (!matter) return report(matter.faults());
  if (!flags.save_request.empty()) {
    if (const auto fault = read::write_file_atomically(flags.save_request, to_json(request))) return report({*fault});
  }
  plan::KernelWorkspace workspace;
  const door::PlanAnswer answer = door::answer_plan(matter.value(), workspace);
  const std::string out =
      flags.json ? to_json(door::to_node(answer, matter.value()), 2) + "\n" : plan_text(answer, matter.value());
  std::fputs(out.c_str(), stdout);
  return answer.plan.outcome == plan::Outcome::kOptimal ? kDone : kAnswerIsNo;
}

}  // namespace

void add_plan_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("plan", "tonight's session: the smallest change from the routine");
  const auto flags = std::make_shared<PlanFlags>();
  add_evening_flags(*command, flags->evening);
  command->add_flag("--json", flags->json, "the answer as JSON (schema/plan-answer.schema.json)");
  command->add_option("--save-request", flags->save_request, "write the request as JSON, as the door takes it");
  command->callback([flags, &exit_status] { exit_status = plan(*flags); });
}

}  // namespace lanework::cli
