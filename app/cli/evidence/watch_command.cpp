#include <CLI/CLI.hpp>
#include <cmath>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/table_file.h"
#include "core/evidence/weekly_watch.h"

namespace lanework::cli {
namespace {

constexpr int kParts = 20;
constexpr int kMostDecision = 4000;
constexpr std::size_t kMostWeeks = 600;

struct WatchFlags {
  EvidenceFlags common;
  std::string data;
  NamedCountColumns columns{"week"};
  double usual_per_1000_h = 0;
  double times = 2;
  double false_alarms = 0.5;
};

struct Watched {
  NamedCounts weeks;
  evidence::WatchPlan plan;
  std::vector<evidence::WatchedWeek> path;
  double false_alarms = 0;
  double true_alarms = 0;
};

Result<Watched> watch_table(const WatchFlags& flags) {
  const auto table = table_file(flags.data);
  if (!table) return table.faults();
  auto weeks = named_counts(table.value(), flags.columns);
  if (!weeks) return weeks.faults();
  if (weeks.value().names.size() > kMostWeeks)
    return Fault{FaultCode::kOutOfRange,
                 {flags.data, 0, 0, flags.columns.name},
                 std::to_string(weeks.value().names.size()) + " weeks",
                 "at most " + std::to_string(kMostWeeks),
                 {}};
  if (flags.times == 1)
    return Fault{FaultCode::kOutOfRange, {"", 0, 0, "--times"}, "1", "above 1 to watch for more, below for fewer", {}};
  Watched out{std::move(weeks).value(), {}, {}};
  const double usual = flags.usual_per_1000_h / 1000;
  std::vector<double> hours;
  std::vector<evidence::Counted> counts;
  for (const evidence::Exposed& week : out.weeks.counts) {
    hours.push_back(week.hours);
    counts.push_back({week.events, week.hours});
  }
  out.plan = {usual, usual * flags.times, kParts, 1};
  out.plan.decision = evidence::decision_for_alarms(out.plan, hours, flags.false_alarms, kMostDecision);
  if (out.plan.decision > kMostDecision)
    return Fault{FaultCode::kOutOfRange,
                 {"", 0, 0, "--false-alarms"},
                 in_digits(flags.false_alarms),
                 "more; so few cannot be had with so many events a week",
                 {}};
  out.path = evidence::watch_weeks(out.plan, counts);
  out.false_alarms = evidence::alarms_expected(out.plan, hours, usual);
  out.true_alarms = evidence::alarms_expected(out.plan, hours, usual * flags.times);
  return out;
}

std::string watch_words(const Watched& watched, const WatchFlags& flags) {
  std::vector<std::vector<std::string>> rows = {{flags.columns.name, "events", "expected", "sum", ""}};
  int last_alarm = -1;
  for (std::size_t i = 0; i < watched.path.size(); ++i) {
    const evidence::WatchedWeek& week = watched.path[i];
    rows.push_back({watched.weeks.names[i], std::to_string(week.events), in_digits(week.expected), in_digits(week.sum),
                    week.alarm ? "look into it" : ""});
    if (week.alarm) last_alarm = static_cast<int>(i);
  }
  const auto weeks = static_cast<int>(watched.path.size());
  std::string out = in_columns(rows, "  ") + "\n";
  out += last_alarm < 0 ? "No alarm in " + counted(weeks, "week", "weeks") + ".\n"
                        : "The last alarm was in '" + watched.weeks.names[static_cast<std::size_t>(last_alarm)] +
                              "', " + counted(weeks - 1 - last_alarm, "week", "weeks") + " before the end.\n";
  out += "The alarm is given when the sum reaches " +
         in_digits(static_cast<double>(watched.plan.decision) / watched.plan.parts) + ". Where nothing has changed, " +
         in_digits(watched.false_alarms, 2) +
         " alarms are to be expected in weeks like these by chance alone;\nwhere the rate is " +
         in_digits(flags.times) + " times the usual one throughout, " + in_digits(watched.true_alarms, 2) +
         ". An alarm is a reason to look, not a finding.\n";
  return out;
}

Result<EvidenceAnswer> watch(const WatchFlags& flags) {
  const auto read = watch_table(flags);
  if (!read) return read.faults();
  const Watched& watched = read.value();
  EvidenceAnswer out;
  out.node = evidence_node("watch", flags.common.level());
  out.node.set("usual_per_1000_h", Node::make_real(flags.usual_per_1000_h));
  out.node.set("times", Node::make_real(flags.times));
  out.node.set("decision", Node::make_real(static_cast<double>(watched.plan.decision) / watched.plan.parts));
  out.node.set("false_alarms_expected", Node::make_real(watched.false_alarms));
  out.node.set("alarms_expected_if_changed", Node::make_real(watched.true_alarms));
  Node list = Node::make_array();
  for (std::size_t i = 0; i < watched.path.size(); ++i) {
    const evidence::WatchedWeek& week = watched.path[i];
    Node row = Node::make_table();
    row.set("week", Node::make_text(watched.weeks.names[i]));
    row.set("events", Node::make_integer(week.events));
    row.set("hours", Node::make_real(week.hours));
    row.set("expected", Node::make_real(week.expected));
    row.set("sum", Node::make_real(week.sum));
    row.set("alarm", Node::make_boolean(week.alarm));
    list.items.push_back(std::move(row));
  }
  out.node.set("weeks", std::move(list));
  out.text = watch_words(watched, flags);
  return out;
}

}  // namespace

void add_watch_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("watch", "week by week: has the rate changed?");
  const auto flags = std::make_shared<WatchFlags>();
  command->add_option("--data", flags->data, "a table, one row a week, in their order")->required();
  command->add_option("--usual", flags->usual_per_1000_h, "the usual rate per 1000 hours, from other seasons")
      ->required()
      ->check(CLI::Range(1e-4, 1000.0));
  command->add_option("--times", flags->times, "the change that is to be seen soon: so many times the usual rate (2)")
      ->check(CLI::Range(0.1, 10.0));
  command
      ->add_option("--false-alarms", flags->false_alarms,
                   "alarms by chance alone that are put up with in these weeks (0.5)")
      ->check(CLI::Range(0.01, 5.0));
  command->add_option("--week", flags->columns.name, "the column of weeks");
  command->add_option("--events", flags->columns.events, "the column of events");
  command->add_option("--hours", flags->columns.hours, "the column of player-hours");
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] { exit_status = show(watch(*flags), flags->common.json); });
}

}  // namespace lanework::cli
