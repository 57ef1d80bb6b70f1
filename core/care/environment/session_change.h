// What the weather asks of a session: nothing, breaks, fewer minutes, less effort, or no session. One value from each
// topic, and one fold of several: the most careful of each part, whatever the order, told once or twice.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/units.h"
#include "core/care/environment/moment.h"

namespace lanework::care::environment {

enum class Topic : std::uint8_t { kHeat, kCold, kLightning, kAir };
const char* topic_word(Topic topic);  // 'heat'

// No longer at it than this without a break, and each break at least so long. 'Three breaks an hour of 4 minutes' is a
// stretch of 16 minutes: whatever the slot, never less than the hour's share.
struct Breaks {
  Seconds longest_stretch;  // above 0
  Seconds each;             // above 0
  auto operator<=>(const Breaks&) const = default;
};

struct NoSession {
  std::optional<Moment> until;  // empty: not on this evening
  auto operator<=>(const NoSession&) const = default;
};

// In careful order.
enum class Effort : std::uint8_t {
  kUsual,
  kLower,  // less hard and less fast than usual
  kEasy    // nothing hard: no sprints, no conditioning
};

struct Reason {
  Topic topic = Topic::kHeat;
  std::string words;   // one sentence
  std::string source;  // key of sources.toml
  bool unverified = false;
  std::optional<int> minutes_old;  // of what was measured or heard; empty: not known
  auto operator<=>(const Reason&) const = default;
};

struct SessionChange {
  std::optional<NoSession> no_session;
  std::optional<Breaks> breaks;
  std::optional<Seconds> most_time;  // of the whole session
  Effort effort = Effort::kUsual;
  std::vector<Reason> reasons;  // ascending, each once
  bool operator==(const SessionChange&) const = default;

  // Asks for something.
  [[nodiscard]] bool changes() const;
};

// The most careful of both in each part, with the reasons of both. Where there is no session on this evening nothing
// else is left to ask. Associative, commutative and idempotent; a SessionChange without anything is its neutral value.
SessionChange most_careful(const SessionChange& a, const SessionChange& b);

// a asks at least what b asks, reasons apart.
bool at_least_as_careful(const SessionChange& a, const SessionChange& b);

// How many breaks fit a slot in which something is done from its first to its last second; the fewest that keep the
// longest stretch. REQUIRES: slot >= 0.
struct BreaksInSlot {
  std::int64_t count = 0;
  Seconds each;
  bool operator==(const BreaksInSlot&) const = default;
};
BreaksInSlot breaks_in(const Breaks& breaks, Seconds slot);

// 'no session', 'no session before 18:36', 'at most 60 minutes; after every 11 minutes at most a break of 4 minutes;
// lower effort', 'no change'. seen_from: for times on another day.
std::string to_words(const SessionChange& change, Moment seen_from);

}  // namespace lanework::care::environment
