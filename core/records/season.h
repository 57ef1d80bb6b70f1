// A season on record: squads, the hours they trained and played, what happened to whom, who joined and left. Values as
// they were read and found sound; where they stood in their files is kept beside them (SeasonPlaces).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/base/units.h"
#include "core/evidence/time_loss.h"
#include "core/records/terms.h"

namespace lanework::records {

// Hours are kept in whole minutes of one player each.
using PlayerMinutes = Quantity<struct PlayerMinutesTag>;

// The days a season is looked at, and the last day that is known of.
struct Period {
  Date first;
  Date last;
  Date as_of;
  bool operator==(const Period&) const = default;
  [[nodiscard]] bool contains(Date day) const { return first <= day && day <= last; }
};
inline constexpr int kMostPeriodDays = 3 * 366;
// Faults: the last day before the first, more than three years, the last known day before the first one. 'where' is
// where the user named them.
Result<Period> make_period(Date first, Date last, Date as_of, const Place& where = {});

// Weeks start on Monday; week 0 is that of the period's first day.
int week_of(const Period& period, Date day);
Date monday_of(const Period& period, int week);
// All weeks that touch the period.
int weeks_in(const Period& period);

struct SquadRecord {
  std::string id;
  std::string name;  // empty: the id
  std::string club;
  std::string age_band;  // 'U13'
  std::optional<Sex> sex;
  std::optional<int> players;
  std::optional<int> training_minutes;  // usual length
  std::optional<int> match_minutes;
  std::optional<int> on_the_field;  // players at one time in a match
  std::optional<Date> taught;       // the coach, on the warm-up
  [[nodiscard]] const std::string& shown() const { return name.empty() ? id : name; }
  bool operator==(const SquadRecord&) const = default;
};

// What of an exposure's hours is the squad's usual and not the row's own.
enum class Defaulted : std::uint8_t { kNothing, kMinutes, kPlayers, kBoth };

// One row of hours: a session of a squad, or of one player in it.
struct Exposure {
  std::uint32_t squad = 0;  // position in Season::squads
  Date date;
  Setting setting = Setting::kTraining;
  PlayerMinutes hours;  // calendar minutes times players there; in a match, times players on the field
  Defaulted defaulted = Defaulted::kNothing;
  std::optional<int> minutes;                 // as the row says
  std::optional<int> players;                 // as the row says
  std::optional<PlayerMinutes> stated_hours;  // as the row says, instead of minutes times players
  std::string player;                         // not empty: a session of that player
  std::optional<WarmUp> warm_up;
  std::optional<int> warm_up_minutes;
  std::vector<std::string> left_out;
  std::vector<std::string> needing_help;
  std::optional<bool> confirmed;  // somebody has looked at this row's hours
  bool operator==(const Exposure&) const = default;
};

// One diagnosis. Empty fields are not known.
struct InjuryRecord {
  std::uint32_t squad = 0;
  std::string player;  // a pseudonym
  std::string event;   // diagnoses of one event share it
  Date date;           // of onset
  std::optional<Setting> setting;
  std::optional<Onset> onset;
  std::optional<Contact> contact;
  std::optional<Region> region;
  std::optional<Tissue> tissue;
  std::optional<Side> side;
  std::optional<Activity> activity;
  std::optional<Recurrence> recurrence;
  std::optional<Date> loss_began;  // where it came later than the onset
  std::optional<Date> returned;    // empty: open
  std::vector<Date> days_missed;   // of problems that come and go; ascending, none twice
  std::string note;
  bool operator==(const InjuryRecord&) const = default;
};

struct PlayerRecord {
  std::string player;
  std::uint32_t squad = 0;
  std::optional<Date> joined;
  std::optional<Date> left;
  bool operator==(const PlayerRecord&) const = default;
};

struct Season {
  Period period;
  std::vector<SquadRecord> squads;
  std::vector<Exposure> exposures;     // in the period, in the order of their file
  std::vector<InjuryRecord> injuries;  // with their onset in the period
  std::vector<PlayerRecord> players;   // empty where nobody keeps the sheet
  // Of the squads that have one, each once, in their own order: 'U9' before 'U13'.
  [[nodiscard]] std::vector<std::string> age_bands() const;
  bool operator==(const Season&) const = default;
};

// Physical lines, parallel to the lists of a season.
struct RowPlaces {
  std::string file;
  std::vector<int> lines;
  [[nodiscard]] Place place(std::size_t row, std::string field = {}) const {
    return {file, lines[row], 0, std::move(field)};
  }
};
struct SeasonPlaces {
  RowPlaces squads;
  RowPlaces exposures;
  RowPlaces injuries;
  RowPlaces players;
};

// An event counts once for incidence however many diagnoses it has: positions in Season::injuries, first rows first.
struct InjuryEvent {
  std::vector<std::uint32_t> diagnoses;
  bool operator==(const InjuryEvent&) const = default;
};
// Rows of one event id are one event; a row without an id is one of its own.
std::vector<InjuryEvent> events_of(const std::vector<InjuryRecord>& injuries);

// By the consensus' rule of days. Open: no return is known, so the days are 'at least'.
evidence::DaysLost time_loss(const InjuryRecord& injury, Date as_of);
// Of the worst diagnosis; open where one of them is.
evidence::DaysLost time_loss(const Season& season, const InjuryEvent& event);

}  // namespace lanework::records
