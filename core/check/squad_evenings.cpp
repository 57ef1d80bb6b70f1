#include "core/check/squad_evenings.h"

#include <algorithm>
#include <set>
#include <utility>

#include "core/check/barred.h"
#include "core/check/levels.h"
#include "core/check/offered.h"
#include "core/check/read_matter.h"
#include "core/check/selection.h"

namespace lanework::check {
namespace {

// So often told, a drill needs no more telling than ever after.
constexpr std::int64_t kTold = 3;

std::vector<RoutineLine> lines_of(const Document& routine, Matter& matter, Faults& faults) {
  Node request = Node::make_table();
  request.set("routine", routine.root);
  TableReader root(routine.file, &request, "", faults);
  matter.routine.clear();
  read_routine(root, matter, faults);
  return matter.routine;
}

bool within(const LoadSums& loads, const LoadSums& ceilings) {
  return loads.contacts <= ceilings.contacts && loads.eccentric <= ceilings.eccentric &&
         loads.hard_running <= ceilings.hard_running;
}

}  // namespace

Node all_restrictions(const BlockDocuments& documents) {
  Node list = Node::make_array();
  std::set<std::string> seen;
  for (const SquadDocuments& squad : documents.squads) {
    const Node* rows = squad.restrictions.root.find("restriction");
    if (rows == nullptr || !seen.insert(squad.restrictions.file).second) continue;
    list.items.insert(list.items.end(), rows->items.begin(), rows->items.end());
  }
  if (const Node* rows = documents.reported.find("restriction")) {
    list.items.insert(list.items.end(), rows->items.begin(), rows->items.end());
  }
  Node table = Node::make_table();
  table.set("restriction", std::move(list));
  return table;
}

SquadEvenings::SquadEvenings(const ClubMatter& club, const BlockDocuments& documents, const SquadWeek& squad,
                             Matter catalogue, const Node& restrictions)
    : club_(club), squad_(squad), matter_(std::move(catalogue)), request_(Node::make_table()) {
  routine_ = lines_of(squad.documents->routine, matter_, faults_);
  match_day_routine_ = lines_of(squad.documents->match_day_routine, matter_, faults_);
  request_.set("roster", documents.rosters[squad.documents->roster]);
  request_.set("restrictions", restrictions);
}

Faults SquadEvenings::set(const Wish& wish, const Share& share) {
  Node slot = Node::make_table();
  slot.set("date", Node::make_text(to_iso(wish.date)));
  slot.set("start", Node::make_text(to_text(TimeOfDay{wish.start_minutes})));
  slot.set("minutes", Node::make_integer(1));
  Node tonight = Node::make_table();
  if (squad_.turnout) tonight.set("turnout", Node::make_integer(*squad_.turnout));
  Node squad = squad_.documents->squad.root;
  squad.set("slot", std::move(slot));
  squad.set("tonight", std::move(tonight));
  request_.set("squad", std::move(squad));
  matter_.tonight = {};
  matter_.secrets = {};
  matter_.routine = wish.match_day ? match_day_routine_ : routine_;
  Faults faults;
  TableReader request(squad_.documents->squad.file, &request_, "", faults);
  read_evening(request, matter_, faults);
  Tonight& out = matter_.tonight;
  out.slot_seconds = wish.seconds;
  out.days_to_match = wish.days_to_match ? std::optional<std::int64_t>(*wish.days_to_match) : std::nullopt;
  out.cones = share.kit.cones;
  out.balls = share.kit.balls;
  out.mats = share.kit.mats;
  // The same share of the width as of the lanes.
  const Strip& ground = club_.find_strip(wish.strip)->strip;
  matter_.strip = ground;
  matter_.strip.lanes = share.lanes;
  matter_.strip.width_mm = ground.width_mm * share.lanes / ground.lanes;
  add_confirmed_rungs(wish);
  add_locks(squad_.locks);
  for (const Locks& locks : club_.locks) {
    if (locks.age_from <= out.age && out.age <= locks.age_to) add_locks(locks);
  }
  return faults;
}

// The latest of each drill that was confirmed by the Monday of the evening's week.
void SquadEvenings::add_confirmed_rungs(const Wish& wish) {
  if (wish.match_day) return;
  const int monday = club_.monday.days_since_epoch + 7 * wish.week;
  std::map<std::string, int> since;
  for (const RungFrom& one : squad_.rungs) {
    const int from = one.from.days_since_epoch;
    const auto known = since.find(one.drill);
    if (from > monday || (known != since.end() && known->second > from)) continue;
    since[one.drill] = from;
    matter_.tonight.confirmed_rungs[one.drill] = one.rung;
  }
}

void SquadEvenings::add_locks(const Locks& locks) {
  for (const Pin& pin : locks.pins) {
    if (matter_.drills.count(pin.drill) > 0 && find_pin(matter_, pin.drill) == nullptr) {
      matter_.tonight.pins.push_back(pin);
    }
  }
  std::vector<std::string>& bans = matter_.tonight.bans;
  bans.insert(bans.end(), locks.bans.begin(), locks.bans.end());
}

void SquadEvenings::know_everything(const std::set<std::string>& except) {
  for (const auto& entry : matter_.drills) {
    if (except.count(entry.first) > 0) continue;
    std::int64_t& times = matter_.tonight.taught[entry.first];
    times = std::max(times, kTold);
  }
}

const Pin* find_pin(const Matter& matter, const std::string& drill) {
  const std::vector<Pin>& pins = matter.tonight.pins;
  const auto found = std::find_if(pins.begin(), pins.end(), [&](const Pin& pin) { return pin.drill == drill; });
  return found == pins.end() ? nullptr : &*found;
}

namespace {

// Less than half of the routine's own dose, where more is open.
void drop_small(const Drill& drill, const Step& own, std::vector<int>& steps) {
  const auto work = [&](int step) {
    const Step& one = drill.steps[static_cast<std::size_t>(step)];
    return one.sets * one.amount;
  };
  if (steps.empty()) return;
  const auto most =
      work(*std::max_element(steps.begin(), steps.end(), [&](int a, int b) { return work(a) < work(b); }));
  const auto half = std::min((own.sets * own.amount + 1) / 2, most);
  std::erase_if(steps, [&](int step) { return work(step) < half; });
}

}  // namespace

OpenDoses open_doses(const Drill& drill, const Matter& matter) {
  if (new_eccentric_too_late(drill, matter)) return {};
  const std::vector<int> rungs = open_rungs(drill, matter);
  if (rungs.empty()) return {};
  const int line = routine_position(matter, drill.id);
  const Pin* pin = find_pin(matter, drill.id);
  const auto confirmed = matter.tonight.confirmed_rungs.find(drill.id);
  // The pinned rung as it is, else the confirmed one, or the routine's, or an easier one, else the easiest.
  OpenDoses out;
  if (pin != nullptr && !pin->rung.empty()) {
    const int pinned = rung_position(drill, pin->rung);
    if (std::find(rungs.begin(), rungs.end(), pinned) != rungs.end()) out.rung = pinned;
  } else if (line >= 0 || confirmed != matter.tonight.confirmed_rungs.end()) {
    const int most = rung_position(drill, confirmed != matter.tonight.confirmed_rungs.end()
                                              ? confirmed->second
                                              : matter.routine[static_cast<std::size_t>(line)].rung);
    for (const int rung : rungs) {
      if (rung <= most) out.rung = rung;
    }
  } else {
    out.rung = rungs.front();
  }
  if (out.rung < 0) return {};
  const LoadSums ceilings = ceilings_of(matter);
  for (std::size_t step = 0; step < drill.steps.size(); ++step) {
    const Pick pick{&drill, out.rung, static_cast<int>(step), ""};
    if (pin != nullptr && !keeps(pick, *pin)) continue;
    if (within(loads_of(pick, matter), ceilings)) out.steps.push_back(pick.step);
  }
  if (line >= 0) drop_small(drill, matter.routine[static_cast<std::size_t>(line)].step, out.steps);
  return out;
}

}  // namespace lanework::check
