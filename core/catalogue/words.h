// The fixed vocabulary of the catalogue: enumerations and their words in files and JSON.
// The order of enumerators is the order of the words; do not change existing words: they are a contract.
#pragma once

#include <string_view>
#include <vector>

namespace lanework::catalogue {

enum class Family {
  kPulseRaising,
  kMobility,
  kHipAndGroin,
  kHamstring,
  kTrunk,
  kBalance,
  kLegStrength,
  kJumpAndLand,
  kRunAndCut
};
inline constexpr int kFamilies = 9;

// Where in the session a drill may stand; the order of phases is the order of the session.
enum class Phase { kStart, kLoosen, kBuild, kSpring, kRun };
inline constexpr int kPhases = 5;

enum class Formation { kLane, kSpread, kPairs };
inline constexpr int kFormations = 3;

enum class BodyArea {
  kHead,
  kNeck,
  kShoulder,
  kElbow,
  kWristAndHand,
  kChest,
  kLowBack,
  kHipAndGroin,
  kFrontThigh,
  kBackThigh,
  kKnee,
  kLowerLeg,
  kAnkle,
  kFoot
};

enum class StressKind {
  kLoad,     // working against weight
  kStretch,  // end of range
  kImpact,   // landing, hopping
  kTwist,    // rotation under weight, changing direction
  kSpeed,    // fast running
  kContact,  // another player touches or pushes
  kPressure  // kneeling or lying on it
};

enum class Need { kPartner, kWall, kBallEach, kBallAPair, kMat, kSoftGround, kLine };

enum class Surface { kWet, kHard, kUneven, kDark };

enum class ContactIntensity { kLow, kMedium, kHigh };

// Words as files write them, in the order of the enumerators.
const std::vector<std::string_view>& family_words();       // 'pulse-raising', 'hip-and-groin', ...
const std::vector<std::string_view>& phase_words();        // 'start', 'loosen', 'build', 'spring', 'run'
const std::vector<std::string_view>& formation_words();    // 'lane', 'spread', 'pairs'
const std::vector<std::string_view>& body_area_words();    // 'head', 'low-back', 'hip-and-groin', ...
const std::vector<std::string_view>& stress_kind_words();  // 'load', 'stretch', 'impact', ...
const std::vector<std::string_view>& need_words();         // 'partner', 'wall', 'ball-each', 'ball-a-pair', ...
const std::vector<std::string_view>& surface_words();      // 'wet', 'hard', 'uneven', 'dark'
const std::vector<std::string_view>& intensity_words();    // 'low', 'medium', 'high'

template <class Enumerator>
std::string_view word(const std::vector<std::string_view>& words, Enumerator e) {
  return words[static_cast<std::size_t>(e)];
}

}  // namespace lanework::catalogue
