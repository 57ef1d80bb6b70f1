#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <cmath>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/table_file.h"
#include "core/evidence/agreement_limits.h"
#include "core/evidence/reliability.h"

namespace lanework::cli {
namespace {

struct AgreeFlags {
  EvidenceFlags common;
  std::string data;
  std::vector<std::string> scores;
  std::vector<std::string> classes;
  std::vector<std::string> order;
  std::string weights = "equal";
};

constexpr std::size_t kMostClasses = 50;

Result<evidence::Scores> read_scores(const AgreeFlags& flags, const evidence::DataTable& table) {
  evidence::Scores scores(table.rows(), std::vector<double>());
  Faults faults;
  for (const std::string& name : flags.scores) {
    const auto column = evidence::find_column(table, name, "--scores");
    const auto numbers = column ? evidence::numbers_of(table, column.value(), {-1e9, 1e9, "a score, as a number"})
                                : Result<std::vector<double>>(column.faults());
    if (!numbers) {
      faults.insert(faults.end(), numbers.faults().begin(), numbers.faults().end());
      continue;
    }
    for (std::size_t row = 0; row < table.rows(); ++row) scores[row].push_back(numbers.value()[row]);
  }
  if (!faults.empty()) return faults;
  return scores;
}

std::string why_no_correlation(const evidence::Scores& scores) {
  if (scores.size() < 2) return "there is one row only";
  if (scores.front().size() < 2) return "there is one column of scores only";
  const double first = scores.front().front();
  for (const std::vector<double>& row : scores) {
    for (const double score : row)
      if (score != first) return {};
  }
  return "all scores are alike";
}

evidence::Correlations with_limits_that_hold(const evidence::Scores& scores, double level) {
  evidence::Correlations out = evidence::intraclass_correlations(scores, level);
  const std::size_t raters = scores.front().size();
  const evidence::Interval one = evidence::agreement_limits(out.mean_squares, scores.size(), raters, level);
  out.one_agreement.limits = one;
  out.mean_agreement.limits = {evidence::correlation_of_mean(one.low, raters),
                               evidence::correlation_of_mean(one.high, raters)};
  return out;
}

struct Kind {
  const char* key;
  const char* words;
  const evidence::Correlation evidence::Correlations::*which;
};
constexpr std::array<Kind, 6> kKinds = {{
    {"one_random_way", "one score, raters of its own each (1,1)", &evidence::Correlations::one_random_way},
    {"one_agreement", "one score, agreement (2,1)", &evidence::Correlations::one_agreement},
    {"one_consistency", "one score, consistency (3,1)", &evidence::Correlations::one_consistency},
    {"mean_random_way", "mean of all, raters of its own each (1,k)", &evidence::Correlations::mean_random_way},
    {"mean_agreement", "mean of all, agreement (2,k)", &evidence::Correlations::mean_agreement},
    {"mean_consistency", "mean of all, consistency (3,k)", &evidence::Correlations::mean_consistency},
}};

void add_error(const char* key, const char* words, double error, double level, EvidenceAnswer& out) {
  const double change = evidence::detectable_change(error, level);
  Node node = Node::make_table();
  node.set("error", Node::make_real(error));
  node.set("detectable_change", Node::make_real(change));
  out.node.set(key, std::move(node));
  out.text += std::string("Standard error of one score, ") + words + ": " + in_digits(error) +
              "; a change of less than " + in_digits(change) + " may be error.\n";
}

Result<EvidenceAnswer> agree_on_scores(const AgreeFlags& flags, const evidence::DataTable& table) {
  const auto read = read_scores(flags, table);
  if (!read) return read.faults();
  const double level = flags.common.level();
  if (const std::string why = why_no_correlation(read.value()); !why.empty()) return cannot("agree", level, why);
  const evidence::Correlations found = with_limits_that_hold(read.value(), level);
  EvidenceAnswer out;
  out.node = evidence_node("agree", level);
  out.node.set("estimated", Node::make_boolean(true));
  Node kinds = Node::make_table();
  std::vector<std::vector<std::string>> rows;
  for (const Kind& kind : kKinds) {
    const evidence::Correlation& one = found.*kind.which;
    if (!std::isfinite(one.estimate)) continue;
    rows.push_back({kind.words, in_digits(one.estimate), limits_words(one.limits)});
    Node node = Node::make_table();
    node.set("estimate", Node::make_real(one.estimate));
    node.set("limits", interval_node(one.limits));
    kinds.set(kind.key, std::move(node));
  }
  out.node.set("correlations", std::move(kinds));
  out.text = "Intraclass correlations of " + std::to_string(read.value().size()) + " rows by " +
             std::to_string(flags.scores.size()) + " raters, " + level_words(level) + " limits:\n" +
             in_columns(rows, "  ") +
             "The limits of (2,1) and (2,k) are generalised ones, which hold with few raters too.\n\n";
  add_error("consistency", "raters' levels left aside", evidence::error_of_consistency(found.mean_squares), level, out);
  add_error("agreement", "raters' levels counted in",
            evidence::error_of_agreement(found.mean_squares, read.value().size()), level, out);
  return out;
}

struct TwoRaters {
  std::vector<std::string> names;
  evidence::Classed counts;
};

Result<TwoRaters> read_classes(const AgreeFlags& flags, const evidence::DataTable& table) {
  const auto first = names_column(table, flags.classes[0]);
  if (!first) return first.faults();
  const auto second = names_column(table, flags.classes[1]);
  if (!second) return second.faults();
  TwoRaters out;
  out.names = flags.order;
  const auto place = [&](const std::string& name) {
    return static_cast<std::size_t>(std::find(out.names.begin(), out.names.end(), name) - out.names.begin());
  };
  if (flags.order.empty()) {
    out.names = first.value();
    out.names.insert(out.names.end(), second.value().begin(), second.value().end());
    std::sort(out.names.begin(), out.names.end());
    out.names.erase(std::unique(out.names.begin(), out.names.end()), out.names.end());
  }
  if (out.names.size() > kMostClasses)
    return Fault{FaultCode::kOutOfRange,
                 {table.file, 0, 0, flags.classes[0]},
                 std::to_string(out.names.size()) + " classes",
                 "at most " + std::to_string(kMostClasses),
                 {}};
  out.counts.assign(out.names.size(), std::vector<double>(out.names.size(), 0));
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::size_t one = place(first.value()[row]);
    const std::size_t other = place(second.value()[row]);
    if (one == out.names.size() || other == out.names.size())
      return Fault{FaultCode::kUnknownName,
                   {table.file, table.lines[row], 0, flags.classes[one == out.names.size() ? 0 : 1]},
                   quote(one == out.names.size() ? first.value()[row] : second.value()[row]),
                   "a class of --order",
                   {}};
    ++out.counts[one][other];
  }
  return out;
}

bool one_class_only(const evidence::Classed& counts) {
  int used = 0;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    double sum = 0;
    for (std::size_t j = 0; j < counts.size(); ++j) sum += counts[i][j] + counts[j][i];
    if (sum > 0) ++used;
  }
  return used < 2;
}

Result<EvidenceAnswer> agree_on_classes(const AgreeFlags& flags, const evidence::DataTable& table) {
  if (flags.weights != "equal" && flags.order.empty())
    return Fault{FaultCode::kMissing,
                 {"", 0, 0, "--order"},
                 "nothing",
                 "the classes in their order, such as few,half,most: weights go by it",
                 {}};
  const auto read = read_classes(flags, table);
  if (!read) return read.faults();
  const double level = flags.common.level();
  if (one_class_only(read.value().counts)) return cannot("agree", level, "everything is in one class");
  const std::size_t classes = read.value().names.size();
  const evidence::AgreementWeights weights = flags.weights == "linear"      ? evidence::linear_weights(classes)
                                             : flags.weights == "quadratic" ? evidence::quadratic_weights(classes)
                                                                            : evidence::only_equal(classes);
  const evidence::Kappa found = evidence::kappa(read.value().counts, weights, level);
  EvidenceAnswer out;
  out.node = evidence_node("agree", level);
  out.node.set("estimated", Node::make_boolean(true));
  out.node.set("weights", Node::make_text(flags.weights));
  out.node.set("kappa", Node::make_real(found.estimate));
  out.node.set("error", Node::make_real(found.error));
  out.node.set("limits", interval_node(found.limits));
  out.text = "Agreement beyond chance (kappa, " + flags.weights + " weights): " + in_digits(found.estimate) + ", " +
             level_words(level) + " limits " + limits_words(found.limits) + ", of " + std::to_string(table.rows()) +
             " rows in " + std::to_string(classes) + " classes.\n1 is full agreement, 0 what chance would make.\n";
  return out;
}

Result<EvidenceAnswer> agree(const AgreeFlags& flags) {
  const auto table = table_file(flags.data);
  if (!table) return table.faults();
  if (flags.classes.empty()) return agree_on_scores(flags, table.value());
  return agree_on_classes(flags, table.value());
}

}  // namespace

void add_agree_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("agree", "do raters, or two days, agree?");
  const auto flags = std::make_shared<AgreeFlags>();
  command->add_option("--data", flags->data, "a table, one row a subject")->required();
  CLI::Option* scores = command->add_option("--scores", flags->scores, "columns of scores, one a rater or day");
  scores->delimiter(',');
  CLI::Option* classes = command->add_option("--classes", flags->classes, "two columns of classes, one a rater");
  classes->delimiter(',')->expected(2)->excludes(scores);
  command->add_option("--order", flags->order, "the classes in their order")->delimiter(',');
  command->add_option("--weights", flags->weights, "equal (only the same counts), linear or quadratic")
      ->check(CLI::IsMember({"equal", "linear", "quadratic"}));
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] {
    if (flags->scores.empty() && flags->classes.empty()) throw CLI::RequiredError("--scores or --classes");
    exit_status = show(agree(*flags), flags->common.json);
  });
}

}  // namespace lanework::cli
