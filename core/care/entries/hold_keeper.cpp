#include "core/care/entries/hold_keeper.h"

#include <algorithm>

namespace lanework::care {
namespace {

using catalogue::BodyArea;

bool among(const EntryIds& ids, const EntryId& id) { return std::find(ids.begin(), ids.end(), id) != ids.end(); }

std::string joined(const EntryIds& ids) {
  std::string out;
  for (const EntryId& id : ids) out += (out.empty() ? "" : ", ") + id;
  return out;
}

std::string place_words(const std::optional<BodyArea>& place) {
  return place ? std::string(word(catalogue::body_area_words(), *place)) : "place not known";
}

people::Restriction out_until_seen() {
  people::Restriction out;
  out.sits_out = true;
  out.instruction = words_of(people::TakingPart::kSitsOut);
  return out;
}

std::string clearance_words(const EntryIds& ids) {
  return "; a clearance by a named clinician that names " + joined(ids) + ", then the lead lifts it";
}

}  // namespace

std::optional<BodyArea> Hold::place() const {
  if (const auto* hurt = std::get_if<Hurt>(&what)) return hurt->place;
  if (const auto* sore = std::get_if<Soreness>(&what)) return sore->report.place;
  return {};
}

EntryIds HoldKeeper::clearances_that_name(const EntryId& id) const {
  EntryIds out;
  for (const Given& given : clearances_) {
    if (among(given.names, id)) out.push_back(given.id);
  }
  return out;
}

bool HoldKeeper::knows(const EntryId& id) const {
  return std::any_of(holds_.begin(), holds_.end(), [&](const Hold& hold) { return hold.id == id; });
}

void HoldKeeper::add(const Entry& entry, Moment at, Remarks& remarks) {
  Hold hold{entry.id, entry.receipt, entry.received, at, entry.what, false, false, {}};
  if (auto* sore = std::get_if<Soreness>(&hold.what)) sore->report.day = local_day(entry.received);
  if (const auto* set = std::get_if<RestrictionSet>(&hold.what)) hold.review = set->restriction.review;
  // Received after the clearance that names it and after the lifting that rests on that clearance: answered already.
  const EntryIds named_by = clearances_that_name(entry.id);
  for (const Lifting& lifting : liftings_) {
    for (const EntryId& clearance : lifting.rests_on) {
      if (hold.lifted || !among(named_by, clearance)) continue;
      hold.lifted = true;
      liftings_.push_back({lifting.id, entry.id, {clearance}});
      remark(remarks, entry, "received late; the clearance " + clearance + " names it, so it changes nothing");
      holds_.push_back(std::move(hold));
      return;
    }
  }
  holds_.push_back(std::move(hold));
}

void HoldKeeper::review(const Entry& entry, const Reviewed& reviewed, Remarks& remarks) {
  for (const EntryId& name : reviewed.names) {
    if (!knows(name)) remark(remarks, entry, "reviews " + name + ", which was not received before it");
    for (Hold& hold : holds_) {
      if (hold.id == name) hold.review = reviewed.review;
    }
  }
}

void HoldKeeper::clear(const Entry& entry, const ClearanceGiven& clearance) {
  clearances_.push_back({entry.id, clearance.names});
}

bool HoldKeeper::needs_clearance(const Hold& hold) const {
  if (std::holds_alternative<RestrictionSet>(hold.what)) return false;
  if (!std::holds_alternative<Soreness>(hold.what)) return true;
  return judged(soreness_at(hold.place())).taking_part == people::TakingPart::kSitsOut;
}

bool HoldKeeper::same_day_rule_holds(const Hold& hold) const {
  const std::optional<BodyArea> place = hold.place();
  const auto& places = rules_.same_day_places;
  return needs_clearance(hold) && (!place || std::find(places.begin(), places.end(), *place) != places.end());
}

void HoldKeeper::lift(const Entry& entry, const EntryId& name, Moment at, Remarks& remarks) {
  const auto refuse = [&](const std::string& why) { remark(remarks, entry, "does not lift " + name + ": " + why); };
  if (!knows(name)) return refuse("it was not received before; lift it again when it is there");
  for (Hold& hold : holds_) {
    if (hold.id != name || hold.lifted) continue;
    if (hold.carried) {
      refuse("it is carried by a return course");
      continue;
    }
    const EntryIds clearances = clearances_that_name(name);
    if (needs_clearance(hold) && clearances.empty()) {
      refuse("no clearance by a named clinician names it");
      continue;
    }
    if (same_day_rule_holds(hold) && at < hours_after(hold.at, rules_.same_day_hours)) {
      refuse("never on the same day: not before " + std::to_string(rules_.same_day_hours) + " h" +
             (rules_.same_day_unverified ? " (unverified; the careful side)" : ""));
      continue;
    }
    hold.lifted = true;
    liftings_.push_back({entry.id, name, needs_clearance(hold) ? clearances : EntryIds{}});
  }
}

void HoldKeeper::hold_again(const EntryId& id) {
  for (Hold& hold : holds_) {
    if (hold.id == id) hold.lifted = false;
  }
}

void HoldKeeper::take_back_clearance(const EntryId& clearance) {
  std::erase_if(clearances_, [&](const Given& given) { return given.id == clearance; });
  std::erase_if(liftings_, [&](const Lifting& lifting) {
    const bool rested = among(lifting.rests_on, clearance);
    if (rested) hold_again(lifting.hold);
    return rested;
  });
}

void HoldKeeper::take_back_lifting(const EntryId& lifting) {
  std::erase_if(liftings_, [&](const Lifting& one) {
    if (one.id == lifting) hold_again(one.hold);
    return one.id == lifting;
  });
}

std::vector<const Hold*> HoldKeeper::soreness_at(const std::optional<BodyArea>& place) const {
  std::vector<const Hold*> out;
  for (const Hold& hold : holds_) {
    if (!hold.lifted && std::holds_alternative<Soreness>(hold.what) && hold.place() == place) out.push_back(&hold);
  }
  return out;
}

PainJudgement HoldKeeper::judged(const std::vector<const Hold*>& soreness) const {
  std::vector<PainReport> reports;
  for (const Hold* hold : soreness) reports.push_back(std::get<Soreness>(hold->what).report);
  return judge_pain(pain_, reports);
}

void HoldKeeper::put_standing(const std::string& player, std::vector<Standing>& out) const {
  std::set<std::optional<BodyArea>> told;
  for (const Hold& hold : holds_) {
    if (hold.lifted || hold.carried) continue;
    Standing standing;
    if (const auto* set = std::get_if<RestrictionSet>(&hold.what)) {
      standing.restriction = set->restriction;
      standing.stems_from = {hold.id};
      standing.why = "set " + to_day_words(hold.received) + " (" + hold.id + ")";
    } else if (std::holds_alternative<Soreness>(hold.what)) {
      if (!told.insert(hold.place()).second) continue;
      const std::vector<const Hold*> all = soreness_at(hold.place());
      const PainJudgement judgement = judged(all);
      if (!judgement.restriction) continue;
      standing.restriction = *judgement.restriction;
      for (const Hold* one : all) standing.stems_from.push_back(one->id);
      standing.needs_clearance = judgement.taking_part == people::TakingPart::kSitsOut;
      standing.why = "sore, " + place_words(hold.place()) + ": ";
      for (std::size_t i = 0; i < judgement.why.size(); ++i) standing.why += (i > 0 ? ", " : "") + judgement.why[i];
      standing.why += " (" + joined(standing.stems_from) + ")";
    } else {
      standing.restriction = out_until_seen();
      standing.stems_from = {hold.id};
      standing.needs_clearance = true;
      const bool hurt = std::holds_alternative<Hurt>(hold.what);
      standing.why = (hurt ? "hurt, " + place_words(hold.place()) : "symptoms of a course that is not known") +
                     ", received " + to_day_words(hold.received) + " (" + hold.id + ")";
    }
    if (standing.needs_clearance) standing.why += clearance_words(standing.stems_from);
    if (hold.review) standing.restriction.review = hold.review;
    standing.restriction.player = player;
    out.push_back(std::move(standing));
  }
}

}  // namespace lanework::care
