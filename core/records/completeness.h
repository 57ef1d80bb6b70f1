// How complete a season's records are: what is there, what was filled in with the usual, what nobody knows, and every
// question. A report on rates without it is not worth reading.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/records/questions.h"
#include "core/records/read_season.h"
#include "core/records/weeks.h"

namespace lanework::records {

struct FieldKnown {
  std::string key;   // 'region'
  std::string name;  // 'body region', in the language asked for
  int known = 0;     // of Completeness::diagnoses
};

struct Completeness {
  Period period;
  int squads = 0;
  int sessions = 0;  // rows of hours
  PlayerMinutes hours;
  std::array<int, 4> sessions_by_default{};         // by Defaulted
  std::array<PlayerMinutes, 4> hours_by_default{};  // by Defaulted
  PlayerMinutes hours_defaulted_and_confirmed;      // of them
  int sessions_warm_up_unknown = 0;
  int diagnoses = 0;
  int events = 0;
  int open_events = 0;  // no return known by the last day that is
  int rows_outside_period = 0;
  std::vector<FieldKnown> fields;
  std::vector<std::string> squad_ids;
  std::vector<SquadWeeks> weeks;  // by squad
  std::vector<Question> questions;

  [[nodiscard]] PlayerMinutes hours_defaulted() const {
    return hours_by_default[1] + hours_by_default[2] + hours_by_default[3];
  }
};

// REQUIRES: no faults in what was read.
Completeness completeness(const ReadSeason& read, Language language = Language::kEnglish);

// Short lines for people: the counts, then one line a question.
std::vector<std::string> completeness_lines(const Completeness& completeness);
// The same as a table for JSON.
Node completeness_node(const Completeness& completeness);

}  // namespace lanework::records
