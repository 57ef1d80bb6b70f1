#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/evidence_commands.h"
#include "core/evidence/power.h"
#include "core/evidence/power_by_simulation.h"

namespace lanework::cli {
namespace {

struct PowerFlags {
  EvidenceFlags common;
  double rate_per_1000_h = 0;
  double other_per_1000_h = 0;
  double hours_a_squad = 0;
  double variation = 0.25;
  double power_percent = 80;
  bool matched = false;
  double hours_a_season = 0;
  int times = 0;
  std::uint64_t seed = 1;
};

evidence::ClusterDesign design_of(const PowerFlags& flags) {
  return {flags.rate_per_1000_h / 1000, flags.other_per_1000_h / 1000, flags.hours_a_squad, flags.variation,
          flags.matched};
}

void add_seasons(const PowerFlags& flags, double hours, EvidenceAnswer& out) {
  if (flags.hours_a_season <= 0) return;
  const double seasons = hours / flags.hours_a_season;
  out.node.set("seasons", Node::make_real(seasons));
  out.text += "With " + hours_words(flags.hours_a_season) + " a season that is " + in_digits(seasons) + " seasons.\n";
}

void add_played(const PowerFlags& flags, int squads, EvidenceAnswer& out) {
  if (flags.times == 0) return;
  const evidence::PlayedPower played =
      evidence::power_by_simulation({design_of(flags), squads, flags.times, flags.seed}, flags.common.level());
  Node node = Node::make_table();
  node.set("times", Node::make_integer(flags.times));
  node.set("seed", Node::make_integer(static_cast<std::int64_t>(flags.seed)));
  node.set("power", Node::make_real(played.power));
  node.set("limits", interval_node(played.limits));
  node.set("without_events", Node::make_integer(played.too_few));
  out.node.set("simulated", std::move(node));
  out.text += "Played " + std::to_string(flags.times) + " times with so many squads, the difference was seen in " +
              in_digits(100 * played.power) + " of 100 (" + limits_words(played.limits, 100) + ").\n";
}

Result<EvidenceAnswer> power(const PowerFlags& flags) {
  if (flags.rate_per_1000_h == flags.other_per_1000_h)
    return Fault{FaultCode::kContradiction,
                 {"", 0, 0, "--other-rate"},
                 in_digits(flags.other_per_1000_h),
                 "another rate than --rate",
                 "an effect of no size is never seen"};
  if (flags.matched && flags.times > 0)
    return Fault{FaultCode::kContradiction, {"", 0, 0, "--simulate"}, "with --matched", "one of the two", {}};
  const double level = flags.common.level();
  const evidence::PowerAsked asked{level, flags.power_percent / 100};
  const double clusters = evidence::clusters_an_arm(design_of(flags), asked);
  if (!(clusters < 1e6)) return cannot("power", level, "more than a million squads would be needed");
  const int squads = std::max(2, static_cast<int>(std::ceil(clusters)));
  const double hours = 2 * squads * flags.hours_a_squad;
  EvidenceAnswer out;
  out.node = evidence_node("power", level);
  out.node.set("estimated", Node::make_boolean(true));
  out.node.set("power", Node::make_real(asked.power));
  out.node.set("squads_an_arm", Node::make_integer(squads));
  out.node.set("squads_an_arm_unrounded", Node::make_real(clusters));
  out.node.set("hours", Node::make_real(hours));
  out.text = "To see " + as_counted(flags.other_per_1000_h) + " instead of " + as_counted(flags.rate_per_1000_h) +
             " per 1000 hours, with a chance of " + level_words(asked.power) + " and limits of " + level_words(level) +
             ":\n" + std::to_string(squads) + (flags.matched ? " pairs of squads" : " squads in each arm") + " of " +
             hours_words(flags.hours_a_squad) + ", " + hours_words(hours) +
             " in all (Hayes-Bennett; squads' true rates vary by " + in_digits(100 * flags.variation, 2) + " %).\n";
  add_seasons(flags, hours, out);
  add_played(flags, squads, out);
  return out;
}

}  // namespace

void add_power_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("power", "how many squads and hours until an effect would show");
  const auto flags = std::make_shared<PowerFlags>();
  command->add_option("--rate", flags->rate_per_1000_h, "the usual rate per 1000 hours")
      ->required()
      ->check(CLI::Range(1e-4, 1000.0));
  command->add_option("--other-rate", flags->other_per_1000_h, "the rate with the effect, per 1000 hours")
      ->required()
      ->check(CLI::Range(1e-4, 1000.0));
  command->add_option("--hours-a-squad", flags->hours_a_squad, "player-hours of one squad")
      ->required()
      ->check(CLI::Range(1.0, 1e7));
  command
      ->add_option("--variation", flags->variation, "how squads' true rates differ: standard deviation by mean (0.25)")
      ->check(CLI::Range(0.0, 3.0));
  command->add_option("--power", flags->power_percent, "the chance to see it, per cent (80)")
      ->check(CLI::Range(50.0, 99.9));
  command->add_flag("--matched", flags->matched, "squads in pairs; then the variation is that within a pair");
  command->add_option("--hours-a-season", flags->hours_a_season, "player-hours that the club has in a season")
      ->check(CLI::Range(1.0, 1e9));
  command->add_option("--simulate", flags->times, "play it so many times too")->check(CLI::Range(100, 100000));
  command->add_option("--seed", flags->seed, "of the play (1)");
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] { exit_status = show(power(*flags), flags->common.json); });
}

}  // namespace lanework::cli
