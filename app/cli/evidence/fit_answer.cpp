#include "app/cli/evidence/fit_answer.h"

#include <cmath>

#include "app/cli/columns.h"
#include "core/evidence/mixed/term_curve.h"

namespace lanework::cli {
namespace {

using evidence::BuiltFrame;
using evidence::CountFamily;
using evidence::CountModel;
using evidence::Interval;

// Standard errors away from 1 from which counts are said to vary more than by chance: own judgement.
constexpr double kMuchDispersion = 3;
// Of the log likelihood still to gain, below which a fit is called finished: own judgement.
constexpr double kLittleLeft = 1e-6;
constexpr double kLittleBend = 1e-8;

bool is_sound(const evidence::Judged& judged) {
  return judged.converged && judged.left_to_gain < kLittleLeft && judged.least_bend > kLittleBend;
}

Interval as_ratios(const Interval& limits) { return {std::exp(limits.low), std::exp(limits.high)}; }

// A curve's columns say nothing one by one.
bool is_of_curve(const BuiltFrame& built, std::size_t column) {
  for (const evidence::FrameTerm& term : built.terms)
    if (term.curve && column >= term.first && column < term.first + term.count) return true;
  return false;
}

// At the knots, against the middle one.
std::vector<evidence::CurvePoint> points_of(const CountModel& model, const evidence::FrameTerm& term) {
  const std::vector<double>& knots = term.curve->knots();
  return evidence::term_curve(model, term, knots, knots[knots.size() / 2]);
}

std::string curve_words(const CountModel& model, const evidence::FrameTerm& term) {
  std::vector<std::vector<std::string>> rows;
  for (const evidence::CurvePoint& point : points_of(model, term)) {
    const bool middle = point.limits.low == point.limits.high;
    rows.push_back({as_counted(point.value), middle ? "1" : in_digits(point.times),
                    middle ? "what the others are set against" : limits_words(point.limits)});
  }
  return "\nAlong " + term.column + ", times:\n" + in_columns(rows, "  ");
}

Node curve_node(const CountModel& model, const evidence::FrameTerm& term) {
  Node points = Node::make_array();
  for (const evidence::CurvePoint& point : points_of(model, term)) {
    Node row = Node::make_table();
    row.set("value", Node::make_real(point.value));
    row.set("times", Node::make_real(point.times));
    row.set("limits", interval_node(point.limits));
    points.items.push_back(std::move(row));
  }
  Node out = Node::make_table();
  out.set("column", Node::make_text(term.column));
  out.set("points", std::move(points));
  return out;
}

Node coefficient_node(const evidence::CoefficientFound& found) {
  Node out = Node::make_table();
  out.set("name", Node::make_text(found.name));
  out.set("estimate", Node::make_real(found.estimate));
  out.set("error", Node::make_real(found.error));
  out.set("limits", interval_node(found.limits));
  out.set("p", Node::make_real(found.p));
  out.set("times", Node::make_real(std::exp(found.estimate)));
  return out;
}

Node spread_node(const evidence::SpreadFound& spread) {
  Node out = Node::make_table();
  if (std::isfinite(spread.estimate)) out.set("estimate", Node::make_real(spread.estimate));
  if (spread.limits) out.set("limits", interval_node(*spread.limits));
  out.set("at_edge", Node::make_boolean(!spread.limits));
  return out;
}

Node effects_node(const std::vector<std::string>& names, const std::vector<evidence::RandomEffect>& effects) {
  Node out = Node::make_array();
  for (std::size_t i = 0; i < names.size() && i < effects.size(); ++i) {
    Node row = Node::make_table();
    row.set("name", Node::make_text(names[i]));
    row.set("mode", Node::make_real(effects[i].mode));
    row.set("variance", Node::make_real(effects[i].variance));
    out.items.push_back(std::move(row));
  }
  return out;
}

Node fit_node(const BuiltFrame& built, const CountModel& model, bool effects) {
  Node out = evidence_node("fit", model.asked.level);
  out.set("estimated", Node::make_boolean(true));
  out.set("family", Node::make_text(model.asked.family == CountFamily::kPoisson ? "poisson" : "nb2"));
  out.set("quadrature", Node::make_integer(model.asked.points));
  out.set("rows", Node::make_integer(static_cast<std::int64_t>(built.frame.rows())));
  out.set("rows_without_hours", Node::make_integer(static_cast<std::int64_t>(built.rows_without_hours)));
  out.set("hours", Node::make_real(built.hours));
  Node coefficients = Node::make_array();
  for (const auto& found : model.coefficients) coefficients.items.push_back(coefficient_node(found));
  out.set("coefficients", std::move(coefficients));
  Node curves = Node::make_array();
  for (const evidence::FrameTerm& term : built.terms)
    if (term.curve) curves.items.push_back(curve_node(model, term));
  out.set("curves", std::move(curves));
  if (model.squads) out.set("squad_deviation", spread_node(*model.squads));
  if (model.clubs) out.set("club_deviation", spread_node(*model.clubs));
  if (model.size) out.set("size", spread_node(*model.size));
  out.set("log_likelihood", Node::make_real(model.log_likelihood));
  Node tests = Node::make_array();
  for (const evidence::LikelihoodRatio& test : model.tests) {
    Node row = Node::make_table();
    row.set("without", Node::make_text(test.without));
    row.set("chi_squared", Node::make_real(test.chi_squared));
    row.set("degrees_of_freedom", Node::make_integer(test.degrees));
    row.set("p", Node::make_real(test.p));
    tests.items.push_back(std::move(row));
  }
  out.set("likelihood_ratio_tests", std::move(tests));
  if (model.asked.family == CountFamily::kPoisson) out.set("dispersion", Node::make_real(model.dispersion));
  Node judged = Node::make_table();
  judged.set("sound", Node::make_boolean(is_sound(model.judged)));
  judged.set("left_to_gain", Node::make_real(model.judged.left_to_gain));
  judged.set("least_bend", Node::make_real(model.judged.least_bend));
  judged.set("steps", Node::make_integer(model.judged.steps));
  out.set("judged", std::move(judged));
  if (!effects) return out;
  out.set("squad_effects", effects_node(built.squads, model.squad_effects));
  out.set("club_effects", effects_node(built.clubs, model.club_effects));
  return out;
}

std::string coefficients_words(const BuiltFrame& built, const CountModel& model) {
  std::vector<std::vector<std::string>> rows = {
      {"", "times", level_words(model.asked.level) + " limits", "p", "coefficient", "error"}};
  for (std::size_t c = 0; c < model.coefficients.size(); ++c) {
    if (is_of_curve(built, c)) continue;
    const evidence::CoefficientFound& found = model.coefficients[c];
    const bool intercept = found.name == "intercept";
    rows.push_back({found.name, intercept ? "-" : in_digits(std::exp(found.estimate)),
                    intercept ? "-" : limits_words(as_ratios(found.limits)), intercept ? "-" : p_words(found.p),
                    in_digits(found.estimate, 4), in_digits(found.error, 4)});
  }
  std::string out = in_columns(rows, "  ");
  out +=
      "\n'times' is what one more of a number, or a category instead of its reference, multiplies the rate by, the "
      "rest alike.\n";
  for (const evidence::FrameTerm& term : built.terms)
    if (term.kind == evidence::TermKind::kCategory)
      out += "Reference of " + term.column + ": " + term.reference + ".\n";
  for (const evidence::FrameTerm& term : built.terms)
    if (term.curve) out += curve_words(model, term);
  return out;
}

std::string spread_words(const char* of, const evidence::SpreadFound& spread) {
  if (!spread.limits)
    return std::string("Between ") + of + " no difference beyond chance is seen (standard deviation 0).\n";
  return std::string("Between ") + of + " the log rate differs with a standard deviation of " +
         in_digits(spread.estimate) + " (" + limits_words(*spread.limits) + ").\n";
}

std::string size_words(const evidence::SpreadFound& size) {
  if (!size.limits) return "Counts vary no more than by chance: the Poisson family does.\n";
  return "Counts vary more than by chance: variance mean + mean^2 / " + in_digits(size.estimate) + " (" +
         limits_words(*size.limits) + ").\n";
}

std::string judged_words(const evidence::Judged& judged) {
  if (is_sound(judged))
    return "The fit is finished: one more step would gain less than a\nmillionth, and it bends downwards on every "
           "side.\n";
  if (judged.least_bend <= kLittleBend)
    return "Mind: the likelihood is flat in some direction, so that limits mean little; take fewer columns.\n";
  return "Mind: the fit stopped before its top; take fewer columns, or give numbers in a handier unit.\n";
}

std::string tests_words(const CountModel& model) {
  std::vector<std::vector<std::string>> rows;
  for (const evidence::LikelihoodRatio& test : model.tests)
    rows.push_back({test.without, "chi-squared " + in_digits(test.chi_squared) + " on " + std::to_string(test.degrees),
                    p_words(test.p)});
  if (rows.empty()) return {};
  return "\nWhat the model loses without (likelihood ratio):\n" + in_columns(rows, "  ");
}

std::string fit_words(const BuiltFrame& built, const CountModel& model) {
  double events = 0;
  for (const double one : built.frame.events) events += one;
  const auto rows = static_cast<long long>(built.frame.rows());
  std::string out = counted(static_cast<long long>(events), "event", "events") + " in " + hours_words(built.hours) +
                    ", " + counted(rows, "row", "rows");
  if (!built.squads.empty()) out += ", " + counted(static_cast<long long>(built.squads.size()), "squad", "squads");
  if (!built.clubs.empty()) out += ", " + counted(static_cast<long long>(built.clubs.size()), "club", "clubs");
  out += built.rows_without_hours == 0
             ? ".\n\n"
             : "; " + counted(static_cast<long long>(built.rows_without_hours), "row", "rows") +
                   " without hours left out.\n\n";
  out += coefficients_words(built, model) + "\n";
  if (model.squads) out += spread_words("squads", *model.squads);
  if (model.clubs) out += spread_words("clubs", *model.clubs);
  if (model.size) out += size_words(*model.size);
  if (model.dispersion_errors > kMuchDispersion)
    out += "Mind: counts vary more than the model allows (" + in_digits(model.dispersion) +
           " times), so that limits are too close; take --family nb2.\n";
  out += tests_words(model) + "\nLog likelihood " + in_digits(model.log_likelihood, 9) + " (" +
         (model.asked.points > 1 ? std::to_string(model.asked.points) + " points" : "Laplace's method") + "). " +
         judged_words(model.judged) + "What goes together need not be cause and effect.\n";
  return out;
}

}  // namespace

EvidenceAnswer fit_answer(const BuiltFrame& built, const CountModel& model, bool effects) {
  EvidenceAnswer out;
  out.node = fit_node(built, model, effects);
  out.text = fit_words(built, model);
  if (!effects) return out;
  std::vector<std::vector<std::string>> rows = {{"squad", "times", "variance of the log"}};
  for (std::size_t i = 0; i < built.squads.size() && i < model.squad_effects.size(); ++i)
    rows.push_back({built.squads[i], in_digits(std::exp(model.squad_effects[i].mode)),
                    in_digits(model.squad_effects[i].variance)});
  out.text += "\n" + in_columns(rows, "  ");
  return out;
}

}  // namespace lanework::cli
