#include <CLI/CLI.hpp>
#include <cmath>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/comparison_words.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/table_file.h"
#include "core/evidence/stratified.h"

namespace lanework::cli {
namespace {

using evidence::Pooled;
using evidence::Stratum;

struct PoolFlags {
  EvidenceFlags common;
  std::string data;
};

struct NamedStrata {
  std::vector<std::string> names;
  std::vector<Stratum> strata;
};

Result<NamedStrata> read_strata(const std::string& path) {
  const auto table = table_file(path);
  if (!table) return table.faults();
  const auto names = names_column(table.value(), "stratum");
  const auto events = events_column(table.value(), "events");
  const auto hours = hours_column(table.value(), "hours", false);
  const auto other_events = events_column(table.value(), "other_events");
  const auto other_hours = hours_column(table.value(), "other_hours", false);
  Faults faults;
  const auto take = [&](const auto& column) {
    if (!column) faults.insert(faults.end(), column.faults().begin(), column.faults().end());
  };
  take(names);
  take(events);
  take(hours);
  take(other_events);
  take(other_hours);
  if (!faults.empty()) return faults;
  NamedStrata out;
  for (std::size_t row = 0; row < table.value().rows(); ++row) {
    out.names.push_back(names.value()[row]);
    out.strata.push_back(
        {{events.value()[row], hours.value()[row]}, {other_events.value()[row], other_hours.value()[row]}});
  }
  return out;
}

Stratum sum_of(const std::vector<Stratum>& strata) {
  Stratum sum;
  for (const Stratum& stratum : strata) {
    sum.one.events += stratum.one.events;
    sum.one.hours += stratum.one.hours;
    sum.other.events += stratum.other.events;
    sum.other.hours += stratum.other.hours;
  }
  return sum;
}

bool events_in_all(const std::vector<Stratum>& strata) {
  for (const Stratum& stratum : strata)
    if (stratum.one.events == 0 || stratum.other.events == 0) return false;
  return true;
}

Node pooled_node(const Pooled& pooled, double scale) {
  Node out = Node::make_table();
  out.set("estimate", Node::make_real(pooled.estimate * scale));
  out.set("limits", interval_node(pooled.limits, scale));
  return out;
}

std::string strata_words(const NamedStrata& named, double level) {
  std::vector<std::vector<std::string>> rows = {{"", "events", "hours", "others' events", "hours", "ratio", "limits"}};
  for (std::size_t i = 0; i < named.names.size(); ++i) {
    const Stratum& stratum = named.strata[i];
    const bool any = stratum.one.events + stratum.other.events > 0;
    const double ratio = evidence::rate_ratio(stratum.one, stratum.other);
    rows.push_back({named.names[i], std::to_string(stratum.one.events), as_counted(stratum.one.hours),
                    std::to_string(stratum.other.events), as_counted(stratum.other.hours),
                    any && std::isfinite(ratio) ? in_digits(ratio) : "-",
                    any ? limits_words(evidence::exact_ratio(stratum.one, stratum.other, level).limits) : "-"});
  }
  return in_columns(rows, "  ");
}

// What the strata do not tell alike.
void add_disagreement(const NamedStrata& named, double level, EvidenceAnswer& out) {
  const evidence::Heterogeneity found = evidence::heterogeneity(named.strata);
  if (found.degrees > 0) {
    Node node = Node::make_table();
    node.set("chi_squared", Node::make_real(found.chi_squared));
    node.set("degrees_of_freedom", Node::make_integer(found.degrees));
    node.set("p", Node::make_real(found.p));
    out.node.set("heterogeneity", std::move(node));
    out.text += "Do the ratios differ by more than chance? Chi-squared " + in_digits(found.chi_squared) + " on " +
                std::to_string(found.degrees) + ", " + p_words(found.p) + ".\n";
  }
  if (named.strata.size() < 2 || !events_in_all(named.strata)) return;
  const evidence::RandomEffects effects = evidence::random_effects_ratio(named.strata, level);
  Node node = pooled_node(effects.ratio, 1);
  node.set("between_variance", Node::make_real(effects.between_variance));
  node.set("share_of_variance", Node::make_real(effects.share_of_variance));
  out.node.set("random_effects", std::move(node));
  out.text += "As draws from a distribution of effects: " + in_digits(effects.ratio.estimate) + " times, " +
              limits_words(effects.ratio.limits) + " (DerSimonian-Laird; " +
              in_digits(100 * effects.share_of_variance, 2) + " % of the variance lies between strata).\n";
}

Result<EvidenceAnswer> pool(const PoolFlags& flags) {
  const auto read = read_strata(flags.data);
  if (!read) return read.faults();
  const NamedStrata& named = read.value();
  const double level = flags.common.level();
  const Stratum sum = sum_of(named.strata);
  if (sum.one.events == 0 || sum.other.events == 0)
    return cannot("pool", level, "one of the two has no event in any stratum; 'lanework evidence ratio' gives limits");
  const Pooled ratio = evidence::mantel_haenszel_ratio(named.strata, level);
  const Pooled difference = evidence::mantel_haenszel_difference(named.strata, level);
  const double crude = evidence::rate_ratio(sum.one, sum.other);
  EvidenceAnswer out;
  out.node = evidence_node("pool", level);
  out.node.set("estimated", Node::make_boolean(true));
  out.node.set("strata", Node::make_integer(static_cast<std::int64_t>(named.strata.size())));
  out.node.set("mantel_haenszel", pooled_node(ratio, 1));
  out.node.set("difference_per_1000_h", pooled_node(difference, 1000));
  out.node.set("crude_ratio", Node::make_real(crude));
  out.text = strata_words(named, level) + "\nLike compared with like: " + in_digits(ratio.estimate) + " times, " +
             level_words(level) + " limits " + limits_words(ratio.limits) + " (Mantel-Haenszel).\n" +
             chance_sentence(ratio.limits) + "Difference: " + per_1000_hours(difference.estimate) + ", " +
             limits_words(difference.limits, 1000) + " (Mantel-Haenszel).\n";
  add_disagreement(named, level, out);
  out.text += "All thrown together it would be " + in_digits(crude) + " times" +
              (std::abs(std::log(crude / ratio.estimate)) > std::log(1.1)
                   ? ": strata of different make-up mislead there; go by the pooled figure.\n"
                   : ".\n");
  return out;
}

}  // namespace

void add_pool_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("pool", "a comparison within strata, such as ages, put together");
  const auto flags = std::make_shared<PoolFlags>();
  command->add_option("--data", flags->data, "a table with stratum, events, hours, other_events and other_hours")
      ->required();
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] { exit_status = show(pool(*flags), flags->common.json); });
}

}  // namespace lanework::cli
