// What may be kept and shown of a player, by the consents that were entered. What each kind of entries waits for stands
// in catalogue/ledger/kinds.toml ('purpose'); what the adults in charge must know tonight waits for nothing.
// docs/model/consent.md. The club's adviser decides what is asked, of whom and in which words.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/ledger/fold.h"

namespace lanework::ledger {

enum class Consent : std::uint8_t {
  kNeverAsked,  // no guardian has answered: as good as no
  kGiven,       // by a guardian, and nobody's latest word is no
  kWithheld     // somebody's latest word is 'refused' or 'withdrawn', the player's own included
};

// 'never-asked', 'given', 'withheld'.
std::string_view consent_word(Consent consent);

// Without it a player's injuries and hours are not counted for evidence.
inline constexpr std::string_view kStatistics = "statistics";

// The closed list: the words of the field 'purpose' of the kind 'consent', in its order.
std::vector<std::string> purposes(const KindTable& kinds);

// state: of all entries, or of those about the player.
Consent consent_of(const State& state, const std::string& player, std::string_view purpose);

// Of the consents among these entries alone.
State consents_among(const std::vector<Received>& entries, const KindTable& kinds);

// What the entry waits for; empty: nothing.
std::string_view purpose_of(const Entry& entry, const KindTable& kinds);

// Whether what the entry waits for is given. consents: those about its player.
bool is_open(const Entry& entry, const State& consents, const KindTable& kinds);

struct Open {
  std::vector<Received> entries;  // in their order
  std::int64_t left_out = 0;      // for want of consent
};

// entries: with all consents of the people whom they are about.
Open only_open(std::vector<Received> entries, const KindTable& kinds);

// Takes the injuries and screenings off what stands that wait for a consent which is not given, and counts them there.
void close_records(State& state, const KindTable& kinds);

}  // namespace lanework::ledger
