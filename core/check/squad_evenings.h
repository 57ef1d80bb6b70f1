// A squad's matter, set to one evening of the block after the other.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/check/block_calendar.h"
#include "core/check/club_matter.h"
#include "core/check/lane_sharing.h"
#include "core/check/matter.h"

namespace lanework::check {

// Restrictions follow players through the club: those of every file, each file once.
Node all_restrictions(const BlockDocuments& documents);

// REQUIRES: club and documents outlive it.
class SquadEvenings {
 public:
  // catalogue: a matter that holds the squad's drills and tables.
  SquadEvenings(const ClubMatter& club, const BlockDocuments& documents, const SquadWeek& squad, Matter catalogue,
                const Node& restrictions);

  // Who comes, how old, where, with what, locks and history, and the routine of the day. Faults where the squad's
  // documents cannot be read.
  Faults set(const Wish& wish, const Share& share);

  // As if everything had been told often enough.
  // except: drills that have not been done yet, and are told as the squad's history says.
  void know_everything(const std::set<std::string>& except);

  [[nodiscard]] const Matter& matter() const { return matter_; }
  [[nodiscard]] const std::vector<RoutineLine>& routine() const { return routine_; }  // of the house
  [[nodiscard]] const Faults& faults() const { return faults_; }

 private:
  void add_locks(const Locks& locks);
  void add_confirmed_rungs(const Wish& wish);

  const ClubMatter& club_;
  const SquadWeek& squad_;
  Matter matter_;
  Node request_;
  std::vector<RoutineLine> routine_;
  std::vector<RoutineLine> match_day_routine_;
  Faults faults_;
};

// What of a drill may be done tonight: one rung, the positions of some doses. Empty: the drill is not open.
struct OpenDoses {
  int rung = -1;
  std::vector<int> steps;
  [[nodiscard]] bool empty() const { return steps.empty(); }
};
OpenDoses open_doses(const Drill& drill, const Matter& matter);

const Pin* find_pin(const Matter& matter, const std::string& drill);

}  // namespace lanework::check
