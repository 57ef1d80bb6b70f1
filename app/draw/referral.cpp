#include "app/draw/referral.h"

#include "app/draw/form_words.h"

namespace lanework::draw {
namespace {

FormField written(const char* label, int lines, bool half = false) { return {label, {}, lines, half, {}}; }

FormField known(const char* label, std::vector<std::string> texts, int lines, bool half = false) {
  std::erase(texts, "");
  return {label, std::move(texts), lines, half, {}};
}

FormField ticked(const char* label, std::vector<std::string> boxes) { return {label, {}, 1, false, std::move(boxes)}; }

}  // namespace

FormMatter referral_form(const IncidentMatter& matter) {
  FormMatter form;
  form.title = words::kReferral;
  form.for_whom = words::kForFamilyAndClinician;
  form.facts = words::club_and_squad(matter.club, matter.squad);
  form.date_iso = matter.date_iso;
  std::string when = matter.date_words;
  if (!matter.time.empty()) when += ", " + matter.time;
  form.sections = {
      {words::kWhatWasSeen,
       words::kLaymen,
       {known("Player", {matter.player}, 1, true), known("When", {when}, 1, true),
        known("What happened, in the reporter's words", {matter.what_happened}, 3),
        known("Signs that were seen", matter.signs, 2), known("What was done", matter.done, 2),
        known("Reported by", {matter.reported_by}, 1)}},
      {words::kClinicianAnswers,
       words::kNoDiagnosisAsked,
       {ticked("May the player take part in warm-up and practice?",
               {"yes, without limits", "yes, but without what is named below", "no, not until seen again"}),
        written("What must be avoided (such as jumping, running fast, turning, contact, load on a part of the body)",
                2),
        written("Until (day)", 1, true), written("To be seen again on", 1, true),
        ticked("Clearance, by name, for the gates ticked and no other",
               {"seen: a return step by step may begin", "practice with the squad, without contact",
                "practice with a risk of a knock to the head", "contact practice and matches"}),
        written("Name and profession", 1, true), written("Practice, phone for questions", 1, true),
        written("Date", 1, true), written("Signature", 1, true)}}};
  if (matter.known_before) {
    // The answer goes back to the club: on a page of its own, without what only the clinician is told.
    FormSection& answer = form.sections.back();
    answer.new_page = true;
    answer.fields.insert(answer.fields.begin(),
                         {known("Player", {matter.player}, 1, true), known("When", {when}, 1, true)});
    form.sections.insert(form.sections.begin() + 1, known_before_section(*matter.known_before));
  }
  form.foot = {words::kGateStaysShut, words::kFormRules};
  return form;
}

Result<Pages> draw_referral(const IncidentMatter& matter, Paper paper) {
  return draw_form(referral_form(matter), paper);
}

}  // namespace lanework::draw
