// Injuries by hours, of the whole season and group by group: how many, how often with limits, how many days they cost.
//
// Of squads, ages, sexes and settings events are counted, each once, in the group's own hours. Of what an injury is
// (region, tissue, onset, contact, recurrence, history) diagnoses are counted, in all hours.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/two_languages.h"
#include "core/evidence/burden.h"
#include "core/evidence/interval.h"
#include "core/records/season.h"

namespace lanework::findings {

enum class GroupBy : std::uint8_t {
  kWhole,
  kSetting,
  kAgeBand,
  kSex,
  kSquad,
  kRegion,
  kTissue,
  kOnset,
  kContact,
  kRecurrence,
  kHistory  // recurrence in short: first; recurrent (same place and type, healed or not); another later one
};

// Label of kWhole.
inline constexpr Words kAll{"all", "todas"};
// Labels of kHistory.
inline constexpr Words kFirstInjury{"first", "primera"};
inline constexpr Words kRecurrent{"recurrent", "recurrente"};
inline constexpr Words kOtherLater{"another later one", "otra posterior"};

struct RateRow {
  std::string label;
  int injuries = 0;
  double hours = 0;  // 0: not known, and no rate
  int open = 0;      // not yet back: their days are 'at least'
  double days = 0;   // lost
  double median_days = 0;
  evidence::Interval limits;               // per hour, exact; of no meaning without hours
  std::optional<evidence::Burden> burden;  // days per hour

  [[nodiscard]] double per_hour() const { return injuries / hours; }
};

// How rates are worked out and said.
struct RatesAsked {
  double level = evidence::kUsualLevel;
  Language language = Language::kEnglish;  // of the labels
};

struct RateTable {
  GroupBy by = GroupBy::kWhole;
  bool of_diagnoses = false;
  std::vector<RateRow> rows;  // those with injuries or hours; 'not known' last
  int unknown = 0;            // injuries whose group is not known
  int injuries = 0;           // in all
  // A group's rate leaves out those of it that nobody assigned. Where they are many its limits mean nothing.
  bool rates_stand = true;
  Language language = Language::kEnglish;  // of the labels
};

// More than this share of injuries without a group, and no group's rate is given; own judgement.
inline constexpr double kMostUnknownShare = 0.1;

// Of diagnoses whose history is known, those that were recurrent; exact limits of the share. Empty where there is none.
struct RecurrentShare {
  int recurrent = 0;
  int known = 0;
  evidence::Interval limits;
};
std::optional<RecurrentShare> recurrent_share(const RateTable& histories, double level);

RateTable rate_table(const records::Season& season, const records::Terms& terms, GroupBy by, const RatesAsked& asked);

// Of the whole: injuries by the days they cost.
struct SeverityRow {
  Words label{"", ""};
  int injuries = 0;
  int open = 0;  // of them; they may come to stand in a higher row
};
std::vector<SeverityRow> severity_table(const records::Season& season);

}  // namespace lanework::findings
