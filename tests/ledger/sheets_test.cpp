#include "core/ledger/sheets.h"

#include <gtest/gtest.h>

#include "tests/ledger/shipped_kinds.h"

namespace lanework::ledger {
namespace {

using test::about_session;
using test::entry_text;
using test::received;
using test::shipped_kinds;

const SheetDays kSeason{*parse_iso_date("2026-08-31"), *parse_iso_date("2027-06-27")};

State state_of(const std::vector<std::pair<std::string, std::string>>& entries) {
  std::vector<Received> all;
  int n = 0;
  for (const auto& [kind, fields] : entries) {
    ++n;
    all.push_back(received(n, test::read(entry_text(n, kind, fields, n)).value(), "phone", "ann", Role::kLead));
  }
  return fold(std::move(all), shipped_kinds());
}

std::string statistics_of(const std::string& player, const std::string& answer) {
  return "\"player\":\"" + player + R"(","purpose":"statistics","by":"guardian","day":"2026-08-31","answer":")" +
         answer + "\"";
}

std::string last_line(const std::string& sheet) {
  const std::size_t before = sheet.rfind("\r\n", sheet.size() - 3);
  return sheet.substr(before + 2, sheet.size() - before - 4);
}

TEST(Sheets, ASessionThatWasWrappedUpIsARow) {
  const State state =
      state_of({{"session-started", about_session()},
                {"drill-marked", about_session(R"("drill":"squat","mark":"skipped")")},
                {"drill-marked", about_session(R"("drill":"side-plank","mark":"needs-help")")},
                {"attendance", about_session(R"("there":14)")},
                {"wrap-up", about_session(R"("happened":"cut-short","did_it":"half","minutes":12,"note":"rain")")}});
  EXPECT_EQ(last_line(sessions_sheet(state, kSeason)),
            R"("u13","2026-11-26","18:00","cut short","12","half","squat","rain")");
  EXPECT_EQ(last_line(hours_sheet(state, kSeason).text),
            R"("u13","2026-11-26","training","","14","half","12","squat","side-plank","")");
}

TEST(Sheets, WhatNobodyWrappedUpStaysPlanned) {
  const State state = state_of({{"session-started", about_session()}});
  EXPECT_EQ(sessions_sheet(state, kSeason).find("u13"), std::string::npos);
  EXPECT_EQ(hours_sheet(state, kSeason).text.find("u13"), std::string::npos);
}

TEST(Sheets, HeldWithNobodyDoingItIsAWarmUpThatWasMissed) {
  const State state = state_of({{"wrap-up", about_session(R"("happened":"held","did_it":"nobody","minutes":5)")}});
  EXPECT_EQ(last_line(sessions_sheet(state, kSeason)), R"("u13","2026-11-26","18:00","missed","","","","")");
  EXPECT_EQ(last_line(hours_sheet(state, kSeason).text), R"("u13","2026-11-26","training","","","no","","","","")");
}

TEST(Sheets, ConfirmedHoursWinOverWhatWasCounted) {
  const State state =
      state_of({{"attendance", about_session(R"("there":14)")},
                {"exposure-confirmed", about_session(R"("setting":"match","minutes":60,"players":9)")}});
  EXPECT_EQ(last_line(hours_sheet(state, kSeason).text), R"("u13","2026-11-26","match","60","9","","","","","yes")");
}

TEST(Sheets, AnInjuryHasItsTermsInTheirColumns) {
  const State state = state_of(
      {{"consent", statistics_of("Q07", "given")},
       {"injury-opened",
        R"("player":"Q07","squad":"u13","day":"2026-11-26","what":["region knee","side left","unknown words"],"note":"=1+1")"}});
  const EvidenceSheet sheet = injuries_sheet(state, kSeason);
  EXPECT_EQ(last_line(sheet.text), R"("u13","Q07","2026-11-26","","","","knee","","left","","","","","'=1+1")");
  EXPECT_EQ(sheet.left_out, 0);
}

TEST(Sheets, WhoeverGaveNoConsentToStatisticsIsNotCounted) {
  const State state = state_of({{"consent", statistics_of("Q07", "given")},
                                {"consent", statistics_of("Q08", "refused")},
                                {"attendance", about_session(R"("there":5,"players":["Q07","Q08","Q09"])")},
                                {"injury-opened", R"("player":"Q07","squad":"u13","day":"2026-11-26")"},
                                {"injury-opened", R"("player":"Q08","squad":"u13","day":"2026-11-26")"},
                                {"injury-opened", R"("player":"Q09","squad":"u13","day":"2026-11-26")"},
                                {"injury-opened", R"("player":"Q09","squad":"u13","day":"2025-11-26")"}});
  const EvidenceSheet injuries = injuries_sheet(state, kSeason);
  EXPECT_EQ(injuries.left_out, 2) << "of the days that are asked for";
  EXPECT_EQ(injuries.left_out_people, 2);
  EXPECT_NE(injuries.text.find("Q07"), std::string::npos);
  EXPECT_EQ(injuries.text.find("Q08"), std::string::npos);
  EXPECT_EQ(injuries.text.find("Q09"), std::string::npos) << "who was never asked has not agreed";
  const EvidenceSheet hours = hours_sheet(state, kSeason);
  EXPECT_EQ(last_line(hours.text), R"("u13","2026-11-26","training","","3","","","","","")");
  EXPECT_EQ(hours.left_out, 2);
}

TEST(Sheets, WhoIsCountedWithoutANameIsNobodyToLeaveOut) {
  const State state = state_of({{"attendance", about_session(R"("there":14)")}});
  EXPECT_EQ(last_line(hours_sheet(state, kSeason).text), R"("u13","2026-11-26","training","","14","","","","","")");
  EXPECT_EQ(hours_sheet(state, kSeason).left_out, 0);
}

TEST(Sheets, OnlyTheDaysThatAreAskedFor) {
  const State state = state_of({{"wrap-up", about_session(R"("happened":"held")")}});
  const Date next{parse_iso_date("2026-11-26")->days_since_epoch + 1};
  EXPECT_EQ(sessions_sheet(state, {next, next}).find("u13"), std::string::npos);
  EXPECT_NE(sessions_sheet(state, {Date{next.days_since_epoch - 1}, next}).find("u13"), std::string::npos);
}

TEST(Sheets, TextStaysInItsCell) {
  const State state = state_of({{"wrap-up", about_session(R"("happened":"held","note":"a \"b\", c")")}});
  EXPECT_NE(sessions_sheet(state, kSeason).find(R"("a ""b"", c")"), std::string::npos);
}

// Rained off: no session, no hours. Where somebody was counted all the same, there was one.
TEST(Sheets, ASessionThatWasMissedHasNoHoursUnlessSomebodyWasThere) {
  const State missed = state_of({{"wrap-up", about_session(R"("happened":"missed")")}});
  EXPECT_EQ(hours_sheet(missed, kSeason).text.find("u13"), std::string::npos);
  const State counted =
      state_of({{"attendance", about_session(R"("there":9)")}, {"wrap-up", about_session(R"("happened":"missed")")}});
  EXPECT_EQ(last_line(hours_sheet(counted, kSeason).text), R"("u13","2026-11-26","training","","9","no","","","","")");
}

TEST(Sheets, HoursAreTheCalendarWithExceptions) {
  const std::vector<CalendarSession> calendar = {{{"u13", "2026-11-24", "18:00"}, false},
                                                 {{"u13", "2026-11-26", "18:00"}, false},
                                                 {{"u13", "2026-11-28", "10:00"}, true},
                                                 {{"u13", "2025-11-26", "18:00"}, false}};
  const State state = state_of({{"attendance", about_session(R"("there":14)")},
                                {"wrap-up", about_session(R"("happened":"held","did_it":"most")")}});
  const std::string sheet = hours_sheet(state, kSeason, calendar).text;
  EXPECT_NE(sheet.find(R"("u13","2026-11-24","training","","","","","","","")"), std::string::npos) << sheet;
  EXPECT_NE(sheet.find(R"("u13","2026-11-26","training","","14","most","","","","")"), std::string::npos) << sheet;
  EXPECT_NE(sheet.find(R"("u13","2026-11-28","match","","","","","","","")"), std::string::npos) << sheet;
  EXPECT_EQ(sheet.find("2025"), std::string::npos) << "another season's";
  EXPECT_EQ(std::count(sheet.begin(), sheet.end(), '\n'), 4);
  const State missed = state_of({{"wrap-up", about_session(R"("happened":"missed")")}});
  EXPECT_EQ(hours_sheet(missed, kSeason, calendar).text.find("2026-11-26"), std::string::npos);
}

}  // namespace
}  // namespace lanework::ledger
