#include "core/findings/comparison_claims.h"

#include <algorithm>
#include <cmath>

#include "core/evidence/number_words.h"
#include "core/findings/small_cells.h"

namespace lanework::findings {
namespace {

using evidence::as_counted;
using evidence::counted;
using evidence::grouped;
using evidence::in_digits;
using evidence::level_words;
using evidence::limits_words;

// '2.4 %'.
std::string small_percent(double share) { return in_digits(100 * share, 2) + " %"; }

std::string small_percents(const evidence::Interval& limits) {
  return in_digits(100 * limits.low, 2) + " to " + small_percent(limits.high);
}

// '0.3 more', '0.1 fewer'.
std::string more_or_fewer(double difference) {
  return as_counted(std::round(100 * std::abs(difference)) / 100) + (difference < 0 ? " fewer" : " more");
}

std::string from_to(const evidence::Interval& limits) {
  return more_or_fewer(limits.low) + " to " + more_or_fewer(limits.high);
}

// Some of the table's counts are kept from this reader; a sum that holds them would give them away.
bool any_withheld(const RateTable& table, Reader reader) {
  std::vector<int> counts;
  for (const RateRow& row : table.rows) counts.push_back(row.injuries);
  const std::vector<bool> hidden = withheld_rows(counts, reader);
  return std::find(hidden.begin(), hidden.end(), true) != hidden.end();
}

}  // namespace

std::vector<std::string> prevalence_sentences(const SeasonFindings& found, Reader reader) {
  if (!found.prevalence || is_withheld(reader, found.prevalence->players_out)) return {};
  const Prevalence& p = *found.prevalence;
  const std::string players = grouped(p.players) + (p.listed ? " players on the books" : " players");
  if (p.season.days_out == 0) return {"On no day was a player of " + players + " on record as out with an injury."};
  std::string text = "On a day of the season " + small_percent(p.season.share()) + " of " + players +
                     " were out with an injury, on the average";
  text += p.season.limits ? " (" + level_words(found.asked.level) + " limits " + small_percents(*p.season.limits) + ")."
                          : "; too few were out for limits.";
  if (reader == Reader::kLead && p.weeks.size() > 1) {
    const auto worst = std::max_element(p.weeks.begin(), p.weeks.end(),
                                        [](const ShareOut& a, const ShareOut& b) { return a.share() < b.share(); });
    text += " Most were out in the week from " + to_words(worst->from) + ": " + small_percent(worst->share()) + ".";
  }
  if (p.injuries_left_out > 0)
    text += " Not in it: " + count_for(reader, p.injuries_left_out) +
            (p.injuries_left_out == 1 ? " injury" : " injuries") + " of players who were not on the books.";
  return {text};
}

std::vector<std::string> recurrent_sentences(const SeasonFindings& found, Reader reader) {
  if (!found.recurrent || any_withheld(found.histories, reader)) return {};
  const RecurrentShare& r = *found.recurrent;
  return {"Of " + counted(r.known, "diagnosis", "diagnoses") + " whose history is known, " +
          (r.recurrent == 0 ? std::string("none") : std::to_string(r.recurrent)) +
          (r.recurrent == 1 ? " was" : " were") + " of a place and kind that the player had hurt before: " +
          small_percent(static_cast<double>(r.recurrent) / r.known) + " (" + level_words(found.asked.level) +
          " limits " + small_percents(r.limits) + ")."};
}

std::vector<std::string> taught_sentences(const SeasonFindings& found) {
  if (!found.taught || !found.taught->a_week) return {};
  const TaughtCoaches& t = *found.taught;
  const std::string means = in_digits(t.taught.warm_ups_a_week, 2) + " a week in " +
                            counted(t.taught.squads, "squad", "squads") + " after the coach was taught, " +
                            in_digits(t.not_taught.warm_ups_a_week, 2) + " in " +
                            counted(t.not_taught.squads, "squad", "squads") +
                            " without a day of teaching: " + more_or_fewer(t.a_week->difference) + " (" +
                            level_words(found.asked.level) + " limits " + from_to(t.a_week->limits) + ")";
  if (t.a_week->limits.low > 0)
    return {"Squads whose coach was taught did more warm-ups: " + means +
            ". This is described, not caused: who is sent to be taught may be keener."};
  if (t.a_week->limits.high < 0)
    return {"Squads whose coach was taught did fewer warm-ups: " + means +
            ". Look first at who was sent to be taught, and at who writes warm-ups down."};
  return {std::string(kTooEarlyToTell) + " whether squads whose coach was taught do more warm-ups: " + means +
          ", so that more and fewer are both possible."};
}

std::vector<std::string> often_sentences(const SeasonFindings& found, Reader reader) {
  const OftenOrNot& often = found.often;
  const StratifiedComparison& c = often.compared;
  if (c.one.hours <= 0 || c.other.hours <= 0) return {};
  if (is_withheld(reader, static_cast<int>(c.one.events)) || is_withheld(reader, static_cast<int>(c.other.events)))
    return {};
  const std::string start = "Weeks after about two or more warm-ups a week lately";
  if (!c.ratio_by_squads)
    return {start + " cannot be compared with the others, squads counted as squads: too few squads or injuries."};
  const evidence::Interval limits = c.ratio_limits();
  const std::string like = often.by_setting ? "ages and settings held alike" : "ages held alike";
  const std::string found_words = in_digits(c.ratio->estimate, 2) + " times the rate of the others, " + like + " (" +
                                  level_words(found.asked.level) + " limits " + limits_words(limits) + ")";
  switch (verdict(limits)) {
    case Verdict::kFewer: {
      std::string text = start + " had fewer injuries: " + found_words +
                         ". That the two go together does not show that the one makes the other.";
      if (often.needed && !often.needed->through_infinity)
        text += " If it were cause and effect: " +
                evidence::needed_words(*often.needed, {"injury", "injuries"}, "squads' seasons") + ", each of " +
                grouped(often.hours_a_squad_season) + " player-hours.";
      return {text};
    }
    case Verdict::kMore:
      return {start + " had more injuries: " + found_words +
              ". Look first at who writes what down, and at which squads were told to warm up because they had "
              "injuries."};
    case Verdict::kNoneThatMatters:
      return {start + " differ from the others by nothing that matters: " + found_words + "."};
    case Verdict::kTooEarly:
      break;
  }
  return {std::string(kTooEarlyToTell) +
          " whether weeks after about two or more warm-ups a week lately have fewer injuries: " + found_words + "."};
}

}  // namespace lanework::findings
