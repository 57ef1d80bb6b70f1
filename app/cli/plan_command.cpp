#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/print_check.h"
#include "app/cli/print_plan.h"
#include "app/cli/why_text.h"
#include "app/read/files.h"
#include "core/check/check_session.h"
#include "core/door/plan_answer.h"
#include "core/integer_program/lp_text.h"
#include "core/integer_program/mps_text.h"
#include "core/plan/export_rows.h"

namespace lanework::cli {
namespace {

struct PlanFlags {
  EveningFlags evening;
  bool json = false;
  bool why = false;
  std::string save_request;
  std::string export_mps;
  std::string export_lp;
};

struct CheckFlags {
  EveningFlags evening;
  std::string plan;
  bool json = false;
};

// 'tonight.mps' becomes 'tonight.level1.mps' and so on: the level stands before the ending.
std::string level_name(const std::string& path, const std::string& suffix) {
  const std::string ending = suffix.substr(suffix.rfind('.'));
  const bool has_ending =
      path.size() > ending.size() && path.compare(path.size() - ending.size(), ending.size(), ending) == 0;
  return (has_ending ? path.substr(0, path.size() - ending.size()) : path) + suffix;
}

std::optional<Fault> write_levels(const std::string& path, const plan::LevelTexts& levels) {
  for (const auto& [suffix, text] : levels) {
    if (auto fault = read::write_file_atomically(level_name(path, suffix), text)) return fault;
  }
  return {};
}

std::optional<Fault> write_exports(const PlanFlags& flags, const plan::Plan& plan) {
  const auto levels = [&plan](const std::string& ending, auto* write) {
    return plan::export_levels(plan.problem, plan.solution.evaluation.objective, ending, write);
  };
  if (!flags.export_mps.empty()) {
    if (auto fault = write_levels(flags.export_mps, levels(".mps", integer_program::mps_text))) return fault;
  }
  if (flags.export_lp.empty()) return {};
  return write_levels(flags.export_lp, levels(".lp", integer_program::lp_text));
}

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
  if (const auto fault = write_exports(flags, answer.plan)) return report({*fault});
  std::string out =
      flags.json ? to_json(door::to_node(answer, matter.value()), 2) + "\n" : plan_text(answer, matter.value());
  if (flags.why && !flags.json) out += "\n" + why_text(answer, matter.value());
  std::fputs(out.c_str(), stdout);
  return answer.plan.outcome == plan::Outcome::kOptimal ? kDone : kAnswerIsNo;
}

int check(const CheckFlags& flags) {
  const auto documents = load_evening(flags.evening);
  if (!documents) return report(documents.faults());
  const Node request = door::request_of("plan", documents.value());
  const auto bytes = read::read_file(flags.plan);
  if (!bytes) return report(bytes.faults());
  const bool json = flags.plan.size() > 5 && flags.plan.substr(flags.plan.size() - 5) == ".json";
  const auto plan = json ? parse_json(flags.plan, bytes.value()) : parse_toml(flags.plan, bytes.value());
  if (!plan) return report(plan.faults());
  const auto checked = check::check_plan(request, plan.value());
  if (!checked) return report(checked.faults());
  const std::string out = flags.json ? to_json(check::to_node(checked.value()), 2) + "\n" : check_text(checked.value());
  std::fputs(out.c_str(), stdout);
  return checked.value().ok() ? kDone : kAnswerIsNo;
}

void add_check_command(CLI::App& plan_command, int& exit_status) {
  CLI::App* command = plan_command.add_subcommand("check", "judge a plan edited by hand, or a saved answer");
  const auto flags = std::make_shared<CheckFlags>();
  add_evening_flags(*command, flags->evening);
  command
      ->add_option("--plan", flags->plan,
                   "an edited plan (TOML, docs/formats/edited-plan.md) or a saved answer (.json)")
      ->required();
  command->add_flag("--json", flags->json, "the judgement as JSON");
  command->callback([flags, &exit_status] { exit_status = check(*flags); });
}

}  // namespace

void add_plan_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("plan", "tonight's session: the smallest change from the routine");
  const auto flags = std::make_shared<PlanFlags>();
  add_evening_flags(*command, flags->evening);
  command->get_option("--squad")->required(false);
  command->add_flag("--why", flags->why, "where every number comes from");
  command->add_option("--export-mps", flags->export_mps, "write the problem as MPS, one file a level");
  command->add_option("--export-lp", flags->export_lp, "write the problem as LP text, one file a level");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/plan-answer.schema.json)");
  command->add_option("--save-request", flags->save_request, "write the request as JSON, as the door takes it");
  add_check_command(*command, exit_status);
  command->callback([flags, command, &exit_status] {
    if (!command->get_subcommands().empty()) return;
    if (flags->evening.squad.empty()) throw CLI::RequiredError("--squad");
    exit_status = plan(*flags);
  });
}

}  // namespace lanework::cli
