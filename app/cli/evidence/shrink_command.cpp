#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>
#include <numeric>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/squad_counts.h"
#include "core/evidence/shrunken_rates.h"

namespace lanework::cli {
namespace {

Node squad_node(const std::string& name, const evidence::Exposed& counts, const evidence::Shrunken& shrunken) {
  Node row = Node::make_table();
  row.set("squad", Node::make_text(name));
  row.set("events", Node::make_integer(counts.events));
  row.set("hours", Node::make_real(counts.hours));
  row.set("own_per_1000_h", Node::make_real(1000 * static_cast<double>(counts.events) / counts.hours));
  row.set("per_1000_h", Node::make_real(1000 * shrunken.estimate));
  row.set("limits_per_1000_h", interval_node(shrunken.limits, 1000));
  row.set("weight_of_own", Node::make_real(shrunken.weight_of_own));
  return row;
}

Result<EvidenceAnswer> shrink(const SquadCountFlags& flags) {
  const auto read = read_squad_counts(flags);
  if (!read) return read.faults();
  const SquadCounts& squads = read.value();
  const double level = flags.common.level();
  if (squads.events == 0) return cannot("shrink", level, "no squad has any event");
  if (squads.named.names.size() < 2) return cannot("shrink", level, "there is one squad only");
  std::vector<evidence::SquadCount> counts;
  for (const evidence::Exposed& one : squads.named.counts) counts.push_back({one.events, one.hours});
  const evidence::GammaPrior prior = evidence::fit_gamma_prior(counts);
  const std::vector<evidence::Shrunken> found = evidence::shrunken_rates(counts, level);
  std::vector<std::size_t> order(counts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return found[a].estimate > found[b].estimate; });
  EvidenceAnswer out;
  out.node = evidence_node("shrink", level);
  out.node.set("estimated", Node::make_boolean(true));
  out.node.set("mean_per_1000_h", Node::make_real(1000 * prior.mean));
  out.node.set("spread", Node::make_real(prior.spread));
  Node list = Node::make_array();
  std::vector<std::vector<std::string>> rows = {
      {"squad", "events", "hours", "own rate", "drawn in", level_words(level) + " limits", "own share"}};
  for (const std::size_t i : order) {
    const evidence::Exposed& own = squads.named.counts[i];
    rows.push_back({squads.named.names[i], std::to_string(own.events), as_counted(own.hours),
                    in_digits(1000 * static_cast<double>(own.events) / own.hours), in_digits(1000 * found[i].estimate),
                    limits_words(found[i].limits, 1000), in_digits(100 * found[i].weight_of_own, 2) + " %"});
    list.items.push_back(squad_node(squads.named.names[i], own, found[i]));
  }
  out.node.set("squads", std::move(list));
  out.text =
      in_columns(rows, "  ") + "\nRates per 1000 hours. The whole: " + in_digits(1000 * prior.mean) + ". " +
      (prior.spread > 0 ? "True rates of squads are thought to differ by about " +
                              in_digits(100 * std::sqrt(prior.spread), 2) + " % of it.\n"
                        : "Squads differ no more than chance would have them.\n") +
      "A squad's own rate moves it away from the whole as far as its hours carry; so few events say little about "
      "one squad.\nThe order is no ranking: most of these limits overlap.\n";
  return out;
}

}  // namespace

void add_shrink_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("shrink", "rates of small squads, each drawn towards the whole");
  const auto flags = std::make_shared<SquadCountFlags>();
  add_squad_count_flags(*command, *flags);
  command->callback([flags, &exit_status] { exit_status = show(shrink(*flags), flags->common.json); });
}

}  // namespace lanework::cli
