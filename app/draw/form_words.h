// Every word that report, letter and emergency sheet add of their own.
#pragma once

#include <string>

namespace lanework::draw::words {

constexpr const char* kForFamilyAndClinician =
    "For the family and the clinician. The lead keeps one copy under lock. Not for the team, the notice board or a "
    "group "
    "chat.";
constexpr const char* kFormRules =
    "Local rules and licensed practice come first. This sheet does not diagnose and does not clear anyone to play.";

constexpr const char* kIncident = "Incident report";
constexpr const char* kWhoWhenWhere = "Who, when, where";
constexpr const char* kWhatHappened = "What happened";
constexpr const char* kSeenAndDone = "What was seen and done. No diagnosis, no guess, no blame.";
constexpr const char* kWhoWasTold = "Who was told";
constexpr const char* kReport = "Report";

constexpr const char* kKnownBefore = "Known before";
constexpr const char* kForClinicianOnly =
    "For the clinician's eyes: what had been entered at the club, as people without medical training told it. It is no "
    "diagnosis, and what nobody entered is missing.";
constexpr const char* kNothingEntered = "nothing that was entered";

constexpr const char* kReferral = "Letter to the clinician";
constexpr const char* kWhatWasSeen = "What was seen";
constexpr const char* kLaymen = "As people without medical training saw it at the pitch. It is no diagnosis.";
constexpr const char* kClinicianAnswers = "What the club has to know before the player takes part again";
constexpr const char* kNoDiagnosisAsked =
    "Please fill in and give back to the family. No diagnosis is asked for and none should stand here: the club needs "
    "only "
    "what to leave out, and until when.";
constexpr const char* kGateStaysShut =
    "A gate that is not ticked stays shut, and an empty answer means: not yet. A later report of pain or signs shuts "
    "it "
    "again.";

constexpr const char* kEmergencySheet = "Sealed emergency sheet";
constexpr const char* kOpenOnly = "Open only in an emergency. Give back to the lead. Destroy after the season.";
constexpr const char* kFoldHere = "fold here, names inside, and close with tape";
constexpr const char* kOpenedBy = "Opened by, on, why";
constexpr const char* kNotStated = "not stated";

// 'Quillmere Juniors, Under-13 Kestrels'
inline std::string club_and_squad(const std::string& club, const std::string& squad) {
  return club + (club.empty() || squad.empty() ? "" : ", ") + squad;
}

}  // namespace lanework::draw::words
