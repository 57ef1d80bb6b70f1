// Every word the pages add of their own, and how numbers are said, in one place.
#pragma once

#include <string>

namespace lanework::draw::words {

constexpr const char* kDoneBy = "done by";
constexpr const char* kAskWhoIsSore = "Ask who is sore tonight.";
constexpr const char* kChanged = "Changed from the routine";
constexpr const char* kNothingChanged = "Nothing changed from the routine.";
constexpr const char* kNotCovered = "Not covered tonight";
constexpr const char* kMoreOverleaf = "More on the back.";
constexpr const char* kStopAlways = "Stop, and get help";
constexpr const char* kStopDrill = "Stop a drill if";
constexpr const char* kLocalRules =
    "Local rules and licensed practice come first. This card does not diagnose and does not clear anyone to play.";
constexpr const char* kLayOut = "Lay out once";
constexpr const char* kEmergency = "If something goes wrong";
constexpr const char* kDangerSigns = "Danger signs: no matter for a warm-up";
constexpr const char* kFillIn = "Fill in by hand before the season, and check it on the night.";
constexpr const char* kPocket = "For the coach's pocket. Not on the grass, not on the wall.";
constexpr const char* kPartners = "Partners";
constexpr const char* kPartnersIn = "Partners in ";
constexpr const char* kOthersAsAbove = "Without those who swap. Who is not named stands as above.";
constexpr const char* kAllAsAbove = "Without those who swap. All others stand as above.";
constexpr const char* kSwaps = "Join in with swaps";
constexpr const char* kSitsOut = "Sit out";
constexpr const char* kNotes = "Notes";

// '18:04', wrapping past midnight; seconds are cut off.
std::string clock_time(int start_minute_of_day, int seconds_after);
// '50 s', '2 min', '1 min 10 s'.
std::string duration(int seconds);
// For narrow places: '75 s' up to 119 s, then to the nearest half minute: '2½ min'.
std::string short_duration(int seconds);
// The durations in a sentence ('1 min 10 s') held together by no-break spaces.
std::string durations_unbroken(const std::string& sentence);
// '15 m', '2.5 m', to the nearest tenth of a metre.
std::string metres(int millimetres);
// '20 paces', '6½ paces', to the nearest half. REQUIRES: pace_mm > 0.
std::string paces(int millimetres, int pace_mm);
// 'and 3 more that found no room'
std::string left_out(int count);
// '1 player', '14 players'.
std::string counted(int count, const std::string& one, const std::string& many);

}  // namespace lanework::draw::words
