// What stands of a club's players, as known at the latest receipt.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/care/entries/remarks.h"
#include "core/care/return_to_sport/course.h"

namespace lanework::care {

// One thing that holds a player back.
struct Standing {
  people::Restriction restriction;  // with the player
  EntryIds stems_from;
  bool needs_clearance = false;  // by a named clinician who names each of them, before the lead lifts it
  std::string why;               // for the lead
};

// A return course of a player.
struct CourseStanding {
  std::string player;
  EntryId id;  // of the entry that opened it
  CourseInForce in_force;
  CourseState state;
  ReceiptTime since;  // of the state
  std::optional<int> age;
  EntryIds carries;                         // hurts
  std::vector<catalogue::BodyArea> places;  // of them, where known
  bool closed = false;
};

struct Knowledge {
  std::vector<Standing> standing;       // by player, then by receipt
  std::vector<CourseStanding> courses;  // the same; closed ones too
  Remarks remarks;                      // by receipt
  std::optional<ReceiptTime> as_known;  // of the latest receipt
};

}  // namespace lanework::care
