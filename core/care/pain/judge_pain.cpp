#include "core/care/pain/judge_pain.h"

#include <algorithm>

namespace lanework::care {
namespace {

using people::TakingPart;

template <class T>
bool among(const std::vector<T>& list, const T& one) {
  return std::find(list.begin(), list.end(), one) != list.end();
}

std::string in_words(catalogue::BodyArea place) { return std::string(word(catalogue::body_area_words(), place)); }
std::string out_of_ten(int number) { return std::to_string(number) + "/10"; }

class Judging {
 public:
  explicit Judging(const PainRule& rule) : rule_(rule) {}

  void hear(const PainReport& report) {
    const std::optional<int> number = report.number();
    if (report.place && among(rule_.refer_at_once, *report.place)) {
      at_once("the " + in_words(*report.place) + " is never judged by a number");
    }
    for (const PainSign sign : report.signs) {
      const SignRule& row = rule_.sign(sign);
      if (row.at_once)
        at_once(row.words);
      else
        raise(TakingPart::kSitsOut, row.words);
    }
    if (report.next_morning.value_or(0) > rule_.settled_up_to) {
      raise(TakingPart::kSitsOut, out_of_ten(*report.next_morning) + " the next morning: not settled");
    }
    if (!number) {
      not_known("any number");
      raise(TakingPart::kSitsOut, "no number is known: the careful side");
      return;
    }
    if (!report.place && (*number > 0 || !report.signs.empty())) {
      not_known("the place");
      raise(TakingPart::kSitsOut, "the place is not known: the careful side");
    }
    if (*number > 0 && !report.next_morning) not_known("the next morning");
    weigh(*number);
  }

  // Worse from one week to the next: one answer more careful than the numbers by themselves.
  void look_for_a_trend(const std::vector<PainReport>& reports) {
    for (const PainReport& later : reports) {
      const bool worse = std::any_of(reports.begin(), reports.end(),
                                     [&](const PainReport& earlier) { return is_worse(earlier, later); });
      if (!worse) continue;
      raise(*later.number() > rule_.joins_in_up_to ? TakingPart::kSitsOut : TakingPart::kJoinsInWithSwaps,
            out_of_ten(*later.number()) + " is worse than the week before");
    }
  }

  PainJudgement done(const std::vector<PainReport>& reports) {
    if (out_.taking_part != TakingPart::kJoinsIn) out_.restriction = restriction(reports);
    return std::move(out_);
  }

 private:
  const PainRule& rule_;
  PainJudgement out_;

  void raise(TakingPart to, std::string why) {
    // A weightier reason pushes the lighter ones aside: they decide nothing any more.
    if (to > out_.taking_part) {
      out_.taking_part = to;
      out_.why.clear();
    }
    if (to == out_.taking_part && !among(out_.why, why)) out_.why.push_back(std::move(why));
  }

  void at_once(const std::string& why) {
    out_.at_once = true;
    raise(TakingPart::kSitsOut, why);
  }

  void not_known(const char* what) {
    if (!among(out_.not_known, std::string(what))) out_.not_known.emplace_back(what);
  }

  void weigh(int number) {
    if (number > rule_.swaps_up_to) return raise(TakingPart::kSitsOut, out_of_ten(number));
    if (number > rule_.joins_in_up_to) return raise(TakingPart::kJoinsInWithSwaps, out_of_ten(number));
    raise(TakingPart::kJoinsIn, out_of_ten(number));
  }

  [[nodiscard]] bool is_worse(const PainReport& earlier, const PainReport& later) const {
    if (!earlier.day || !later.day || !earlier.number() || !later.number()) return false;
    const int days = days_between(*earlier.day, *later.day);
    return days >= rule_.days_from && days <= rule_.days_to && *later.number() > *earlier.number();
  }

  [[nodiscard]] people::Restriction restriction(const std::vector<PainReport>& reports) const {
    people::Restriction out;
    std::optional<Date> last;
    for (const PainReport& report : reports) {
      if (report.day && (!last || *last < *report.day)) last = report.day;
      if (report.place && !among(out.areas, *report.place)) out.areas.push_back(*report.place);
    }
    if (last) out.review = Date{last->days_since_epoch + rule_.review_after_days};
    if (out_.taking_part == TakingPart::kSitsOut) {
      out.areas.clear();
      out.sits_out = true;
      out.instruction = words_of(TakingPart::kSitsOut);
      return out;
    }
    out.kinds = rule_.kinds;
    out.allowed_grade = rule_.allowed_grade;
    out.instruction = rule_.instruction;
    return out;
  }
};

}  // namespace

std::optional<int> PainReport::number() const {
  std::optional<int> most;
  for (const std::optional<int>& one : {before, during, next_morning}) {
    if (one && (!most || *most < *one)) most = one;
  }
  return most;
}

PainJudgement judge_pain(const PainRule& rule, const std::vector<PainReport>& reports) {
  Judging judging(rule);
  for (const PainReport& report : reports) judging.hear(report);
  judging.look_for_a_trend(reports);
  return judging.done(reports);
}

const char* words_of(people::TakingPart taking_part) {
  switch (taking_part) {
    case TakingPart::kJoinsIn:
      return "joins in";
    case TakingPart::kJoinsInWithSwaps:
      return "joins in with swaps";
    case TakingPart::kSitsOut:
      return "sits out, see a clinician";
  }
  return "";
}

}  // namespace lanework::care
