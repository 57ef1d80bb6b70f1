// What somebody told of an incident, as the words of the report and the letter.
#pragma once

#include "app/draw/incident.h"
#include "core/care/incident/incident.h"

namespace lanework::cli {

// The player by the roster's id; without club, squad and venue.
draw::IncidentMatter incident_matter(const care::Incident& incident);

}  // namespace lanework::cli
