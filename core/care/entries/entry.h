// What was entered about players: typed, never changed, in the order in which the receiver got them. The receiver's
// number orders; a device's clock is kept to be shown and orders nothing. docs/formats/entries.md.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/care/entries/receipt_time.h"
#include "core/care/pain/judge_pain.h"
#include "core/care/return_to_sport/course.h"
#include "core/people/player.h"

namespace lanework::care {

using EntryId = std::string;
using EntryIds = std::vector<EntryId>;

// Somebody is hurt: sits out until a clearance names this entry and the lead lifts it.
struct Hurt {
  std::optional<catalogue::BodyArea> place;  // empty: not known
  std::vector<PainSign> signs;
  bool operator==(const Hurt&) const = default;
};

// A number asked for; the pain rule says what it holds back.
struct Soreness {
  PainReport report;  // its day is that of the receipt
  bool operator==(const Soreness&) const = default;
};

struct RestrictionSet {
  people::Restriction restriction;
};

// Looked at again; it stays.
struct Reviewed {
  EntryIds names;
  std::optional<Date> review;
  bool operator==(const Reviewed&) const = default;
};

struct Lifted {
  EntryIds names;  // hurts, soreness, restrictions, or a course at its last step
  bool operator==(const Lifted&) const = default;
};

struct CourseOpened {
  std::string course;  // an id of the return rules
  std::string rules;   // of the rule sets; empty or not known: the strictest
  EntryIds carries;    // hurts that it comes from
  std::optional<int> age;
  bool operator==(const CourseOpened&) const = default;
};

// These name the entry that opened the course.
struct StepBegun {
  EntryId course;
  std::string step;
  bool operator==(const StepBegun&) const = default;
};
struct SymptomCheck {
  EntryId course;
  // Without any symptoms; with some, no worse; or worse by so many points of 10 for so many minutes.
  enum class Told : std::uint8_t { kNone, kNoWorse, kWorse } told = Told::kWorse;
  std::optional<int> worse_points;
  std::optional<int> worse_minutes;
  bool after_session = false;
  bool operator==(const SymptomCheck&) const = default;
};
struct SteppedBack {
  EntryId course;
  std::string step;
  bool operator==(const SteppedBack&) const = default;
};

struct ClearanceGiven {
  EntryIds names;         // the entries that it answers
  EntryId course;         // empty: no course
  std::string gate;       // of the course; empty: none
  std::string clinician;  // by name
  std::string profession;
  bool operator==(const ClearanceGiven&) const = default;
};

// Takes a named entry back. Only what lessens caution goes: a hurt, a number, a restriction stay.
struct Withdrawn {
  bool operator==(const Withdrawn&) const = default;
};

bool operator==(const RestrictionSet& a, const RestrictionSet& b);

// In the order of the words.
using What = std::variant<Hurt, Soreness, RestrictionSet, Reviewed, Lifted, CourseOpened, StepBegun, SymptomCheck,
                          SteppedBack, ClearanceGiven, Withdrawn>;
const std::vector<std::string_view>& kind_words();  // 'hurt', 'soreness', 'restriction', 'reviewed', ...

struct Entry {
  EntryId id;                // made on the device
  std::int64_t receipt = 0;  // the receiver's number, from 1
  ReceiptTime received;
  std::string device_time;  // as the device had it, for display only
  By by = By::kCoach;
  std::string author;  // for display
  std::string player;
  EntryId corrects;  // an earlier entry that this one stands beside or takes back; empty: none
  What what;
};

// The same but for when it was received: an entry sent again.
bool same_content(const Entry& a, const Entry& b);

}  // namespace lanework::care
