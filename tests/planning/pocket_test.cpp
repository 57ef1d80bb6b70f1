// What a phone is given, held against the evening that the club's own files make.
#include "app/planning/pocket.h"

#include <gtest/gtest.h>

#include "app/read/club_folder.h"
#include "core/club/allocation.h"
#include "core/door/door.h"
#include "core/door/plan_answer.h"
#include "tests/planning/planning_of_demo.h"

namespace lanework::planning {
namespace {

using test::day;
using test::demo_files;
using test::known_of;
using test::little_work;

Node pocket(const std::string& squad, const Known& known, const std::string& today, const std::string& standing = {}) {
  auto out = pocket_of(demo_files(), squad, known.care, day(today), standing);
  if (!out) throw std::runtime_error(to_line(out.faults().front()));
  return std::move(out).value();
}

std::string asked(const Node& pocket, const Node& evening, const std::string& what) {
  Node request = Node::make_table();
  request.set("request", Node::make_text(what));
  request.set("catalogue", *pocket.find("catalogue"));
  for (const auto& [key, part] : evening.find("documents")->entries) request.set(key, part);
  return door::run(to_json(request));
}

// The same slot planned from the club's values, without any of the documents.
std::string planned_here(const club::Club& club, const club::ClubSquad& squad, const club::PlannedSlot& slot) {
  const door::EveningMatter matter{club.catalogue_of(squad),
                                   club::routine_of(squad, slot),
                                   slot.strip,
                                   club::squad_on(club, squad, slot),
                                   squad.restrictions,
                                   squad.players,
                                   club::evening_of(club, squad, slot).value()};
  plan::KernelWorkspace workspace;
  return to_json(door::to_node(door::answer_plan(matter, workspace), matter));
}

TEST(Pocket, EveryEveningOfEverySquadIsPlannedOnThePhoneAsHere) {
  const read::ClubFolder folder = read::read_club_folder(demo_files().club, demo_files().catalogue);
  const club::Club& club = folder.club;
  const auto allocation = club::allocate(club, club.settings.block_from, club.settings.block_weeks);
  int evenings = 0;
  int match_days = 0;
  for (std::size_t s = 0; s < club.squads.size(); s += 5) {
    const club::ClubSquad& squad = club.squads[s];
    const Node given = pocket(squad.id, known_of({}), "2026-11-27");
    for (const Node& evening : given.find("evenings")->items) {
      for (const club::PlannedSlot& slot : allocation.calendars[s].slots) {
        if (to_iso(slot.date) != evening.find("day")->text || to_text(slot.start) != evening.find("start")->text)
          continue;
        EXPECT_EQ(asked(given, evening, "plan"), planned_here(club, squad, slot)) << squad.id << to_iso(slot.date);
        ++evenings;
        match_days += slot.match_day ? 1 : 0;
      }
    }
    EXPECT_GT(given.find("evenings")->items.size(), 0U);
    EXPECT_LE(given.find("evenings")->items.size(), kOnAPhone.evenings);
  }
  EXPECT_GT(evenings, 12);
  EXPECT_GT(match_days, 0);
}

TEST(Pocket, AnEveningOfThePlanThatStandsIsThatSession) {
  const std::string stands =
      plan_squad(demo_files(), "u13-kestrels", known_of({}), day("2026-11-20"), {}, little_work()).value().text;
  const Node with = pocket("u13-kestrels", known_of({}), "2026-11-27", stands);
  const Node without = pocket("u13-kestrels", known_of({}), "2026-11-27");
  const auto drills = [](const Node& given, std::size_t evening) {
    std::vector<std::string> out;
    const Node& documents = *given.find("evenings")->items.at(evening).find("documents");
    for (const Node& line : documents.find("routine")->find("drill")->items) out.push_back(line.find("id")->text);
    return out;
  };
  const auto plan = parse_json("plan", stands).value();
  const Node& first = with.find("evenings")->items.at(0);
  for (const Node& session : plan.root.find("squads")->items.at(0).find("sessions")->items) {
    if (session.find("date")->text != first.find("day")->text) continue;
    EXPECT_EQ(drills(with, 0).size(), session.find("drills")->items.size());
  }
  EXPECT_NE(to_json(with), to_json(without));
}

TEST(Pocket, WhatWasEnteredTodayHoldsBackTonight) {
  const Node before = pocket("u13-kestrels", known_of({}), "2026-11-27");
  const Known known = known_of({{"hurt", R"("player":"Q02","place":"knee")"}});
  const Node after = pocket("u13-kestrels", known, "2026-11-27");
  const auto permissions = [](const Node& given) {
    return to_json(*given.find("evenings")->items.at(0).find("documents")->find("permissions"));
  };
  EXPECT_NE(permissions(before), permissions(after));
  EXPECT_NE(permissions(after).find("\"Q02\""), std::string::npos);
  EXPECT_EQ(to_json(after).find("\"knee\"}"), std::string::npos);
}

TEST(Pocket, HasNothingMeasuredOrWhyAndNoPathOfThisMachine) {
  for (const char* squad : {"u10-wrens", "u13-kestrels", "u16-merlins"}) {
    Node given = pocket(squad, known_of({{"hurt", R"("player":"Q02","place":"knee")"}}), "2026-11-27");
    given.set("catalogue", Node::make_table());
    const std::string text = to_json(given);
    for (const char* barred : {"birth", "size_group", "size-group", "body_mass", "forbidden", "areas", "\"kinds\"",
                               "allowed", LANEWORK_SOURCE_DIR, "diagnos"}) {
      EXPECT_EQ(text.find(barred), std::string::npos) << squad << ": " << barred;
    }
    EXPECT_NE(text.find("Millrace"), std::string::npos) << "the place's action plan comes along";
  }
}

TEST(Pocket, HasTheContactsThatFamiliesAgreedToOnAPhoneAndNoOthers) {
  const Node given = pocket("u13-kestrels", known_of({}), "2026-11-27");
  std::vector<std::string> of;
  for (const Node& row : given.find("emergency")->items) of.push_back(row.find("player")->text);
  EXPECT_EQ(of, (std::vector<std::string>{"Q01", "Q02", "Q04", "Q11"}))
      << "Q05 took it back, Q06 agreed to paper alone";
  EXPECT_EQ(given.find("emergency")->items[1].find("allergy")->text, "hazelnut, carries a pen in the red pouch");
  EXPECT_EQ(given.find("emergency")->items[2].find("allergy"), nullptr) << "not stated is not none";
  EXPECT_TRUE(pocket("u16-merlins", known_of({}), "2026-11-27").find("emergency")->items.empty());
}

TEST(Pocket, TheDesksReachesFurtherAndHasNoContacts) {
  const auto desks = pocket_of(demo_files(), "u13-kestrels", known_of({}).care, day("2026-11-27"), {}, kAtTheDesk);
  const Node phones = pocket("u13-kestrels", known_of({}), "2026-11-27");
  ASSERT_TRUE(desks);
  EXPECT_EQ(desks.value().find("emergency"), nullptr);
  EXPECT_GT(desks.value().find("evenings")->items.size(), phones.find("evenings")->items.size());
  EXPECT_EQ(to_json(desks.value().find("evenings")->items[0]), to_json(phones.find("evenings")->items[0]));
}

TEST(Pocket, TheCatalogueIsTheOneThatAnEveningHas) {
  const auto catalogue = catalogue_of(demo_files());
  ASSERT_TRUE(catalogue);
  EXPECT_EQ(to_json(*catalogue.value().find("catalogue")),
            to_json(*pocket("u16-merlins", known_of({}), "2026-11-27").find("catalogue")));
  EXPECT_TRUE(catalogue.value().find("own")->items.empty());
  EXPECT_EQ(catalogue.value().find("routines")->items.size(), 7U);
}

TEST(Pocket, AnEmptyFolderHasWhatIsShipped) {
  const auto shipped = catalogue_of({"/no/such/folder", demo_files().catalogue});
  ASSERT_TRUE(shipped);
  EXPECT_EQ(shipped.value().find("catalogue")->find("drills")->items.size(), 76U);
}

TEST(Pocket, OfNoSquadThereIsNone) {
  EXPECT_FALSE(pocket_of(demo_files(), "u99-none", Node::make_table(), day("2026-11-27"), {}));
}

}  // namespace
}  // namespace lanework::planning
