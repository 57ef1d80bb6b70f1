// A season in plain sentences, in the language that was asked for. Each stands only where its interval allows it;
// nothing that goes together is called cause; completeness comes first, then whether the warm-ups are done. Which
// sentence stands is decided before the language, and both languages stand side by side (core/base/two_languages.h).
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/findings/season_findings.h"

namespace lanework::findings {

enum class ClaimKind : std::uint8_t {
  kCompleteness,
  kRate,
  kDays,
  kPrevalence,
  kHistories,
  kMatches,
  kReach,
  kTaught,
  kWarmUps,
  kOften,
  kSquads,
  kWatch,
  kCaution
};

struct Claim {
  ClaimKind kind = ClaimKind::kCompleteness;
  std::string sentence;
  bool too_early = false;  // its interval allows nothing to be said
};

// Who reads: the lead sees every number; the board none of what happened to fewer than 'kSmallCell'.
enum class Reader : std::uint8_t { kLead, kBoard };
inline constexpr int kSmallCell = 5;
// '12', or 'fewer than 5' where the board reads; 0 is said.
std::string count_for(Reader reader, int count, Language language);
bool is_withheld(Reader reader, int count);

std::vector<Claim> claims(const SeasonFindings& found, Reader reader);

// What a short summary holds: comparisons beside the main one only where they tell something.
bool is_for_summary(const Claim& claim);

// What a ratio's interval allows to be said of it.
enum class Verdict : std::uint8_t { kFewer, kMore, kNoneThatMatters, kTooEarly };
// A difference of less than a tenth either way matters little: own judgement.
inline constexpr double kMattersLittle = 1.1;
Verdict verdict(const evidence::Interval& ratio);

}  // namespace lanework::findings
