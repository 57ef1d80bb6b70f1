#include "app/cli/block_check_command.h"

#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>
#include <string>

#include "app/cli/check_documents.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/read/club_folder.h"
#include "app/read/files.h"
#include "core/check/check_block.h"

namespace lanework::cli {
namespace {

std::string report_text(const check::BlockReport& report) {
  const std::string what = std::to_string(report.squads) + " of " + std::to_string(report.squads_in_club) +
                           " squads, " + std::to_string(report.sessions) + " sessions, " +
                           std::to_string(report.drills) + " drills";
  if (report.ok()) {
    return "Sound: " + what + "; value " + std::to_string(report.value) + ", bound " + std::to_string(report.bound) +
           ".\n";
  }
  std::string out;
  for (const check::BlockViolation& violation : report.violations) out += to_line(violation) + "\n";
  const std::size_t count = report.violations.size();
  return out + std::to_string(count) + (count == 1 ? " fault in " : " faults in ") + what + ".\n";
}

Result<Document> read_answer(const std::string& file) {
  const Result<std::string> bytes = read::read_file(file);
  if (!bytes) return bytes.faults();
  return parse_json(file, bytes.value());
}

Result<check::SoFarDocuments> so_far_of(const BlockCheckFlags& flags, const club::Club& club) {
  const club::Settings& settings = club.settings;
  const auto so_far = read_so_far(flags.rolling, club, club::allocate(club, settings.block_from, settings.block_weeks));
  if (!so_far) return so_far.faults();
  check::SoFarDocuments out = check_so_far(so_far.value(), club);
  if (flags.standing.empty()) return out;
  auto standing = read_answer(flags.standing);
  if (!standing) return standing.faults();
  out.standing = std::move(standing).value();
  return out;
}

}  // namespace

int run_block_check(const BlockCheckFlags& flags) {
  const auto shipped = catalogue_folder(flags.catalogue);
  if (!shipped) return report(shipped.faults());
  const read::ClubFolder folder = read::read_club_folder(flags.club, shipped.value());
  if (!folder.faults.empty()) return report(folder.faults);
  const Result<Document> answer = read_answer(flags.answer);
  if (!answer) return report(answer.faults());
  check::BlockDocuments documents = check_documents(folder.documents);
  if (flags.rolling.given() || !flags.standing.empty()) {
    auto so_far = so_far_of(flags, folder.club);
    if (!so_far) return report(so_far.faults());
    documents.so_far = std::move(so_far).value();
  }
  const Result<check::BlockReport> checked = check::check_block(documents, answer.value());
  if (!checked) return report(checked.faults());
  const std::string text =
      flags.json ? to_json(check::to_node(checked.value()), 2) + "\n" : report_text(checked.value());
  std::fputs(text.c_str(), stdout);
  return checked.value().ok() ? kDone : kAnswerIsNo;
}

void add_block_check(CLI::App& block, int& exit_status) {
  CLI::App* command = block.add_subcommand("check", "hold a saved block answer against the club's folder");
  const auto flags = std::make_shared<BlockCheckFlags>();
  command->add_option("--club", flags->club, "the club's folder, with club.toml and squads/")->required();
  command->add_option("--answer", flags->answer, "what 'lanework block --json' has given")->required();
  command->add_option(
      "--standing", flags->standing,
      "of a block that has begun: the answer that stood before; sets, what is over and changes are held "
      "against it");
  add_rolling_flags(*command, flags->rolling);
  command->add_option("--catalogue", flags->catalogue, "folder of the catalogue, if not the shipped one");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/block-check-answer.schema.json)");
  command->callback([flags, &exit_status] { exit_status = run_block_check(*flags); });
}

}  // namespace lanework::cli
