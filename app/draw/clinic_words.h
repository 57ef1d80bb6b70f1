// Every word that the pack for a first evening and the form for a visit add of their own.
#pragma once

namespace lanework::draw::words {

constexpr const char* kFirstEvening = "First evening";
constexpr const char* kTaughtSoFar = "Who has been taught";
constexpr const char* kBeforeAnyoneComes = "Lay out before anyone comes";
constexpr const char* kTellAndCue = "Tell, show, cue";
constexpr const char* kTheEvening = "The evening in order";
constexpr const char* kEveningNote = "Times, and what is different on the night, stand on the card of that evening.";
constexpr const char* kWhatGoodLooksLike = "What good looks like";
constexpr const char* kGoodNote =
    "Give one cue at a time, from the top. The eye marks the fault to expect; say the words in quotation marks.";
constexpr const char* kTheLead = "The lead says";
constexpr const char* kWhomToTell = "Whom to tell";
constexpr const char* kPackRules =
    "Local rules and licensed practice come first. This sheet does not diagnose and does not clear anyone to play.";

constexpr const char* kVisit = "Visit";
constexpr const char* kVisitNote =
    "Ring one word a drill and write what would help. It is about the session, not about a player: name nobody.";
constexpr const char* kDidIt = "Who did it well?";
constexpr const char* kNeedsHelp = "Needs help with";
constexpr const char* kWhatToLookAt = "What to look at";
constexpr const char* kWasTaught = "What was taught today, and to whom of the coaches";
constexpr const char* kNextTime = "Agreed for next time";

}  // namespace lanework::draw::words
