#include "app/cli/evidence/answer.h"

#include <CLI/CLI.hpp>
#include <cmath>
#include <cstdio>

#include "app/cli/command.h"

namespace lanework::cli {

void add_evidence_flags(CLI::App& command, EvidenceFlags& flags) {
  command.add_option("--level", flags.level_percent, "how sure the limits are to be, per cent (95)")
      ->check(CLI::Range(50.0, 99.99));
  command.add_flag("--json", flags.json, "the answer as JSON (schema/evidence-answer.schema.json)");
}

int show(const Result<EvidenceAnswer>& answer, bool json) {
  if (!answer) return report(answer.faults());
  const std::string out = json ? to_json(answer.value().node, 2) + "\n" : answer.value().text;
  std::fputs(out.c_str(), stdout);
  return answer.value().exit_status;
}

Node evidence_node(const char* answer, double level) {
  Node out = Node::make_table();
  out.set("answer", Node::make_text(answer));
  out.set("version", Node::make_integer(1));
  out.set("level", Node::make_real(level));
  return out;
}

Node interval_node(const evidence::Interval& limits, double scale) {
  Node out = Node::make_table();
  out.set("low", Node::make_real(limits.low * scale));
  if (std::isfinite(limits.high)) out.set("high", Node::make_real(limits.high * scale));
  return out;
}

EvidenceAnswer cannot(const char* answer, double level, const std::string& why) {
  EvidenceAnswer out;
  out.node = evidence_node(answer, level);
  out.node.set("estimated", Node::make_boolean(false));
  out.node.set("because", Node::make_text(why));
  out.text = "Cannot be estimated: " + why + ".\n";
  out.exit_status = kAnswerIsNo;
  return out;
}

}  // namespace lanework::cli
