#include "core/care/pain/read_pain_rule.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

std::string with(const std::string& piece, const std::string& by) {
  std::ifstream in(catalogue::test::shipped_folder() / "care" / "pain.toml", std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  const std::size_t at = text.find(piece);
  if (at == std::string::npos) throw std::runtime_error("no " + piece);
  return text.replace(at, piece.size(), by);
}

std::string first_fault(const std::string& text) {
  const auto read = read_pain_rule(parse_toml("pain.toml", text).value(), catalogue::test::shipped_catalogue().sources);
  return read.ok() ? "" : to_line(read.faults().front());
}

TEST(ReadPainRule, MistakesAreTold) {
  EXPECT_EQ(first_fault(with("swaps_up_to = 3", "swaps_up_to = 1")),
            "pain.toml:5:1: swaps_up_to: found 1, expected a whole number from 2 to 10");
  EXPECT_NE(first_fault(with("settled_up_to = 0", "settled_up_to = 3")).find("from 0 to 2"), std::string::npos);
  EXPECT_NE(first_fault(with("\"chest\"", "\"breast\"")).find("'breast'"), std::string::npos);
  EXPECT_NE(first_fault(with("key = \"limp\"", "key = \"swelling\"")).find("each sign once"), std::string::npos);
  EXPECT_NE(first_fault(with("swaps only, stop if it hurts", "mind the knee")).find("'knee'"), std::string::npos);
  EXPECT_NE(first_fault(with("\"thomee-1997\", \"own", "\"thome-1997\", \"own")).find("a key of sources.toml"),
            std::string::npos);
  EXPECT_NE(first_fault(with("days_to = 10", "days_to = 4")).find("days_to"), std::string::npos);
  EXPECT_NE(first_fault(with("joins_in_up_to = 2", "joins_in_up_to = 3")).find("no published cut below the rule's own"),
            std::string::npos);
  EXPECT_NE(first_fault("joins_in_up_to = 2\nswaps_up_to = 3\nsettled_up_to = 0\nsources = [\"own-judgement\"]\n")
                .find("trend"),
            std::string::npos);
}

}  // namespace
}  // namespace lanework::care
