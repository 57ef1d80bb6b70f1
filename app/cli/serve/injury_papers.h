// The report of an incident and the letter to a clinician, as the server gives them to the lead.
#pragma once

#include <string>

#include "app/serve/house.h"

namespace lanework::cli {

struct PaperPlaces {
  std::string catalogue;  // the folder
  std::string club;       // the club's folder, for venue, ages and the place's own return rules; empty: none
};

serve::InjuryPapers injury_papers(const PaperPlaces& places);

}  // namespace lanework::cli
