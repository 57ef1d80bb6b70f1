// Sentences stand only where their interval allows them.
#include "core/findings/claims.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "tests/findings/told_season.h"

namespace lanework::findings {
namespace {

std::string all_of(const SeasonFindings& found, Reader reader = Reader::kLead) {
  std::string out;
  for (const Claim& claim : claims(found, reader)) out += claim.sentence + "\n";
  return out;
}

std::string of(const SeasonFindings& found, ClaimKind kind, Reader reader = Reader::kLead) {
  std::string out;
  for (const Claim& claim : claims(found, reader))
    if (claim.kind == kind) out += claim.sentence + "\n";
  return out;
}

bool has(const std::string& text, const std::string& piece) { return text.find(piece) != std::string::npos; }

TEST(Claims, CompletenessComesFirst) {
  EXPECT_EQ(claims(quiet_season(), Reader::kLead).front().kind, ClaimKind::kCompleteness);
  SeasonFindings found = quiet_season();
  EXPECT_FALSE(has(all_of(found), "may mislead"));
  found.completeness.weeks = {{20, 40, {}}, {18, 40, {}}};
  EXPECT_TRUE(has(all_of(found), "So much is missing that all that follows may mislead."));
}

TEST(Claims, WhatOfWarmUpsMayBeSaid) {
  SeasonFindings found = quiet_season();
  EXPECT_TRUE(has(of(found, ClaimKind::kWarmUps), "Too early to tell"));
  EXPECT_TRUE(
      has(of(found, ClaimKind::kWarmUps), "about 14\u00A0000 more hours are needed, 2.4 seasons like this one in all"));
  found.warm_ups.limits = {0.7, 0.9};
  EXPECT_TRUE(has(of(found, ClaimKind::kWarmUps), "had fewer injuries in weeks after more warm-ups"));
  EXPECT_TRUE(has(of(found, ClaimKind::kWarmUps), "does not show that the one makes the other"));
  EXPECT_FALSE(has(of(found, ClaimKind::kWarmUps), "spared"));
  found.warm_ups.averted = Averted{12.3, {4.2, 19.8}};
  EXPECT_TRUE(has(of(found, ClaimKind::kWarmUps), "would have spared about 12 injuries (4 to 20)"));
  found.warm_ups.limits = {1.1, 1.4};
  EXPECT_TRUE(has(of(found, ClaimKind::kWarmUps), "had more injuries in weeks after more warm-ups"));
  EXPECT_FALSE(has(of(found, ClaimKind::kWarmUps), "spared"));
  found.warm_ups.limits = {0.95, 1.05};
  EXPECT_TRUE(has(of(found, ClaimKind::kWarmUps), "No difference that matters is seen"));
  found.warm_ups.why_not = "one squad only, so that nothing is seen of how squads differ; leave out --random";
  EXPECT_TRUE(has(of(found, ClaimKind::kWarmUps),
                  "cannot be estimated: one squad only, so that nothing is seen of how squads differ. To see"));
  EXPECT_FALSE(has(of(found, ClaimKind::kWarmUps), "--random"));
}

// Whatever the interval: 'fewer injuries in weeks' only below 1, 'more injuries in weeks' only above; never cause.
RC_GTEST_PROP(Claims, NoMoreThanTheIntervalAllows, ()) {
  SeasonFindings found = quiet_season();
  const double low = *rc::gen::inRange(1, 300) / 100.0;
  const double high = low + *rc::gen::inRange(1, 200) / 100.0;
  found.warm_ups.limits = {low, high};
  found.warm_ups.times = (low + high) / 2;
  found.warm_ups.averted = Averted{5, {1 - low, 8}};
  found.matches_by_training = Compared{{20, 2000}, {20, 8000}, 4, {{low, high}, 0.5}};
  const std::string text = all_of(found);
  RC_ASSERT(has(text, "had fewer injuries in weeks") == (high < 1));
  RC_ASSERT(has(text, "had more injuries in weeks") == (low > 1));
  RC_ASSERT(!has(text, "spared") || high < 1);
  RC_ASSERT(has(text, "had 4.0 times the injuries of an hour of training") == (low > 1));
  for (const char* word : {" causes", " caused", "prevent", "proof", "proves", "nan", "inf "})
    RC_ASSERT(!has(text, word));
  RC_ASSERT(!has(text, " cause ") || has(text, "If it were cause and effect"));
}

// The same of comparisons within the season.
RC_GTEST_PROP(Claims, ComparisonsClaimNoMoreThanTheirIntervals, ()) {
  SeasonFindings found = quiet_season();
  const double low = *rc::gen::inRange(1, 300) / 100.0;
  const double high = low + *rc::gen::inRange(1, 200) / 100.0;
  found.often = often_of((low + high) / 2, {low, high});
  // A narrow interval of the one kind lends nothing to the other's.
  if (*rc::gen::arbitrary<bool>()) found.often.compared.ratio->limits = {(low + high) / 2, (low + high) / 2};
  const double shift = *rc::gen::inRange(0, 300) / 100.0;
  found.taught = taught_of((low + high) / 2 - shift, {low - shift, high - shift});
  const std::string often = of(found, ClaimKind::kOften);
  RC_ASSERT(has(often, "lately had fewer injuries") == (high < 1));
  RC_ASSERT(has(often, "lately had more injuries") == (low > 1));
  RC_ASSERT(!has(often, "injury fewer in every") || (high < 1 && has(often, "If it were cause and effect")));
  RC_ASSERT(has(often, "Too early") || high < 1 || low > 1 || has(often, "nothing that matters"));
  const std::string taught = of(found, ClaimKind::kTaught);
  RC_ASSERT(has(taught, "was taught did more warm-ups") == (low - shift > 0));
  RC_ASSERT(has(taught, "was taught did fewer warm-ups") == (high - shift < 0));
  for (const std::string& text : {often, taught}) {
    RC_ASSERT(!text.empty());
    for (const char* word : {" causes", "prevent", "proof", "proves", "nan", "inf ", "because of the warm"})
      RC_ASSERT(!has(text, word));
  }
}

TEST(Claims, TheWiderLimitsAreGoneBy) {
  SeasonFindings found = quiet_season();
  found.often = often_of(0.7, {0.5, 0.9});
  EXPECT_TRUE(has(of(found, ClaimKind::kOften),
                  "had fewer injuries: 0.70 times the rate of the others, ages and settings held alike (95 % limits "
                  "0.500 to 0.900)"));
  EXPECT_TRUE(has(of(found, ClaimKind::kOften),
                  "one injury fewer in every 2.0 squads' seasons (1.2 to 5.0), each of 1\u00A0250 player-hours"));
  found.often.compared.ratio_by_squads->limits = {0.4, 1.2};
  EXPECT_TRUE(has(of(found, ClaimKind::kOften), "Too early to tell"));
  EXPECT_TRUE(has(of(found, ClaimKind::kOften), "0.400 to 1.20"));
  found.often.compared.ratio_by_squads.reset();
  EXPECT_TRUE(has(of(found, ClaimKind::kOften), "cannot be compared with the others, squads counted as squads"));
  found.often.compared.one.hours = 0;
  EXPECT_TRUE(of(found, ClaimKind::kOften).empty());
}

TEST(Claims, WhoIsOut) {
  SeasonFindings found = quiet_season();
  found.prevalence = prevalence_of(200, 40);
  EXPECT_EQ(of(found, ClaimKind::kPrevalence),
            "On a day of the season 2.0 % of 345 players on the books were out with an injury, on the average (95 % "
            "limits 1.1 to 3.4 %). Most were out in the week from Saturday 12 October 2024: 3.0 %.\n");
  EXPECT_FALSE(has(of(found, ClaimKind::kPrevalence, Reader::kBoard), "the week from"));
  found.prevalence->injuries_left_out = 2;
  EXPECT_TRUE(has(of(found, ClaimKind::kPrevalence), "Not in it: 2 injuries of players who were not on the books."));
  EXPECT_TRUE(has(of(found, ClaimKind::kPrevalence, Reader::kBoard), "Not in it: fewer than 5 injuries"));
  found.prevalence->season.limits.reset();
  EXPECT_TRUE(has(of(found, ClaimKind::kPrevalence), "; too few were out for limits."));
  found.prevalence = prevalence_of(30, 3);
  EXPECT_TRUE(of(found, ClaimKind::kPrevalence, Reader::kBoard).empty());
  found.prevalence = prevalence_of(0, 0);
  EXPECT_TRUE(has(of(found, ClaimKind::kPrevalence), "On no day was a player"));
}

TEST(Claims, FirstAndRecurrent) {
  SeasonFindings found = quiet_season();
  found.histories = histories_of(120, 12, 18);
  found.recurrent = recurrent_share(found.histories, 0.95);
  EXPECT_TRUE(has(of(found, ClaimKind::kHistories), "Of 150 diagnoses whose history is known, 12 were of a place"));
  EXPECT_TRUE(has(of(found, ClaimKind::kHistories), "8.0 % (95 % limits 4.2 to 14 %)"));
  EXPECT_EQ(of(found, ClaimKind::kHistories), of(found, ClaimKind::kHistories, Reader::kBoard));
  // Told beside a single small count, it would give that away.
  found.histories = histories_of(120, 12, 3);
  EXPECT_TRUE(of(found, ClaimKind::kHistories, Reader::kBoard).empty());
  found.histories = histories_of(120, 3, 18);
  found.recurrent = recurrent_share(found.histories, 0.95);
  EXPECT_TRUE(of(found, ClaimKind::kHistories, Reader::kBoard).empty());
  EXPECT_FALSE(of(found, ClaimKind::kHistories).empty());
}

TEST(Claims, TheBoardSeesNoSmallArm) {
  SeasonFindings found = quiet_season();
  found.often = often_of(0.7, {0.5, 0.9});
  EXPECT_FALSE(of(found, ClaimKind::kOften, Reader::kBoard).empty());
  found.often.compared.one.events = 4;
  EXPECT_TRUE(of(found, ClaimKind::kOften, Reader::kBoard).empty());
  EXPECT_FALSE(of(found, ClaimKind::kOften).empty());
}

TEST(Claims, TheBoardSeesNoSmallCell) {
  SeasonFindings found = quiet_season();
  found.severity.back().injuries = 3;
  found.completeness.open_events = 2;
  const std::string board = all_of(found, Reader::kBoard);
  EXPECT_TRUE(has(board, "Fewer than 5 kept a player out for more than four weeks."));
  EXPECT_TRUE(has(board, "Fewer than 5 injuries are still open"));
  found.whole.rows.front().injuries = 4;
  EXPECT_FALSE(has(of(found, ClaimKind::kRate, Reader::kBoard), "limits"));
  EXPECT_TRUE(of(found, ClaimKind::kDays, Reader::kBoard).empty());
  EXPECT_TRUE(has(of(found, ClaimKind::kRate, Reader::kLead), "4 injuries"));
}

TEST(Claims, NoInjuryAtAll) {
  SeasonFindings found = quiet_season();
  found.whole.rows.front() = row(0, 8000);
  found.whole.rows.front().limits = {0, 0.000461};
  EXPECT_TRUE(has(all_of(found),
                  "No injury was written down in 8\u00A0000 player-hours. The true rate may be anything up to 0.461"));
}

TEST(Claims, NoHoursAtAll) {
  SeasonFindings found = quiet_season();
  found.whole.rows.front() = row(3, 0);
  EXPECT_TRUE(has(all_of(found), "No hours are on record"));
}

TEST(Claims, SquadsOutsideAreAQuestion) {
  SeasonFindings found = quiet_season();
  SquadFindings squads;
  squads.squads = {{0, 12, 1000, 4, {}, {0.4, 1.9}, {0.2, 2.5}}, {1, 4, 1000, 4, {}, {0.4, 1.9}, {0.2, 2.5}}};
  found.squads = squads;
  EXPECT_TRUE(
      has(all_of(found), "One squad lies outside what chance makes of so many hours: a reason to ask, not a verdict."));
}

TEST(Claims, Verdicts) {
  EXPECT_EQ(verdict({0.5, 0.99}), Verdict::kFewer);
  EXPECT_EQ(verdict({1.01, 1.3}), Verdict::kMore);
  EXPECT_EQ(verdict({0.92, 1.08}), Verdict::kNoneThatMatters);
  EXPECT_EQ(verdict({0.92, 1.2}), Verdict::kTooEarly);
  EXPECT_EQ(verdict({0.5, 1}), Verdict::kTooEarly);
}

}  // namespace
}  // namespace lanework::findings
