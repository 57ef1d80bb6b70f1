#include "app/cli/care/incident_matter.h"

namespace lanework::cli {
namespace {

std::string told_words(const care::ToldPerson& told) {
  return told.who + (told.by.empty() ? "" : ", by " + told.by) + (told.at ? ", " + to_text(*told.at) : "");
}

}  // namespace

draw::IncidentMatter incident_matter(const care::Incident& incident) {
  draw::IncidentMatter out;
  out.player = incident.player;
  out.date_words = to_words(incident.date);
  out.date_iso = to_iso(incident.date);
  if (incident.time) out.time = to_text(*incident.time);
  out.place = incident.place;
  out.what_happened = incident.what_happened;
  out.signs = incident.signs;
  out.done = incident.done;
  for (const care::ToldPerson& told : incident.told) out.told.push_back(told_words(told));
  out.reported_by = incident.reported_by;
  if (incident.reported_on) out.reported_on = to_words(*incident.reported_on);
  return out;
}

}  // namespace lanework::cli
