#include "app/cli/care/lead_answer.h"

#include <CLI/CLI.hpp>
#include <cstdio>
#include <filesystem>

#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/read/files.h"

namespace lanework::cli {

void add_lead_flags(CLI::App& command, LeadFlags& flags, const char* sheet_words) {
  command.add_option("sheet", flags.sheet, sheet_words)->required();
  command.add_option("--player", flags.player, "this player only");
  command.add_option("--date", flags.day, "the day asked about, such as 2026-11-26 (today)");
  command.add_option("--catalogue", flags.catalogue, "folder of the catalogue, if not the shipped one");
  command.add_flag("--json", flags.json, "the answer as JSON");
}

LeadAnswer lead_answer(const char* answer, const std::string& heading, Date day) {
  LeadAnswer out;
  out.node = Node::make_table();
  out.node.set("answer", Node::make_text(answer));
  out.node.set("version", Node::make_integer(1));
  out.node.set("date", Node::make_text(to_iso(day)));
  out.node.set("first", Node::make_text(kLocalRulesFirst));
  out.text = heading + ", " + to_words(day) + ". For the lead's eyes only.\n" + kLocalRulesFirst +
             " Nothing here is a diagnosis, foretells an injury or clears anybody to play.\n";
  return out;
}

int show(const Result<LeadAnswer>& answer, bool json) {
  if (!answer) return report(answer.faults());
  const std::string out = json ? to_json(answer.value().node, 2) + "\n" : answer.value().text;
  std::fputs(out.c_str(), stdout);
  return answer.value().exit_status;
}

Result<Document> care_document(const LeadFlags& flags, const char* name) {
  const Result<std::string> folder = catalogue_folder(flags.catalogue);
  if (!folder) return folder.faults();
  return read::read_toml_file((std::filesystem::path(folder.value()) / "care" / name).string());
}

Fault unknown_player(const LeadFlags& flags, const std::string& file) {
  return {FaultCode::kUnknownName, {"", 0, 0, "--player"}, quote(flags.player), "a player of " + file, {}};
}

}  // namespace lanework::cli
