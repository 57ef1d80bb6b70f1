#include "core/findings/claims.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/evidence/number_words.h"
#include "core/findings/comparison_claims.h"

namespace lanework::findings {
namespace {

using evidence::as_counted;
using evidence::counted;
using evidence::grouped;
using evidence::in_digits;
using evidence::level_words;
using evidence::limits_words;
using evidence::percent;

// Shares of squad-weeks with hours below which the rest of the report may mislead: own judgement.
constexpr double kTooMuchMissing = 0.8;

double hours_of(records::PlayerMinutes minutes) { return static_cast<double>(minutes.count) / 60; }

// What is only roughly known, to two digits.
double roughly(double value) {
  if (value <= 0) return 0;
  const double scale = std::pow(10, std::floor(std::log10(value)) - 1);
  return std::round(value / scale) * scale;
}

struct Weeks {
  int with_rows = 0;
  int expected = 0;
};
Weeks weeks_of(const records::Completeness& completeness) {
  Weeks out;
  for (const records::SquadWeeks& squad : completeness.weeks) {
    out.with_rows += squad.with_rows;
    out.expected += squad.expected;
  }
  return out;
}

class Sentences {
 public:
  Sentences(const SeasonFindings& found, Reader reader) : found_(found), reader_(reader) {}

  std::vector<Claim> all() {
    completeness();
    rate();
    days();
    say_all(ClaimKind::kPrevalence, prevalence_sentences(found_, reader_));
    say_all(ClaimKind::kHistories, recurrent_sentences(found_, reader_));
    matches();
    reach();
    say_all(ClaimKind::kTaught, taught_sentences(found_));
    warm_ups();
    say_all(ClaimKind::kOften, often_sentences(found_, reader_));
    squads();
    watch();
    cautions();
    return std::move(out_);
  }

 private:
  const SeasonFindings& found_;
  Reader reader_;
  std::vector<Claim> out_;

  void say(ClaimKind kind, std::string sentence) { out_.push_back({kind, std::move(sentence)}); }
  void say_all(ClaimKind kind, std::vector<std::string> sentences) {
    for (std::string& sentence : sentences) say(kind, std::move(sentence));
  }
  [[nodiscard]] const RateRow& whole() const { return found_.whole.rows.front(); }

  void completeness() {
    const records::Completeness& c = found_.completeness;
    const Weeks weeks = weeks_of(c);
    if (weeks.expected > 0) {
      const double share = static_cast<double>(weeks.with_rows) / weeks.expected;
      std::string text = "Hours are on record for " + std::to_string(weeks.with_rows) + " of " +
                         std::to_string(weeks.expected) + " squad-weeks (" + percent(share) + ").";
      if (share < kTooMuchMissing) text += " So much is missing that all that follows may mislead.";
      say(ClaimKind::kCompleteness, text);
    }
    const double hours = hours_of(c.hours);
    if (hours > 0 && c.hours_defaulted().count > 0) {
      const double confirmed = hours_of(c.hours_defaulted_and_confirmed) / hours_of(c.hours_defaulted());
      say(ClaimKind::kCompleteness, percent(hours_of(c.hours_defaulted()) / hours) +
                                        " of the hours are the squads' usual ones, not counted on the day; " +
                                        (confirmed < 0.005 ? std::string("none") : percent(confirmed)) +
                                        " of these were confirmed by somebody.");
    }
    if (c.open_events > 0)
      say(ClaimKind::kCompleteness, count_for(reader_, c.open_events) +
                                        (c.open_events == 1 ? " injury is" : " injuries are") +
                                        " still open: days lost are 'at least'.");
  }

  void rate() {
    const RateRow& all = whole();
    if (all.hours <= 0) {
      say(ClaimKind::kRate, "No hours are on record, so that nothing can be said of rates.");
      return;
    }
    if (all.injuries == 0) {
      say(ClaimKind::kRate, "No injury was written down in " + grouped(all.hours) +
                                " player-hours. The true rate may be anything up to " +
                                in_digits(1000 * all.limits.high) +
                                " in 1000 hours, or injuries were not written down.");
      return;
    }
    say(ClaimKind::kRate, count_for(reader_, all.injuries) + (all.injuries == 1 ? " injury" : " injuries") + " in " +
                              grouped(all.hours) + " player-hours: " + rate_words(all) + ".");
  }

  [[nodiscard]] std::string rate_words(const RateRow& row) const {
    if (is_withheld(reader_, row.injuries)) return "too few for a rate here";
    return in_digits(1000 * row.per_hour()) + " in 1000 hours (" + level_words(found_.asked.level) + " limits " +
           limits_words(row.limits, 1000) + ")";
  }

  void days() {
    const RateRow& all = whole();
    if (all.injuries == 0 || is_withheld(reader_, all.injuries)) return;
    const std::string least = all.open > 0 ? "at least " : "";
    std::string text = "They cost " + least + grouped(all.days) + " days, half of them " + as_counted(all.median_days) +
                       (all.median_days == 1 ? " day" : " days") + " or more.";
    const int longest = found_.severity.back().injuries;
    if (longest > 0)
      text += " " + capital(count_for(reader_, longest)) + " kept a player out for more than four weeks.";
    say(ClaimKind::kDays, text);
  }

  static std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
  }

  void matches() {
    if (!found_.matches_by_training) return;
    const Compared& c = *found_.matches_by_training;
    if (is_withheld(reader_, static_cast<int>(c.one.events)) || is_withheld(reader_, static_cast<int>(c.other.events)))
      return;
    switch (verdict(c.exact.limits)) {
      case Verdict::kMore:
        say(ClaimKind::kMatches, "An hour of match had " + in_digits(c.ratio, 2) +
                                     " times the injuries of an hour of training (" + limits_words(c.exact.limits) +
                                     ").");
        return;
      case Verdict::kFewer:
        say(ClaimKind::kMatches, "An hour of match had fewer injuries than an hour of training: " +
                                     in_digits(c.ratio, 2) + " times (" + limits_words(c.exact.limits) + ").");
        return;
      default:
        say(ClaimKind::kMatches,
            "Whether an hour of match or of training has more injuries cannot be told from so few (" +
                limits_words(c.exact.limits) + " times).");
    }
  }

  void reach() {
    const Reach& reach = found_.reach;
    std::array<int, records::kWarmUps + 1> sessions{};
    double first = 0;
    double second = 0;
    int in_both_halves = 0;
    for (const SquadReach& squad : reach.squads) {
      for (std::size_t w = 0; w < sessions.size(); ++w) sessions[w] += squad.sessions[w];
      if (!squad.first_half || !squad.second_half) continue;
      first += *squad.first_half;
      second += *squad.second_half;
      ++in_both_halves;
    }
    const int known = sessions[0] + sessions[1] + sessions[2] + sessions[3];
    if (known == 0) {
      say(ClaimKind::kReach, "Of no session is it known whether the warm-up was done.");
      return;
    }
    const auto share = [&](std::size_t w) { return percent(static_cast<double>(sessions[w]) / known); };
    say(ClaimKind::kReach, std::to_string(reach.reached()) + " of " +
                               counted(static_cast<long long>(reach.squads.size()), "squad", "squads") +
                               " did the warm-up at least once, " + std::to_string(reach.taken_up()) +
                               " once a week or more. Where it is known (" +
                               percent(static_cast<double>(known) / (known + sessions[4])) +
                               " of sessions) most players did it in " + share(0) + ", half in " + share(1) +
                               ", few in " + share(2) + "; in " + share(3) + " it was not done.");
    if (in_both_halves == 0) return;
    say(ClaimKind::kReach, "A squad did " + in_digits(first / in_both_halves, 2) +
                               " warm-ups a week in the first half of the season, " +
                               in_digits(second / in_both_halves, 2) + " in the second.");
  }

  void warm_ups() {
    const WarmUpModel& model = found_.warm_ups;
    if (model.why_not) {
      // What to do about it is advice for who asks for a model by hand.
      const std::string reason = model.why_not->substr(0, model.why_not->find(';'));
      say(ClaimKind::kWarmUps,
          "Whether warm-ups go with fewer injuries cannot be estimated: " + reason + "." + more_hours());
      return;
    }
    if (is_withheld(reader_, model.events)) {
      say(ClaimKind::kWarmUps, "Too few injuries to say anything about warm-ups.");
      return;
    }
    const std::string with = "with each warm-up a week more, the rate was " + in_digits(model.times, 2) +
                             " times what it was (" + level_words(found_.asked.level) + " limits " +
                             limits_words(model.limits) + ")";
    switch (verdict(model.limits)) {
      case Verdict::kFewer:
        say(ClaimKind::kWarmUps, "Squads had fewer injuries in weeks after more warm-ups: " + with +
                                     ". That the two go together does not show that the one makes the other.");
        averted();
        return;
      case Verdict::kMore:
        say(ClaimKind::kWarmUps,
            "Squads had more injuries in weeks after more warm-ups: " + with +
                ". Look first at who writes what down, and at which squads were told to warm up because "
                "they had injuries.");
        return;
      case Verdict::kNoneThatMatters:
        say(ClaimKind::kWarmUps, "No difference that matters is seen: " + with + ".");
        return;
      case Verdict::kTooEarly:
        say(ClaimKind::kWarmUps, std::string(kTooEarlyToTell) + " whether warm-ups go with fewer injuries: " + with +
                                     ", so that fewer and more are both possible." + more_hours());
    }
  }

  void averted() {
    if (!found_.warm_ups.averted) return;
    const Averted& a = *found_.warm_ups.averted;
    if (a.limits.low <= 0) return;
    say(ClaimKind::kWarmUps, "If it were cause and effect, the season's warm-ups would have spared about " +
                                 as_counted(std::round(a.injuries)) + " injuries (" +
                                 as_counted(std::round(a.limits.low)) + " to " + as_counted(std::round(a.limits.high)) +
                                 ").");
  }

  [[nodiscard]] std::string more_hours() const {
    if (!found_.hours_wanted) return {};
    const HoursWanted& wanted = *found_.hours_wanted;
    if (wanted.more <= 0)
      return " There are hours enough to see a third fewer were half of them with warm-ups; a smaller difference takes "
             "longer.";
    return " To see a third fewer, about " + grouped(roughly(wanted.more)) + " more hours are needed, " +
           in_digits(wanted.seasons, 2) + " seasons like this one in all.";
  }

  void squads() {
    if (!found_.squads || is_withheld(reader_, whole().injuries)) return;
    int outside = 0;
    for (const SquadFinding& squad : found_.squads->squads) {
      const double ratio = squad.injuries / squad.expected;
      if (ratio < squad.outer.low || ratio > squad.outer.high) ++outside;
    }
    if (outside == 0) {
      say(ClaimKind::kSquads, "No squad lies outside what chance makes of its hours.");
      return;
    }
    say(ClaimKind::kSquads, capital(counted(outside, "squad lies", "squads lie")) +
                                " outside what chance makes of so many hours: a reason to ask, not a verdict.");
  }

  void watch() {
    if (!found_.watched) return;
    int alarms = 0;
    for (const evidence::WatchedWeek& week : found_.watched->weeks) alarms += week.alarm ? 1 : 0;
    const std::string chance =
        "; " + in_digits(found_.watched->false_alarms, 2) + " such alarms a season are to be expected by chance";
    say(ClaimKind::kWatch, alarms == 0 ? "Watched week by week, the rate gave no alarm" + chance + "."
                                       : "Watched week by week, the rate gave " + counted(alarms, "alarm", "alarms") +
                                             chance + ". An alarm is a reason to look.");
  }

  void cautions() {
    say(ClaimKind::kCaution,
        "Squads that write down their warm-ups may also write down injuries better; then warm-ups look "
        "worse than they are. Squads that warm up may differ in much else.");
  }
};

}  // namespace

std::string count_for(Reader reader, int count) {
  return is_withheld(reader, count) ? "fewer than " + std::to_string(kSmallCell) : std::to_string(count);
}

bool is_withheld(Reader reader, int count) { return reader == Reader::kBoard && count > 0 && count < kSmallCell; }

std::vector<Claim> claims(const SeasonFindings& found, Reader reader) { return Sentences(found, reader).all(); }

bool is_for_summary(const Claim& claim) {
  const bool beside = claim.kind == ClaimKind::kTaught || claim.kind == ClaimKind::kOften;
  return !beside || !claim.sentence.starts_with(kTooEarlyToTell);
}

Verdict verdict(const evidence::Interval& ratio) {
  if (ratio.high < 1) return Verdict::kFewer;
  if (ratio.low > 1) return Verdict::kMore;
  if (ratio.low > 1 / kMattersLittle && ratio.high < kMattersLittle) return Verdict::kNoneThatMatters;
  return Verdict::kTooEarly;
}

}  // namespace lanework::findings
