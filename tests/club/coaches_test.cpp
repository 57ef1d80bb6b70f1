#include "core/club/coaches.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/club/consistency.h"
#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

struct Read {
  std::vector<Coach> coaches;
  Faults faults;
};

Read read(const std::string& text) {
  const auto document = parse_toml("coaches.toml", text);
  Read out;
  if (!document) {
    out.faults = document.faults();
    return out;
  }
  out.coaches = read_coaches(document.value(), {"a", "b"}, out.faults);
  return out;
}

TEST(Coaches, AreReadWithWhatTheyWereTaughtByDate) {
  const Read said = read(R"([[coach]]
id = "C1"
squads = ["b", "a"]
taught = [{ date = 2026-11-14, by = "the lead", what = "landings" }, { date = 2026-11-07, by = "C2", what = "first evening" }]
[[coach]]
id = "C2"
squads = []
)");
  EXPECT_TRUE(said.faults.empty());
  ASSERT_EQ(said.coaches.size(), 2U);
  EXPECT_EQ(said.coaches[0].taught.front().by, "C2");
  EXPECT_EQ(taught_in_words(said.coaches[0]), "taught 14 Nov 2026 by the lead (landings)");
  EXPECT_EQ(taught_in_words(said.coaches[1]), "not yet taught");
  EXPECT_EQ(coaches_of(said.coaches, "a").size(), 1U);
  EXPECT_TRUE(coaches_of(said.coaches, "c").empty());
}

TEST(Coaches, EveryMistakeIsOneLineWithItsPlace) {
  const Read said = read(R"([[coach]]
id = "C1"
squads = ["c", "a", "a"]
phone = "1"
taught = [{ by = "the lead", what = "landings" }, { date = 2026-11-07, by = "the lead" }]
[[coach]]
id = "C1"
)");
  std::vector<std::string> lines;
  for (const Fault& fault : said.faults) lines.push_back(to_line(fault));
  EXPECT_EQ(
      lines,
      (std::vector<std::string>{
          "coaches.toml:3:1: coach.1.squads: found 'c', expected the name of a file in squads/ without its ending",
          "coaches.toml:3:1: coach.1.squads: found 'a' twice, expected each squad once",
          "coaches.toml:5:11: coach.1.taught.1.date: found nothing, expected a date such as 2026-11-14",
          "coaches.toml:5:51: coach.1.taught.2.what: found nothing, expected text",
          "coaches.toml:4:1: coach.1.phone: found 'phone', expected one of id, squads, taught",
          "coaches.toml:7:1: coach.2.id: found coach 'C1' twice, expected each id once",
          "coaches.toml:6:1: coach.2.squads: found nothing, expected a list of squads, empty for none"}));
}

TEST(Coaches, AClubWithAListHearsWhoWasNotTaught) {
  Club club = empty_club();
  for (const char* id : {"a", "b", "c"}) add_squad(club, id, {slot(session::Weekday::kMonday, "18:00", 20)});
  club.coaches = {{"C1", {"a"}, {{day("2026-11-07"), "the lead", "first evening"}}, {}}, {"C2", {"b"}, {}, {}}};
  const Consistency found = find_inconsistencies(club, allocate(club, monday(), 3));
  std::vector<std::string> sentences;
  for (const Remark& remark : found.remarks) sentences.push_back(remark.sentence);
  EXPECT_NE(std::find(sentences.begin(), sentences.end(), "no coach in coaches.toml: c"), sentences.end());
  EXPECT_NE(std::find(sentences.begin(), sentences.end(), "no coach taught yet: b"), sentences.end());
}

}  // namespace
}  // namespace lanework::club::test
