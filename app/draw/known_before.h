// What the club had been told of a player before an incident: a section of the report and of the letter.
#pragma once

#include <string>
#include <vector>

#include "app/draw/form.h"

namespace lanework::draw {

// Places, signs and steps: for the clinician's eyes, on no page of a coach.
struct KnownBeforeMatter {
  std::string as_known;              // 'As known Sunday 22 November 2026 20:10, 2 days before.'
  std::vector<std::string> hurts;    // 'head; told Monday 16 November 2026 19:40, 8 days before'
  std::vector<std::string> courses;  // 'return after concussion: step 3 of 6, ...'
  std::vector<std::string> held;     // 'no jumping until 3 Dec; set for knee, ...'
};

// An empty list says so: nothing was entered, which is not 'nothing was there'.
FormSection known_before_section(const KnownBeforeMatter& matter);

}  // namespace lanework::draw
