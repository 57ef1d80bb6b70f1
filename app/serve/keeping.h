// How long what is kept that somebody may decide about; the rest are the constants of retention.h.
#pragma once

namespace lanework::serve {

// Own judgement, for the club to decide: its law, and how long somebody may still ask.
struct Keeping {
  int evenings_days = 730;     // two seasons: entries about sessions and squads
  int who_left_days = 1095;    // three years: people on no list, since anything was last received about them
  int read_notes_days = 1095;  // three years: the book of reads
};

}  // namespace lanework::serve
