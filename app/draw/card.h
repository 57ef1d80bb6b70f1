// The card: one evening's session on one sheet of paper, two sides at most; and the slip, the page with
// names for the coach's pocket. Finished values in (words, numbers to draw by), pages out, and the pages as
// PDF (real text, embedded fonts), SVG or PNG. The same matter and the same installed fonts give the same
// bytes, from run to run.
//
// All texts are UTF-8 from anywhere: they are drawn as they are, never read as markup; line breaks and
// control characters become spaces, characters that override the reading direction are dropped, broken UTF-8
// becomes U+FFFD, and what is too long for its place ends in an ellipsis.
//
// Times of the session are whole seconds after its start, as the clock and the planner give them.
// Distances are whole millimetres. Nothing here is computed that advises: what is shown was decided before.
#pragma once

#include <string>
#include <vector>

#include "app/draw/page.h"
#include "core/base/result.h"
#include "core/figure/figure.h"

namespace lanework::draw {

enum class Paper { kA4, kUsLetter };

// How the players stand; told by shape and pattern, never by colour.
enum class Formation { kLane, kSpread, kPairs };

// The place, for a plan drawn to scale.
struct StripMatter {
  std::string name;         // 'North end of pitch 2'
  std::string surface;      // 'grass, wet'; may be empty
  int lane_length_mm = 0;   // 1 m .. 100 m
  int cone_spacing_mm = 0;  // 1 .. lane_length_mm
  int lanes = 1;            // 1 .. 12
  int lane_gap_mm = 0;      // between neighbouring lanes
  int area_length_mm = 0;   // for drills on the spot and in pairs, along the lanes; 0: no area drawn
  int area_width_mm = 0;
  int spread_gap_mm = 2000;  // clear distance between players spread out
  int pace_mm = 750;         // one pace of whoever lays the cones out
  std::string pace_of;       // 'an adult': said beside the distances
};

struct WatchForMatter {
  std::string fault;  // what is seen: 'hips sag'
  std::string cue;    // what is said: 'lift the belt'
};

// How tonight's version of a drill differs from the routine's.
struct MarkMatter {
  std::string mark;  // 'new tonight', 'easier tonight', 'shorter tonight'; empty: as always
  std::string why;   // 'the slot is 3 min shorter'; may be empty
};

struct DrillMatter {
  std::string name;
  std::string rung_words;  // what changes: 'knees down'; may be empty
  std::string dose_words;  // '2 x 20 s a side'
  Formation formation = Formation::kSpread;
  std::string phase;                       // phase name in words; shown where it changes
  int rest_seconds = 0;                    // a break before the change
  int change_seconds = 0;                  // walking and regrouping before it
  int starts_second = 0;                   // telling starts, after the change
  int telling_seconds = 0;                 // of takes_seconds, the part spent explaining; 0 when not known
  int takes_seconds = 0;                   // telling and doing
  std::vector<std::string> cues;           // at most 3 are drawn
  std::vector<WatchForMatter> watch;       // at most 3 are drawn
  std::vector<std::string> needs;          // 'one ball a pair'
  const figure::Figure* figure = nullptr;  // must outlive the pages; nullptr leaves the picture out
  MarkMatter mark;
};

// Signs that are no matter for a warm-up, and whom they are for.
struct SaidTo {
  std::string whom;   // 'Call emergency services'
  std::string signs;  // 'collapse, fainting or a fit; chest pain'
};

// The venue's action plan. An empty text leaves a line to write on.
struct ActionPlanMatter {
  std::string note;   // 'Millrace ground, rehearsed 5 Sep 2026.'; empty: no plan is known, all is filled in by hand
  std::string lacks;  // 'Plan incomplete: no defibrillator named.'; empty: nothing is missing
  std::string emergency_number;
  std::string address;
  std::string way_in;
  std::string phone;
  std::string defibrillator;
  std::string first_aid_bag;
  std::string stays_with_player;
  std::string calls;
  std::string meets_ambulance;
  std::string minds_others;
};

struct CardMatter {
  std::string club;
  std::string squad;
  std::string date_words;       // 'Thursday 26 November 2026'
  std::string date_iso;         // '2026-11-26': the date written into the PDF
  int start_minute_of_day = 0;  // 0 .. 1439
  int turnout = 0;
  int slot_seconds = 0;            // from start to when the grass must be left
  int gathering_seconds = 0;       // before the first drill's change
  int planned_seconds = 0;         // median finish
  int nine_in_ten_seconds = 0;     // nine nights in ten are done by then
  std::string finish;              // planned finish as a clock time: '18:21'
  std::string finish_nine_in_ten;  // '18:24'
  std::string saving;              // 'a third lane saves 2 min 10 s'; may be empty
  StripMatter strip;
  std::vector<DrillMatter> drills;       // 1 .. 20, in order of time
  std::vector<std::string> changes;      // from the routine, each with its why, short
  std::vector<std::string> not_covered;  // families left uncovered, each with its cure
  std::vector<std::string> stop_always;  // general lines: when to stop and get help
  std::vector<std::string> stop_drill;   // lines of tonight's drills, merged
  std::string restrictions_as_known;     // 'Sunday 20:10'; empty: no restrictions were handed in
  std::string session_id;                // letters, digits and hyphens; in the QR code and in words
  std::vector<SaidTo> danger_signs;      // on side two
  bool emergency_plan = true;            // the action plan on side two
  ActionPlanMatter action_plan;
};

// One or two players, or three when the number is odd, in the order of permitted partners.
struct SlipPartners {
  std::vector<std::string> names;
  std::string note;  // 'wall version'; may be empty
};

struct SlipSwaps {
  std::string name;
  std::string instruction;         // 'no jumping until 3 Dec'
  std::vector<std::string> swaps;  // 'Instead of Jump and stick: does Side plank, knees down, 2 x 15 s a side'
};

// A drill that those who swap leave, so that others stand together than usual.
struct SlipRegrouped {
  std::string drill;
  std::vector<SlipPartners> partners;  // only groups that are not as usual
};

// Names stand here and nowhere else. No measure, body area or reason belongs into any of these texts.
struct SlipMatter {
  std::string club;
  std::string squad;
  std::string date_words;
  std::string date_iso;
  int start_minute_of_day = 0;
  std::string restrictions_as_known;
  std::vector<SlipPartners> partners;
  std::vector<SlipRegrouped> regrouped;
  std::vector<SlipSwaps> swaps;     // join in with swaps
  std::vector<SlipSwaps> sits_out;  // swaps empty; instruction: 'sits out, see a clinician'
  std::vector<std::string> notes;   // plain sentences for the coach
  std::string session_id;
};

// Faults: no drill or more than 20; a number outside the limits above; text that cannot be fitted.
Result<Pages> draw_card(const CardMatter& matter, Paper paper);
// One or more pages, as many as the names need. Faults: more than 200 entries.
Result<Pages> draw_slip(const SlipMatter& matter, Paper paper);

// The whole document; white ground, to save ink.
Result<std::string> write_pdf(const Pages& pages);
// One side, counted from 0; off-white ground.
Result<std::string> write_svg(const Pages& pages, int side);
Result<std::string> write_png(const Pages& pages, int side, int dots_per_inch = 110);

}  // namespace lanework::draw
