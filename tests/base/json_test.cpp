// Our trees of JSON beside those of the library that reads them (nlohmann): what it takes we take, as the same tree and
// the same text, apart from what is refused here on purpose; and our writer beside its own.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <chrono>
#include <nlohmann/json.hpp>

#include "core/base/document.h"

namespace lanework {
namespace {

using Other = nlohmann::ordered_json;

std::string dumped(const Other& value, int indent = -1) {
  return value.dump(indent, ' ', false, Other::error_handler_t::replace);
}

bool is_refused_on_purpose(const Fault& fault, const std::string& text) {
  const std::string& found = fault.found;
  return found == "null" || found == "something other than an object" || found == "a number that is too large" ||
         found == "more than 64 levels of nesting" || found.rfind("the key ", 0) == 0 ||
         text.find('\0') != std::string::npos;
}

void expect_alike(const std::string& text) {
  const auto ours = parse_json("x", text);
  const Other theirs = Other::parse(text, nullptr, false);
  if (ours) {
    RC_ASSERT(!theirs.is_discarded());
    RC_ASSERT(to_json(ours.value().root) == dumped(theirs));
    RC_ASSERT(to_json(ours.value().root, 2) == dumped(theirs, 2));
  } else {
    RC_ASSERT(theirs.is_discarded() || is_refused_on_purpose(ours.faults().front(), text));
    RC_ASSERT(ours.faults().front().place.file == "x");
  }
}

rc::Gen<std::string> a_piece() {
  return rc::gen::elementOf(std::vector<std::string>{"{",
                                                     "}",
                                                     "[",
                                                     "]",
                                                     ",",
                                                     ":",
                                                     "\"a\"",
                                                     "\"b\":1",
                                                     "\"c\":{",
                                                     "\"",
                                                     "\\",
                                                     "\\n",
                                                     "\\/",
                                                     "\\x",
                                                     "\\u00e",
                                                     "\\u00e9",
                                                     "\\ud83d",
                                                     "\\ude00",
                                                     "\\u0000",
                                                     "1",
                                                     "-",
                                                     "0",
                                                     "-0",
                                                     "01",
                                                     "1.",
                                                     ".5",
                                                     "1.25",
                                                     "1e5",
                                                     "1E+2",
                                                     "1e400",
                                                     "-1e-400",
                                                     "true",
                                                     "false",
                                                     "null",
                                                     "tru",
                                                     " ",
                                                     "\n",
                                                     "\t",
                                                     "\x01",
                                                     "\x7f",
                                                     "\xc3\xa9",
                                                     "\xc3",
                                                     "\xa9",
                                                     "\xe2\x82\xac",
                                                     "\xed\xa0\x80",
                                                     "\xf0\x9f\x98\x80",
                                                     "\xf4\x90\x80\x80",
                                                     "\xc0\xaf",
                                                     "\xef\xbb\xbf",
                                                     "/*",
                                                     "//",
                                                     "NaN",
                                                     "9007199254740993",
                                                     "9223372036854775807",
                                                     "9223372036854775808",
                                                     "-9223372036854775808",
                                                     "-9223372036854775809",
                                                     "18446744073709551616",
                                                     std::string(1, '\0')});
}

RC_GTEST_PROP(JsonBesideAnother, ReadsAndRefusesTheSame, ()) {
  std::string text;
  for (const std::string& piece : *rc::gen::container<std::vector<std::string>>(a_piece())) text += piece;
  expect_alike(text);
  expect_alike("{" + text + "}");
  expect_alike("{\"x\":" + text + "}");
  expect_alike("{\"x\":[" + text + "]}");
  expect_alike("{\"x\":\"" + text + "\"}");
}

// A sound document with one byte of it changed.
RC_GTEST_PROP(JsonBesideAnother, OneByteMakesTheSameDifference, ()) {
  static const std::string kSound =
      "{\"a\": [1, -2.5e3, true, {\"b\": \"\\ud83d\\ude00 \xc3\xa9\\n\"}], \"c\": {}, \"d\": [], \"e\": "
      "9007199254740993}";
  std::string text = kSound;
  text[*rc::gen::inRange<std::size_t>(0, text.size())] = *rc::gen::arbitrary<char>();
  expect_alike(text);
  expect_alike(kSound.substr(0, *rc::gen::inRange<std::size_t>(0, kSound.size())));
}

RC_GTEST_PROP(JsonBesideAnother, AnyBytesAreWrittenTheSame,
              (const std::string& bytes, std::int64_t number, double real)) {
  Node node = Node::make_table();
  node.set(bytes, Node::make_text(bytes));
  node.set("number", Node::make_integer(number));
  node.set("real", Node::make_real(real));
  node.set("none", Node::make_array());
  Other other = Other::object();
  other[bytes] = bytes;
  other["number"] = number;
  other["real"] = real;
  other["none"] = Other::array();
  RC_ASSERT(to_json(node) == dumped(other));
  RC_ASSERT(to_json(node, 1) == dumped(other, 1));
}

TEST(Json, SyntaxFaultsNameThePlace) {
  struct Case {
    const char* text;
    int line;
    int column;
  };
  for (const Case& one : {Case{"{\n \"x\": 1,\n \"y\": }\n", 3, 7}, Case{"", 1, 1}, Case{"{", 1, 2},
                          Case{"{\"a\"}", 1, 5}, Case{"{\"a\":1 \"b\":2}", 1, 10}, Case{"{\"a\":tru}", 1, 9},
                          Case{"{\"a\":\"\n\"}", 1, 7}, Case{"{}\n{}", 2, 1}, Case{"{\"a\":1e400}", 1, 10}}) {
    const auto read = parse_json("x", one.text);
    ASSERT_FALSE(read) << one.text;
    EXPECT_EQ(read.faults().front().place.line, one.line) << one.text;
    EXPECT_EQ(read.faults().front().place.column, one.column) << one.text;
  }
}

// As many keys as a request can hold: were each compared with all before it, a minute would not do.
TEST(Json, ManyKeysAreReadInTime) {
  std::string text = "{\"k\":0";
  for (int i = 0; i < 100'000; ++i) text += ",\"" + std::to_string(i) + "\":0";
  const auto began = std::chrono::steady_clock::now();
  EXPECT_TRUE(parse_json("x", text + "}"));
  EXPECT_FALSE(parse_json("x", text + ",\"7\":0}"));
  EXPECT_LT(std::chrono::steady_clock::now() - began, std::chrono::seconds(10));
}

}  // namespace
}  // namespace lanework
