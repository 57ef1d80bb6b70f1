#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <memory>
#include <numeric>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/table_file.h"
#include "core/evidence/burden.h"
#include "core/evidence/poisson_limits.h"
#include "core/evidence/time_loss.h"

namespace lanework::cli {
namespace {

struct RateFlags {
  EvidenceFlags common;
  std::int64_t events = 0;
  double hours = 0;
  std::vector<int> days;
};

double median(std::vector<int> days) {
  std::sort(days.begin(), days.end());
  const std::size_t middle = days.size() / 2;
  return days.size() % 2 == 1 ? days[middle] : (days[middle - 1] + days[middle]) / 2.0;
}

constexpr std::array<const char*, 4> kBandWords = {"no day", "1 to 7 days", "8 to 28 days", "more than 28 days"};
constexpr std::array<const char*, 4> kBandKeys = {"0", "1_to_7", "8_to_28", "more_than_28"};

std::array<int, 4> by_band(const std::vector<int>& days) {
  std::array<int, 4> out{};
  for (const int one : days) ++out[static_cast<std::size_t>(evidence::severity_band(one))];
  return out;
}

// From so many times the estimate on an upper limit is no limit: own judgement.
constexpr double kUseless = 20;

std::string burden_limits_words(const evidence::Burden& burden) {
  if (burden.days_an_hour > 0 && burden.limits.high < kUseless * burden.days_an_hour)
    return limits_words(burden.limits, 1000);
  return in_digits(1000 * burden.limits.low) + " and upwards: so few injuries set no useful limit above";
}

void add_days(const RateFlags& flags, EvidenceAnswer& answer) {
  const std::vector<double> days(flags.days.begin(), flags.days.end());
  const evidence::Burden burden = evidence::burden(days, flags.hours, flags.common.level());
  const double all = std::accumulate(days.begin(), days.end(), 0.0);
  const std::array<int, 4> bands = by_band(flags.days);
  answer.text += "\nDays lost: " + as_counted(all) + ", median " + as_counted(median(flags.days)) + " an injury; " +
                 per_1000_hours(burden.days_an_hour) + ", " + burden_limits_words(burden) +
                 ".\n(The wider of a gamma and a log-normal interval at each end; few long injuries make most of the "
                 "days,\nand where they are rare the true figure lies outside more often than said.)\n";
  std::vector<std::vector<std::string>> rows;
  Node band_node = Node::make_table();
  for (std::size_t i = 0; i < bands.size(); ++i) {
    rows.push_back({kBandWords[i], std::to_string(bands[i])});
    band_node.set(kBandKeys[i], Node::make_integer(bands[i]));
  }
  answer.text += in_columns(rows, "  ");
  Node node = Node::make_table();
  node.set("days", Node::make_integer(static_cast<std::int64_t>(all)));
  node.set("median_days", Node::make_real(median(flags.days)));
  node.set("days_per_1000_h", Node::make_real(1000 * burden.days_an_hour));
  node.set("limits_per_1000_h", interval_node(burden.limits, 1000));
  node.set("injuries_by_days", std::move(band_node));
  answer.node.set("burden", std::move(node));
}

EvidenceAnswer rate(const RateFlags& flags) {
  const double level = flags.common.level();
  const evidence::Interval exact = evidence::exact_limits(flags.events, level);
  const evidence::Interval mid_p = evidence::mid_p_limits(flags.events, level);
  const double per_hour = static_cast<double>(flags.events) / flags.hours;
  EvidenceAnswer out;
  out.text = counted(flags.events, "event", "events") + " in " + hours_words(flags.hours) + ": " +
             per_1000_hours(per_hour) + ".\n\n";
  out.text += in_columns(
      {{level_words(level) + " limits", limits_words(exact, 1000 / flags.hours),
        "exact: holds the true rate at least that often"},
       {"a little closer", limits_words(mid_p, 1000 / flags.hours), "mid-P: holds it that often on the average"}},
      "  ");
  out.node = evidence_node("rate", level);
  out.node.set("events", Node::make_integer(flags.events));
  out.node.set("hours", Node::make_real(flags.hours));
  out.node.set("per_1000_h", Node::make_real(1000 * per_hour));
  out.node.set("exact", interval_node(exact, 1000 / flags.hours));
  out.node.set("mid_p", interval_node(mid_p, 1000 / flags.hours));
  if (!flags.days.empty()) add_days(flags, out);
  return out;
}

Result<EvidenceAnswer> checked_rate(const RateFlags& flags) {
  if (!flags.days.empty() && static_cast<std::int64_t>(flags.days.size()) != flags.events)
    return Fault{FaultCode::kContradiction,
                 {"", 0, 0, "--days"},
                 std::to_string(flags.days.size()) + " numbers",
                 "as many as events: " + std::to_string(flags.events),
                 "one number of days an injury, 0 where no day was lost"};
  return rate(flags);
}

}  // namespace

void add_rate_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("rate", "events by hours, with limits; days lost too");
  const auto flags = std::make_shared<RateFlags>();
  command->add_option("--events", flags->events, "how many there were")
      ->required()
      ->check(CLI::Range(std::int64_t{0}, std::int64_t{1'000'000}));
  command->add_option("--hours", flags->hours, "player-hours they were counted in")
      ->required()
      ->check(CLI::Range(1e-6, kMostHours));
  command->add_option("--days", flags->days, "days lost to each, such as 3,0,12")
      ->delimiter(',')
      ->check(CLI::Range(0, 5000));
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] { exit_status = show(checked_rate(*flags), flags->common.json); });
}

}  // namespace lanework::cli
