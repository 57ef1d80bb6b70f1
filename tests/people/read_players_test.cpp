#include "core/people/read_players.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace lanework::people {
namespace {

Result<std::vector<Player>> read(const std::string& roster) {
  return read_players("request", *parse_json("request", "{\"roster\": " + roster + "}").value().root.find("roster"));
}

TEST(ReadPlayers, ReadsEveryField) {
  const auto result = read(R"([{"id": "Q07", "name": "Zoë Ødegård", "shirt": "7b", "birth": "2013-11-27", "age": 12,
    "squads": ["U13", "U15"], "size_group": 2, "body_mass_grams": 41500, "contact_ok": false, "row": 3},
    {"id": "Q08", "name": "B"}])");
  ASSERT_TRUE(result.ok()) << to_line(result.faults()[0]);
  const Player& one = result.value()[0];
  EXPECT_EQ(one.id, "Q07");
  EXPECT_EQ(one.name, "Zoë Ødegård");
  EXPECT_EQ(one.shirt, "7b");
  EXPECT_EQ(one.birth, make_date(2013, 11, 27));
  EXPECT_EQ(one.stated_age, 12);
  EXPECT_EQ(one.squads, (std::vector<std::string>{"U13", "U15"}));
  EXPECT_EQ(one.size_group, 2);
  EXPECT_EQ(one.body_mass_grams, 41500);
  EXPECT_FALSE(one.contact_ok);
  EXPECT_EQ(one.row, 3);
  const Player& other = result.value()[1];
  EXPECT_FALSE(other.birth || other.stated_age || other.size_group || other.body_mass_grams);
  EXPECT_TRUE(other.contact_ok);
}

TEST(ReadPlayers, NamesEveryFault) {
  const auto result = read(R"([{"id": "A", "name": "one", "age": "twelve"}, {"id": "A", "name": "two", "mass": 3},
    {"name": "", "body_mass_grams": 0, "birth": "27/11/2013"}, 7])");
  ASSERT_FALSE(result.ok());
  const auto expect = [&](FaultCode code, const std::string& field) {
    EXPECT_TRUE(std::any_of(result.faults().begin(), result.faults().end(), [&](const Fault& fault) {
      return fault.code == code && fault.place.field == field;
    })) << field;
  };
  expect(FaultCode::kWrongType, "roster.1.age");
  expect(FaultCode::kUnknownKey, "roster.2.mass");
  expect(FaultCode::kDuplicate, "roster.2.id");
  expect(FaultCode::kMissing, "roster.3.id");
  expect(FaultCode::kMissing, "roster.3.name");
  expect(FaultCode::kOutOfRange, "roster.3.body_mass_grams");
  expect(FaultCode::kBadDate, "roster.3.birth");
  expect(FaultCode::kWrongType, "roster");
  EXPECT_EQ(result.faults().size(), 8U);
  EXPECT_FALSE(read("{}").ok());
}

std::string random_text(int least) {
  static const std::vector<std::string> kPieces = {"a", "Z", "7", " ", "\"", "\\", "é", "李", "=", "<b>", "😀"};
  std::string out;
  for (int i = *rc::gen::inRange(least, least + 6); i > 0; --i) out += *rc::gen::elementOf(kPieces);
  return out;
}

std::optional<int> maybe(int least, int most) {
  if (*rc::gen::arbitrary<bool>()) return {};
  return *rc::gen::inRange(least, most);
}

TEST(ReadPlayers, WritingAndReadingGivesTheSame) {
  EXPECT_TRUE(rc::check([] {
    std::vector<Player> players;
    for (int i = *rc::gen::inRange(0, 12); i > 0; --i) {
      Player player;
      player.id = std::to_string(i) + random_text(0);
      player.name = random_text(1);
      player.shirt = random_text(0);
      if (const auto days = maybe(10000, 20000)) player.birth = Date{*days};
      player.stated_age = maybe(0, 121);
      for (int k = *rc::gen::inRange(0, 3); k > 0; --k) player.squads.push_back(random_text(0));
      player.size_group = maybe(1, 1001);
      player.body_mass_grams = maybe(1, 500001);
      player.contact_ok = *rc::gen::arbitrary<bool>();
      player.row = *rc::gen::inRange(0, 5000);
      players.push_back(std::move(player));
    }
    const std::string text = to_json(write_players(players));
    const auto again = read(text);
    RC_ASSERT(again.ok());
    RC_ASSERT(to_json(write_players(again.value())) == text);
    RC_ASSERT(again.value().size() == players.size());
    for (std::size_t i = 0; i < players.size(); ++i) {
      const Player& a = players[i];
      const Player& b = again.value()[i];
      RC_ASSERT(a.id == b.id && a.name == b.name && a.shirt == b.shirt && a.birth == b.birth);
      RC_ASSERT(a.stated_age == b.stated_age && a.squads == b.squads && a.size_group == b.size_group);
      RC_ASSERT(a.body_mass_grams == b.body_mass_grams && a.contact_ok == b.contact_ok && a.row == b.row);
    }
  }));
}

}  // namespace
}  // namespace lanework::people
