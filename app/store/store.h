// What a server keeps, in the words of the trade: entries are taken in, handed out again, and never changed. Behind it
// lies SQLite or PostgreSQL; both keep the same contract (tests/store/contract.h). docs/model/store.md.
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/ledger/fold.h"

namespace lanework::store {

// Who sends, by the credential.
struct Sender {
  std::string device;
  std::string author;
  ledger::Role role = ledger::Role::kCoach;
  bool revoked = false;  // then nothing of it becomes part of what stands
};

enum class Verdict : std::uint8_t {
  kStored,
  kKnown,         // the same entry was here already
  kOtherContent,  // an entry of this id with other content is here: the first stands
  kQuarantined,   // kept where nobody acts on it, with the reason
  kErased,        // about somebody who was erased: taken note of, content dropped
  kNoConsent      // of a kind that waits for a consent (core/ledger/consent.h) which is not given: nothing is kept
};

// One entry as it came; aside: why it is kept aside although it can be read, beyond what its kind and the sender's role
// say (another squad's, a clock that is years off); empty: nothing against it.
struct Incoming {
  ledger::Entry entry;
  std::string aside;
};

// What could not be read as an entry at all: kept aside as it came, cut to kMostEntryBytes.
struct Unread {
  std::string bytes;
  std::string why;
};

struct Batch {
  Sender sender;
  std::vector<Incoming> entries;
  std::vector<Unread> unread;
  std::string received;  // the receiver's clock with its offset
};

struct EntryVerdict {
  ledger::EntryId id;
  Verdict verdict = Verdict::kStored;
  std::int64_t receipt = 0;  // where it is stored; 0 where it is not
  std::string why;           // of a quarantine, and where consent is wanting
};

struct Quarantined {
  std::int64_t number = 0;
  std::string received;
  std::string device;
  std::string author;
  std::string why;
  std::string bytes;  // in canonical form, where it could be read
};

// Who decides about something that was kept aside.
struct Decision {
  std::string account;
  std::string when;  // the server's clock with its offset
  std::string why;   // a word of the caller's; never what somebody typed
};

enum class Looked : std::uint8_t {
  kDone,
  kNotThere,     // no such number: decided already, forgotten, or never there
  kNotAnEntry,   // cannot be read as one, or was kept aside by a version that did not write down the role
  kNewerKind,    // of a kind that this version does not know
  kNotTheirs,    // of a kind that the sender's role does not enter: whoever may enters it anew
  kErased,       // about somebody who was erased
  kNoConsent,    // waits for a consent that is not given
  kOtherContent  // an entry of its id is part of the books and says something else
};

struct LookedAt {
  Looked outcome = Looked::kNotThere;
  std::int64_t receipt = 0;  // under which it is part of the books
  std::string player;        // whom it is about; empty: nobody in particular
};

struct Decided {
  std::int64_t number = 0;
  std::int64_t receipt = 0;  // 0: dropped
  Decision by;
};

// What whoever checks the books finds, up to the first break or damage.
struct Audit {
  std::int64_t entries = 0;
  std::int64_t past = 0;        // of them, whose content went, by sealed compactions (past.h)
  std::int64_t unreadable = 0;  // of erased people
  // The first receipt whose link does not follow from what is stored, that is emptied, or back, against the seals, or
  // that the index of days has wrong.
  std::optional<std::int64_t> broken_at;
  std::optional<std::int64_t> damaged_at;  // the first whose person was not erased and that does not open all the same
  std::array<std::uint8_t, 32> head{};     // the last link: with the number of entries it names this state of the books
};

// What went by its time, or with whom it was about.
struct Gone {
  std::string evenings_before;       // entries about days before that one went; empty: none did
  std::vector<ledger::Gap> entries;  // by device: its numbers of them, and of erased people, no two ranges touching
};

// The person's tag under the store's key (16 bytes), and when.
using ErasureNote = std::function<std::optional<Fault>(const std::string& tag, const std::string& when)>;

// One writer at a time. Every call is a transaction: all of it, or nothing. Faults: the store cannot be written (full,
// read-only, held by another process) or read; then nothing was taken in, and the sender keeps what it has.
class Store {
 public:
  virtual ~Store() = default;

  // Of each batch the verdicts in the order of its entries, then of what could not be read as one. All batches are one
  // transaction: whatever is answered other than by a fault is on the disk by then, and a fault means that nothing of
  // any of them is.
  virtual Result<std::vector<std::vector<EntryVerdict>>> take_in(const std::vector<Batch>& batches,
                                                                 const ledger::KindTable& kinds) = 0;
  // One sender's, nothing against any of them.
  Result<std::vector<EntryVerdict>> take_in(const Sender& sender, const std::vector<ledger::Entry>& entries,
                                            const ledger::KindTable& kinds, const std::string& received);
  // By receipt, those above 'after', at most so many; fewer only where no more are there. Entries of erased people, and
  // those that went, are passed over.
  virtual Result<std::vector<ledger::Received>> entries_after(std::int64_t after, std::size_t most,
                                                              const ledger::KindTable& kinds) = 0;
  // What is about sessions and squads on these days, both included, by receipt. O(what is there), whatever the years.
  virtual Result<std::vector<ledger::Received>> entries_of_days(Date from, Date to, const ledger::KindTable& kinds) = 0;
  // What is about one person, all of it, by receipt; empty where the person was erased.
  virtual Result<std::vector<ledger::Received>> entries_about(const std::string& player,
                                                              const ledger::KindTable& kinds) = 0;
  // What people of that role entered about nobody in particular (evenings, squads, what a coach was taught), by
  // receipt. Goes through all entries; opens these alone.
  virtual Result<std::vector<ledger::Received>> entries_by_role(ledger::Role role, const ledger::KindTable& kinds) = 0;
  // Without what is about people who were erased.
  virtual Result<std::vector<Quarantined>> quarantined() = 0;
  // It becomes part of the books, as its sender's, on the device and in the role in which it came and as received then,
  // and is no longer kept aside; who decided that is written down. Once, however many ask at once.
  virtual Result<LookedAt> take_in_kept(std::int64_t number, const Decision& by, const ledger::KindTable& kinds) = 0;
  // It goes for good; who decided that is written down.
  virtual Result<LookedAt> drop_kept(std::int64_t number, const Decision& by) = 0;
  // The latest number first.
  virtual Result<std::vector<Decided>> decided(std::size_t most) = 0;
  // What was kept aside on days before that one, by the receiver's clock, goes for good. How many.
  virtual Result<std::int64_t> forget_kept_aside(Date before) = 0;
  // Destroys the person's key: what was entered about the person can no longer be read, here or in any copy that goes
  // by this store's keys. False where nothing was ever entered about the person, or the person is erased already. note:
  // puts the person on the list of the erased, which a restore goes by; called before the key is destroyed, and a fault
  // of it leaves the key. What is kept aside about the person goes with it.
  virtual Result<bool> erase_person(const std::string& player, const std::string& when, const ErasureNote& note) = 0;
  virtual Result<Audit> audit() = 0;
  virtual Result<Gone> gone() = 0;
  // Of what was taken in last; 0: nothing was.
  virtual Result<std::int64_t> latest_receipt() = 0;
};

}  // namespace lanework::store
