#include "app/draw/clean_matter.h"

#include "app/draw/foreign_text.h"

namespace lanework::draw {
namespace {

void clean(std::string& text) { text = clean_text(text); }
void clean(std::vector<std::string>& texts) {
  for (std::string& text : texts) clean(text);
}

void clean(WatchForMatter& watch) {
  clean(watch.fault);
  clean(watch.cue);
}

void clean(DrillMatter& drill) {
  for (std::string* text :
       {&drill.name, &drill.rung_words, &drill.dose_words, &drill.phase, &drill.mark.mark, &drill.mark.why}) {
    clean(*text);
  }
  clean(drill.cues);
  clean(drill.needs);
  for (WatchForMatter& watch : drill.watch) clean(watch);
}

void clean(std::vector<SlipPartners>& groups) {
  for (SlipPartners& group : groups) {
    clean(group.names);
    clean(group.note);
  }
}

void clean(std::vector<SlipSwaps>& players) {
  for (SlipSwaps& player : players) {
    clean(player.name);
    clean(player.instruction);
    clean(player.swaps);
  }
}

void clean(StripMatter& strip) {
  for (std::string* text : {&strip.name, &strip.surface, &strip.pace_of}) clean(*text);
}

void clean(EveningLineMatter& drill) {
  clean(drill.name);
  clean(drill.dose_words);
}

void clean(ActionPlanMatter& plan) {
  for (std::string* text :
       {&plan.note, &plan.lacks, &plan.emergency_number, &plan.address, &plan.way_in, &plan.phone, &plan.defibrillator,
        &plan.first_aid_bag, &plan.stays_with_player, &plan.calls, &plan.meets_ambulance, &plan.minds_others}) {
    clean(*text);
  }
}

}  // namespace

CardMatter cleaned(CardMatter matter) {
  for (std::string* text :
       {&matter.club, &matter.squad, &matter.date_words, &matter.date_iso, &matter.finish, &matter.finish_nine_in_ten,
        &matter.saving, &matter.restrictions_as_known, &matter.session_id}) {
    clean(*text);
  }
  clean(matter.strip);
  for (std::vector<std::string>* texts :
       {&matter.changes, &matter.not_covered, &matter.stop_always, &matter.stop_drill}) {
    clean(*texts);
  }
  for (DrillMatter& drill : matter.drills) clean(drill);
  for (SaidTo& said : matter.danger_signs) {
    clean(said.whom);
    clean(said.signs);
  }
  clean(matter.action_plan);
  return matter;
}

SlipMatter cleaned(SlipMatter matter) {
  for (std::string* text : {&matter.club, &matter.squad, &matter.date_words, &matter.date_iso,
                            &matter.restrictions_as_known, &matter.session_id}) {
    clean(*text);
  }
  clean(matter.partners);
  for (SlipRegrouped& drill : matter.regrouped) {
    clean(drill.drill);
    clean(drill.partners);
  }
  clean(matter.swaps);
  clean(matter.sits_out);
  clean(matter.notes);
  return matter;
}

ClinicMatter cleaned(ClinicMatter matter) {
  for (std::string* text : {&matter.club, &matter.squad, &matter.facts, &matter.note, &matter.date_iso}) clean(*text);
  for (std::vector<std::string>* texts : {&matter.taught, &matter.lay_out, &matter.tell, &matter.stop_always}) {
    clean(*texts);
  }
  clean(matter.strip);
  clean(matter.action_plan);
  for (EveningLineMatter& drill : matter.evening) clean(drill);
  for (KeyDrillMatter& drill : matter.key_drills) {
    for (std::string* text : {&drill.name, &drill.rung_words, &drill.dose_words}) clean(*text);
    clean(drill.good);
    clean(drill.fault);
  }
  return matter;
}

VisitMatter cleaned(VisitMatter matter) {
  for (std::string* text : {&matter.club, &matter.squad, &matter.facts, &matter.date_iso}) clean(*text);
  for (VisitDrillMatter& drill : matter.drills) {
    clean(drill.drill);
    clean(drill.look_for);
    clean(drill.fault);
  }
  return matter;
}

SummaryMatter cleaned(SummaryMatter matter) {
  for (std::string* text : {&matter.club, &matter.facts, &matter.date_iso}) clean(*text);
  clean(matter.overall);
  for (SummaryRow& row : matter.rows) {
    for (std::string* text : {&row.squad, &row.met, &row.short_of, &row.changes, &row.gap}) clean(*text);
  }
  return matter;
}

FormMatter cleaned(FormMatter matter) {
  for (std::string* text : {&matter.title, &matter.for_whom, &matter.facts, &matter.date_iso}) clean(*text);
  for (FormSection& section : matter.sections) {
    clean(section.heading);
    clean(section.note);
    for (FormField& field : section.fields) {
      clean(field.label);
      for (std::string& told : field.known) told = clean_text(told, kAnyLength);  // a report is not cut short
      clean(field.boxes);
    }
  }
  clean(matter.foot);
  return matter;
}

EmergencySheetMatter cleaned(EmergencySheetMatter matter) {
  for (std::string* text : {&matter.club, &matter.squad, &matter.printed, &matter.printed_iso, &matter.expires}) {
    clean(*text);
  }
  for (EmergencyRowMatter& row : matter.rows) {
    for (std::string* text : {&row.player, &row.guardian, &row.phone, &row.allergy, &row.inhaler, &row.other}) {
      clean(*text);
    }
  }
  return matter;
}

}  // namespace lanework::draw
