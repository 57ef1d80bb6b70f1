// What the readers of care promise of any document, one function a topic; each ends the program at the first that is
// broken.
#pragma once

#include "core/base/document.h"

namespace lanework::fuzz {

// As each table of heat, cold and air, and as a weather file: values, or clear faults; and of every sound weather a
// verdict that asks no less than any of its topics, and no less an hour later than fresh.
void check_weather_tables(const Document& document);
void check_weather(const Document& document);

// As the pain rule, as return rules and as entries under the shipped rules: values, or clear faults. Whatever the order
// in which entries are handed in, and however often, one thing stands; it can be written as restrictions and read back;
// and without a clearance who was hurt sits out.
void check_care_rules(const Document& document);
void check_entries(const Document& document);

// A plan whose texts can be read out, and what it lacks.
void check_venue(const Document& document);
// No fault shows what was told of a player.
void check_incident(const Document& document);

}  // namespace lanework::fuzz
