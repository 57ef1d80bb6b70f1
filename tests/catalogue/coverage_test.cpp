// Every family can be trained at every age in every formation, with kit and without.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

enum class Way { kLane, kSpread, kPairs, kWithoutKit, kWithKit };

struct NamedWay {
  Way way;
  const char* words;
};

constexpr std::array<NamedWay, 5> kWays{{{Way::kLane, "in a lane"},
                                         {Way::kSpread, "spread out"},
                                         {Way::kPairs, "in pairs"},
                                         {Way::kWithoutKit, "without kit"},
                                         {Way::kWithKit, "with a ball, a mat, a wall or a line"}}};

// What is right to be missing, up to an age, and why.
struct Gap {
  Family family;
  Way way;
  int to_age;
  const char* reason;
};

constexpr std::array<Gap, 2> kGaps{{
    {Family::kHamstring, Way::kLane, 8, "a hinge on one leg is learned first, standing, from nine"},
    {Family::kHamstring, Way::kPairs, 11,
     "with a partner at the ankles it is the kneeling lower, which begins at twelve"},
}};

// A partner and soft ground are no kit: nobody carries them to the strip.
bool uses_kit(const std::vector<Need>& needs) {
  return std::any_of(needs.begin(), needs.end(),
                     [](Need need) { return need != Need::kPartner && need != Need::kSoftGround; });
}

bool goes(Way way, const Drill& drill, const Rung& rung) {
  const bool kit = uses_kit(drill.needs) || uses_kit(rung.needs);
  switch (way) {
    case Way::kLane:
      return drill.formation == Formation::kLane;
    case Way::kSpread:
      return drill.formation == Formation::kSpread;
    case Way::kPairs:
      return drill.formation == Formation::kPairs;
    case Way::kWithoutKit:
      return !kit;
    case Way::kWithKit:
      return kit;
  }
  return false;
}

bool covered(Family family, Way way, int age) {
  for (const Drill& drill : shipped_catalogue().drills) {
    if (drill.family != family || age < drill.age_from || drill.age_to < age) continue;
    for (const Rung& rung : drill.rungs) {
      if (rung.age_from <= age && goes(way, drill, rung)) return true;
    }
  }
  return false;
}

const Gap* gap_of(Family family, Way way, int age) {
  for (const Gap& gap : kGaps) {
    if (gap.family == family && gap.way == way && age <= gap.to_age) return &gap;
  }
  return nullptr;
}

// A gap that has been filled has to leave the table.
TEST(Coverage, EveryFamilyAtEveryAgeInEveryWay) {
  EXPECT_GE(shipped_catalogue().drills.size(), 70U);
  for (const FamilyRow& row : shipped_catalogue().families) {
    for (const NamedWay& named : kWays) {
      for (int age = 8; age <= 19; ++age) {
        const Gap* gap = gap_of(row.family, named.way, age);
        EXPECT_EQ(covered(row.family, named.way, age), gap == nullptr)
            << row.name << ' ' << named.words << " at " << age
            << (gap != nullptr ? std::string(", now there, yet listed as missing: ") + gap->reason : "");
      }
    }
  }
}

}  // namespace
}  // namespace lanework::catalogue::test
