// The shipped catalogue: sound, and enough for every age and place.
#include "tests/catalogue/shipped.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "core/catalogue/loads.h"

namespace lanework::catalogue::test {
namespace {

// What a place lacks, for the question whether a family can still be done there.
struct PlaceLacks {
  const char* name;
  std::set<Need> needs;
  std::set<Surface> surface;
  std::set<Formation> formations;
};

bool lacks_nothing_for(const PlaceLacks& place, const Drill& drill, const Rung& rung) {
  if (place.formations.count(drill.formation) != 0) return false;
  for (const Need need : drill.needs) {
    if (place.needs.count(need) != 0) return false;
  }
  for (const Need need : rung.needs) {
    if (place.needs.count(need) != 0) return false;
  }
  for (const Surface surface : drill.not_on) {
    if (place.surface.count(surface) != 0) return false;
  }
  return true;
}

bool suits_age(const Drill& drill, const Rung& rung, int age) {
  return drill.age_from <= age && age <= drill.age_to && rung.age_from <= age;
}

// Families with a drill and rung for this age in this place.
std::set<Family> families_for(const PlaceLacks& place, int age) {
  std::set<Family> out;
  for (const Drill& drill : shipped_catalogue().drills) {
    for (const Rung& rung : drill.rungs) {
      if (suits_age(drill, rung, age) && lacks_nothing_for(place, drill, rung)) out.insert(drill.family);
    }
  }
  return out;
}

TEST(Shipped, ReadsClean) {
  const Result<Catalogue> catalogue = read_catalogue(shipped_documents());
  ASSERT_TRUE(catalogue.ok()) << all_lines(catalogue.faults());
  EXPECT_GE(catalogue.value().drills.size(), 40U);
}

TEST(Shipped, EveryFamilyHasThreeDrillsAndEveryPhaseOfItTwo) {
  std::map<Family, int> of_family;
  std::map<std::pair<Family, Phase>, int> of_phase;
  for (const Drill& drill : shipped_catalogue().drills) {
    ++of_family[drill.family];
    ++of_phase[{drill.family, drill.phase}];
  }
  for (const FamilyRow& row : shipped_catalogue().families) {
    EXPECT_GE(of_family[row.family], 3) << row.name;
    for (const Phase phase : row.phases) {
      EXPECT_GE((of_phase[{row.family, phase}]), 1) << row.name << ' ' << word(phase_words(), phase);
    }
  }
}

TEST(Shipped, EveryFormationIsUsed) {
  std::map<Formation, int> of_formation;
  for (const Drill& drill : shipped_catalogue().drills) ++of_formation[drill.formation];
  for (int i = 0; i < kFormations; ++i) EXPECT_GE(of_formation[static_cast<Formation>(i)], 5);
}

TEST(Shipped, EveryAgeCanDoEveryRequiredFamilyInEveryUsualPlace) {
  using N = Need;
  const std::set<Need> no_kit = {N::kBallEach, N::kBallAPair, N::kMat};
  const std::vector<PlaceLacks> places = {
      {"field with nothing but cones", {N::kWall, N::kBallEach, N::kBallAPair, N::kMat, N::kLine}, {}, {}},
      {"hall with no partner",
       {N::kPartner, N::kBallEach, N::kBallAPair, N::kMat, N::kSoftGround},
       {Surface::kHard},
       {Formation::kPairs}},
      {"hard court without a wall",
       {N::kWall, N::kBallEach, N::kBallAPair, N::kMat, N::kSoftGround},
       {Surface::kHard},
       {}},
      {"no lane", no_kit, {}, {Formation::kLane}},
  };
  for (const PlaceLacks& place : places) {
    for (int age = 8; age <= 19; ++age) {
      const std::set<Family> found = families_for(place, age);
      for (const FamilyRow& row : shipped_catalogue().families) {
        if (!row.required) continue;
        EXPECT_EQ(found.count(row.family), 1U) << place.name << ", age " << age << ": " << row.name;
      }
    }
  }
}

// Rungs are shown by what changes, never by a number.
TEST(Shipped, NothingIsNumbered) {
  const auto numbered = [](const std::string& text) { return text.find_first_of("0123456789") != std::string::npos; };
  for (const Drill& drill : shipped_catalogue().drills) {
    EXPECT_FALSE(numbered(drill.id)) << drill.id;
    for (const Rung& rung : drill.rungs) {
      EXPECT_FALSE(numbered(rung.key)) << drill.id << ": " << rung.key;
      EXPECT_NE(rung.change, drill.name);
    }
  }
}

TEST(Shipped, PublishedSourcesHaveAuthorAndYear) {
  for (const Source& source : shipped_catalogue().sources) {
    const bool own = source.key == "common-practice" || source.key == "own-judgement" || source.key == "from-memory";
    EXPECT_EQ(source.author.empty(), own) << source.key;
    EXPECT_EQ(source.year == 0, own) << source.key;
    if (own) continue;
    const std::string year = std::to_string(source.year);
    EXPECT_EQ(source.key.substr(source.key.size() - 4), year) << source.key;
  }
}

// A landing too much for the youngest on the easiest rung and least dose would bar the drill for good.
TEST(Shipped, LeastDoseOfTheEasiestRungKeepsTheCeilings) {
  const Catalogue& catalogue = shipped_catalogue();
  for (const Drill& drill : catalogue.drills) {
    const Ceilings& ceilings = catalogue.ceilings_for(drill.age_from);
    const LoadSum sum = load_of(drill, drill.rungs.front(), drill.dose.steps.front(), kUsualLane, catalogue.limits);
    EXPECT_LE(sum.contacts, 1000 * ceilings.contacts_session) << drill.id;
    EXPECT_LE(sum.eccentric, 1000 * ceilings.eccentric_session) << drill.id;
    EXPECT_LE(sum.hard_running, 1000 * ceilings.hard_running_session) << drill.id;
  }
}

}  // namespace
}  // namespace lanework::catalogue::test
