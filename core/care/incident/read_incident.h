// An incident file to what it tells.
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/incident/incident.h"

namespace lanework::care {

// So that a report stays a page or two; own judgement.
inline constexpr std::size_t kMostIncidentLetters = 1500;  // of what happened
inline constexpr std::size_t kMostIncidentLine = 200;      // of every other text
inline constexpr std::size_t kMostIncidentItems = 12;      // of a list

// Player and date are required. Every fault is collected; none quotes what was told of a player.
// day: of the report; an incident after it is a fault.
Result<Incident> read_incident(const Document& document, Date day);

}  // namespace lanework::care
