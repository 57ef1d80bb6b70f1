// What somebody saw and did when a player was hurt or taken ill (docs/formats/incident.md): words as they were told, in
// which nothing is concluded. Names a child: for the family, the clinician and the lead, and nobody else.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"

namespace lanework::care {

struct ToldPerson {
  std::string who;  // 'his mother'
  std::string by;   // who told it; may be empty
  std::optional<TimeOfDay> at;
};

// Empty texts and lists are not known.
struct Incident {
  std::string player;  // the roster's id, never empty
  Date date;
  std::optional<TimeOfDay> time;
  std::string place;               // where on the ground
  std::string what_happened;       // in the reporter's words
  std::vector<std::string> signs;  // what was seen
  std::vector<std::string> done;   // what was done, in order
  std::vector<ToldPerson> told;    // in order
  std::string reported_by;
  std::optional<Date> reported_on;
};

}  // namespace lanework::care
