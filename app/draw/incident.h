// The report of an incident, filled from what is known. Names a child: the page says who may have it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/draw/form.h"
#include "app/draw/known_before.h"

namespace lanework::draw {

// Empty texts and lists become lines to write on.
struct IncidentMatter {
  std::string club;
  std::string squad;
  std::string player;  // the name, else the roster's id
  std::string date_words;
  std::string date_iso;
  std::string time;
  std::string venue;  // 'Millrace ground, Millrace Lane 9, Quillmere'
  std::string place;
  std::string what_happened;  // in the reporter's words
  std::vector<std::string> signs;
  std::vector<std::string> done;
  std::vector<std::string> told;  // 'his mother, by the coach, 18:40'
  std::string reported_by;
  std::string reported_on;
  std::optional<KnownBeforeMatter> known_before;  // empty: nobody asked, and the pages have no place for it
};

FormMatter incident_form(const IncidentMatter& matter);
Result<Pages> draw_incident(const IncidentMatter& matter, Paper paper);

}  // namespace lanework::draw
