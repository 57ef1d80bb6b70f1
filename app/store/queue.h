// What is to be planned, and what was: a queue that as many workers as there are take from, each job by one of them at
// a time, and every plan that came of it, as it was made. Beside the ledger in the same database, on SQLite and
// PostgreSQL alike. Whoever takes a job holds it for a while and says now and then that it is still at it; where it
// falls silent the job is somebody else's, and what it brings later is not taken. docs/model/queue.md.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/store/sealing.h"
#include "core/base/result.h"

namespace lanework::store {

enum class JobState : std::uint8_t { kWaiting, kTaken, kDone, kFailed };

inline constexpr std::int64_t kMostTakings = 3;  // a job that ended three workers is given up

// The block of one squad is to be planned.
struct PlanningJob {
  std::int64_t number = 0;
  std::string squad;
  std::string asked_by;    // an account, or empty: the machine's own command line
  std::int64_t asked = 0;  // seconds since 1970, UTC, as all moments here
  JobState state = JobState::kWaiting;
  std::int64_t takings = 0;  // so many times it was taken
  std::string worker;        // who has it, or had it last
  std::int64_t until = 0;    // it is held until then; once it is over, when that was
  std::string why;           // of one that failed: a sentence for the lead
  bool operator==(const PlanningJob&) const = default;
};

// A taking, which a later one of the same job ends.
struct Held {
  std::int64_t number = 0;
  std::string worker;
  std::int64_t taking = 0;
};

struct KeptPlan {
  std::int64_t number = 0;
  std::string squad;
  std::int64_t made = 0;
  std::int64_t as_of = 0;  // the last entry of the ledger that it knew of
  std::string text;        // the answer of 'lanework block --json' for this squad
  bool operator==(const KeptPlan&) const = default;
};

// What calendars that follow a squad were told last (core/club/followed_calendar.h).
struct ToldEvenings {
  std::int64_t version = 0;  // 0: nothing yet
  std::string text;
  bool operator==(const ToldEvenings&) const = default;
};

// Faults: the database cannot be read or written, or a plan was sealed under another key. One call is one transaction.
// Used by one thread at a time.
class Queue {
 public:
  virtual ~Queue() = default;
  // The job's number. Where one for the squad waits already, that one: it will know all that this one would.
  virtual Result<std::int64_t> ask(const std::string& squad, const std::string& asked_by, std::int64_t when) = 0;
  // The one that has waited longest, also one that its worker has fallen silent about; empty where there is none. One
  // that was taken kMostTakings times without an end is not handed out again: it has failed.
  virtual Result<std::optional<PlanningJob>> take(const std::string& worker, std::int64_t when,
                                                  std::int64_t hold_seconds) = 0;
  // False where it is not held by this taking any more.
  virtual Result<bool> hold_on(const Held& held, std::int64_t until) = 0;
  // Keeps the plan and ends the job, both or neither; false, and nothing is kept, likewise.
  virtual Result<bool> finish(const Held& held, std::int64_t when, const KeptPlan& plan) = 0;
  virtual Result<bool> fail(const Held& held, std::int64_t when, const std::string& why) = 0;
  // A job that waits has failed with that reason; false where it does not wait, or never was.
  virtual Result<bool> withdraw(std::int64_t number, std::int64_t when, const std::string& why) = 0;
  // Latest first.
  virtual Result<std::vector<PlanningJob>> jobs(std::size_t most) = 0;
  virtual Result<std::optional<KeptPlan>> latest_plan(const std::string& squad) = 0;
  // The one that stood at that moment; empty where none had been made.
  virtual Result<std::optional<KeptPlan>> plan_at(const std::string& squad, std::int64_t when) = 0;
  // Latest first, without their texts.
  virtual Result<std::vector<KeptPlan>> plans(const std::string& squad, std::size_t most) = 0;
  virtual Result<ToldEvenings> told(const std::string& squad) = 0;
  // In place of that version; false where it was told something else meanwhile.
  virtual Result<bool> tell(const std::string& squad, std::int64_t instead_of, const std::string& text,
                            std::int64_t when) = 0;
  // Jobs that were over, plans that were made and what was told before that moment; the latest plan of a squad stays.
  // How many.
  virtual Result<std::int64_t> forget_before(std::int64_t when) = 0;
};

const char* to_word(JobState state);  // 'waiting', 'taken', 'done', 'failed'

Result<std::unique_ptr<Queue>> open_sqlite_queue(const std::string& file, Key key);
Result<std::unique_ptr<Queue>> open_postgres_queue(const std::string& where, const std::string& club, Key key);

}  // namespace lanework::store
