// Why a session departs from the routine, as a value: put into English in one place (core/plan/reason_words.h), and
// told by the door as a code with its values, so that a screen says it in its own language. Drills by position in the
// catalogue.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "core/base/units.h"
#include "core/catalogue/words.h"
#include "core/session/load.h"

namespace lanework::session {

struct Banned {
  bool operator==(const Banned&) const = default;
};
struct TooYoung {
  int from_age;
  bool operator==(const TooYoung&) const = default;
};
struct TooOld {
  int to_age;
  bool operator==(const TooOld&) const = default;
};
struct SquadHeldBack {
  bool operator==(const SquadHeldBack&) const = default;
};
struct Lacks {
  catalogue::Need need;
  int count = 0;  // how many of it, where that is asked; else 0
  bool operator==(const Lacks&) const = default;
};
struct WrongSurface {
  catalogue::Surface surface;
  bool operator==(const WrongSurface&) const = default;
};
struct LaneTooShort {
  int metres;  // that it needs
  bool operator==(const LaneTooShort&) const = default;
};
struct TooFewCones {
  int cones;  // that its lanes need
  bool operator==(const TooFewCones&) const = default;
};
struct NoneKeepsCeilings {
  bool operator==(const NoneKeepsCeilings&) const = default;
};
struct NewEccentricNearMatch {
  bool operator==(const NewEccentricNearMatch&) const = default;
};

// Why a drill, or a rung of it, cannot be done tonight.
using Bar = std::variant<Banned, TooYoung, TooOld, SquadHeldBack, Lacks, WrongSurface, LaneTooShort, TooFewCones,
                         NoneKeepsCeilings, NewEccentricNearMatch>;

struct SlotTooShort {
  Seconds needed;  // by the whole routine
  Seconds slot;
  Seconds breaks;
  bool operator==(const SlotTooShort&) const = default;
};
struct RoomFor {
  std::vector<int> drills;  // not of the routine; none: for the doses asked for
  bool operator==(const RoomFor&) const = default;
};
using NoTime = std::variant<SlotTooShort, RoomFor>;

struct KeepsCeiling {
  Load load;
  int most;
  int age;
  std::optional<int> days_to_match;  // 0 to 2, where that is near
  bool operator==(const KeepsCeiling&) const = default;
};
struct KeepsCeilings {
  std::optional<int> days_to_match;
  bool operator==(const KeepsCeilings&) const = default;
};
struct TimeAndCeilings {
  NoTime time;
  bool operator==(const TimeAndCeilings&) const = default;
};
struct MoreOfAnother {
  bool operator==(const MoreOfAnother&) const = default;
};
struct Pinned {
  bool operator==(const Pinned&) const = default;
};
struct StandsIn {
  int drill;  // that cannot be done
  Bar because;
  bool operator==(const StandsIn&) const = default;
};
struct Covers {
  catalogue::Family family;
  bool operator==(const Covers&) const = default;
};

using Reason =
    std::variant<Bar, NoTime, KeepsCeiling, KeepsCeilings, TimeAndCeilings, MoreOfAnother, Pinned, StandsIn, Covers>;

}  // namespace lanework::session
