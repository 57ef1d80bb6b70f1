// What is kept for a time goes by it: the content of entries, people's keys, notes of the book of reads. A row of the
// ledger stays, emptied, with its number and its link, so that the chain still verifies; seals.h says how one that was
// emptied by somebody else is found. How long is the caller's to say (app/serve/retention.h). docs/model/store.md.
#pragma once

#include <cstdint>
#include <memory>
#include <string>

#include "app/store/ages.h"
#include "app/store/gate.h"
#include "app/store/store.h"

namespace lanework::store {

// So many rows are changed in one transaction, so that nobody who enters waits for long.
inline constexpr std::size_t kPastAtOnce = 500;

// Faults: the database cannot be read or written, or a row that is to go does not follow from the one before it, since
// what was changed must not go unnoticed; what was done before stays done. Done again each does nothing more. The
// newest entry and the newest note stay. when: the server's clock with its offset.
class Past {
 public:
  virtual ~Past() = default;
  // Entries about sessions and squads, of days before that one; and those about neither a day nor a person that were
  // received before it. How many.
  virtual Result<std::int64_t> let_go_of_evenings(Date before, const std::string& when) = 0;
  // All entries about people who were erased. How many.
  virtual Result<std::int64_t> let_go_of_erased(const std::string& when) = 0;
  // Erases, as Store::erase_person does, whoever is on no list and about whom nothing was received since that day. How
  // many people. Nobody where lists were never kept.
  virtual Result<std::int64_t> erase_who_left(Date since, const std::string& when, const ErasureNote& note) = 0;
  // Notes of the book of reads from its front, up to the first that is not from before that moment. How many.
  virtual Result<std::int64_t> let_go_of_reads(Moment before, const std::string& when) = 0;
  // What would go next. Changes nothing.
  virtual Result<Ages> ages() = 0;
  // Once after all of it: out of the database's own files.
  virtual std::optional<Faults> wipe() = 0;
};

Result<std::unique_ptr<Past>> open_sqlite_past(const std::string& file, Key key);
Result<std::unique_ptr<Past>> open_postgres_past(const std::string& where, const std::string& club, Key key);

}  // namespace lanework::store
