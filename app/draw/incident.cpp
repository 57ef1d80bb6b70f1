#include "app/draw/incident.h"

#include "app/draw/form_words.h"

namespace lanework::draw {
namespace {

FormField known(const char* label, const std::string& text, int lines, bool half = false) {
  return {label, text.empty() ? std::vector<std::string>{} : std::vector<std::string>{text}, lines, half, {}};
}

FormField known(const char* label, const std::vector<std::string>& texts, int lines) {
  return {label, texts, lines, false, {}};
}

}  // namespace

FormMatter incident_form(const IncidentMatter& matter) {
  FormMatter form;
  form.title = words::kIncident;
  form.for_whom = words::kForFamilyAndClinician;
  form.facts = words::club_and_squad(matter.club, matter.squad);
  form.date_iso = matter.date_iso;
  form.sections = {
      {words::kWhoWhenWhere,
       "",
       {known("Player", matter.player, 1, true), known("Date", matter.date_words, 1, true),
        known("Venue", matter.venue, 1, true), known("Time", matter.time, 1, true),
        known("Where on the ground", matter.place, 1)}},
      {words::kWhatHappened,
       words::kSeenAndDone,
       {known("In the reporter's words", matter.what_happened, 5), known("Signs that were seen", matter.signs, 3),
        known("What was done, in order", matter.done, 3), known("Added later, by whom, on", "", 2)}},
      {words::kWhoWasTold, "", {known("Who, by whom, at what time", matter.told, 3)}},
      {words::kReport,
       "",
       {known("Reported by", matter.reported_by, 1, true), known("On", matter.reported_on, 1, true),
        known("Signature", "", 1, true), known("Received by the lead, on", "", 1, true)}}};
  form.sections.back().together = true;  // a signature alone on a page signs nothing
  if (matter.known_before) {
    form.sections.insert(form.sections.begin() + 2, known_before_section(*matter.known_before));
  }
  form.foot = {words::kFormRules};
  return form;
}

Result<Pages> draw_incident(const IncidentMatter& matter, Paper paper) {
  return draw_form(incident_form(matter), paper);
}

}  // namespace lanework::draw
