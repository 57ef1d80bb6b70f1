// Lengths of the skeleton as fractions of stature.
//
// Segment lengths: Drillis and Contini (1966) as tabulated by Winter (2009), keys drillis-contini-1966 and
// winter-2009 in catalogue/sources.toml; from memory, unverified. Where the joints sit inside the outline, and
// how thick the flesh is, are own judgement and serve the drawing and the contact with the ground only.
// These are adults' proportions; a child's head is larger and its legs are shorter.
#pragma once

namespace lanework::figure::skeleton {

// Winter (2009), fig. 4.1.
inline constexpr double kThigh = 0.245;
inline constexpr double kShank = 0.246;
inline constexpr double kAnkleHeight = 0.039;
inline constexpr double kFootLength = 0.152;
inline constexpr double kHipHeight = 0.530;
inline constexpr double kShoulderHeight = 0.818;
inline constexpr double kTrunk = kShoulderHeight - kHipHeight;  // 0.288, hip to shoulder
inline constexpr double kUpperArm = 0.186;
inline constexpr double kForearm = 0.146;
inline constexpr double kHand = 0.108;
inline constexpr double kChinHeight = 0.870;
inline constexpr double kHeadHeight = 1 - kChinHeight;  // 0.130
inline constexpr double kShoulderBreadth = 0.259;
inline constexpr double kHipBreadth = 0.191;
inline constexpr double kFootBreadth = 0.055;

// Own judgement.
inline constexpr double kLowerTrunk = 0.130;  // hip to the middle of the spine
inline constexpr double kUpperTrunk = kTrunk - kLowerTrunk;
inline constexpr double kChestAlong = 0.62;      // of the upper trunk, from the middle of the spine
inline constexpr double kShoulderJoint = 0.105;  // from the middle
inline constexpr double kHipJoint = 0.052;       // from the middle
inline constexpr double kHeadRadius = kHeadHeight / 2;
inline constexpr double kHeadCentre = 1 - kHeadRadius - kShoulderHeight;  // from the base of the neck
inline constexpr double kPalm = 0.050;                                    // wrist to the middle of the hand
inline constexpr double kHeelBehind = 0.036;                              // heel behind the ankle
inline constexpr double kBallAhead = 0.076;                               // ball of the foot before the ankle
inline constexpr double kToes = kFootLength - kHeelBehind - kBallAhead;

// Flesh: half thicknesses.
inline constexpr double kKneeRadius = 0.033;
inline constexpr double kElbowRadius = 0.022;
inline constexpr double kWristRadius = 0.018;
inline constexpr double kHandRadius = 0.014;
inline constexpr double kShoulderRadius = 0.040;
inline constexpr double kChestRadius = 0.060;
inline constexpr double kSeatRadius = 0.062;
inline constexpr double kAnkleRadius = 0.026;

}  // namespace lanework::figure::skeleton
