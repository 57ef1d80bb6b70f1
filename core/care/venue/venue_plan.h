// What is to happen at one place when something goes wrong: the venue's action plan (docs/formats/venue.md).
// Andersen JC, Courson RW, Kleiner DM, McLoda TA (2002) J Athl Train 37(1):99-104 says what belongs into it.
#pragma once

#include <optional>
#include <string>

#include "core/base/date.h"

namespace lanework::care {

// Texts are the club's own words; an empty one is not known.
struct VenuePlan {
  std::string name;  // 'Millrace ground', never empty

  std::string address;  // exact, as it is told on the phone
  std::string map;      // how the pitch is found once there
  std::string way_in;   // which gate, and who opens it

  std::string emergency_number;
  std::string phone;  // the phone there that has signal

  std::string defibrillator;  // the nearest, and where it hangs
  std::string first_aid_bag;  // where it is kept

  std::string stays_with_player;
  std::string calls;
  std::string meets_ambulance;
  std::string minds_others;

  std::string responsible;                // for record, debrief, training and checks of the equipment
  std::optional<Date> ambulance_contact;  // the local ambulance service knows the plan since
  std::optional<Date> last_rehearsal;
  std::optional<Date> last_review;
};

}  // namespace lanework::care
