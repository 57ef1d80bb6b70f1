#include <CLI/CLI.hpp>
#include <array>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/squad_counts.h"
#include "core/evidence/funnel.h"

namespace lanework::cli {
namespace {

// The two pairs of lines that are drawn.
constexpr std::array<double, 4> kShares = {0.001, 0.025, 0.975, 0.999};

const char* place_words(double ratio, const std::array<double, 4>& limits) {
  if (ratio < limits[0]) return "below the outer line";
  if (ratio < limits[1]) return "below the inner line";
  if (ratio > limits[3]) return "above the outer line";
  if (ratio > limits[2]) return "above the inner line";
  return "between the lines";
}

std::string closing_words(const evidence::OverDispersion& dispersion) {
  std::string out = "\nThe inner lines hold 95 squads in 100 whose true rate is the club's, the outer 998 in 1000.\n";
  if (dispersion.beyond_chance)
    out += "Squads differ more than by chance (" + in_digits(dispersion.factor) +
           " times the variance), so that the lines are drawn further apart.\n";
  return out +
         "This is no league table: between the lines squads cannot be told apart, and outside them comes a "
         "question,\nnot a verdict: hours, ages, pitches and who writes injuries down all move a squad.\n";
}

Result<EvidenceAnswer> funnel(const SquadCountFlags& flags) {
  const auto read = read_squad_counts(flags);
  if (!read) return read.faults();
  const SquadCounts& squads = read.value();
  const double level = flags.common.level();
  if (squads.events == 0) return cannot("funnel", level, "no squad has any event");
  if (squads.named.names.size() < 2) return cannot("funnel", level, "there is one squad only");
  std::vector<evidence::SquadCount> counts;
  for (const evidence::Exposed& one : squads.named.counts)
    counts.push_back({one.events, squads.per_hour() * one.hours});
  const evidence::OverDispersion dispersion = evidence::over_dispersion(counts);
  EvidenceAnswer out;
  out.node = evidence_node("funnel", level);
  out.node.set("estimated", Node::make_boolean(true));
  out.node.set("per_1000_h", Node::make_real(1000 * squads.per_hour()));
  out.node.set("over_dispersion", Node::make_real(dispersion.factor));
  out.node.set("limits_widened", Node::make_boolean(dispersion.beyond_chance));
  Node list = Node::make_array();
  std::vector<std::vector<std::string>> rows = {
      {"squad", "events", "expected", "ratio", "inner lines", "outer lines", ""}};
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const double ratio = static_cast<double>(counts[i].events) / counts[i].expected;
    std::array<double, 4> limits{};
    for (std::size_t s = 0; s < kShares.size(); ++s)
      limits[s] = evidence::widened_limit(counts[i].expected, kShares[s], dispersion);
    rows.push_back({squads.named.names[i], std::to_string(counts[i].events), in_digits(counts[i].expected),
                    in_digits(ratio), limits_words({limits[1], limits[2]}), limits_words({limits[0], limits[3]}),
                    place_words(ratio, limits)});
    Node row = Node::make_table();
    row.set("squad", Node::make_text(squads.named.names[i]));
    row.set("events", Node::make_integer(counts[i].events));
    row.set("expected", Node::make_real(counts[i].expected));
    row.set("ratio", Node::make_real(ratio));
    row.set("inner", interval_node({limits[1], limits[2]}));
    row.set("outer", interval_node({limits[0], limits[3]}));
    row.set("place", Node::make_text(place_words(ratio, limits)));
    list.items.push_back(std::move(row));
  }
  out.node.set("squads", std::move(list));
  out.text =
      "The whole: " + per_1000_hours(squads.per_hour()) + ".\n\n" + in_columns(rows, "  ") + closing_words(dispersion);
  return out;
}

}  // namespace

void add_funnel_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("funnel", "which squads lie outside what chance makes of so many hours");
  const auto flags = std::make_shared<SquadCountFlags>();
  add_squad_count_flags(*command, *flags);
  command->callback([flags, &exit_status] { exit_status = show(funnel(*flags), flags->common.json); });
}

}  // namespace lanework::cli
