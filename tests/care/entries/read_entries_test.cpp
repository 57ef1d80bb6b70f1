#include "core/care/entries/read_entries.h"

#include <gtest/gtest.h>

#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

const std::string kHead =
    "[[entry]]\nid = \"a\"\nreceipt = 1\nreceived = \"2026-11-22T20:10+01:00\"\nby = \"coach\"\nplayer = \"Q14\"\n";

Result<std::vector<Entry>> read(const std::string& text, const std::vector<std::string>& players = {"Q14"}) {
  return read_entries(parse_toml("entries.toml", text).value(), test::return_rules(), players);
}

std::string only_fault(const std::string& text) {
  const auto found = read(text);
  if (found.ok()) return "";
  EXPECT_EQ(found.faults().size(), 1U) << catalogue::test::all_lines(found.faults());
  return to_line(found.faults().front());
}

TEST(ReadEntries, EveryKind) {
  // In the order of the kinds.
  const std::vector<std::string> rows = {
      R"(place = "knee", signs = ["limp"])",
      R"(place = "knee", before = 1, during = 2, next_morning = 0)",
      R"(kinds = ["impact"], allowed = "light", until = 2026-12-03, review = 2026-12-01)",
      R"(names = ["x"], review = 2026-12-01)",
      R"(names = ["x"])",
      R"(course = "concussion", rules = "of a league", carries = ["x"], age = 14)",
      R"(course = "x", step = "own-sport")",
      R"(course = "x", symptoms = "worse", worse_points = 2, worse_minutes = 30, after_session = true)",
      R"(course = "x", step = "own-sport")",
      R"(names = ["x"], course = "y", gate = "contact", clinician = "A. Physician", profession = "physician")",
      R"(corrects = "x")"};
  ASSERT_EQ(rows.size(), kind_words().size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string text =
        R"(entry = [{ id = "a", receipt = 1, received = "2026-11-22T20:10Z", by = "coach", player = "Q14", kind = ")" +
        std::string(kind_words()[i]) + "\", " + rows[i] + " }]\n";
    const auto found = read(text);
    ASSERT_TRUE(found.ok()) << catalogue::test::all_lines(found.faults());
    EXPECT_EQ(found.value().front().what.index(), i);
    EXPECT_EQ(found.value().front().by, By::kCoach);
  }
}

TEST(ReadEntries, WhatIsLeftOutIsNotKnown) {
  const auto check = read(kHead + "kind = \"symptom-check\"\ncourse = \"x\"\n");
  EXPECT_EQ(std::get<SymptomCheck>(check.value().front().what).told, SymptomCheck::Told::kWorse);
  const auto hurt = read(kHead + "kind = \"hurt\"\n");
  EXPECT_FALSE(std::get<Hurt>(hurt.value().front().what).place);
}

TEST(ReadEntries, MistakesAreTold) {
  EXPECT_EQ(only_fault(kHead + "kind = \"hurt\"\nplace = \"kneee\"\n").substr(0, 40),
            "entries.toml:8:1: entry.1.place: found '");
  EXPECT_NE(
      only_fault(kHead + "kind = \"soreness\"\nbefore = 11\n").find("found 11, expected a whole number from 0 to 10"),
      std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"pain\"\n").find("one of hurt, soreness"), std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"hurt\"\nnote = \"he fell\"\n").find("note"), std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"lifted\"\n").find("the ids of the entries it is about"), std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"withdrawn\"\n").find("corrects"), std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"course-opened\"\ncourse = \"ankle\"\n").find("one of concussion, general"),
            std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"step-begun\"\ncourse = \"x\"\nstep = \"jump\"\n").find("'jump'"),
            std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"clearance\"\nnames = [\"x\"]\nclinician = \"A\"\n").find("profession"),
            std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"clearance\"\ncourse = \"x\"\nclinician = \"A\"\nprofession = \"b\"\n")
                .find("both of course and gate"),
            std::string::npos);
  EXPECT_NE(only_fault(kHead + "kind = \"restriction\"\ninstruction = \"mind the knee\"\n").find("'knee'"),
            std::string::npos);
  const auto received = [](const std::string& text) {
    std::string row = kHead + "kind = \"hurt\"\n";
    const std::string shipped = "\"2026-11-22T20:10+01:00\"";
    return row.replace(row.find(shipped), shipped.size(), text);
  };
  EXPECT_NE(only_fault(received("2026-11-22T20:10:00")).find("found '2026-11-22T20:10:00', expected a time with its"),
            std::string::npos);
  EXPECT_EQ(read(received("2026-11-22T20:10:00+01:00")).value().front().received,
            read(kHead + "kind = \"hurt\"\n").value().front().received)
      << "TOML's own form says the same as the text";
  std::string no_offset = kHead + "kind = \"hurt\"\n";
  no_offset.replace(no_offset.find("+01:00"), 6, "");
  EXPECT_NE(only_fault(no_offset).find("a time with its offset"), std::string::npos);
  std::string twice = kHead + "kind = \"hurt\"\n" + kHead + "kind = \"hurt\"\n";
  EXPECT_EQ(only_fault(twice), "") << "sent twice is no mistake";
  twice.replace(twice.rfind("id = \"a\""), 8, "id = \"b\"");
  EXPECT_NE(only_fault(twice).find("found 1 of 'a' too"), std::string::npos);
  std::string stranger = kHead + "kind = \"hurt\"\n";
  stranger.replace(stranger.find("Q14"), 3, "Q99");
  EXPECT_NE(only_fault(stranger).find("'Q99', expected the id of a player of the roster"), std::string::npos);
  EXPECT_TRUE(read(stranger, {}).ok()) << "no roster, nothing to hold it against";
}

TEST(ReadEntries, AllMistakesOfAFileAreCollected) {
  const auto found = read(kHead + "kind = \"soreness\"\nbefore = 11\nduring = -1\n");
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(found.faults().size(), 2U);
}

}  // namespace
}  // namespace lanework::care
