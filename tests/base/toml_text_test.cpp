// The tree written as TOML and read back.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/base/document.h"

namespace lanework {
namespace {

std::string rewritten(const std::string& toml) {
  const auto document = parse_toml("a.toml", toml);
  return document ? to_toml(document.value().root) : to_line(document.faults().front());
}

TEST(TomlText, IsWrittenAsPeopleWriteIt) {
  const std::string text =
      "date = 2026-11-26\nname = \"Under-13 \\\"K\\\"\"\nstart = 18:00:00\n\n[area]\nwidth = 2.5\n\n"
      "[[week]]\nlanes = 2\n\n[[week]]\npins = [{ drill = \"squat\" }]\n";
  EXPECT_EQ(rewritten(text), text);
  EXPECT_EQ(rewritten("\"a key\" = [[\"Q1\", \"Q2\"]]\n"), "\"a key\" = [[\"Q1\", \"Q2\"]]\n");
  EXPECT_EQ(rewritten(""), "");
  const std::string moment = "at = \"2026-07-14T17:40:00+02:00\"\n";
  EXPECT_EQ(rewritten("at = 2026-07-14T17:40:00+02:00\n"), moment);
  EXPECT_EQ(rewritten(moment), moment);
}

Node any_node(int depth) {
  switch (*rc::gen::inRange(0, depth > 0 ? 6 : 4)) {
    case 0: {
      Node real;
      real.kind = Node::Kind::kReal;
      real.real = *rc::gen::inRange(-1000000, 1000000) / 1024.0;
      return real;
    }
    case 1:
      return Node::make_integer(*rc::gen::arbitrary<std::int64_t>());
    case 2:
      return Node::make_boolean(*rc::gen::arbitrary<bool>());
    case 3:
      return Node::make_text(*rc::gen::oneOf(
          rc::gen::container<std::string>(rc::gen::inRange(' ', '~')),
          rc::gen::element<std::string>("2026-02-30", "2026-02-28", "18:00:00", "24:00:00", "Ö\n\t\"\\", "")));
    case 4: {
      Node array = Node::make_array();
      for (int i = *rc::gen::inRange(0, 4); i > 0; --i) array.items.push_back(any_node(depth - 1));
      return array;
    }
    default: {
      Node table = Node::make_table();
      for (int i = *rc::gen::inRange(0, 4); i > 0; --i) {
        const auto name = *rc::gen::container<std::string>(rc::gen::inRange(' ', '~'));
        table.set("k" + name, any_node(depth - 1));
      }
      return table;
    }
  }
}

Node any_table() {
  Node table = Node::make_table();
  for (int i = *rc::gen::inRange(0, 6); i > 0; --i) table.set("key-" + std::to_string(i), any_node(3));
  return table;
}

bool same(const Node& a, const Node& b) {
  if (a.kind != b.kind || a.text != b.text || a.integer != b.integer || a.boolean != b.boolean || a.real != b.real ||
      a.items.size() != b.items.size() || a.entries.size() != b.entries.size()) {
    return false;
  }
  for (std::size_t i = 0; i < a.items.size(); ++i) {
    if (!same(a.items[i], b.items[i])) return false;
  }
  for (const auto& [key, value] : a.entries) {
    const Node* other = b.find(key);
    if (other == nullptr || !same(value, *other)) return false;
  }
  return true;
}

TEST(TomlTextProperty, WhatIsWrittenIsReadBack) {
  EXPECT_TRUE(rc::check([] {
    const Node before = any_table();
    const std::string text = to_toml(before);
    const auto after = parse_toml("a.toml", text);
    if (!after) RC_FAIL(to_line(after.faults().front()) + "\n" + text);
    RC_ASSERT(same(before, after.value().root));
  }));
}

}  // namespace
}  // namespace lanework
