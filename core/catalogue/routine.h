// A house routine: the lead's standing sequence for an age band.
#pragma once

#include <string>
#include <vector>

namespace lanework::catalogue {

// One line of the routine, by position in the catalogue, so that it cannot name what does not exist.
struct RoutineLine {
  int drill;  // index into Catalogue::drills
  int rung;   // index into Drill::rungs
  int dose;   // index into Dose::steps
};

struct Routine {
  std::string id;
  std::string name;
  int age_from;
  int age_to;
  int minutes;                     // the slot it is written for
  std::string note;                // the lead's word to coaches, may be empty
  std::vector<RoutineLine> lines;  // in the order of the session: phases ascending
  std::string file;
};

}  // namespace lanework::catalogue
