// A session that is over: its loads and credits counted again from what is told of it, docs/model/rolling.md.
#include <algorithm>

#include "core/check/squad_ledger.h"
#include "core/check/timing.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kStep = 5;  // seconds
constexpr std::int64_t kHardPercent = 60;

std::int64_t up(std::int64_t ms) { return (ms + 999) / 1000; }
std::int64_t steps_of(std::int64_t seconds) { return (seconds + kStep / 2) / kStep; }

class PastJudge {
 public:
  PastJudge(const Matter& matter, const ToldSession* told, EveningLedger evening, SquadLedger& ledger,
            SquadFaults& faults)
      : matter_(matter),
        told_(told),
        evening_(std::move(evening)),
        ledger_(ledger),
        faults_(faults),
        where_(words_of(evening_.wish->date, evening_.wish->start_minutes)) {}

  void judge() {
    evening_.over = true;
    evening_.age = matter_.tonight.age;
    evening_.band = band_of(matter_);
    judge_told();
    take_picks();
    if (happened() != "missed") walk_through();
    finish();
    ledger_.evenings.push_back(std::move(evening_));
  }

 private:
  struct Part {
    Pick pick;
    std::int64_t steps = 0;
    bool used = false;
    bool done = false;
    std::optional<bool> stated;
  };

  const Matter& matter_;
  const ToldSession* told_;  // null: nothing is
  EveningLedger evening_;
  SquadLedger& ledger_;
  SquadFaults& faults_;
  std::string where_;
  std::vector<Part> parts_;

  [[nodiscard]] std::string happened() const { return told_ == nullptr ? "no word" : told_->happened; }
  [[nodiscard]] std::int64_t quarters() const {
    if (told_ == nullptr || told_->did_it == "most") return 4;
    return told_->did_it == "half" ? 2 : 1;
  }

  void expect(const char* what, const std::string& stated, const std::string& own) {
    if (stated != own)
      faults_.add(where_ + ", " + what, "past-told", stated.empty() ? "nothing" : stated,
                  own.empty() ? "nothing" : own);
  }

  void judge_told() {
    const StatedSession& stated = *evening_.stated;
    const auto minutes = [](std::optional<std::int64_t> value) {
      return value ? std::to_string(*value) : std::string();
    };
    const bool took_place = told_ != nullptr && told_->happened != "missed";
    expect("happened", stated.happened, happened());
    expect("did it", stated.did_it, took_place ? told_->did_it : "");
    expect("minutes", minutes(stated.minutes_had), minutes(told_ == nullptr ? std::nullopt : told_->minutes));
    if (stated.budget_steps || stated.planned_steps)
      faults_.add(where_, "past-told", "budget_steps or planned_steps", "neither of what is over");
  }

  void take_picks() {
    std::vector<NamedItem> names;
    for (const StatedItem& item : evening_.stated->items) names.push_back(item.named);
    std::vector<Violation> unknown;
    const Selection picks = existing(names, matter_, unknown);
    for (Violation& violation : unknown)
      faults_.add(where_ + ", " + violation.where, violation.rule.c_str(), std::move(violation.found),
                  std::move(violation.allowed));
    if (picks.size() != names.size()) {
      ledger_.complete = false;
      return;
    }
    for (std::size_t i = 0; i < picks.size(); ++i) {
      const StatedItem& item = evening_.stated->items[i];
      const DrillTiming time = time_drill(picks[i], matter_);
      const std::int64_t own = std::max<std::int64_t>(1, steps_of(up(time.telling_ms + time.doing_ms)));
      parts_.push_back({picks[i], item.steps.value_or(own), false, false, item.done});
    }
  }

  void walk_through() {
    std::int64_t clock = up(gathering_ms(matter_));
    const Drill* before = nullptr;
    for (Part& part : parts_) {
      if (told_ != nullptr && holds(told_->left_out, part.pick.drill->id)) continue;
      if (told_ == nullptr || !told_->minutes) {
        part.used = true;
        part.done = happened() == "held";
        continue;
      }
      if (before != nullptr)
        clock += kStep * steps_of(up(change_ms(before->formation, part.pick.drill->formation, matter_)));
      before = part.pick.drill;
      part.used = clock < 60 * *told_->minutes;
      clock += kStep * part.steps;
      part.done = clock <= 60 * *told_->minutes;
    }
  }

  void finish() {
    for (const Part& part : parts_) {
      const Drill& drill = *part.pick.drill;
      const Step& step = step_of(part.pick);
      evening_.planned.insert(drill.id);
      evening_.promised[drill.family] += credits_of(drill, step, matter_);
      const char* own = part.done ? "done" : "not done";
      const char* stated = !part.stated ? "nothing" : *part.stated ? "done" : "not done";
      if (std::string(own) != stated) faults_.add(where_ + ", " + part.pick.where, "past-done", stated, own);
      if (part.used) {
        const LoadSums loads = loads_of(part.pick, matter_);
        evening_.loads.contacts += loads.contacts;
        evening_.loads.eccentric += loads.eccentric;
        evening_.loads.hard_running += loads.hard_running;
      }
      if (!part.done) continue;
      evening_.credits[drill.family] += credits_of(drill, step, matter_);
      evening_.work_ms[drill.family] += work_ms(drill, step);
      if (!evening_.match_day() && ledger_.first_time(matter_, drill.id)) ++evening_.fresh;
      evening_.done.push_back(drill.id);
    }
    for (auto& [family, credits] : evening_.credits) credits = credits * quarters() / 4;
    for (auto& [family, ms] : evening_.work_ms) ms = ms * quarters() / 4;
    const std::int64_t contacts = evening_.band.jump_cap * matter_.limits.warm_up_share_percent / 100;
    evening_.hard = evening_.loads.contacts > contacts * 10 * kHardPercent ||
                    evening_.loads.eccentric > evening_.band.eccentric * 10 * kHardPercent;
  }
};

}  // namespace

void judge_past_session(const Matter& matter, const ToldSession* told, EveningLedger evening, SquadLedger& ledger,
                        SquadFaults& faults) {
  PastJudge(matter, told, std::move(evening), ledger, faults).judge();
}

}  // namespace lanework::check
