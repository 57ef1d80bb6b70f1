// Entries in, what stands out. The receiver's numbers order them, so the same set in any order, with any of it twice,
// gives the same state, byte for byte. What follows of hurts, soreness, restrictions and courses is core/care/entries';
// here they are only handed on, corrections and all, in order of receipt.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/ledger/entry.h"

namespace lanework::ledger {

struct SessionKey {
  std::string squad;
  std::string day;    // 2026-11-26
  std::string start;  // 18:00
  auto operator<=>(const SessionKey&) const = default;
};

// What was marked of one drill. That it was made easier says nothing against its having been done, and neither of them
// against its needing help.
struct DrillMarks {
  std::string done;   // 'done', 'skipped', or empty
  std::string level;  // 'easier', 'harder', or empty
  bool needs_help = false;
  bool operator==(const DrillMarks&) const = default;
};

// Each part by the latest entry about it that is neither corrected nor taken back.
struct SessionState {
  bool started = false;
  std::map<std::string, DrillMarks> drills;
  std::optional<Node> attendance;  // the entries as sent
  std::optional<Node> wrap_up;
  std::optional<Node> confirmed;
  std::vector<Node> visits;
  bool twice = false;  // two people wrapped it up, neither as a correction of the other
};

struct Injury {
  std::string player;
  std::string squad;
  std::string day;
  std::vector<std::string> what;
  std::string note;
  std::string loss_began;
  std::string returned;  // empty: open
};

// The entries of a device that are not there though later ones are.
struct Gap {
  std::string device;
  std::int64_t from = 0;
  std::int64_t to = 0;  // with it
  auto operator<=>(const Gap&) const = default;
};

struct Odd {
  EntryId id;
  std::string what;  // one sentence
};

// Whose word on what.
struct ConsentKey {
  std::string player;
  std::string purpose;
  std::string by;        // 'guardian' or 'player'
  std::string guardian;  // which; empty: the only one, or nobody said
  auto operator<=>(const ConsentKey&) const = default;
};

struct State {
  std::map<SessionKey, SessionState> sessions;
  std::map<EntryId, Injury> injuries;  // by the entry that opened it
  std::vector<Received> care;          // by receipt, each once
  std::vector<Node> taught;            // of coaches
  std::vector<Node> asked;             // the same
  std::vector<Node> screenings;
  std::map<ConsentKey, Node> consents;  // the latest word of each
  std::vector<Gap> gaps;
  std::vector<Odd> odd;             // by receipt: one id with two contents, a correction of nothing, ...
  std::int64_t not_known = 0;       // entries of kinds of a newer version
  std::int64_t closed = 0;          // injuries and screenings that close_records took off (consent.h)
  std::int64_t latest_receipt = 0;  // 0: nothing
};

// O(n log n).
State fold(std::vector<Received> entries, const KindTable& kinds);

// For comparing, storing and showing: canonical_json of it is the state's bytes.
Node to_node(const State& state);

// What core/care/entries reads (docs/formats/entries.md): of every entry the keys of its kind, with the receiver's own.
Node care_document(const State& state, const KindTable& kinds);

}  // namespace lanework::ledger
