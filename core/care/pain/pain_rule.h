// The pain rule as data: catalogue/care/pain.toml, with the source of every number. docs/care/pain.md.
// It holds back and refers; it diagnoses nobody and clears nobody.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/words.h"

namespace lanework::care {

inline constexpr int kMostPain = 10;

// What was seen or said beside the number. The order is the order of the words.
enum class PainSign : std::uint8_t {
  kSwelling,  // of a joint
  kBone,      // bone pain is suspected
  kBonyTenderness,
  kGrowthPlate,  // growth-plate pain is suspected
  kDeformity,
  kCannotBearWeight,
  kLocksOrGivesWay,
  kLimp,
  kNightPain
};
inline constexpr std::size_t kPainSigns = 9;
const std::vector<std::string_view>& pain_sign_words();  // 'swelling', 'bone', ... as files write them

struct SignRule {
  std::string words;     // 'limps', for the lead
  bool at_once = false;  // whatever the number
  std::vector<std::string> sources;
};

// Cut-offs that others have used: shown beside ours, they decide nothing.
struct PublishedCuts {
  std::string key;
  std::string words;
  int unchanged_up_to = 0;             // the highest number that goes on as it is
  std::optional<int> goes_on_up_to{};  // the highest that goes on at all, where they say so
  bool unverified = false;
  std::vector<std::string> sources;
};

struct PainRule {
  int joins_in_up_to = 0;
  int swaps_up_to = 0;    // at least joins_in_up_to; above it sits out
  int settled_up_to = 0;  // of the number the next morning
  std::vector<std::string> sources;
  // A number above one reported days_from to days_to days before is worse from week to week.
  int days_from = 0;
  int days_to = 0;
  std::vector<std::string> trend_sources;
  // What swaps hold back at the sore place.
  std::vector<catalogue::StressKind> kinds;  // empty: every kind
  int allowed_grade = 0;
  std::string instruction;  // the coach's words
  int review_after_days = 0;
  std::vector<std::string> swaps_sources;
  std::vector<catalogue::BodyArea> refer_at_once;  // places that no number judges
  std::vector<std::string> places_sources;
  std::array<SignRule, kPainSigns> signs{};
  std::vector<PublishedCuts> published;

  [[nodiscard]] const SignRule& sign(PainSign sign) const { return signs.at(static_cast<std::size_t>(sign)); }
};

}  // namespace lanework::care
