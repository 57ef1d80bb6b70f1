// coaches.toml: who coaches which squads, and who was taught what, when and by whom. Docs: docs/formats/club.md.
// A coach is an id, such as a number or a first name; nothing else about a person stands there.
#pragma once

#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::club {

struct Taught {
  Date date;
  std::string by;    // id of whoever taught: 'the lead', 'C02'
  std::string what;  // 'first evening', 'landing drills'
};

struct Coach {
  std::string id;
  std::vector<std::string> squads;  // ids
  std::vector<Taught> taught;       // by date
  Place place;
};

// squads: ids of the files in squads/. Faults: a squad that is not there or stands twice, an id twice, a line of
// 'taught' without date, by or what, whatever is not known.
std::vector<Coach> read_coaches(const Document& document, const std::vector<std::string>& squads, Faults& faults);

// Those of a squad, in the order of the file.
std::vector<const Coach*> coaches_of(const std::vector<Coach>& coaches, const std::string& squad);

// 'taught 14 Nov 2026 by the lead (first evening)', of the newest date; 'not yet taught' where there is none.
std::string taught_in_words(const Coach& coach);

}  // namespace lanework::club
