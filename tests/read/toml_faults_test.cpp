// TOML that breaks its reader or its reader's library, each with the line that is shown.
#include <gtest/gtest.h>

#include <string>

#include "core/base/document.h"

namespace lanework {
namespace {

using namespace std::string_literals;

std::string line_for(const std::string& text) {
  const auto document = parse_toml("a.toml", text);
  return document ? "no fault" : to_line(document.faults().front());
}

TEST(TomlFaults, TellTheLine) {
  EXPECT_EQ(line_for("a = 1\n[=]\nb = 2\n"),
            "a.toml:2: found '[=]', expected a key, a [table] or a comment of a TOML file");
  EXPECT_EQ(line_for("a = 1\n\n[[,x]]\n"),
            "a.toml:3: found '[[,x]]', expected a key, a [table] or a comment of a TOML file");
  for (const std::string& text :
       {"a = 1\nb = \n"s, "a = 1\nb = \"x\n"s, "a = 1\nb = \0"s, "a = 1\nb = \xFF\n"s, "a = 1\na = 2\n"s,
        "\na = 1 1\n"s, "\na = 2013-02-30\n"s, "\n[a\n"s, "\ngröße = 1\n"s, "\na = 1 Ǳ\n"s, "\né = 1\n"s}) {
    const std::string line = line_for(text);
    EXPECT_EQ(line.substr(0, 9), "a.toml:2:") << line;
    EXPECT_EQ(line.find('\n'), std::string::npos);
  }
}

TEST(TomlFaults, AreOneLineWhateverStandsInTheFile) {
  EXPECT_EQ(line_for("a = t\nb = true\n").find('\n'), std::string::npos);
  const auto document = parse_toml("a.toml", "\"x\\u001B[2J\\ny\" = 1\n");
  ASSERT_TRUE(document);
  Faults faults;
  TableReader reader("a.toml", &document.value().root, "", faults);
  reader.finish();
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(to_line(faults[0]).substr(0, 29), "a.toml:1:1: x\\x1B[2J\\x0Ay: fo");
}

// Deep nesting would overflow the stack where the tree is built or taken apart.
TEST(TomlFaults, EndlessNestingIsRefused) {
  std::string key;
  for (int i = 0; i < 100'000; ++i) key += "a.";
  EXPECT_EQ(line_for("b = 1\n[" + key + "a]\n"), "a.toml:2: found a key of more than 16 parts, expected a TOML file");
  EXPECT_NE(line_for("b = {" + key + "a = 1}\n"), "no fault");
  EXPECT_NE(line_for("b = " + std::string(100'000, '[')), "no fault");
  std::string inline_tables = "b = ";
  for (int i = 0; i < 100'000; ++i) inline_tables += "{\"a\".a = ";
  EXPECT_NE(line_for(inline_tables), "no fault");
}

TEST(TomlFaults, DotsElsewhereAreNoKeys) {
  EXPECT_EQ(line_for("# ............................................\n"
                     "a = \"1.2.3.4.5.6.7.8.9.10.11.12.13.14.15.16.17.18. \\\" .19.20\"\n"
                     "b.c = [1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2.0, 2.1, 2.2, 2.3, 2.4, 2.5, 2.6, 2.7]\n"
                     "'d.e'.f = 1.5 # it's . . . . . . . . . . . . . . . . . . fine\n"),
            "no fault");
}

}  // namespace
}  // namespace lanework
