// Who may come in: the accounts of a club's people, their sessions and devices, and the book of who read what. Beside
// the ledger in the same database, on SQLite and PostgreSQL alike (tests/store). Rules (what a password must be, how
// long a session lasts, who may do what) are not here: app/serve and core/access hold them. docs/model/gate.md.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/store/sealing.h"
#include "core/base/result.h"
#include "core/ledger/kinds.h"

namespace lanework::store {

// Seconds since 1970, UTC, by the server's clock; the caller says what time it is.
using Moment = std::int64_t;

// A secret is kept as its digest only; whoever has the database has no way in with it. The digest is fast and has no
// salt: the secret is made at random, with 112 bits or more, never chosen by a person.
using Digest = std::string;  // 32 bytes, of digest_of (sealing.h)

// A squad that somebody is charged with, from one day to another (2026-11-26), both with it; until: empty, no end.
struct Grant {
  std::string squad;
  std::string from;
  std::string until;
  bool substitute = false;  // for an evening
  bool operator==(const Grant&) const = default;
};

struct Account {
  std::string id;       // 'a-' and 16 hexadecimal digits, made here
  std::string sign_in;  // what is typed, as it is compared; one of a club, also after its end
  std::string name;     // as shown
  ledger::Role role = ledger::Role::kCoach;
  std::string password;          // libsodium's text of a hash; empty: none yet
  std::string second_secret;     // of the time-based codes, any bytes; empty: none yet
  std::int64_t second_used = 0;  // the last time step that was accepted
  Moment made = 0;
  Moment ended = 0;  // 0: not
  std::vector<Grant> grants;
};

struct Session {
  Digest secret;
  std::string account;
  Moment made = 0;
  Moment seen = 0;
  Moment stepped_up = 0;  // the second factor was shown last
  bool second_shown = false;
};

struct Device {
  std::string id;  // 'd-' and 16 hexadecimal digits: the name that the ledger knows
  std::string account;
  Digest secret;
  std::string label;  // 'Ann's phone'
  Moment paired = 0;
  Moment seen = 0;
  std::int64_t sequence = 0;  // the last of it that was taken in
  Moment revoked = 0;         // 0: not
};

enum class PairingState : std::uint8_t { kOpen, kClaimed, kConfirmed, kSuspended };

// One way in for one device of one account, by a link that works once.
struct Pairing {
  std::string id;  // 'p-' and 16 hexadecimal digits
  std::string account;
  Digest secret;  // of the link
  Digest device;  // of the key that the device made, once claimed
  std::string label;
  std::string code;  // short; on both screens
  Moment made = 0;
  Moment until = 0;  // the last moment at which it is claimed or confirmed
  PairingState state = PairingState::kOpen;
};

// An address by which calendars follow a squad's evenings without a session; at most one of a squad is open.
struct CalendarLink {
  Digest secret;
  std::string squad;
  Moment made = 0;
  std::string made_by;  // an account
  Moment until = 0;     // the last moment at which it answers
  Moment asked = 0;     // the day it was asked for last, its first moment; 0: never
  Moment ended = 0;     // 0: not
  std::string ended_by;
  bool operator==(const CalendarLink&) const = default;
};

enum class Claim : std::uint8_t {
  kClaimed,
  kUnknown,  // no such link, or too late
  // Somebody was here before: nobody gets in by this link any more. A device that was confirmed before, its code
  // compared on both screens, stays in.
  kTwice
};

// Failures in a row under one name ('account/a-...', 'address/...').
struct Attempts {
  std::int64_t failures = 0;
  Moment last = 0;
};

// Somebody read what is about a person. Without what was read.
struct ReadNote {
  std::int64_t number = 0;
  Moment when = 0;
  std::string account;
  std::string device;  // empty: by a browser
  std::string route;   // as the matrix names it
  std::string squad;   // empty: none in particular
  std::string player;  // empty: none in particular; handed out only where it was asked about, what is kept is 'tag'
  std::int64_t people = 0;
  std::string tag{};  // handed out: Gate::tag_of the player, empty: none; not read by note_read
};

// What whoever checks the book of reads finds.
struct ReadAudit {
  std::int64_t notes = 0;                 // that are there: those from before may have gone by their time (past.h)
  std::optional<std::int64_t> broken_at;  // the first number whose link does not follow, or that is missing
};

// Faults: the store cannot be read or written, or what is sealed in it was not sealed with this key. One call is one
// transaction. Used by one thread at a time; as many as there are may be open at once, also in several processes.
// Verbs that change an account, or something of it, answer false where there is no such account or it has ended.
class Gate {
 public:
  virtual ~Gate() = default;

  // Fills in id. False where the sign-in is taken. 'ended' is not read.
  virtual Result<bool> add_account(Account& account) = 0;
  virtual Result<std::optional<Account>> account(const std::string& id) = 0;
  virtual Result<std::optional<Account>> account_by_sign_in(const std::string& sign_in) = 0;
  virtual Result<std::vector<Account>> accounts() = 0;  // by sign-in, also the ended
  virtual Result<bool> set_password(const std::string& account, const std::string& password) = 0;
  virtual Result<bool> set_second(const std::string& account, const std::string& secret) = 0;
  // True once for each step, and never for one at or before the last, also where the secret was set anew in between.
  virtual Result<bool> use_second(const std::string& account, std::int64_t step) = 0;
  // Of recovery codes, digests; each works once. Takes the place of those from before.
  virtual Result<bool> set_recovery(const std::string& account, const std::vector<Digest>& codes) = 0;
  virtual Result<bool> use_recovery(const std::string& account, const Digest& code, Moment when) = 0;
  virtual Result<bool> set_role(const std::string& account, ledger::Role role) = 0;
  virtual Result<bool> set_grants(const std::string& account, const std::vector<Grant>& grants) = 0;
  // The same, unless the account has other grants than 'before' by now: then false, and it keeps them.
  virtual Result<bool> change_grants(const std::string& account, const std::vector<Grant>& before,
                                     const std::vector<Grant>& grants) = 0;
  // Ends the account, its sessions, devices and pairings at once.
  virtual Result<bool> end_account(const std::string& account, Moment when) = 0;
  // Who was ended may come in again, with the password and the second factor from before; no session, device or pairing
  // comes back. False where there is no such account, or it has not ended.
  virtual Result<bool> reopen_account(const std::string& account) = 0;

  virtual Result<bool> add_session(const Session& session) = 0;  // false also where the secret is there already
  virtual Result<std::optional<Session>> session(const Digest& secret) = 0;
  virtual Result<bool> touch_session(const Digest& secret, Moment seen) = 0;  // an earlier moment changes nothing
  virtual Result<bool> step_up(const Digest& secret, Moment when) = 0;        // the second factor was shown now
  virtual Result<std::vector<Session>> sessions_of(const std::string& account) = 0;  // by made
  virtual Result<bool> end_session(const Digest& secret) = 0;
  // keep: empty, none is kept. How many were ended.
  virtual Result<std::int64_t> end_sessions_of(const std::string& account, const Digest& keep) = 0;

  // Fills in id; of what is given, account, secret, made and until count. A fault where the account is none or ended.
  virtual Result<Pairing> open_pairing(const Pairing& pairing) = 0;
  virtual Result<Claim> claim_pairing(const Digest& link, const Digest& device, const std::string& label,
                                      const std::string& code, Moment when) = 0;
  // The latest first.
  virtual Result<std::vector<Pairing>> pairings_of(const std::string& account) = 0;
  virtual Result<std::optional<Pairing>> pairing_by_device(const Digest& device) = 0;
  // A claimed pairing becomes a device, once; empty where there is no such, the code is another, or it is too late.
  virtual Result<std::optional<Device>> confirm_pairing(const std::string& pairing, const std::string& code,
                                                        Moment when) = 0;

  virtual Result<std::optional<Device>> device_by_secret(const Digest& secret) = 0;
  virtual Result<std::vector<Device>> devices() = 0;  // by paired, also the revoked
  // Neither goes back. False where there is no such device or it was revoked.
  virtual Result<bool> device_seen(const std::string& device, Moment when, std::int64_t sequence) = 0;
  virtual Result<bool> revoke_device(const std::string& device, Moment when) = 0;  // true the first time

  // Takes the place of the squad's open one, which ends as by its maker. Of what is given, secret, squad, made, made_by
  // and until count. False where made_by is no account, or has ended.
  virtual Result<bool> add_calendar_link(const CalendarLink& link) = 0;
  // Also one that has ended, or is past its time.
  virtual Result<std::optional<CalendarLink>> calendar_link(const Digest& secret) = 0;
  virtual Result<std::vector<CalendarLink>> calendar_links() = 0;  // by squad, the latest first
  // False where the squad has none open, or by is no account, or has ended.
  virtual Result<bool> end_calendar_link(const std::string& squad, const std::string& by, Moment when) = 0;
  // An earlier day changes nothing. False where it has ended.
  virtual Result<bool> calendar_link_asked(const Digest& secret, Moment day) = 0;

  virtual Result<Attempts> attempts(const std::string& name) = 0;
  virtual Result<Attempts> note_failure(const std::string& name, Moment when) = 0;
  virtual Result<bool> forget_failures(const std::string& name) = 0;

  // The number is given here. False where there is no such account, or no such device.
  virtual Result<bool> note_read(const ReadNote& note) = 0;
  // Latest first. player: empty, all.
  virtual Result<std::vector<ReadNote>> reads(const std::string& player, std::size_t most) = 0;

  virtual Result<ReadAudit> audit_reads() = 0;
  // Under the store's key, 32 hexadecimal digits: to find whom of those that are known a note is about.
  [[nodiscard]] virtual std::string tag_of(const std::string& player) const = 0;

  // What is past its time: sessions made before one moment or not seen since another; pairings that ended, and failures
  // of which the last was, before a third. How many in all. Read notes go by past.h.
  virtual Result<std::int64_t> forget_before(Moment sessions_made, Moment sessions_seen, Moment others) = 0;
};

// key: the store's own, as open_sqlite_store and open_postgres_store take it. Whichever is opened first brings the
// database's form up to date.
Result<std::unique_ptr<Gate>> open_sqlite_gate(const std::string& file, Key key);
Result<std::unique_ptr<Gate>> open_postgres_gate(const std::string& where, const std::string& club, Key key);

}  // namespace lanework::store
