// A plan that lacks nothing on 26 November 2026, of an invented ground.
#pragma once

#include "core/care/venue/venue_plan.h"

namespace lanework::care::test {

inline Date venue_day() { return *make_date(2026, 11, 26); }

inline VenuePlan whole_plan() {
  return {"Millrace ground",
          "Millrace Lane 9, Quillmere",
          "pitch 2 behind the club house",
          "gate B in Orchard Road",
          "112",
          "the lead's mobile",
          "club house, outside wall",
          "club house, shelf inside the door",
          "the squad's coach",
          "the second coach",
          "a parent at the gate",
          "the team helper",
          "the club's lead",
          make_date(2026, 8, 18),
          make_date(2026, 9, 5),
          make_date(2026, 8, 20)};
}

}  // namespace lanework::care::test
