// Coach education on paper: the pack for a coach's first evening (two pages) and the form for a visit (one page).
// Like the card: finished values in, pages out; texts are drawn as they are; nothing that advises is computed here.
// Nobody's name but the coaches' ids stands on them.
#pragma once

#include <string>
#include <vector>

#include "app/draw/card.h"

namespace lanework::draw {

// One drill of the evening, told in a line.
struct EveningLineMatter {
  std::string name;
  std::string dose_words;
  Formation formation = Formation::kSpread;
};

// What good looks like beside what goes wrong most.
struct KeyDrillMatter {
  std::string name;
  std::string rung_words;
  std::string dose_words;
  Formation formation = Formation::kSpread;
  std::vector<std::string> good;           // cues, at most 3 are drawn
  WatchForMatter fault;                    // the commonest
  const figure::Figure* figure = nullptr;  // must outlive the pages
};

struct ClinicMatter {
  std::string club;                 // may be empty
  std::string squad;                // or, for a routine alone, its name
  std::string facts;                // 'Early teens, 20 min: Tuesday 18:00, Thursday 18:00'
  std::string note;                 // the lead's word to coaches; may be empty
  std::string date_iso;             // written into the PDF
  std::vector<std::string> taught;  // 'Maren: taught 7 Nov 2026 by the lead (first evening)'; may be empty
  StripMatter strip;
  std::vector<std::string> lay_out;        // sentences
  std::vector<std::string> tell;           // sentences
  std::vector<EveningLineMatter> evening;  // 1 .. 30, in order
  std::vector<KeyDrillMatter> key_drills;  // 1 .. 8, in order
  std::vector<std::string> stop_always;    // when to stop and get help
  ActionPlanMatter action_plan;            // of the place; its note empty: none is known, the form is filled in by hand
};

struct VisitDrillMatter {
  EveningLineMatter drill;
  std::string look_for;  // the first cue
  WatchForMatter fault;
};

struct VisitMatter {
  std::string club;
  std::string squad;
  std::string facts;
  std::string date_iso;
  std::vector<VisitDrillMatter> drills;  // 1 .. 30
};

// Faults: numbers of drills outside the limits above; a strip outside the card's limits.
Result<Pages> draw_clinic(const ClinicMatter& matter, Paper paper);
Result<Pages> draw_visit_form(const VisitMatter& matter, Paper paper);

}  // namespace lanework::draw
