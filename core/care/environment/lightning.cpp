#include "core/care/environment/lightning.h"

#include <algorithm>

namespace lanework::care::environment {
namespace {

constexpr std::int64_t kSpeedOfSoundMetresPerSecond = 343;
constexpr const char* kSource = "walsh-2013";

LightningState state_of(Moment last, Moment until, Moment now) {
  if (now >= until) return LightningState::kMayGoOut;
  return now <= last ? LightningState::kGoInNow : LightningState::kStayIn;
}

std::string sign_words(const LightningEvent& event) {
  return event.sign == LightningSign::kFlash ? "a flash was seen" : "thunder was heard";
}

}  // namespace

LightningClock told(const LightningClock& clock, const LightningEvent& event) {
  if (clock.last && *clock.last >= event) return clock;
  return {event};
}

LightningVerdict judge_lightning(const LightningClock& clock, Moment now) {
  LightningVerdict out;
  Reason reason{Topic::kLightning, "no flash and no thunder was told, which is no all clear", kSource, false, {}};
  if (clock.last) {
    out.last = clock.last;
    out.until = plus_minutes(clock.last->at, kLightningWaitMinutes);
    out.state = state_of(clock.last->at, *out.until, now);
    reason.minutes_old = static_cast<int>(std::max<std::int64_t>(0, minutes_between(clock.last->at, now)));
    const std::string last = sign_words(*clock.last) + " at " + to_words(clock.last->at, now);
    reason.words = last + "; " + std::to_string(kLightningWaitMinutes) + " minutes after the last flash or thunder " +
                   (out.state == LightningState::kMayGoOut ? "are over" : "are not over");
    if (out.state != LightningState::kMayGoOut) out.change.no_session = NoSession{out.until};
  }
  out.change.reasons = {reason};
  return out;
}

Metres distance_of(Seconds flash_to_thunder) { return Metres(flash_to_thunder.count * kSpeedOfSoundMetresPerSecond); }

std::string shelter_words() {
  return "a closed building or a car with a hard roof; not open huts, dugouts, trees or tents";
}

}  // namespace lanework::care::environment
