#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/comparison_words.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/table_file.h"
#include "core/evidence/clustered_ratio.h"

namespace lanework::cli {
namespace {

using evidence::Exposed;

struct ArmsFlags {
  EvidenceFlags common;
  std::string data;
  std::string arm = "arm";
  std::string against;
  NamedCountColumns columns{"squad"};
};

struct Arm {
  std::string name;
  std::vector<Exposed> squads;
  Exposed sum;
};

Result<std::vector<Arm>> read_arms(const ArmsFlags& flags) {
  const auto table = table_file(flags.data);
  if (!table) return table.faults();
  const auto names = names_column(table.value(), flags.arm);
  if (!names) return names.faults();
  std::vector<Arm> arms;
  for (const std::string& name : names.value()) {
    const auto same = [&](const Arm& arm) { return arm.name == name; };
    if (std::none_of(arms.begin(), arms.end(), same)) arms.push_back({name, {}, {}});
  }
  if (arms.size() != 2)
    return Fault{FaultCode::kContradiction,
                 {flags.data, 0, 0, flags.arm},
                 std::to_string(arms.size()) + " different names",
                 "two arms, such as 'warmed up' and 'usual'",
                 {}};
  if (!flags.against.empty() && arms[0].name != flags.against && arms[1].name != flags.against)
    return Fault{FaultCode::kUnknownName,
                 {flags.data, 0, 0, "--against"},
                 quote(flags.against),
                 quote(arms[0].name) + " or " + quote(arms[1].name),
                 {}};
  if (arms[0].name == flags.against) std::swap(arms[0], arms[1]);
  for (Arm& arm : arms) {
    evidence::DataTable own = table.value();
    for (std::size_t row = own.rows(); row-- > 0;) {
      if (names.value()[row] == arm.name) continue;
      own.lines.erase(own.lines.begin() + static_cast<std::ptrdiff_t>(row));
      for (std::vector<std::string>& column : own.column)
        column.erase(column.begin() + static_cast<std::ptrdiff_t>(row));
    }
    auto counts = named_counts(own, flags.columns);
    if (!counts) return counts.faults();
    arm.squads = std::move(counts).value().counts;
    for (const Exposed& squad : arm.squads) {
      arm.sum.events += squad.events;
      arm.sum.hours += squad.hours;
    }
  }
  return arms;
}

std::string why_not(const std::vector<Arm>& arms) {
  for (const Arm& arm : arms) {
    if (arm.squads.size() < 2)
      return "'" + arm.name +
             "' is one squad: nothing is seen of how squads differ; 'lanework evidence ratio' compares "
             "them as if all players were alike";
    if (arm.sum.events == 0)
      return "'" + arm.name + "' has no event; 'lanework evidence ratio' gives limits without regard to squads";
  }
  return {};
}

Result<EvidenceAnswer> compare(const ArmsFlags& flags) {
  const auto read = read_arms(flags);
  if (!read) return read.faults();
  const std::vector<Arm>& arms = read.value();
  const double level = flags.common.level();
  if (const std::string why = why_not(arms); !why.empty()) return cannot("arms", level, why);
  const evidence::ClusteredRatio found = evidence::clustered_ratio(arms[0].squads, arms[1].squads, level);
  if (!(found.error > 0)) return cannot("arms", level, "all squads of an arm have the same rate");
  EvidenceAnswer out;
  out.node = evidence_node("arms", level);
  out.node.set("estimated", Node::make_boolean(true));
  Node list = Node::make_array();
  for (const Arm& arm : arms) {
    out.text += arm.name + ": " + counted(arm.sum.events, "event", "events") + " in " + hours_words(arm.sum.hours) +
                " of " + counted(static_cast<long long>(arm.squads.size()), "squad", "squads") + ", " +
                per_1000_hours(static_cast<double>(arm.sum.events) / arm.sum.hours) + ".\n";
    Node one = Node::make_table();
    one.set("arm", Node::make_text(arm.name));
    one.set("squads", Node::make_integer(static_cast<std::int64_t>(arm.squads.size())));
    one.set("events", Node::make_integer(arm.sum.events));
    one.set("hours", Node::make_real(arm.sum.hours));
    list.items.push_back(std::move(one));
  }
  out.node.set("arms", std::move(list));
  out.node.set("ratio", Node::make_real(found.ratio));
  out.node.set("limits", interval_node(found.tested.limits));
  out.node.set("p", Node::make_real(found.tested.p));
  out.node.set("degrees_of_freedom", Node::make_integer(found.degrees));
  out.node.set("variance_factor", Node::make_real(found.variance_factor));
  out.text +=
      "\n'" + arms[0].name + "' by '" + arms[1].name + "': " + in_digits(found.ratio) + " times; " +
      level_words(level) + " limits " + limits_words(found.tested.limits) + ", " + p_words(found.tested.p) +
      "\n(squads counted as squads: log scale, Student's t with " + std::to_string(found.degrees) +
      " degrees of freedom).\n" + chance_sentence(found.tested.limits) +
      (found.variance_factor > 1
           ? "Squads differ by more than chance: that multiplies the variance by " + in_digits(found.variance_factor) +
                 ".\n"
           : "Squads of an arm differ no more than by chance here; with few squads that may be chance itself.\n");
  return out;
}

}  // namespace

void add_arms_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command =
      evidence.add_subcommand("arms", "two arms of squads against each other, squads counted as squads");
  const auto flags = std::make_shared<ArmsFlags>();
  command->add_option("--data", flags->data, "a table, one row a squad or several")->required();
  command->add_option("--arm", flags->arm, "the column that says which arm");
  command->add_option("--against", flags->against,
                      "the arm that the other is set against; the second in the table if not said");
  command->add_option("--squad", flags->columns.name, "the column of squads");
  command->add_option("--events", flags->columns.events, "the column of events");
  command->add_option("--hours", flags->columns.hours, "the column of player-hours");
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] { exit_status = show(compare(*flags), flags->common.json); });
}

}  // namespace lanework::cli
