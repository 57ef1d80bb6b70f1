#include "core/base/document.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace lanework {
namespace {

TEST(Document, TomlKeepsPlaces) {
  const auto document = parse_toml("a.toml", "x = 3\n[slot]\nminutes = -3\n");
  ASSERT_TRUE(document.ok());
  Faults faults;
  TableReader root("a.toml", &document.value().root, "", faults);
  root.integer("x", 0, 9);
  TableReader slot = root.table("slot");
  slot.integer("minutes", 5, 60);
  slot.finish();
  root.finish();
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(to_line(faults[0]), "a.toml:3:1: slot.minutes: found -3, expected a whole number from 5 to 60");
}

TEST(Document, UnknownKeysAreFaults) {
  const auto document = parse_toml("a.toml", "x = 3\nminuets = 4\n");
  Faults faults;
  TableReader root("a.toml", &document.value().root, "", faults);
  root.integer("x", 0, 9);
  root.finish();
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].code, FaultCode::kUnknownKey);
  EXPECT_EQ(faults[0].place.line, 2);
}

// A key whose name is part of another's is listed all the same, and each once.
TEST(Document, EveryKnownKeyIsListed) {
  const auto document = parse_toml("a.toml", "minuets = 4\n");
  Faults faults;
  TableReader root("a.toml", &document.value().root, "", faults);
  root.integer_or("in_age", 0, 0, 9);
  root.integer_or("age", 0, 0, 9);
  root.integer_or("age", 0, 0, 9);
  root.finish();
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].expected, "one of in_age, age");
}

TEST(Document, SyntaxFaultsNameTheLine) {
  const auto toml = parse_toml("a.toml", "x = 3\ny = = 4\n");
  ASSERT_FALSE(toml.ok());
  EXPECT_EQ(toml.faults()[0].place.line, 2);
  const auto json = parse_json("a.json", "{\n \"x\": 1,\n \"y\": }\n");
  ASSERT_FALSE(json.ok());
  EXPECT_EQ(json.faults()[0].place.line, 3);
  EXPECT_FALSE(parse_json("a.json", R"({"x":1,"x":2})").ok());
  EXPECT_FALSE(parse_json("a.json", "[1]").ok());
  EXPECT_FALSE(parse_json("a.json", "").ok());
  EXPECT_FALSE(parse_json("a.json", std::string(500, '[')).ok());
}

TEST(Document, WrongTypesNameBoth) {
  const auto document = parse_toml("a.toml", "minutes = \"ten\"\nwhen = 2026-11-26\nat = 18:00:00\n");
  Faults faults;
  TableReader root("a.toml", &document.value().root, "", faults);
  root.integer("minutes", 5, 60);
  EXPECT_EQ(to_iso(*root.date("when")), "2026-11-26");
  EXPECT_EQ(to_text(*root.time("at")), "18:00");
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(to_line(faults[0]), "a.toml:1:1: minutes: found 'ten', expected a whole number from 5 to 60");
}

TEST(Document, AnOffsetFromUniversalTimeIsKept) {
  const auto document = parse_toml("a.toml",
                                   "local = 2026-07-14T17:40:00\nsummer = 2026-07-14T17:40:00+02:00\n"
                                   "universal = 2026-07-14T17:40:00Z\nwest = 2026-07-14 17:40:30.5-03:30\n");
  ASSERT_TRUE(document.ok());
  const auto text = [&](const char* key) { return document.value().root.find(key)->text; };
  EXPECT_EQ(text("local"), "2026-07-14T17:40:00");
  EXPECT_EQ(text("summer"), "2026-07-14T17:40:00+02:00");
  EXPECT_EQ(text("universal"), "2026-07-14T17:40:00Z");
  EXPECT_EQ(text("west"), "2026-07-14T17:40:30-03:30");
}

TEST(Document, ADateOrATimeOfDayTakesNothingFromADateTimeOrAnOffset) {
  for (const char* value : {"2026-07-14T17:40:00", "2026-07-14T17:40:00+02:00", "2026-07-14T17:40:00Z",
                            "\"17:40:00+02:00\"", "\"17:40:00Z\"", "\"17:40Z\"", "\"2026-07-14Z\""}) {
    const auto document = parse_toml("a.toml", std::string("at = ") + value + "\n");
    Faults faults;
    TableReader root("a.toml", &document.value().root, "", faults);
    EXPECT_FALSE(root.time("at")) << value;
    EXPECT_FALSE(root.date("at")) << value;
    ASSERT_EQ(faults.size(), 2U) << value;
    EXPECT_EQ(faults[0].place.line, 1);
    EXPECT_EQ(faults[0].expected, "a time of day such as 18:00:00");
    EXPECT_EQ(faults[1].expected, "a date such as 2026-11-26");
  }
}

TEST(Document, JsonRoundTrip) {
  EXPECT_TRUE(rc::check([](const std::string& text, std::int64_t number) {
    Node root = Node::make_table();
    root.set("text", Node::make_text("a" + std::to_string(number)));
    root.set("number", Node::make_integer(number));
    Node list = Node::make_array();
    for (const char c : text) list.items.push_back(Node::make_integer(c));
    root.set("list", list);
    const std::string once = to_json(root);
    const auto again = parse_json("x", once);
    RC_ASSERT(again.ok());
    RC_ASSERT(to_json(again.value().root) == once);
  }));
}

TEST(Document, TextsThatSteerATerminalAreFaults) {
  const auto document = parse_toml(
      "a.toml", "name = \"a\\u001B[2J\"\nhint = \"b\\nc\"\nids = [\"d\", \"e\\u007F\"]\npairs = [[\"f\\t\"]]\n");
  ASSERT_TRUE(document.ok());
  Faults faults;
  TableReader root("a.toml", &document.value().root, "", faults);
  EXPECT_EQ(root.text("name"), "");
  EXPECT_EQ(root.text_or("hint", "none"), "none");
  EXPECT_EQ(root.texts("ids"), std::vector<std::string>{"d"});
  EXPECT_TRUE(root.text_lists("pairs").front().empty());
  ASSERT_EQ(faults.size(), 4U);
  EXPECT_EQ(to_line(faults[0]),
            "a.toml:1:1: name: found 'a\\x1B[2J', expected text of one line without control characters");
}

TEST(Fault, ControlCharactersAreInert) {
  EXPECT_EQ(quote("a\x1b[31m\n"), "'a\\x1B[31m\\x0A'");
  EXPECT_EQ(quote(std::string(100, 'x')), "'" + std::string(60, 'x') + "...'");
}

}  // namespace
}  // namespace lanework
