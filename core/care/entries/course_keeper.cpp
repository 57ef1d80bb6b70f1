#include "core/care/entries/course_keeper.h"

#include <algorithm>

namespace lanework::care {
namespace {

using catalogue::BodyArea;

template <class T>
bool among(const std::vector<T>& list, const T& one) {
  return std::find(list.begin(), list.end(), one) != list.end();
}

// A course with places of its own carries a hurt there or at a place not known; any other only hurts at a known place.
bool may_carry(const Course& course, const std::optional<BodyArea>& place) {
  if (!place) return !course.places.empty();
  if (among(course.never_places, *place)) return false;
  return course.places.empty() || among(course.places, *place);
}

}  // namespace

CourseKeeper::Kept* CourseKeeper::find(const EntryId& id) {
  const auto found = std::find_if(kept_.begin(), kept_.end(), [&](const Kept& kept) { return kept.standing.id == id; });
  return found == kept_.end() ? nullptr : &*found;
}

bool CourseKeeper::knows(const EntryId& id) const {
  return std::any_of(kept_.begin(), kept_.end(), [&](const Kept& kept) { return kept.standing.id == id; });
}

void CourseKeeper::carry(Kept& kept, Hold& hold) {
  hold.carried = true;
  kept.standing.carries.push_back(hold.id);
  const std::optional<BodyArea> place = hold.place();
  if (place && !among(kept.standing.places, *place)) kept.standing.places.push_back(*place);
}

void CourseKeeper::open(const Entry& entry, const CourseOpened& opening, std::optional<int> age, Moment at,
                        HoldKeeper& holds, Remarks& remarks) {
  Kept kept;
  // Where the roster and the entry disagree, the younger: children are held back longer.
  std::optional<int> held_as = opening.age;
  if (age && (!held_as || *age < *held_as)) held_as = age;
  kept.standing.player = entry.player;
  kept.standing.id = entry.id;
  kept.standing.in_force = course_in_force(rules_, opening.course, opening.rules, held_as);
  kept.standing.state = opened(at);
  kept.standing.since = entry.received;
  kept.standing.age = held_as;
  for (const EntryId& id : opening.carries) {
    const auto same = [&](const Hold& hold) { return hold.id == id && std::holds_alternative<Hurt>(hold.what); };
    const auto hold = std::find_if(holds.holds().begin(), holds.holds().end(), same);
    if (hold == holds.holds().end()) {
      kept.awaited.push_back(id);
    } else if (hold->lifted || hold->carried) {
      remark(remarks, entry, "does not carry " + id + ", which is lifted or carried already");
    } else if (!may_carry(kept.standing.in_force.course, hold->place())) {
      remark(remarks, entry, "may not carry " + id + ": that place is not this course's, the hurt stands by itself");
    } else {
      carry(kept, *hold);
    }
  }
  kept_.push_back(std::move(kept));
}

bool CourseKeeper::concerns(const Kept& kept, const EntryId& id, const Hurt& hurt) {
  if (kept.standing.closed || !may_carry(kept.standing.in_force.course, hurt.place)) return false;
  if (among(kept.awaited, id)) return true;
  const std::vector<BodyArea>& places = kept.standing.in_force.course.places;
  if (!hurt.place) return !places.empty();
  return among(places.empty() ? kept.standing.places : places, *hurt.place);
}

void CourseKeeper::hear_of_hurt(const Entry& entry, const Hurt& hurt, Moment at, HoldKeeper& holds, Remarks& remarks) {
  Hold& hold = holds.holds().back();
  if (hold.lifted) return;
  for (Kept& kept : kept_) {
    if (!concerns(kept, entry.id, hurt)) continue;
    carry(kept, hold);
    const bool named = std::any_of(kept.given.begin(), kept.given.end(),
                                   [&](const Gate& gate) { return among(gate.names, entry.id); });
    if (named) {
      remark(remarks, entry, "received late; a clearance of the course " + kept.standing.id + " names it");
      continue;
    }
    remark(remarks, entry, "starts the course " + kept.standing.id + " anew: no clearance of it names this hurt");
    move(kept, entry, AnotherHurt{}, entry.by, at, remarks);
    kept.given.clear();
  }
}

bool CourseKeeper::move(Kept& kept, const Entry& entry, const CourseEvent& event, By by, Moment at, Remarks& remarks) {
  CourseStanding& standing = kept.standing;
  const Transition next = transition(standing.in_force.course, standing.state, event, by, at);
  if (const auto* refusal = std::get_if<Refusal>(&next)) {
    remark(remarks, entry, "refused: " + refusal->reason + "; needed: " + refusal->needed);
    return false;
  }
  const CourseState& state = std::get<CourseState>(next);
  if (state.since != standing.state.since) standing.since = at_same_offset(state.since, entry.received);
  standing.state = state;
  // A course that was over holds the player back again.
  if (!(state.begun && state.step == standing.in_force.course.last())) standing.closed = false;
  return true;
}

void CourseKeeper::begin(const Entry& entry, const StepBegun& begun, Moment at, Remarks& remarks) {
  Kept* kept = find(begun.course);
  if (kept == nullptr)
    return remark(remarks, entry, "refused: the course " + begun.course + " was not received before it");
  const auto step = kept->standing.in_force.course.step_with(begun.step);
  if (!step) return remark(remarks, entry, "refused: '" + begun.step + "' is no step of that course");
  move(*kept, entry, BeginStep{*step}, entry.by, at, remarks);
}

bool CourseKeeper::check(const Entry& entry, const SymptomCheck& check, Moment at, Remarks& remarks) {
  Kept* kept = find(check.course);
  if (kept == nullptr) return false;
  const Course& course = kept->standing.in_force.course;
  Symptoms symptoms = Symptoms::kNone;
  if (check.told == SymptomCheck::Told::kNoWorse) symptoms = Symptoms::kNoWorse;
  if (check.told == SymptomCheck::Told::kWorse) symptoms = symptoms_of(course, check.worse_points, check.worse_minutes);
  if (symptoms == Symptoms::kMild && course.mild && course.mild->unverified) {
    remark(remarks, entry,
           "mild and brief would let the step go on, but that rule is unverified: the careful side, it is held");
  }
  const int before = kept->standing.state.step;
  const bool unverified = course.step(before).back_to_unverified;
  move(*kept, entry, Check{symptoms, check.after_session}, entry.by, at, remarks);
  const CourseState& state = kept->standing.state;
  if (state.rests && !state.begun && state.since == at) {
    remark(remarks, entry,
           "symptoms: back to '" + course.step(state.step).name + "', sits out until it is begun again" +
               (unverified && state.step < before ? " (how far back is unverified)" : ""));
  }
  return true;
}

void CourseKeeper::step_back(const Entry& entry, const SteppedBack& back, Moment at, Remarks& remarks) {
  Kept* kept = find(back.course);
  if (kept == nullptr)
    return remark(remarks, entry, "names the course " + back.course + ", which was not received before it");
  const auto step = kept->standing.in_force.course.step_with(back.step);
  // Towards caution whatever the words: an unknown step is the first one.
  move(*kept, entry, StepBack{std::min(step.value_or(0), kept->standing.state.step)}, entry.by, at, remarks);
}

void CourseKeeper::clear(const Entry& entry, const ClearanceGiven& clearance, Moment at, Remarks& remarks) {
  Kept* kept = find(clearance.course);
  if (kept == nullptr)
    return remark(remarks, entry, "refused: the course " + clearance.course + " was not received before it");
  const auto gate = kept->standing.in_force.course.gate_with(clearance.gate);
  if (!gate) return remark(remarks, entry, "refused: '" + clearance.gate + "' is no gate of that course");
  const EntryIds& carries = kept->standing.carries;
  const bool every =
      std::all_of(carries.begin(), carries.end(), [&](const EntryId& id) { return among(clearance.names, id); });
  const Clearance event{*gate, clearance.clinician, clearance.profession, every};
  if (move(*kept, entry, event, entry.by, at, remarks)) kept->given.push_back({entry.id, *gate, clearance.names});
}

void CourseKeeper::close(const Entry& entry, const EntryId& course, Remarks& remarks) {
  Kept* kept = find(course);
  const CourseState& state = kept->standing.state;
  if (state.begun && state.step == kept->standing.in_force.course.last()) {
    kept->standing.closed = true;
    kept->closed_by = entry.id;
    return;
  }
  remark(remarks, entry,
         "does not lift the course " + course + ": it is lifted after its last step has begun, not before");
}

void CourseKeeper::take_back_step(const Entry& by, const StepBegun& begun, Moment at, Remarks& remarks) {
  Kept* kept = find(begun.course);
  if (kept == nullptr) return;
  const auto step = kept->standing.in_force.course.step_with(begun.step);
  if (!step || kept->standing.state.step < *step) return;
  move(*kept, by, StepBack{std::max(0, *step - 1)}, by.by, at, remarks);
}

void CourseKeeper::take_back_clearance(const Entry& by, const EntryId& id, Moment at, Remarks& remarks) {
  for (Kept& kept : kept_) {
    for (const Gate& gate : std::vector<Gate>(kept.given)) {
      if (gate.clearance != id) continue;
      const Course& course = kept.standing.in_force.course;
      const auto guarded = std::find_if(course.steps.begin(), course.steps.end(),
                                        [&](const StepRule& step) { return step.gate == gate.gate; });
      const int before = static_cast<int>(guarded - course.steps.begin()) - 1;
      move(kept, by, StepBack{std::min(before, kept.standing.state.step)}, by.by, at, remarks);
      std::erase_if(kept.given, [&](const Gate& one) { return one.clearance == id; });
    }
  }
}

void CourseKeeper::take_back_closing(const EntryId& closing) {
  for (Kept& kept : kept_) {
    if (kept.closed_by == closing) kept.standing.closed = false;
  }
}

void CourseKeeper::put_standing(std::vector<Standing>& standing, std::vector<CourseStanding>& courses) const {
  for (const Kept& kept : kept_) {
    const CourseStanding& one = kept.standing;
    courses.push_back(one);
    if (one.closed) continue;
    for (people::Restriction& restriction : restrictions_at(one.in_force.course, one.state, one.places)) {
      restriction.player = one.player;
      standing.push_back({std::move(restriction),
                          {one.id},
                          true,
                          one.in_force.course.name + ": " + (one.state.begun ? "at '" : "not begun: '") +
                              one.in_force.course.step(one.state.step).name + "' (" + one.id + ")"});
    }
  }
}

}  // namespace lanework::care
