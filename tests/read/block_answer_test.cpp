// The answer of 'lanework block --json' as docs/formats/block.md has it, and the open table made of it.
#include "app/read/block_answer.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "app/read/block_table.h"
#include "app/read/separated_values.h"
#include "core/base/document.h"

namespace lanework::read {
namespace {

constexpr const char* kAnswer = R"({
  "answer": "block", "version": 1, "club": "Quillmere Juniors", "monday": "2026-11-23", "weeks": 6,
  "squads": [{
    "squad": "u13-kestrels", "name": "Under-13 Kestrels", "routine": "early-teens", "feasible": true, "value": 32812,
    "bound": 33151, "gap_percent": 1.03,
    "spells": [{"first_week": 4, "weeks": 3, "drills": ["squat-hold"], "comes_in": ["squat-hold"], "leaves": ["squat"]}],
    "sessions": [
      {"week": 1, "date": "2026-11-24", "start": "18:00", "minutes": 20, "strip": "north-end", "lanes": [1, 2],
       "turnout": 14, "days_to_match": 2, "match_day": false, "budget_steps": 221, "planned_steps": 219,
       "drills": [{"drill": "easy-laps", "rung": "steady", "sets": 1, "amount": 3, "steps": 12},
                  {"drill": "squat", "rung": "right-angle", "sets": 2, "amount": 10, "steps": 15, "done": false}]},
      {"week": 1, "date": "2026-11-28", "start": "09:42", "minutes": 13, "strip": "north-end", "lanes": [1],
       "turnout": 14, "match_day": true, "drills": []}],
    "weeks": [{"week": 1, "spell": 1, "families": [{"family": "trunk", "credits": 9, "target": 10, "work_seconds": 200}],
               "contacts": {"used": 36.5, "ceiling": 64}}],
    "shortfalls": ["trunk: short"],
    "minute_prices": [{"weekday": 2, "start": "18:00", "minutes": 5, "before": 32812, "after": 33401, "sentence": "5 min more"}],
    "added_later": true}]
})";

BlockAnswer answer() { return read_block_answer("answer.json", kAnswer).value(); }

TEST(BlockAnswer, IsReadAsTheDocumentHasIt) {
  const BlockAnswer read = answer();
  EXPECT_EQ(read.weeks, 6);
  ASSERT_EQ(read.squads.size(), 1U);
  const SquadBlock& squad = read.squads.front();
  EXPECT_EQ(squad.gap_hundredths, 103);
  EXPECT_EQ(squad.spells.front().comes_in, std::vector<std::string>{"squat-hold"});
  ASSERT_EQ(squad.sessions.size(), 2U);
  EXPECT_EQ(squad.sessions[0].lanes, (std::vector<int>{1, 2}));
  EXPECT_EQ(squad.sessions[0].drills[1].rung, "right-angle");
  EXPECT_EQ(squad.sessions[0].days_to_match, 2);
  EXPECT_EQ(squad.sessions[0].budget_steps, 221);
  EXPECT_EQ(squad.sessions[0].drills[0].steps, 12);
  EXPECT_FALSE(squad.sessions[0].drills[0].done);
  EXPECT_EQ(squad.sessions[0].drills[1].done, false);
  EXPECT_EQ(squad.spells.front().drills, std::vector<std::string>{"squat-hold"});
  EXPECT_TRUE(squad.sessions[1].match_day);
  EXPECT_FALSE(squad.sessions[1].budget_steps);
  EXPECT_EQ(squad.families.front().target, 10);
  ASSERT_EQ(squad.minute_prices.size(), 1U);
  EXPECT_EQ(squad.minute_prices.front().after, 33401);
  EXPECT_EQ(read.find("u13-kestrels"), &read.squads.front());
  EXPECT_EQ(read.find("u99"), nullptr);
}

TEST(BlockAnswer, WhatIsMissingOrWrongIsOneLineEach) {
  std::string broken = kAnswer;
  const auto exchange = [&](const std::string& piece, const std::string& by) {
    broken.replace(broken.find(piece), piece.size(), by);
  };
  exchange(R"("date": "2026-11-24", )", "");
  exchange(R"("sets": 2)", R"("sets": 0)");
  exchange(R"("first_week": 4)", R"("first_week": "four")");
  const auto read = read_block_answer("answer.json", broken);
  ASSERT_FALSE(read);
  std::vector<std::string> fields;
  for (const Fault& fault : read.faults()) fields.push_back(fault.place.field);
  EXPECT_EQ(fields, (std::vector<std::string>{"squads.1.spells.1.first_week", "squads.1.sessions.1.date",
                                              "squads.1.sessions.1.drills.2.sets"}));
  EXPECT_FALSE(read_block_answer("answer.json", "{}"));
  EXPECT_FALSE(read_block_answer("answer.json", "[1"));
}

TEST(BlockTable, HasARowASessionAndDrill) {
  const BlockAnswer read = answer();
  const std::string table = block_table({&read.squads.front()});
  const SeparatedValues values = read_separated_values("sessions.csv", table, ',');
  ASSERT_TRUE(values.faults.empty());
  ASSERT_EQ(values.sheet.rows.size(), 4U);
  const auto texts = [&](std::size_t row) {
    std::string out;
    for (const auto& cell : values.sheet.rows[row].cells) out += cell.text + "|";
    return out;
  };
  EXPECT_EQ(texts(1), "u13-kestrels|1|2026-11-24|18:00:00|20|north-end|1 2|14|false|1|easy-laps|steady|1|3|");
  EXPECT_EQ(texts(2), "u13-kestrels|1|2026-11-24|18:00:00|20|north-end|1 2|14|false|2|squat|right-angle|2|10|");
  EXPECT_EQ(texts(3), "u13-kestrels|1|2026-11-28|09:42:00|13|north-end|1|14|true||||||");
}

TEST(BlockTable, CellsLikeFormulasAreInert) {
  BlockAnswer read = answer();
  SquadBlock& squad = read.squads.front();
  for (const char* nasty : {"=HYPERLINK(1)", "+1", "-2", "@x", "\tx"}) {
    squad.squad = nasty;
    const std::string table = block_table({&squad});
    EXPECT_NE(table.find(std::string("\r\n'") + nasty), std::string::npos) << nasty;
  }
  squad.squad = "a,\"b\"\nc";
  const SeparatedValues values = read_separated_values("sessions.csv", block_table({&squad}), ',');
  ASSERT_TRUE(values.faults.empty());
  EXPECT_EQ(values.sheet.rows[1].cells[0].text, "a,\"b\"\nc");
}

// Frictionless Data, Tabular Data Package 1.0: names are lower case, every column of the file is a field, in its order.
TEST(BlockTable, DescriptorSaysWhatTheColumnsAre) {
  const auto document = parse_json("datapackage.json", block_table_descriptor("Quillmere Juniors (Ü)"));
  ASSERT_TRUE(document);
  const Node& package = document.value().root;
  EXPECT_EQ(package.find("name")->text, "quillmere-juniors-block");
  EXPECT_EQ(package.find("profile")->text, "tabular-data-package");
  const Node& resource = package.find("resources")->items.front();
  EXPECT_EQ(resource.find("path")->text, kBlockTableName);
  std::string heading;
  const std::vector<std::string> types = {"string", "integer", "date", "time", "boolean"};
  for (const Node& field : resource.find("schema")->find("fields")->items) {
    heading += (heading.empty() ? "" : ",") + field.find("name")->text;
    EXPECT_NE(std::find(types.begin(), types.end(), field.find("type")->text), types.end());
  }
  EXPECT_TRUE(block_table({}).starts_with(heading + "\r\n"));
  EXPECT_EQ(parse_json("x", block_table_descriptor("Клуб")).value().root.find("name")->text, "club-block");
}

}  // namespace
}  // namespace lanework::read
