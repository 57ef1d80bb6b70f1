#include "app/cli/evidence/seasons_answer.h"

#include <cmath>

#include "app/cli/columns.h"
#include "core/findings/claims.h"

namespace lanework::cli {
namespace {

using evidence::Exposed;
using findings::SeasonsRow;
using findings::StratifiedComparison;

Node counts_node(const Exposed& counts) {
  Node out = Node::make_table();
  out.set("events", Node::make_integer(counts.events));
  out.set("hours", Node::make_real(counts.hours));
  if (counts.hours > 0)
    out.set("per_1000_h", Node::make_real(1000 * static_cast<double>(counts.events) / counts.hours));
  return out;
}

Node row_node(const SeasonsRow& row) {
  Node out = Node::make_table();
  out.set("name", Node::make_text(row.label));
  out.set("before", counts_node(row.before));
  out.set("after", counts_node(row.after));
  if (!row.has_hours()) return out;
  if (std::isfinite(row.ratio)) out.set("ratio", Node::make_real(row.ratio));
  if (row.before.events + row.after.events > 0) out.set("limits", interval_node(row.exact.limits));
  out.set("difference_per_1000_h", Node::make_real(1000 * row.difference.per_hour));
  out.set("difference_limits", interval_node(row.difference.limits, 1000));
  return out;
}

Node rows_node(const std::vector<SeasonsRow>& rows) {
  Node out = Node::make_array();
  for (const SeasonsRow& row : rows) out.items.push_back(row_node(row));
  return out;
}

Node estimate_node(double estimate, const evidence::Interval& limits, double scale) {
  Node out = Node::make_table();
  out.set("estimate", Node::make_real(estimate * scale));
  out.set("limits", interval_node(limits, scale));
  return out;
}

Node comparison_node(const StratifiedComparison& c) {
  Node out = Node::make_table();
  out.set("strata", Node::make_integer(c.strata));
  out.set("squads", Node::make_integer(c.squads));
  out.set("hours_outside", Node::make_real(c.hours_outside));
  out.set("events_outside", Node::make_integer(c.events_outside));
  if (!c.ratio) return out;
  out.set("ratio", estimate_node(c.ratio->estimate, c.ratio->limits, 1));
  out.set("difference_per_1000_h", estimate_node(c.difference->estimate, c.difference->limits, 1000));
  if (!c.ratio_by_squads) return out;
  out.set("squads_left_out_in_turn", interval_node(c.ratio_by_squads->limits));
  out.set("difference_squads_left_out_in_turn", interval_node(c.difference_by_squads->limits, 1000));
  return out;
}

std::string rate_cell(const Exposed& counts) {
  return counts.hours > 0 ? in_digits(1000 * static_cast<double>(counts.events) / counts.hours) : "-";
}

std::string rows_words(const findings::TwoSeasons& found) {
  std::vector<std::vector<std::string>> table = {
      {"", "before", "hours", "in 1000 h", "after", "hours", "in 1000 h", "times", "limits", "difference", "limits"}};
  const auto add = [&](const SeasonsRow& row) {
    std::vector<std::string> cells = {row.label,
                                      std::to_string(row.before.events),
                                      as_counted(std::round(row.before.hours)),
                                      rate_cell(row.before),
                                      std::to_string(row.after.events),
                                      as_counted(std::round(row.after.hours)),
                                      rate_cell(row.after)};
    const bool any = row.has_hours() && row.before.events + row.after.events > 0;
    cells.push_back(any && std::isfinite(row.ratio) ? in_digits(row.ratio) : "-");
    cells.push_back(any ? limits_words(row.exact.limits) : "-");
    cells.push_back(any ? in_digits(1000 * row.difference.per_hour) : "-");
    cells.push_back(any ? limits_words(row.difference.limits, 1000) : "-");
    table.push_back(std::move(cells));
  };
  add(found.whole);
  for (const SeasonsRow& row : found.settings) add(row);
  for (const SeasonsRow& row : found.ages) add(row);
  return in_columns(table, "  ");
}

std::string outside_words(const StratifiedComparison& c) {
  if (c.hours_outside <= 0) return {};
  return " " + hours_words(std::round(c.hours_outside)) + " and " + counted(c.events_outside, "injury", "injuries") +
         " have nothing like them in the other season and are left out.";
}

std::string comparison_words(const char* what, const StratifiedComparison& c, double level) {
  if (!c.ratio) return std::string(what) + ": cannot be estimated, since one season has no injury there.\n";
  std::string out = std::string(what) + ": " + in_digits(c.ratio->estimate) + " times, " + level_words(level) +
                    " limits " + limits_words(c.ratio->limits) + " (Mantel-Haenszel)";
  out += c.ratio_by_squads
             ? "; squads counted as squads, each left out in turn, " + limits_words(c.ratio_by_squads->limits) + "."
             : "; too few squads or injuries to count squads as squads.";
  out += " Difference: " + per_1000_hours(c.difference->estimate) + ", " + limits_words(c.difference->limits, 1000);
  if (c.difference_by_squads) out += "; squads as squads, " + limits_words(c.difference_by_squads->limits, 1000);
  return out + "." + outside_words(c) + "\n";
}

std::string standardised_words(const findings::SeasonsStandardised& s, double level) {
  std::string out = "As if the hours had been shared out as before: " + per_1000_hours(s.after.rate) + " after (" +
                    level_words(level) + " limits " + limits_words(s.after.limits, 1000) + "), " +
                    per_1000_hours(s.before) + " before.";
  if (s.share_of_hours < 0.995)
    out += " That is of the " + evidence::percent(s.share_of_hours) +
           " of the hours before whose ages and settings are there after, too.";
  return out + "\n";
}

// What the like-with-like figure allows, by its wider limits.
std::string verdict_words(const StratifiedComparison& c) {
  if (!c.ratio_by_squads) return "Too early to tell whether there were fewer injuries or more.\n";
  switch (findings::verdict(c.ratio_limits())) {
    case findings::Verdict::kFewer:
      return "Like with like, fewer injuries were written down in the second season.\n";
    case findings::Verdict::kMore:
      return "Like with like, more injuries were written down in the second season.\n";
    case findings::Verdict::kNoneThatMatters:
      return "No difference that matters is seen.\n";
    case findings::Verdict::kTooEarly:
      break;
  }
  return "Too early to tell whether there were fewer injuries or more: " + limits_words(c.ratio_limits()) +
         " times are all possible.\n";
}

constexpr const char* kCaution =
    "Between two seasons much changes at once: who writes down hours and injuries and how well, players, coaches, "
    "pitches, weather.\nA change from one to the other shows no cause. Compare how complete the two seasons' records "
    "are ('lanework evidence import --dry-run') first.\n";

}  // namespace

EvidenceAnswer seasons_answer(const findings::TwoSeasons& found, double level) {
  EvidenceAnswer out;
  out.node = evidence_node("seasons", level);
  out.node.set("estimated", Node::make_boolean(true));
  out.node.set("whole", row_node(found.whole));
  out.node.set("settings", rows_node(found.settings));
  out.node.set("age_bands", rows_node(found.ages));
  out.node.set("strata_by_setting", Node::make_boolean(found.by_setting));
  out.node.set("like_with_like", comparison_node(found.like_with_like));
  out.node.set("within_squads", comparison_node(found.within_squads));
  out.node.set("squads_in_both", Node::make_integer(found.squads_in_both));
  out.node.set("squads_before_only", Node::make_integer(found.squads_before_only));
  out.node.set("squads_after_only", Node::make_integer(found.squads_after_only));
  out.text = rows_words(found) + "\n" +
             comparison_words(found.by_setting ? "Ages and settings, like with like" : "Ages, like with like",
                              found.like_with_like, level);
  if (found.squads_in_both > 0)
    out.text += comparison_words(
        (counted(found.squads_in_both, "squad", "squads") + " in both seasons, each against itself").c_str(),
        found.within_squads, level);
  else
    out.text += "No squad has hours in both seasons under the same id.\n";
  if (found.standardised) {
    const findings::SeasonsStandardised& s = *found.standardised;
    Node node = Node::make_table();
    node.set("before_per_1000_h", Node::make_real(1000 * s.before));
    node.set("after_per_1000_h", estimate_node(s.after.rate, s.after.limits, 1000));
    node.set("share_of_hours", Node::make_real(s.share_of_hours));
    out.node.set("standardised", std::move(node));
    out.text += standardised_words(s, level);
  }
  out.text += "\n" + verdict_words(found.like_with_like) + kCaution;
  return out;
}

}  // namespace lanework::cli
