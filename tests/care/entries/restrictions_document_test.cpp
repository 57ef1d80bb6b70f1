#include "core/care/entries/restrictions_document.h"

#include <gtest/gtest.h>

#include "core/people/instruction.h"
#include "core/people/read_restrictions.h"
#include "tests/care/entries/entry_story.h"

namespace lanework::care {
namespace {

using catalogue::BodyArea;

TEST(RestrictionsDocument, ThePlannersReaderReadsItBack) {
  test::Story story;
  people::Restriction restriction;
  restriction.areas = {BodyArea::kAnkle};
  restriction.kinds = {catalogue::StressKind::kTwist};
  restriction.allowed_grade = 2;
  restriction.until = make_date(2026, 12, 3);
  story.add(By::kLead, RestrictionSet{restriction});
  story.add(By::kCoach, test::hurt_at(BodyArea::kHead), 1, "Q15");
  story.add(By::kCoach, test::sore_at(BodyArea::kKnee, 3), 1, "Q16");
  story.add(By::kLead, CourseOpened{"concussion", "", {"e2"}, 14}, 1, "Q15");
  const Knowledge known = story.fold();
  const std::string text = to_toml(restrictions_document(known.standing, known.as_known));
  const auto back = people::read_restrictions(parse_toml("out.toml", text).value(), {"Q14", "Q15", "Q16"}, {});
  ASSERT_TRUE(back.ok()) << text;
  EXPECT_EQ(back.value().as_known, "Sunday 23:10");
  ASSERT_EQ(back.value().list.size(), known.standing.size());
  for (std::size_t i = 0; i < known.standing.size(); ++i) {
    const people::Restriction& was = known.standing[i].restriction;
    const people::Restriction& is = back.value().list[i];
    EXPECT_EQ(is.player, was.player);
    EXPECT_EQ(is.areas, was.areas);
    EXPECT_EQ(is.kinds, was.kinds);
    EXPECT_EQ(is.allowed_grade, was.allowed_grade);
    EXPECT_EQ(is.until, was.until);
    EXPECT_EQ(is.review, was.review);
    EXPECT_EQ(is.sits_out, was.sits_out);
    EXPECT_EQ(is.instruction, was.instruction);
    EXPECT_EQ(people::private_word_in(people::instruction_for(is)), "");
  }
  for (const char* word : {"concussion", "head", "received", "e2", "return", "clinician names"})
    EXPECT_EQ(text.find(word), std::string::npos) << word;
}

TEST(RestrictionsDocument, NothingStandsIsADocumentToo) {
  test::Story story;
  story.add(By::kPlayer, test::sore_at(BodyArea::kKnee, 0));
  const std::string text = to_toml(restrictions_document(story.fold().standing, story.fold().as_known));
  const auto back = people::read_restrictions(parse_toml("out.toml", text).value(), {}, {});
  ASSERT_TRUE(back.ok());
  EXPECT_TRUE(back.value().list.empty());
  EXPECT_EQ(back.value().as_known, "Sunday 20:10");
}

}  // namespace
}  // namespace lanework::care
