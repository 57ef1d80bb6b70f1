#include "core/people/permissions.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/people/contact.h"
#include "core/people/instruction.h"
#include "core/people/partners.h"
#include "core/people/swaps.h"
#include "tests/people/shipped_catalogue.h"

namespace lanework::people {
namespace {

using catalogue::Catalogue;

const Date kTonight = *parse_iso_date("2026-11-27");

Player player(const std::string& id, int age, int grams = 0) {
  Player out;
  out.id = id;
  out.name = "Name " + id;
  out.stated_age = age;
  if (grams > 0) out.body_mass_grams = grams;
  return out;
}

Restriction any_restriction(const std::string& whom) {
  Restriction out;
  out.player = whom;
  const auto areas = static_cast<int>(catalogue::body_area_words().size());
  const auto kinds = static_cast<int>(catalogue::stress_kind_words().size());
  for (const int area : *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, areas))) {
    if (out.areas.size() < 3) out.areas.push_back(static_cast<catalogue::BodyArea>(area));
  }
  for (const int kind : *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, kinds))) {
    if (out.kinds.size() < 3) out.kinds.push_back(static_cast<catalogue::StressKind>(kind));
  }
  out.allowed_grade = *rc::gen::inRange(0, 4);
  if (*rc::gen::arbitrary<bool>()) out.until = Date{kTonight.days_since_epoch + *rc::gen::inRange(0, 200)};
  out.sits_out = *rc::gen::inRange(0, 8) == 0;
  out.landings_percent = *rc::gen::element(100, 100, 50, 0);
  out.new_eccentric_ok = *rc::gen::inRange(0, 4) > 0;
  return out;
}

TEST(Permissions, EveryRestrictionBarsTheSameRungsByName) {
  const Catalogue& catalogue = shipped_catalogue();
  EXPECT_TRUE(rc::check([&] {
    const Restriction restriction = any_restriction("Q1");
    const auto made = permissions_of({{restriction}, "Sunday 20:10"}, {player("Q1", 12)}, {}, kTonight, catalogue);
    RC_ASSERT(made.ok());
    const Restriction& one = made.value().restrictions.list.at(0);
    RC_ASSERT(one.areas.empty());
    RC_ASSERT(one.kinds.empty());
    RC_ASSERT(bars_contact(one) == bars_contact(restriction));
    RC_ASSERT(instruction_for(one, kTonight) == instruction_for(restriction, kTonight));
    for (const catalogue::Drill& drill : catalogue.drills) {
      for (const catalogue::Rung& rung : drill.rungs) {
        RC_ASSERT(permits(one, drill, rung) == permits(restriction, drill, rung));
      }
    }
  }));
}

TEST(Permissions, AreReadBackAsTheyWereWritten) {
  const Catalogue& catalogue = shipped_catalogue();
  EXPECT_TRUE(rc::check([&] {
    const std::vector<Player> players = {player("Q1", 12, 40000), player("Q2", 12, 60000), player("Q3", 13)};
    Restrictions restrictions;
    restrictions.as_known = "Sunday 20:10";
    const int count = *rc::gen::inRange(0, 4);
    for (int i = 0; i < count; ++i) restrictions.list.push_back(any_restriction("Q" + std::to_string(1 + i % 3)));
    PartnerRules rules;
    rules.measure = PartnerMeasure::kBodyMass;
    const auto made = permissions_of(restrictions, players, rules, kTonight, catalogue);
    RC_ASSERT(made.ok());
    const Node written = write_permissions(made.value(), catalogue);
    const auto read = read_permissions({"permissions", written}, {"Q1", "Q2", "Q3"}, catalogue);
    RC_ASSERT(read.ok());
    RC_ASSERT(to_json(write_permissions(read.value(), catalogue)) == to_json(written));
    RC_ASSERT(read.value().partners == made.value().partners);
  }));
}

TEST(Permissions, SayNothingOfWhereOrHowMuch) {
  Restriction knee;
  knee.player = "Q1";
  knee.areas = {catalogue::BodyArea::kKnee};
  knee.kinds = {catalogue::StressKind::kImpact};
  PartnerRules rules;
  rules.measure = PartnerMeasure::kBodyMass;
  const auto made = permissions_of({{knee}, ""}, {player("Q1", 12, 41234), player("Q2", 12, 61234)}, rules, kTonight,
                                   shipped_catalogue());
  Node written = write_permissions(made.value(), shipped_catalogue());
  const std::string text = to_json(written);
  for (const char* barred : {"areas", "kinds", "allowed", "impact", "41234", "61234", "mass", "\"knee\""}) {
    EXPECT_EQ(text.find(barred), std::string::npos) << barred;
  }
  EXPECT_NE(text.find("no jumping"), std::string::npos);
  EXPECT_EQ(made.value().partners.at(0).without_contact, std::vector<std::string>{"Q2"}) << "20 kg apart";
}

TEST(Permissions, LeaveOutWhoIsNotOfTheSquadAndWhatIsOver) {
  Restriction other = Restriction();
  other.player = "Q9";
  Restriction over = Restriction();
  over.player = "Q1";
  over.until = Date{kTonight.days_since_epoch - 1};
  const auto made = permissions_of({{other, over}, ""}, {player("Q1", 12)}, {}, kTonight, shipped_catalogue());
  EXPECT_TRUE(made.value().restrictions.list.empty());
}

TEST(Permissions, FaultsNameTheRow) {
  const auto faults_of = [](const char* json) {
    const auto document = parse_json("permissions", json);
    const auto read = read_permissions(document.value(), {"Q1", "Q2"}, shipped_catalogue());
    return read.ok() ? std::string("none") : to_line(read.faults().front());
  };
  EXPECT_EQ(faults_of(R"({"permission":[{"player":"Q1","instruction":"no jumping","bars":[["side-plank"]]}]})"),
            "none");
  EXPECT_NE(faults_of(R"({"permission":[{"player":"Q7","instruction":"x"}]})").find("permission.1.player"),
            std::string::npos);
  EXPECT_NE(faults_of(R"({"permission":[{"instruction":"x"}]})").find("neither player nor squad"), std::string::npos);
  EXPECT_NE(faults_of(R"({"permission":[{"player":"Q1","instruction":"x","bars":[["no-such-drill"]]}]})").find("bars"),
            std::string::npos);
  EXPECT_NE(
      faults_of(R"({"permission":[{"player":"Q1","instruction":"x","bars":[["side-plank","no-rung"]]}]})").find("bars"),
      std::string::npos);
  EXPECT_NE(faults_of(R"({"permission":[{"player":"Q1"}]})").find("instruction"), std::string::npos);
  EXPECT_NE(faults_of(R"({"partners":[{"player":"Q1","others":["Q1"]}]})").find("others"), std::string::npos);
  EXPECT_NE(
      faults_of(R"({"partners":[{"player":"Q1","others":["Q2"],"without_contact":["Q1"]}]})").find("without_contact"),
      std::string::npos);
}

// By orders nobody stands with somebody who is not in their order, as many have a partner as by the measure, and those
// of a whole squad of like players are as near.
TEST(PartnersByOrder, KeepToWhoIsPermittedAndLeaveNoMoreAlone) {
  EXPECT_TRUE(rc::check([&] {
    const int count = *rc::gen::inRange(2, 17);
    std::vector<Player> players;
    for (int i = 0; i < count; ++i) {
      players.push_back(player("Q" + std::to_string(10 + i), 12, 1000 * *rc::gen::inRange(30, 70)));
    }
    PartnerRules by_measure;
    by_measure.measure = PartnerMeasure::kBodyMass;
    const int pairs = *rc::gen::inRange(0, 5);
    for (int i = 0; i < pairs; ++i) {
      const int a = *rc::gen::inRange(0, count);
      const int b = *rc::gen::inRange(0, count);
      if (a == b) continue;
      by_measure.forbidden.emplace_back(players[static_cast<std::size_t>(a)].id,
                                        players[static_cast<std::size_t>(b)].id);
    }
    const auto made = permissions_of({}, players, by_measure, kTonight, shipped_catalogue());
    RC_ASSERT(made.ok());
    std::vector<Player> without = players;
    for (Player& one : without) one.body_mass_grams.reset();
    PartnerRules by_order;
    by_order.orders = made.value().partners;
    const auto there = pair_up(without, by_order, kTonight);
    const auto here = pair_up(players, by_measure, kTonight);
    RC_ASSERT(there.ok());
    RC_ASSERT(there.value().permitted == here.value().permitted);
    RC_ASSERT(there.value().alone.size() == here.value().alone.size());
    for (const PartnerGroup& group : there.value().groups) {
      for (const int a : group.players) {
        for (const int b : group.players) {
          if (a == b) continue;
          const auto& others = here.value().permitted[static_cast<std::size_t>(a)];
          RC_ASSERT(std::find(others.begin(), others.end(), b) != others.end());
        }
      }
    }
  }));
}

}  // namespace
}  // namespace lanework::people
