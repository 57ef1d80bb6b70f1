// One entry as a device made it, and as the receiver got it. An entry is never changed; a correction is an entry that
// names an older one. docs/formats/ledger.md.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/ledger/entry_id.h"
#include "core/ledger/kinds.h"

namespace lanework::ledger {

struct Entry {
  EntryId id;
  std::int64_t sequence = 0;  // the device's own count, from 1 without gaps
  std::string device_time;    // the device's clock with its offset: shown, never reckoned with
  std::string kind;
  std::optional<EntryId> corrects;
  Node whole;         // as sent: every key, known or not
  std::string bytes;  // of the whole, as read_entry found it, by core/ledger/canonical.h
  bool known = true;  // else a kind of a newer version: kept and passed on, no part of what stands
};

// Who sent it is the receiver's knowledge, by the credential, never the entry's own word.
struct Received {
  Entry entry;
  std::int64_t receipt = 0;  // the receiver's number, from 1: this alone orders
  std::string received;      // the receiver's clock with its offset
  std::string device;
  std::string author;
  Role role = Role::kCoach;
};

inline constexpr std::int64_t kMostSequence = 1'000'000'000'000;
inline constexpr std::size_t kMostEntryBytes = 32 * 1024;  // in canonical form

// '2026-11-26T18:04:10+01:00', or with Z; seconds and parts of them may be left out.
bool is_time_with_offset(const std::string& text);

// One entry of a batch, at 'path' of it ('entries.3'). All faults are collected: a missing or wrong field, a word that
// is none, text too long, an id of another version, nesting below a list. Unknown keys are kept; an unknown kind makes
// an entry that is not known, not a fault.
Result<Entry> read_entry(const Node& node, const std::string& path, const KindTable& kinds);
// The same; the node is moved from where it is an entry, and left as it was where it is none.
Result<Entry> read_entry(Node&& node, const std::string& path, const KindTable& kinds);

// Equal bytes are the same entry.
inline const std::string& bytes_of(const Entry& entry) { return entry.bytes; }

}  // namespace lanework::ledger
