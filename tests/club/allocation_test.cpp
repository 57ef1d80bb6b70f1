// Who has which lanes and how much kit: conflicts by hand, and no instant at which more is given than there is.
#include "core/club/allocation.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>
#include <set>

#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

using session::Weekday;
using Lanes = std::vector<int>;

TEST(Allocation, SquadsStandSideBySide) {
  Club club = empty_club();
  add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 20, "pitch", 2)});
  add_squad(club, "b", {slot(Weekday::kTuesday, "18:10", 20, "pitch", 2)});
  add_squad(club, "c", {slot(Weekday::kTuesday, "18:20", 20, "pitch", 2)});  // where a has just gone
  const Allocation allocation = allocate(club, monday(), 1);
  EXPECT_TRUE(allocation.conflicts.empty());
  EXPECT_EQ(allocation.calendars[0].slots[0].lanes, (Lanes{1, 2}));
  EXPECT_EQ(allocation.calendars[1].slots[0].lanes, (Lanes{3, 4}));
  EXPECT_EQ(allocation.calendars[2].slots[0].lanes, (Lanes{1, 2}));
  EXPECT_EQ(allocation.calendars[1].slots[0].strip.area_width.count, 20000);
}

TEST(Allocation, EqualWishesGoByIdUnlessStated) {
  Club club = empty_club();
  add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 20, "pitch", 3)});
  add_squad(club, "b", {slot(Weekday::kTuesday, "18:00", 20, "pitch", 3)});
  const Allocation by_id = allocate(club, monday(), 3);
  EXPECT_EQ(by_id.calendars[0].slots[0].lanes, (Lanes{1, 2, 3}));
  EXPECT_EQ(by_id.calendars[1].slots[0].lanes, (Lanes{4}));
  EXPECT_EQ(by_id.calendars[1].slots[0].strip.lanes, 1);
  ASSERT_EQ(by_id.conflicts.size(), 1U);
  EXPECT_EQ(to_words(by_id.conflicts[0]),
            "Tuesday 18:00, 3 times from 2026-11-24: b wants 3 lanes of pitch and has 1 (beside a); cure: start 20 min "
            "later (18:20)");
  club.settings.served_first = {"b"};
  EXPECT_EQ(allocate(club, monday(), 3).conflicts[0].squad, "a");
}

TEST(Allocation, ASmallMoveOrAnotherStripOrAnotherDay) {
  Club club = empty_club();
  add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 30)});
  add_squad(club, "b", {slot(Weekday::kTuesday, "18:20", 20)});
  EXPECT_EQ(allocate(club, monday(), 1).conflicts[0].cure, "start 10 min later (18:30)");
  club.squads[1].squad.weekly.slots[0].start = at("18:10");
  EXPECT_EQ(allocate(club, monday(), 1).conflicts[0].cure, "go to pitch");
  add_squad(club, "c", {slot(Weekday::kTuesday, "18:00", 30, "pitch", 3)});
  EXPECT_EQ(allocate(club, monday(), 1).conflicts[0].cure, "start 20 min later (18:30)");
}

TEST(Allocation, ASlotWithoutALaneIsListed) {
  Club club = empty_club();
  add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 20)});
  add_squad(club, "b", {slot(Weekday::kTuesday, "18:00", 20)});
  const Allocation allocation = allocate(club, monday(), 1);
  EXPECT_TRUE(allocation.calendars[1].slots.empty());
  ASSERT_EQ(allocation.calendars[1].missed.size(), 1U);
  EXPECT_EQ(allocation.calendars[1].missed[0].reason, Missed::kNoLane);
  EXPECT_EQ(allocation.conflicts[0].has, 0);
}

TEST(Allocation, KitIsShared) {
  Club club = empty_club();
  club.settings.kit = session::Kit{24, 100, 0};
  add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 30, "hall")});
  add_squad(club, "b", {slot(Weekday::kTuesday, "18:00", 30, "pitch")});
  const Allocation allocation = allocate(club, monday(), 1);
  EXPECT_EQ(allocation.calendars[1].slots[0].kit.cones, 8);
  ASSERT_EQ(allocation.conflicts.size(), 1U);
  EXPECT_EQ(to_words(allocation.conflicts[0]),
            "Tuesday 18:00, on 2026-11-24: b wants 16 cones and has 8 (beside a); cure: 8 more cones");
}

TEST(Allocation, AnAwayMatchTakesNoLane) {
  Club club = empty_club();
  add_squad(club, "a", {}, {match("2026-11-28", "10:00", true)});
  add_squad(club, "b", {}, {match("2026-11-28", "10:00")});
  const Allocation allocation = allocate(club, monday(), 1);
  EXPECT_TRUE(allocation.conflicts.empty());
  EXPECT_TRUE(allocation.calendars[0].slots[0].lanes.empty());
  EXPECT_EQ(allocation.calendars[1].slots[0].lanes, (Lanes{1, 2}));
}

Club any_club() {
  Club club = empty_club();
  if (*rc::gen::arbitrary<bool>()) {
    club.settings.kit = session::Kit{*rc::gen::inRange(0, 60), *rc::gen::inRange(0, 40), *rc::gen::inRange(0, 5)};
  }
  const int squads = *rc::gen::inRange(1, 9);
  for (int i = 0; i < squads; ++i) {
    std::vector<session::WeekSlot> week;
    for (int n = *rc::gen::inRange(1, 4); n > 0; --n) {
      const bool pitch = *rc::gen::arbitrary<bool>();
      const int minutes = *rc::gen::inRange(1060, 1120);
      week.push_back({static_cast<Weekday>(*rc::gen::inRange(0, 2)),
                      TimeOfDay{minutes},
                      Seconds(*rc::gen::inRange(300, 2400)),
                      pitch ? "pitch" : "hall",
                      *rc::gen::inRange(0, pitch ? 5 : 3),
                      {}});
    }
    ClubSquad& squad = add_squad(club, std::string(1, static_cast<char>('a' + i)), week);
    squad.squad.kit = {*rc::gen::inRange(0, 30), *rc::gen::inRange(0, 20), *rc::gen::inRange(0, 3)};
  }
  return club;
}

struct Held {
  const PlannedSlot* slot;
  std::int64_t from;
  std::int64_t to;
};

TEST(AllocationProperty, NeverMoreThanThereIsAndNothingIsLost) {
  EXPECT_TRUE(rc::check([] {
    const Club club = any_club();
    const Allocation allocation = allocate(club, monday(), 1);
    std::vector<Held> held;
    for (std::size_t i = 0; i < club.squads.size(); ++i) {
      const Calendar& calendar = allocation.calendars[i];
      RC_ASSERT(calendar.slots.size() + calendar.missed.size() == club.squads[i].squad.weekly.slots.size());
      for (const PlannedSlot& slot : calendar.slots) {
        const std::int64_t from = std::int64_t{60} * slot.start.minutes;
        held.push_back({&slot, from, from + slot.length.count});
        RC_ASSERT(static_cast<int>(slot.lanes.size()) == slot.strip.lanes);
        RC_ASSERT(std::is_sorted(slot.lanes.begin(), slot.lanes.end()));
      }
    }
    // Use rises only where something starts, so the starts are all the instants to look at.
    for (const Held& now : held) {
      std::set<std::pair<std::string, int>> taken;
      session::Kit kit;
      for (const Held& other : held) {
        if (other.slot->date != now.slot->date || other.from > now.from || other.to <= now.from) continue;
        for (const int lane : other.slot->lanes) {
          RC_ASSERT(lane >= 1 && lane <= (other.slot->strip_id == "hall" ? 2 : 4));
          RC_ASSERT(taken.insert({other.slot->strip_id, lane}).second);
        }
        kit.cones += other.slot->kit.cones;
        kit.balls += other.slot->kit.balls;
        kit.mats += other.slot->kit.mats;
      }
      if (!club.settings.kit) continue;
      RC_ASSERT(kit.cones <= club.settings.kit->cones);
      RC_ASSERT(kit.balls <= club.settings.kit->balls);
      RC_ASSERT(kit.mats <= club.settings.kit->mats);
    }
  }));
}

// A conflict about lanes is told where, and only where, the wishes together pass the strip's lanes.
TEST(AllocationProperty, ConflictsAreExactlyTheOverfullTimes) {
  EXPECT_TRUE(rc::check([] {
    Club club = any_club();
    club.settings.kit.reset();
    bool overfull = false;
    for (const ClubSquad& squad : club.squads) {
      for (const session::WeekSlot& now : squad.squad.weekly.slots) {
        int sum = 0;
        for (const ClubSquad& other_squad : club.squads) {
          for (const session::WeekSlot& other : other_squad.squad.weekly.slots) {
            const std::int64_t apart = std::int64_t{60} * (now.start.minutes - other.start.minutes);
            if (other.weekday != now.weekday || other.strip != now.strip || apart < 0 || apart >= other.length.count) {
              continue;
            }
            sum += other.lanes == 0 ? (other.strip == "hall" ? 2 : 4) : other.lanes;
          }
        }
        overfull = overfull || sum > (now.strip == "hall" ? 2 : 4);
      }
    }
    RC_ASSERT(allocate(club, monday(), 1).conflicts.empty() == !overfull);
  }));
}

TEST(AllocationProperty, TheSameClubGivesTheSameAllocation) {
  EXPECT_TRUE(rc::check([] {
    const Club club = any_club();
    const Allocation first = allocate(club, monday(), 2);
    const Allocation second = allocate(club, monday(), 2);
    RC_ASSERT(first.conflicts.size() == second.conflicts.size());
    for (std::size_t i = 0; i < first.conflicts.size(); ++i) {
      RC_ASSERT(to_words(first.conflicts[i]) == to_words(second.conflicts[i]));
    }
  }));
}

}  // namespace
}  // namespace lanework::club::test
