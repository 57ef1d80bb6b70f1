#include "core/care/return_to_sport/explore.h"

#include <algorithm>
#include <array>
#include <deque>
#include <numeric>
#include <unordered_map>

namespace lanework::care {
namespace {

// What the explorer writes down by itself of the events that were taken.
struct Book {
  int at_step = 0;                   // ticks since the step was begun
  int away = 0;                      // ticks since the opening
  int exposures = 0;                 // without symptoms since the step was begun
  std::uint32_t cleared = 0;         // gates: by a named clinician, since the last symptoms
  bool cleared_in_movement = false;  // one of them at a step with movement
};

// Times stand relative to now, and no longer than any limit asks: what lies beyond behaves alike.
struct Position {
  CourseState state;
  Book book;
};

// A position in whole numbers.
using Key = std::array<std::uint32_t, 13>;
struct KeyHash {
  std::size_t operator()(const Key& key) const {
    constexpr std::uint64_t kOdd = 0x9E3779B97F4A7C15U;
    std::uint64_t mixed = 0;
    for (const std::uint32_t part : key) mixed = (mixed ^ (mixed >> 29U) ^ part) * kOdd;
    return static_cast<std::size_t>(mixed ^ (mixed >> 31U));
  }
};

struct Limits {
  int tick = 0;  // minutes
  int step = 0;  // ticks beyond which time at a step changes nothing
  int free = 0;  // the same of time without symptoms
  int away = 0;
};

Limits limits_of(const Course& course, const Promises& promises, int parts) {
  int divisor = 0;
  int step = std::max(course.rest_hours, promises.least_hours);
  int free = 0;
  const auto count = [&](int hours) { divisor = std::gcd(divisor, hours); };
  count(course.rest_hours);
  count(promises.least_hours);
  count(promises.least_hours_away);
  for (const StepRule& rule : course.steps) {
    count(rule.least_hours);
    step = std::max(step, rule.least_hours);
  }
  for (const GateRule& gate : course.gates) {
    count(gate.symptom_free_hours);
    free = std::max(free, gate.symptom_free_hours);
  }
  constexpr int kMinutes = static_cast<int>(kMinutesAnHour);
  Limits out;
  out.tick = divisor == 0 ? kMinutes : divisor * kMinutes / parts;
  out.step = step * kMinutes / out.tick;
  out.free = free * kMinutes / out.tick;
  out.away = promises.least_hours_away * kMinutes / out.tick;
  return out;
}

struct Named {
  CourseEvent event;
  By by = By::kLead;
  std::string words;
};

std::vector<Named> alphabet(const Course& course) {
  std::vector<Named> out;
  const auto by = [](By who) { return " by the " + std::string(catalogue::word(by_words(), who)); };
  for (int step = 0; step <= course.last(); ++step) {
    for (const By who : {By::kLead, By::kClinician, By::kCoach, By::kPlayer}) {
      out.push_back({BeginStep{step}, who, "begin " + course.step(step).key + by(who)});
    }
    for (const By who : {By::kLead, By::kPlayer})
      out.push_back({StepBack{step}, who, "back to " + course.step(step).key + by(who)});
  }
  static constexpr const char* kSymptoms[] = {"no symptoms", "no worse", "mildly worse", "worse"};
  for (const Symptoms symptoms : {Symptoms::kNone, Symptoms::kNoWorse, Symptoms::kMild, Symptoms::kWorse}) {
    for (const bool exposure : {false, true}) {
      out.push_back({Check{symptoms, exposure}, By::kPlayer,
                     std::string(kSymptoms[static_cast<int>(symptoms)]) + (exposure ? " after a session" : "")});
    }
  }
  for (int gate = 0; gate < static_cast<int>(course.gates.size()); ++gate) {
    const std::string key = course.gate(gate).key;
    out.push_back({Clearance{gate, "C. Named", "physician", true}, By::kClinician, "clearance " + key});
    out.push_back({Clearance{gate, "C. Named", "physician", true}, By::kLead, "clearance " + key + by(By::kLead)});
    out.push_back({Clearance{gate, "", "physician", true}, By::kClinician, "clearance " + key + " without a name"});
    out.push_back(
        {Clearance{gate, "C. Named", "", true}, By::kClinician, "clearance " + key + " without a profession"});
    out.push_back(
        {Clearance{gate, "C. Named", "physician", false}, By::kClinician, "clearance " + key + " that names no hurt"});
  }
  out.push_back({AnotherHurt{}, By::kCoach, "another hurt"});
  return out;
}

class Explorer {
 public:
  Explorer(const Course& course, const Promises& promises, const TransitionFunction& machine, int parts)
      : course_(course),
        promises_(promises),
        machine_(machine),
        limits_(limits_of(course, promises, parts)),
        events_(alphabet(course)) {
    for (const Promises::Behind& behind : promises.behind) {
      const auto step = course.step_with(behind.step);
      // A step that is not there cannot be reached; a gate that is not there is never cleared.
      if (step) behind_.emplace_back(*step, course.gate_with(behind.gate));
    }
  }

  Exploration run() {
    out_.tick_minutes = limits_.tick;
    reach({opened(kNow), {}}, 0, -1, "opened");
    // By time passed, then by arrival: the first path to a state is a shortest one.
    while (!queue_.empty()) {
      const auto [index, ticks] = queue_.front();
      queue_.pop_front();
      if (ticks > ticks_[index]) continue;
      if (done_[index]) continue;
      done_[index] = true;
      leave(index);
    }
    out_.states = static_cast<std::int64_t>(positions_.size());
    count_dead_ends();
    return std::move(out_);
  }

 private:
  static constexpr Moment kNow{std::int64_t{1} << 40};

  const Course& course_;
  const Promises& promises_;
  const TransitionFunction& machine_;
  Limits limits_;
  std::vector<Named> events_;
  std::vector<std::pair<int, std::optional<int>>> behind_;
  Exploration out_;
  std::vector<Position> positions_;
  std::vector<int> ticks_;  // least time to each
  std::vector<int> parents_;
  std::vector<std::string> by_;
  std::vector<bool> done_;
  std::vector<std::vector<std::size_t>> came_from_;
  std::unordered_map<Key, std::size_t, KeyHash> known_;
  std::deque<std::pair<std::size_t, int>> queue_;

  [[nodiscard]] int ticks_ago(Moment then, int most) const {
    return static_cast<int>(std::min<std::int64_t>((kNow.minutes - then.minutes) / limits_.tick, most));
  }
  [[nodiscard]] Moment ago(int ticks) const { return {kNow.minutes - std::int64_t{ticks} * limits_.tick}; }

  // Times no longer than the limits, and written as from now.
  void settle(Position& position) const {
    position.state.since = ago(ticks_ago(position.state.since, limits_.step));
    if (position.state.free_since) position.state.free_since = ago(ticks_ago(*position.state.free_since, limits_.free));
    position.book.at_step = std::min(position.book.at_step, limits_.step);
    position.book.away = std::min(position.book.away, limits_.away);
    position.book.exposures = std::min(position.book.exposures, promises_.least_exposures);
  }

  [[nodiscard]] Key key_of(const Position& position) const {
    const CourseState& state = position.state;
    const Book& book = position.book;
    const auto whole = [](auto number) { return static_cast<std::uint32_t>(number); };
    return {whole(state.step),
            whole(state.begun),
            whole(state.rests),
            whole(ticks_ago(state.since, limits_.step)),
            whole(state.exposures),
            whole(state.checked),
            state.free_since ? whole(ticks_ago(*state.free_since, limits_.free) + 1) : 0U,
            state.open_gates,
            whole(book.at_step),
            whole(book.away),
            whole(book.exposures),
            book.cleared,
            whole(book.cleared_in_movement)};
  }

  void reach(Position position, int ticks, int from, std::string by) {
    settle(position);
    const auto [found, is_new] = known_.try_emplace(key_of(position), positions_.size());
    const std::size_t index = found->second;
    if (is_new) {
      positions_.push_back(position);
      ticks_.push_back(ticks);
      parents_.push_back(from);
      by_.push_back(std::move(by));
      done_.push_back(false);
      came_from_.emplace_back();
    } else if (ticks < ticks_[index]) {
      ticks_[index] = ticks;
      parents_[index] = from;
      by_[index] = std::move(by);
    }
    if (from >= 0) came_from_[index].push_back(static_cast<std::size_t>(from));
    if (done_[index] || (!is_new && ticks > ticks_[index])) return;
    // Events take no time and go first; a tick goes last.
    if (!queue_.empty() && ticks < queue_.back().second)
      queue_.emplace_front(index, ticks);
    else
      queue_.emplace_back(index, ticks);
    if (position.state.begun && position.state.step == course_.last()) {
      const int hours = ticks_[index] * limits_.tick / static_cast<int>(kMinutesAnHour);
      out_.earliest_last_step_hours = std::min(out_.earliest_last_step_hours.value_or(hours), hours);
    }
  }

  void leave(std::size_t index) {
    const Position here = positions_[index];
    for (const Named& named : events_) {
      const Transition next = machine_(course_, here.state, named.event, named.by, kNow);
      if (std::holds_alternative<Refusal>(next)) {
        ++out_.refused;
        continue;
      }
      ++out_.transitions;
      Position there{std::get<CourseState>(next), here.book};
      write_down(here, there, named);
      judge(index, here, there, named);
      reach(there, ticks_[index], static_cast<int>(index), named.words);
    }
    Position later = here;
    later.state.since.minutes -= limits_.tick;
    if (later.state.free_since) later.state.free_since->minutes -= limits_.tick;
    ++later.book.at_step;
    ++later.book.away;
    ++out_.transitions;
    reach(later, ticks_[index] + 1, static_cast<int>(index), std::to_string(limits_.tick / 60) + " h pass");
  }

  [[nodiscard]] Risk risk(int step) const { return course_.step(step).risk; }

  void write_down(const Position& here, Position& there, const Named& named) const {
    Book& book = there.book;
    if (const auto* check = std::get_if<Check>(&named.event)) {
      if (check->symptoms == Symptoms::kNone) {
        if (check->exposure && here.state.begun) ++book.exposures;
        return;
      }
      book.cleared_in_movement = false;
      if (check->symptoms == Symptoms::kNoWorse && risk(here.state.step) < Risk::kImpactRisk) {
        if (check->exposure && here.state.begun) ++book.exposures;
        book.cleared = 0;
        return;
      }
      book.cleared = 0;
      book.exposures = 0;
      book.at_step = 0;
      return;
    }
    if (const auto* clearance = std::get_if<Clearance>(&named.event)) {
      const bool named_clinician = named.by == By::kClinician && !clearance->clinician.empty() &&
                                   !clearance->profession.empty() && clearance->names_every_hurt;
      if (!named_clinician) return;
      book.cleared |= 1U << static_cast<unsigned>(clearance->gate);
      if (here.state.begun && risk(here.state.step) >= Risk::kNoImpactRisk) book.cleared_in_movement = true;
      return;
    }
    if (std::holds_alternative<AnotherHurt>(named.event)) {
      book = {0, 0, 0, 0, false};
      return;
    }
    book.at_step = 0;
    book.exposures = 0;
  }

  void judge(std::size_t index, const Position& here, const Position& there, const Named& named) {
    const CourseState& was = here.state;
    const CourseState& is = there.state;
    const auto broken = [&](const char* promise) { break_promise(promise, index, named.words); };
    const bool forward = is.step > was.step || (is.begun && !was.begun);
    const bool begins = std::holds_alternative<BeginStep>(named.event);
    if (forward && !begins) broken("nothing moves forward but by an entry that begins a step");
    if (begins && named.by != By::kLead && named.by != By::kClinician)
      broken("a step is begun by the lead or a clinician");
    if (begins && is.step != (was.begun ? was.step + 1 : was.step)) broken("no step is passed over");
    if (begins && is.step > was.step) judge_stay(here, broken);
    if (is.begun) judge_place(there, broken);
    if (const auto* check = std::get_if<Check>(&named.event)) judge_check(*check, was, is, broken);
    if (const auto* clearance = std::get_if<Clearance>(&named.event)) {
      const bool proper = named.by == By::kClinician && !clearance->clinician.empty() &&
                          !clearance->profession.empty() && clearance->names_every_hurt;
      if (is.open_gates != was.open_gates && !proper) broken("a gate opens by a named clinician who names every hurt");
    }
    if (std::holds_alternative<AnotherHurt>(named.event) && (is.begun || is.step != 0 || is.open_gates != 0)) {
      broken("another hurt starts it anew");
    }
  }

  template <class Broken>
  void judge_stay(const Position& here, const Broken& broken) const {
    if (here.book.at_step * limits_.tick < promises_.least_hours * static_cast<int>(kMinutesAnHour)) {
      broken("no step is left before its least time");
    }
    if (here.state.step > 0 && here.book.exposures < promises_.least_exposures) {
      broken("no step is left before a session at it without symptoms");
    }
  }

  template <class Broken>
  void judge_place(const Position& there, const Broken& broken) const {
    if (risk(there.state.step) >= Risk::kImpactRisk && !there.book.cleared_in_movement) {
      broken("contact and risk of impact come after a clearance since the last symptoms");
    }
    for (const auto& [step, gate] : behind_) {
      if (there.state.step < step) continue;
      if (!gate || ((there.book.cleared >> static_cast<unsigned>(*gate)) & 1U) == 0)
        broken("a step comes after its gate's clearance");
    }
    if (risk(there.state.step) > Risk::kApart && there.book.away < limits_.away)
      broken("nothing beside the squad so soon");
  }

  template <class Broken>
  void judge_check(const Check& check, const CourseState& was, const CourseState& is, const Broken& broken) const {
    if (check.symptoms == Symptoms::kNone) return;
    const bool held = is.step <= was.step && is.since == kNow;
    const bool set_back = held && !is.begun;
    const bool at_risk = risk(was.step) >= Risk::kImpactRisk;
    if (check.symptoms == Symptoms::kWorse && !set_back) broken("worse symptoms set back");
    if (at_risk && !(set_back && risk(is.step) < Risk::kImpactRisk))
      broken("any symptoms at a step with risk of impact set back to one without");
    const bool goes_on = course_.mild && !course_.mild->unverified && !at_risk;
    if (check.symptoms == Symptoms::kMild && !held && !goes_on) broken("mild symptoms hold the step");
  }

  void break_promise(const char* promise, std::size_t at, const std::string& last) {
    const auto same = [&](const BrokenPromise& one) { return one.promise == promise; };
    if (std::any_of(out_.broken.begin(), out_.broken.end(), same)) return;
    BrokenPromise broken{promise, {last}};
    for (int i = static_cast<int>(at); i > 0; i = parents_[static_cast<std::size_t>(i)]) {
      broken.path.push_back(by_[static_cast<std::size_t>(i)]);
    }
    std::reverse(broken.path.begin(), broken.path.end());
    out_.broken.push_back(std::move(broken));
  }

  // Backwards from every state at the last step.
  void count_dead_ends() {
    std::vector<bool> alive(positions_.size(), false);
    std::vector<std::size_t> open;
    for (std::size_t i = 0; i < positions_.size(); ++i) {
      if (positions_[i].state.begun && positions_[i].state.step == course_.last()) {
        alive[i] = true;
        open.push_back(i);
      }
    }
    while (!open.empty()) {
      const std::size_t at = open.back();
      open.pop_back();
      for (const std::size_t from : came_from_[at]) {
        if (alive[from]) continue;
        alive[from] = true;
        open.push_back(from);
      }
    }
    out_.dead_ends = std::count(alive.begin(), alive.end(), false);
  }
};

}  // namespace

Promises promises_of(const std::string& course) {
  constexpr int kADay = 24;
  if (course == "concussion")
    return {kADay, 0, kADay, {{"team-drills", "head-impact-risk"}, {"full-practice", "contact"}}};
  if (course == "general") return {0, 1, 0, {{"limited-practice", "practice"}}};
  return {};
}

Exploration explore(const Course& course, const Promises& promises, const TransitionFunction& machine, int parts) {
  return Explorer(course, promises, machine, parts).run();
}

}  // namespace lanework::care
