#include "core/care/environment/evening_change.h"

#include <algorithm>

namespace lanework::care::environment {
namespace {

std::string with_capital(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

std::string minutes_in_words(std::int64_t seconds) {
  const std::string whole = std::to_string(seconds / 60) + " min";
  return seconds % 60 == 0 ? whole : whole + " " + std::to_string(seconds % 60) + " s";
}

// What is asked first, then the reason of each topic that asks for something.
std::vector<std::string> remarks_of(const WeatherVerdict& verdict, const std::string& asked) {
  std::vector<std::string> list = {asked};
  for (const SessionChange* change : {&verdict.lightning.change, &verdict.heat.verdict.change,
                                      &verdict.cold.verdict.change, &verdict.air.verdict.change}) {
    if (!change->changes()) continue;
    for (const Reason& reason : change->reasons) {
      std::string words = with_capital(topic_word(reason.topic)) + ": " + reason.words;
      if (reason.unverified) words += " (unverified)";
      if (reason.minutes_old) words += "; known " + std::to_string(*reason.minutes_old) + " min before";
      list.push_back(words + ".");
    }
  }
  return list;
}

class Change {
 public:
  Change(const WeatherVerdict& verdict, Moment start, Seconds length) : verdict_(verdict), change_(verdict.change) {
    out_.start = start;
    out_.length = length;
  }

  EveningChange take() {
    if (change_.no_session && !start_later()) {
      out_.no_session = why_none();
      out_.remarks = remarks_of(verdict_, with_capital(out_.no_session) + ".");
      return std::move(out_);
    }
    if (change_.most_time && *change_.most_time < out_.length) {
      out_.length = *change_.most_time;
      says("at most " + minutes_in_words(out_.length.count) + " in all");
    }
    if (change_.breaks) take_breaks(*change_.breaks);
    if (change_.effort != Effort::kUsual) take_it_easy();
    if (!asked_.empty()) out_.remarks = remarks_of(verdict_, with_capital(asked_) + ".");
    return std::move(out_);
  }

 private:
  const WeatherVerdict& verdict_;
  const SessionChange& change_;
  EveningChange out_;
  std::string asked_;

  void says(const std::string& words) { asked_ += (asked_.empty() ? "" : "; ") + words; }

  // 'heat and cold', or until when everybody stays in.
  [[nodiscard]] std::string why_none() const {
    if (const auto until = change_.no_session->until) {
      return "stay in until " + to_words(*until, out_.start) + " at least: nothing is left of the slot then";
    }
    std::string out;
    for (const SessionChange* change :
         {&verdict_.heat.verdict.change, &verdict_.cold.verdict.change, &verdict_.air.verdict.change}) {
      if (!change->no_session || change->reasons.empty()) continue;
      out += (out.empty() ? "" : " and ") + std::string(topic_word(change->reasons.front().topic));
    }
    return "no session: " + out;
  }

  // False where nothing is left of the slot by then.
  bool start_later() {
    const auto until = change_.no_session->until;
    if (!until) return false;
    const Seconds gone(60 * minutes_between(out_.start, *until));
    if (gone.count <= 0) return true;
    if ((out_.length - gone).count < kShortestSlotSeconds) return false;
    out_.start = *until;
    out_.length = out_.length - gone;
    says("no earlier than " + to_text(time_of_day_of(*until)) +
         ", and only if nothing new is seen or heard until then; " + minutes_in_words(out_.length.count) + " are left");
    return true;
  }

  void take_breaks(const Breaks& breaks) {
    const BreaksInSlot in_slot = breaks_in(breaks, out_.length);
    if (in_slot.count == 0) return;
    out_.breaks = static_cast<int>(std::min<std::int64_t>(in_slot.count, kMostBreaks));
    out_.break_each = Seconds(std::min<std::int64_t>(in_slot.each.count, kLongestBreakSeconds));
    out_.break_why = "rest in the shade or the warm, and drink";
    says(std::to_string(out_.breaks) + (out_.breaks == 1 ? " break" : " breaks") + " of " +
         minutes_in_words(out_.break_each.count));
  }

  // For the whole squad: nothing hard, or nothing at its hardest.
  void take_it_easy() {
    constexpr int kLight = 1;
    constexpr int kModerate = 2;
    const bool easy = change_.effort == Effort::kEasy;
    people::Restriction row;
    row.kinds = {catalogue::StressKind::kSpeed, catalogue::StressKind::kImpact};
    row.allowed_grade = easy ? kLight : kModerate;
    row.instruction = easy ? "nothing hard: no sprints, no conditioning" : "less hard and less fast than usual";
    says(row.instruction);
    out_.whole_squad = std::move(row);
  }
};

}  // namespace

EveningChange evening_change(const WeatherVerdict& verdict, Moment start, Seconds length) {
  return Change(verdict, start, length).take();
}

}  // namespace lanework::care::environment
