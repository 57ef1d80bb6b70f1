#include "core/records/completeness.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/records/generated_season.h"
#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

using Lines = std::vector<std::string>;

Completeness two_weeks() {
  Files files;
  files.squads = "squad,players,training minutes,match minutes,on the field\nu13-kestrels,16,75,60,9\n";
  files.hours =
      "squad,date,setting,minutes,players,warm-up,confirmed\n"
      "u13-kestrels,2026-08-04,training,75,12,most,\n"  // 15 h, as the row says
      "u13-kestrels,2026-08-06,training,,12,,\n"        // 15 h, usual minutes
      "u13-kestrels,2026-08-08,match,60,,half,yes\n"    // 9 h, usual players, confirmed
      "u13-kestrels,2026-08-11,training,,,,\n"          // 20 h, both
      "u13-kestrels,2026-09-01,training,,,,\n";
  files.injuries =
      "squad,player,event,date,region,onset,returned\n"
      "u13-kestrels,P1,a,2026-08-08,knee,acute,2026-08-12\n"
      "u13-kestrels,P1,a,2026-08-08,ankle,acute,2026-08-10\n"
      "u13-kestrels,,,2026-08-04,unknown,,\n";
  return completeness(read_well(files, make_period(day("2026-08-03"), day("2026-08-16"), day("2026-09-30")).value()));
}

TEST(Completeness, SaysWhatIsThereAndWhatIsNot) {
  EXPECT_EQ(
      joined(completeness_lines(two_weeks())),
      R"(2026-08-03 to 2026-08-16, known to 2026-09-30: 1 squad, 4 sessions, 59 h, 2 injury events with 3 diagnoses
usual values stand in for 44 h (75 %) of the hours: minutes 15 h, players 9 h, both 20 h; confirmed 9 h
warm-up unknown in 2 of 4 sessions (50 %)
open at the end: 1 injury event, whose days are 'at least'
known of 3 diagnoses: player 2, training or match 0, mode of onset 2, contact 0, body region 2, tissue and pathology 0, side 0, activity 0, recurrence 0
1 row outside the period left out
hours.csv:6: 2026-09-01 is not in the period 2026-08-03 to 2026-08-16: the row is left out
)");
}

TEST(Completeness, AsJson) {
  const Node node = completeness_node(two_weeks());
  EXPECT_EQ(node.find("hours")->find("player_hours")->real, 59.0);
  EXPECT_EQ(node.find("hours")->find("defaulted_player_hours")->real, 44.0);
  EXPECT_EQ(node.find("injuries")->find("open_events")->integer, 1);
  EXPECT_EQ(node.find("injuries")->find("known")->find("region")->integer, 2);
  EXPECT_EQ(node.find("squads")->items.front().find("weeks_with_rows")->integer, 2);
  const Node& question = node.find("questions")->items.front();
  EXPECT_EQ(question.find("kind")->text, "outside-the-period");
  EXPECT_EQ(question.find("line")->integer, 6);
  EXPECT_TRUE(parse_json("x", to_json(node)).ok());
}

TEST(Completeness, OfNothingIsNothing) {
  const Completeness none = completeness(read_well({}));
  EXPECT_EQ(none.sessions + none.events + none.diagnoses, 0);
  EXPECT_EQ(completeness_lines(none).size(), 3U);  // the first line, and one a squad without a row
}

// What is counted in parts adds up, in any season.
TEST(Completeness, PartsAddUp) {
  EXPECT_TRUE(rc::check([](std::uint64_t seed) {
    ReadSeason made;
    made.season = generated_season(seed, {3, *rc::gen::inRange(0, 40), *rc::gen::inRange(0, 20), 0});
    made.places.squads = {"squads.csv", std::vector<int>(3, 2)};
    made.places.exposures = {"hours.csv", std::vector<int>(made.season.exposures.size(), 2)};
    made.places.injuries = {"injuries.csv", std::vector<int>(made.season.injuries.size(), 2)};
    const Completeness found = completeness(made);
    PlayerMinutes hours;
    for (const PlayerMinutes part : found.hours_by_default) hours += part;
    RC_ASSERT(hours == found.hours);
    RC_ASSERT(found.hours_defaulted_and_confirmed <= found.hours_defaulted());
    RC_ASSERT(found.open_events <= found.events && found.events <= found.diagnoses);
    for (const SquadWeeks& weeks : found.weeks)
      RC_ASSERT(weeks.with_rows + static_cast<int>(weeks.without.size()) == weeks.expected);
    for (const FieldKnown& field : found.fields) RC_ASSERT(field.known >= 0 && field.known <= found.diagnoses);
  }));
}

}  // namespace
}  // namespace lanework::records::test
