// From a squad and its routine to what the pack for a first evening and the form for a visit are made of.
#pragma once

#include <string>
#include <vector>

#include "app/draw/clinic.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"
#include "core/session/strip.h"

namespace lanework::cli {

struct ClinicSource {
  const catalogue::Catalogue* catalogue = nullptr;  // must outlive the pages drawn
  const catalogue::Routine* routine = nullptr;
  session::Strip strip;
  std::string club;   // may be empty
  std::string squad;  // or the routine's name
  std::string facts;
  std::string date_iso;                // of the file
  int players = 0;                     // who come; 0: not known
  std::vector<std::string> taught;     // a sentence a coach
  draw::ActionPlanMatter action_plan;  // of the strip's venue; as it is where there is none
};

draw::ClinicMatter clinic_matter(const ClinicSource& source);
draw::VisitMatter visit_matter(const ClinicSource& source);

}  // namespace lanework::cli
