// The lightning clock. Everybody is in safe shelter by the time thunder follows a flash by 30 seconds, and stays 30
// minutes after the last flash or thunder; anything new starts the wait again: Walsh KM et al. 2013, J Athl Train
// 48(2):258-70, doi 10.4085/1062-6050-48.2.25. Stricter, and what is told here: whoever hears thunder or sees a flash
// goes in at once, however long the count (advice to the public, partly from memory).
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>

#include "core/base/units.h"
#include "core/care/environment/moment.h"
#include "core/care/environment/session_change.h"

namespace lanework::care::environment {

inline constexpr int kLightningWaitMinutes = 30;
inline constexpr int kLongestThunderCountSeconds = 120;  // no thunder carries further: own judgement

enum class LightningSign : std::uint8_t { kFlash, kThunder, kFlashToThunder };

struct LightningEvent {
  Moment at;  // of a flash with its thunder: when the thunder was heard
  LightningSign sign = LightningSign::kThunder;
  std::optional<Seconds> flash_to_thunder;
  auto operator<=>(const LightningEvent&) const = default;
};

// All that events leave behind: the last of them. Events may come in any order, and twice.
struct LightningClock {
  std::optional<LightningEvent> last;
  bool operator==(const LightningClock&) const = default;
};
LightningClock told(const LightningClock& clock, const LightningEvent& event);

enum class LightningState : std::uint8_t {
  kNothingTold,  // which is no all clear: somebody has to watch and listen
  kGoInNow,      // at the minute of the last event, or before it: clocks differ, and what is told counts
  kStayIn,
  kMayGoOut  // no earlier than 'until', if nothing new is seen or heard; a blue sky is no all clear
};

struct LightningVerdict {
  LightningState state = LightningState::kNothingTold;
  std::optional<LightningEvent> last;
  std::optional<Moment> until;
  SessionChange change;
};
LightningVerdict judge_lightning(const LightningClock& clock, Moment now);

// How far away the flash was, by sound at 343 m/s.
Metres distance_of(Seconds flash_to_thunder);

std::string shelter_words();  // what is shelter, and what is not

}  // namespace lanework::care::environment
