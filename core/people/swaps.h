// Swaps: what a restricted player does beside the squad while the squad does a drill that the restriction
// bars. The nearest allowed drill in family, formation and time; none is also an answer, said plainly.
// What comes out are instructions; the restriction's areas and any reason stay inside. The distance between
// drills is docs/model/swaps.md.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/units.h"
#include "core/catalogue/catalogue.h"
#include "core/people/player.h"

namespace lanework::people {

// May a player under this restriction do this rung?
bool permits(const Restriction& restriction, const catalogue::Drill& drill, const catalogue::Rung& rung);
bool permits_all(const std::vector<Restriction>& restrictions, const catalogue::Drill& drill,
                 const catalogue::Rung& rung);

// One drill of the session, as the swap finder needs it.
struct SquadDrill {
  int drill;
  int rung;
  int dose;
  Seconds takes;
};

// Of one dose of a rung.
using OfDose = std::function<std::int64_t(int drill, int rung, int dose)>;

// What the evening says of a candidate. All but time_of is asked only where a restriction counts.
struct Setting {
  OfDose time_of;                     // seconds here, by the clock; negative when it cannot be done (kit, strip, age)
  OfDose landings_of;                 // of one player, weighted, in thousandths
  std::int64_t landings_ceiling = 0;  // thousandths: what one player may land tonight at most
  std::function<bool(int drill)> done_before;  // has the squad done it?
};

enum class SwapKind {
  kSameDrill,   // the same drill on an easier rung, or less of it
  kOtherDrill,  // another drill beside the squad
  kNothing      // nothing suitable: rest, or help the coach
};

struct Swap {
  int item;  // position in the session
  SwapKind kind;
  int drill = -1;
  int rung = -1;
  int dose = -1;
  std::string instruction;  // 'does Side plank, knees down, 1 x 15 s a side'
};

// How a player takes part tonight, in words the coach sees.
enum class TakingPart { kJoinsIn, kJoinsInWithSwaps, kSitsOut };

struct PlayerSwaps {
  std::string player;  // id
  TakingPart taking_part;
  std::vector<Swap> swaps;  // in the order of the session
  std::string instruction;  // 'no jumping until 3 Dec'
};

// restrictions: those of one player that hold tonight. Deterministic; ties by drill id. tonight: only to leave
// out the year of an end date that is near.
PlayerSwaps swaps_for(const std::string& player, const std::vector<Restriction>& restrictions,
                      const catalogue::Catalogue& catalogue, const std::vector<SquadDrill>& session,
                      const Setting& setting, std::optional<Date> tonight = {});

}  // namespace lanework::people
