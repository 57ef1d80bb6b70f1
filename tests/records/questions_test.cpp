// What can be read and is odd: one clear line each, and nothing is asked where nothing is odd.
#include "core/records/questions.h"

#include <gtest/gtest.h>

#include "core/records/completeness.h"
#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

using Lines = std::vector<std::string>;

TEST(Questions, NoneAboutAnOrdinaryWeek) {
  Files files;
  files.hours += "u13-kestrels,2026-11-24,training\nu13-kestrels,2026-11-26,training\nu13-kestrels,2026-11-28,match\n";
  files.injuries =
      "squad,player,date,setting,onset\nu13-kestrels,P1,2026-11-28,match,acute\n"
      "u13-kestrels,P2,2026-11-27,,gradual\n";
  files.players = "player,squad,joined,left\nP1,u13-kestrels,2026-11-28,2026-11-28\nP2,u13-kestrels,,\n";
  EXPECT_EQ(question_lines(read_well(files)), Lines{});
}

TEST(Questions, AboutHours) {
  Files files;
  files.hours =
      "squad,date,setting,minutes,players,hours,player\n"
      "u13-kestrels,2026-11-02,training,0,14,,\n"
      "u13-kestrels,2026-11-03,training,60,0,,\n"
      "u13-kestrels,2026-11-04,training,361,2,,\n"
      "u13-kestrels,2026-11-05,training,360,2,,\n"
      "u13-kestrels,2026-11-06,training,9,14,,\n"
      "u13-kestrels,2026-11-07,training,,14,1.5,\n"
      "u13-kestrels,2026-11-08,training,,180,700,\n"
      "u13-kestrels,2026-11-09,training,60,10,12,\n"
      "u13-kestrels,2026-11-10,training,60,10,10.5,\n"
      "u13-kestrels,2026-11-11,match,60,14,,\n"
      "u13-kestrels,2026-11-12,training,60,14,,\n"
      "u13-kestrels,2026-11-12,training,60,14,,\n"
      "u13-kestrels,2026-11-12,training,60,,,P1\n"
      "u13-kestrels,2026-11-13,training,,,,P1\n";
  EXPECT_EQ(joined(question_lines(read_well(files))),
            R"(hours.csv:2: u13-kestrels on 2026-11-02: a training with no hours; did it take place?
hours.csv:3: u13-kestrels on 2026-11-03: a training with no hours; did it take place?
hours.csv:4: u13-kestrels on 2026-11-04: 361 min of training a player, longer than 6 h; are these minutes typed as hours, or hours of all players?
hours.csv:6: u13-kestrels on 2026-11-06: 9 min of training a player, shorter than 10 min; are these hours typed as minutes, or hours of one player?
hours.csv:7: u13-kestrels on 2026-11-07: 6 min of training a player, shorter than 10 min; are these hours typed as minutes, or hours of one player?
hours.csv:8: u13-kestrels on 2026-11-08: 700 h of all players together in one session; are these minutes typed as hours?
hours.csv:9: u13-kestrels on 2026-11-09: 12 h stated, but minutes times players are 10 h; the stated hours count
hours.csv:11: u13-kestrels on 2026-11-11: 14 players for the whole match, and 9 are on the field at one time: the hours are too many and the rate too low
hours.csv:13 and 12: u13-kestrels on 2026-11-12: the same training stands there twice; were there two?
hours.csv:14 and 12: u13-kestrels on 2026-11-12: a training of one player, and the whole squad's: are hours counted twice?
)");
}

TEST(Questions, AboutInjuries) {
  Files files;
  files.hours += "u13-kestrels,2026-11-24,training\n";
  files.injuries =
      "squad,player,event,date,setting,onset,region,tissue\n"
      "u13-kestrels,P1,a,2026-11-24,training,acute,knee,sprain\n"
      "u13-kestrels,P1,a,2026-11-24,training,acute,knee,bruise\n"    // two diagnoses of one event may differ
      "u13-kestrels,P1,b,2026-11-24,training,acute,knee,fracture\n"  // but not those of two
      "u13-kestrels,P2,,2026-11-24,training,acute,knee,sprain\n"
      "u13-kestrels,P2,,2026-11-24,training,acute,ankle,sprain\n"
      "u13-kestrels,,,2026-11-24,training,acute,knee,sprain\n"
      "u13-kestrels,,,2026-11-24,training,acute,knee,fracture\n"  // perhaps another player's
      "u13-kestrels,,,2026-11-24,training,acute,knee,sprain\n"
      "u13-kestrels,P3,,2026-11-24,match,acute,knee,sprain\n"
      "u13-kestrels,P4,,2026-11-25,,acute,knee,sprain\n"
      "u13-kestrels,P5,,2026-11-25,,gradual,knee,sprain\n"
      "u16-swifts,P6,,2026-11-25,,acute,knee,sprain\n";
  EXPECT_EQ(joined(question_lines(read_well(files))),
            R"(squads.csv:3: u16-swifts: 1 injury and no hours at all; no rate can be told
injuries.csv:4 and 2: u13-kestrels on 2026-11-24: the same player, day and region stand there twice; is it one injury?
injuries.csv:9 and 7: u13-kestrels on 2026-11-24: the same player, day and region stand there twice; is it one injury?
injuries.csv:10: u13-kestrels on 2026-11-24: an injury, and no match that day
injuries.csv:11: u13-kestrels on 2026-11-25: an injury, and no session that day
)");
}

TEST(Questions, AboutPlayersWhoCameAndWent) {
  Files files;
  files.hours = "squad,date,setting,player\nu13-kestrels,2026-11-24,training,P1\nu13-kestrels,2026-11-25,training,P1\n";
  files.injuries =
      "squad,player,date,setting\nu13-kestrels,P1,2026-11-25,\nu13-kestrels,P2,2026-11-24,\n"
      "u13-kestrels,P3,2026-11-24,\nu13-kestrels,,2026-11-24,\n";
  files.players = "player,squad,joined,left\nP1,u13-kestrels,,2026-11-24\nP2,u13-kestrels,2026-11-25,\n";
  EXPECT_EQ(joined(question_lines(read_well(files))),
            R"(injuries.csv:2: u13-kestrels on 2026-11-25: an injury of 'P1', who left on 2026-11-24
injuries.csv:3: u13-kestrels on 2026-11-24: an injury of 'P2', who joined on 2026-11-25
injuries.csv:4: u13-kestrels on 2026-11-24: an injury of 'P3', who is not among the squad's players
hours.csv:3: u13-kestrels on 2026-11-25: hours of 'P1', who left on 2026-11-24
)");
}

TEST(Questions, AboutWeeksWithoutRows) {
  Files files;
  files.hours += "u13-kestrels,2026-08-03,training\nu13-kestrels,2026-08-18,training\nu16-swifts,2026-08-12,training\n";
  const Period period = make_period(day("2026-08-03"), day("2026-12-31"), day("2026-08-24")).value();
  const Completeness found = completeness(read_well(files, period));
  ASSERT_EQ(found.weeks.size(), 2U);
  EXPECT_EQ(found.weeks[0].with_rows, 2);
  EXPECT_EQ(found.weeks[0].expected, 4);  // no week is missed that is still to come
  EXPECT_EQ(found.weeks[0].without, (std::vector<Date>{day("2026-08-10"), day("2026-08-24")}));
  ASSERT_EQ(found.questions.size(), 2U);
  EXPECT_EQ(to_line(found.questions[0]),
            "squads.csv:2: u13-kestrels: hours in 2 of 4 weeks; none in the weeks of 2026-08-10, 2026-08-24");
}

}  // namespace
}  // namespace lanework::records::test
