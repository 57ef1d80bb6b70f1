#include "core/ledger/consent.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/ledger/canonical.h"
#include "tests/ledger/shipped_kinds.h"

namespace lanework::ledger {
namespace {

using test::corrects;
using test::entry_text;
using test::received;
using test::shipped_kinds;

struct Word {
  std::string by = "guardian";
  std::string answer = "given";
  std::string guardian{};
  std::string purpose = "injury-record";
  std::string player = "Q07";
  std::string more{};
};

Received said(int n, const Word& word) {
  std::string fields = "\"player\":\"" + word.player + "\",\"purpose\":\"" + word.purpose + "\",\"by\":\"" + word.by +
                       "\",\"answer\":\"" + word.answer + "\",\"day\":\"2026-09-01\"";
  if (!word.guardian.empty()) fields += ",\"guardian\":\"" + word.guardian + "\"";
  if (!word.more.empty()) fields += "," + word.more;
  return received(n, test::read(entry_text(n, "consent", fields, n)).value(), "desk", "lee", Role::kLead);
}

Received injury(int n, const std::string& player = "Q07") {
  const std::string fields = "\"player\":\"" + player + R"(","squad":"u13","day":"2026-11-20")";
  return received(n, test::read(entry_text(n, "injury-opened", fields, n)).value());
}

Consent after(const std::vector<Word>& words) {
  std::vector<Received> all;
  for (const Word& word : words) all.push_back(said(static_cast<int>(all.size()) + 1, word));
  return consent_of(fold(std::move(all), shipped_kinds()), "Q07", "injury-record");
}

TEST(Consent, NobodyAskedIsNotGiven) {
  EXPECT_EQ(after({}), Consent::kNeverAsked);
  EXPECT_EQ(after({{"guardian", "given", {}, "statistics"}}), Consent::kNeverAsked)
      << "each purpose is asked by itself";
  EXPECT_EQ(after({{"guardian", "given", {}, "injury-record", "Q08"}}), Consent::kNeverAsked);
  EXPECT_EQ(after({{"player", "given"}}), Consent::kNeverAsked) << "a child alone does not sign";
}

TEST(Consent, TheLatestWordOfEachCounts) {
  EXPECT_EQ(after({{"guardian", "given"}}), Consent::kGiven);
  EXPECT_EQ(after({{"guardian", "refused"}}), Consent::kWithheld);
  EXPECT_EQ(after({{"guardian", "given"}, {"guardian", "withdrawn"}}), Consent::kWithheld);
  EXPECT_EQ(after({{"guardian", "given"}, {"guardian", "withdrawn"}, {"guardian", "given"}}), Consent::kGiven);
}

TEST(Consent, TwoGuardiansWhoDisagreeAndAChildThatDoesNotWantItMeanNo) {
  EXPECT_EQ(after({{"guardian", "given", "first"}, {"guardian", "refused", "second"}}), Consent::kWithheld);
  EXPECT_EQ(after({{"guardian", "refused", "second"}, {"guardian", "given", "first"}}), Consent::kWithheld);
  EXPECT_EQ(after({{"guardian", "given", "first"}, {"guardian", "given", "second"}}), Consent::kGiven);
  EXPECT_EQ(after({{"guardian", "given"}, {"player", "refused"}}), Consent::kWithheld);
  EXPECT_EQ(after({{"guardian", "given"}, {"player", "refused"}, {"player", "given"}}), Consent::kGiven);
}

TEST(Consent, ACorrectionIsOfOnePlayersConsentsAlone) {
  EXPECT_EQ(after({{"guardian", "given"}, {"guardian", "given", {}, "statistics", "Q07", corrects(1)}}),
            Consent::kNeverAsked)
      << "ticked by mistake";
  EXPECT_EQ(after({{"guardian", "withdrawn"}, {"guardian", "given", {}, "injury-record", "Q08", corrects(1)}}),
            Consent::kWithheld);
}

TEST(Consent, ThePurposesAreAClosedList) {
  EXPECT_EQ(purposes(shipped_kinds()), (std::vector<std::string>{"training", "injury-record", "statistics"}));
  EXPECT_FALSE(test::read(entry_text(
      1, "consent", R"("player":"Q07","purpose":"anything","by":"guardian","answer":"given","day":"2026-09-01")")));
}

// What the adults in charge must know tonight.
TEST(Consent, WhatHoldsAPlayerBackWaitsForNone) {
  for (const Kind& kind : shipped_kinds().kinds) {
    const bool record = kind.key.rfind("injury-", 0) == 0 || kind.key == "screening";
    EXPECT_EQ(kind.purpose, record ? "injury-record" : "") << kind.key;
  }
}

TEST(Consent, AKindThatWaitsForWhatNobodyIsAskedIsAFault) {
  const auto read = [](const std::string& care, const std::string& purpose) {
    return read_kinds(parse_toml("kinds.toml", R"([[kind]]
key = "consent"
class = "personal"
about = "player"
enter = ["lead"]
fields = [{ key = "purpose", type = "word", words = ["one", "two"] }]
[[kind]]
key = "record"
class = "health"
about = "player"
enter = ["lead"]
care = )" + care + "\npurpose = \"" + purpose + "\"\nfields = []\n")
                          .value());
  };
  EXPECT_TRUE(read("false", "two").ok());
  ASSERT_FALSE(read("false", "three").ok());
  EXPECT_EQ(read("false", "three").faults().front().place.field, "kind.2.purpose");
  ASSERT_FALSE(read("true", "two").ok()) << "care waits for nothing";
  EXPECT_EQ(read("true", "two").faults().front().place.field, "kind.2.purpose");
}

TEST(Consent, RecordsAreShownOnlyWhereItIsGiven) {
  std::vector<Received> all = {said(1, {}), injury(2), injury(3, "Q08"),
                               received(4, test::read(entry_text(4, "hurt", R"("player":"Q08")", 4)).value())};
  const Open open = only_open(all, shipped_kinds());
  EXPECT_EQ(open.left_out, 1);
  ASSERT_EQ(open.entries.size(), 3U);
  EXPECT_EQ(open.entries[1].receipt, 2);
  EXPECT_EQ(open.entries[2].entry.kind, "hurt");
  State state = fold(all, shipped_kinds());
  close_records(state, shipped_kinds());
  EXPECT_EQ(state.closed, 1);
  EXPECT_EQ(state.injuries.begin()->second.player, "Q07");
  EXPECT_EQ(state.care.size(), 1U);
  all.push_back(said(5, {"guardian", "withdrawn"}));
  EXPECT_EQ(only_open(all, shipped_kinds()).left_out, 2) << "what was there before is closed, too";
}

Word any_word() {
  return {*rc::gen::element<std::string>("guardian", "player"),
          *rc::gen::element<std::string>("given", "given", "refused", "withdrawn"),
          *rc::gen::element<std::string>("", "first", "second"),
          *rc::gen::element<std::string>("injury-record", "statistics"),
          *rc::gen::element<std::string>("Q07", "Q08"),
          {}};
}

std::vector<Received> any_consents() {
  std::vector<Received> out;
  const int count = *rc::gen::inRange(0, 15);
  for (int n = 1; n <= count; ++n) {
    Word word = any_word();
    if (n > 1 && *rc::gen::inRange(0, 4) == 0) word.more = corrects(*rc::gen::inRange(1, n));
    out.push_back(said(n, word));
  }
  return out;
}

std::string bytes(const State& state) {
  std::string out;
  for (const auto& [key, answer] : state.consents) {
    out += key.player + "/" + key.purpose + "/" + key.by + "/" + key.guardian + ": " + canonical_json(answer).value();
  }
  return out;
}

TEST(Consent, AnyOrderAndAnyRepetitionGiveOneState) {
  EXPECT_TRUE(rc::check([] {
    const std::vector<Received> all = any_consents();
    std::vector<Received> mixed = all;
    for (const Received& one : all) {
      if (*rc::gen::arbitrary<bool>()) mixed.push_back(one);
    }
    for (std::size_t i = mixed.size(); i > 1; --i) {
      std::swap(mixed[i - 1], mixed[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(i)))]);
    }
    RC_ASSERT(bytes(fold(mixed, shipped_kinds())) == bytes(fold(all, shipped_kinds())));
  }));
}

// The store goes by those about one player, a report by all.
TEST(Consent, OfOnePlayerByItselfAsAmongAll) {
  EXPECT_TRUE(rc::check([] {
    const std::vector<Received> all = any_consents();
    const State whole = fold(all, shipped_kinds());
    for (const char* player : {"Q07", "Q08"}) {
      std::vector<Received> own;
      std::copy_if(all.begin(), all.end(), std::back_inserter(own),
                   [&](const Received& one) { return one.entry.whole.find("player")->text == player; });
      const State alone = consents_among(own, shipped_kinds());
      for (const char* purpose : {"injury-record", "statistics"}) {
        RC_ASSERT(consent_of(alone, player, purpose) == consent_of(whole, player, purpose));
      }
    }
  }));
}

TEST(Consent, AWithdrawalAlwaysCloses) {
  EXPECT_TRUE(rc::check([] {
    std::vector<Received> all = any_consents();
    Word last = any_word();
    last.answer = *rc::gen::element<std::string>("refused", "withdrawn");
    all.push_back(said(static_cast<int>(all.size()) + 1, last));
    std::rotate(all.begin(), all.begin() + *rc::gen::inRange(0, static_cast<int>(all.size())), all.end());
    RC_ASSERT(consent_of(fold(all, shipped_kinds()), last.player, last.purpose) == Consent::kWithheld);
  }));
}

}  // namespace
}  // namespace lanework::ledger
