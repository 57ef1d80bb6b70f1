#include <CLI/CLI.hpp>
#include <cmath>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/comparison_words.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/table_file.h"
#include "core/evidence/needed_to_treat.h"
#include "core/evidence/rate_ratio.h"

namespace lanework::cli {
namespace {

using evidence::Exposed;
using evidence::Tested;

struct RatioFlags {
  EvidenceFlags common;
  Exposed one;
  Exposed other;
  double hours_a_season = 0;
};

void add_needed(const RatioFlags& flags, const evidence::Difference& difference, EvidenceAnswer& out) {
  if (flags.hours_a_season <= 0) return;
  const double hours = flags.hours_a_season;
  const evidence::Interval fewer{-difference.limits.high * hours, -difference.limits.low * hours};
  const evidence::NeededToTreat needed = evidence::needed_to_treat(-difference.per_hour * hours, fewer);
  out.text += "\nIn seasons of " + hours_words(hours) + " with the first instead of the second: " +
              evidence::NumberWords(Language::kEnglish)
                  .needed_words(needed, {{"one event", "un episodio"}, {"events", "episodios"}},
                                {"such seasons", "temporadas así"}) +
              ".\n";
  Node node = Node::make_table();
  node.set("hours_a_season", Node::make_real(hours));
  node.set("events_fewer_a_season", Node::make_real(-difference.per_hour * hours));
  node.set("limits_fewer", interval_node(fewer));
  if (needed.estimate) node.set("seasons_for_one_fewer", Node::make_real(*needed.estimate));
  if (needed.most_benefit) node.set("at_most_benefit", Node::make_real(*needed.most_benefit));
  if (needed.least_benefit) node.set("at_least_benefit", Node::make_real(*needed.least_benefit));
  node.set("through_infinity", Node::make_boolean(needed.through_infinity));
  out.node.set("needed_to_treat", std::move(node));
}

std::string rate_words(const char* which, const Exposed& counts) {
  return std::string(which) + ": " + counted(counts.events, "event", "events") + " in " + hours_words(counts.hours) +
         ", " + per_1000_hours(static_cast<double>(counts.events) / counts.hours) + ".\n";
}

Node tested_node(const Tested& tested) {
  Node out = Node::make_table();
  out.set("limits", interval_node(tested.limits));
  out.set("p", Node::make_real(tested.p));
  return out;
}

EvidenceAnswer ratio(const RatioFlags& flags) {
  const double level = flags.common.level();
  if (flags.one.events + flags.other.events == 0)
    return cannot("ratio", level, "neither of the two has any event; more hours are needed");
  const double estimate = evidence::rate_ratio(flags.one, flags.other);
  const Tested exact = evidence::exact_ratio(flags.one, flags.other, level);
  const Tested mid_p = evidence::mid_p_ratio(flags.one, flags.other, level);
  const double least_likely = evidence::least_likely_p(flags.one, flags.other);
  const evidence::Difference difference = evidence::rate_difference(flags.one, flags.other, level);
  EvidenceAnswer out;
  out.node = evidence_node("ratio", level);
  out.node.set("estimated", Node::make_boolean(true));
  if (std::isfinite(estimate)) out.node.set("ratio", Node::make_real(estimate));
  out.node.set("exact", tested_node(exact));
  out.node.set("mid_p", tested_node(mid_p));
  out.text = rate_words("The first", flags.one) + rate_words("The second", flags.other);
  out.text += "\nThe first is " + (std::isfinite(estimate) ? in_digits(estimate) + " times" : "infinitely many times") +
              " the second; " + level_words(level) + " limits " + limits_words(exact.limits) + ", " + p_words(exact.p) +
              " (exact, each tail by itself).\n" + chance_sentence(exact.limits) +
              "\nBy other conventions, to recognise other programs' figures by:\n";
  std::vector<std::vector<std::string>> rows = {{"mid-P", limits_words(mid_p.limits), p_words(mid_p.p)}};
  if (flags.one.events > 0 && flags.other.events > 0) {
    const Tested wald = evidence::log_wald_ratio(flags.one, flags.other, level);
    out.node.set("log_wald", tested_node(wald));
    rows.push_back({"normal on the log scale", limits_words(wald.limits), p_words(wald.p)});
  }
  rows.push_back({"outcomes no likelier", "no limits belong to it", p_words(least_likely)});
  out.node.set("no_likelier_p", Node::make_real(least_likely));
  Node difference_node = Node::make_table();
  difference_node.set("per_1000_h", Node::make_real(1000 * difference.per_hour));
  difference_node.set("limits_per_1000_h", interval_node(difference.limits, 1000));
  out.node.set("difference", std::move(difference_node));
  out.text += in_columns(rows, "  ") + "Difference: " + per_1000_hours(difference.per_hour) + ", " +
              limits_words(difference.limits, 1000) + " (normal approximation).\n";
  add_needed(flags, difference, out);
  return out;
}

}  // namespace

void add_ratio_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("ratio", "two rates against each other");
  const auto flags = std::make_shared<RatioFlags>();
  const auto counts = [&](const char* name, std::int64_t& where, const char* what) {
    command->add_option(name, where, what)->required()->check(CLI::Range(std::int64_t{0}, std::int64_t{1'000'000}));
  };
  const auto hours = [&](const char* name, double& where, const char* what) {
    command->add_option(name, where, what)->required()->check(CLI::Range(1e-6, kMostHours));
  };
  counts("--events", flags->one.events, "events of the first, such as squads that warmed up");
  hours("--hours", flags->one.hours, "its player-hours");
  counts("--other-events", flags->other.events, "events of the second, that it is set against");
  hours("--other-hours", flags->other.hours, "its player-hours");
  command
      ->add_option("--hours-a-season", flags->hours_a_season,
                   "player-hours of a squad's season: how many seasons make one event fewer")
      ->check(CLI::Range(1.0, 1e7));
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] { exit_status = show(ratio(*flags), flags->common.json); });
}

}  // namespace lanework::cli
