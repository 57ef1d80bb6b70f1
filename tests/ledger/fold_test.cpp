#include "core/ledger/fold.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>

#include "core/care/entries/fold.h"
#include "core/care/entries/read_entries.h"
#include "core/care/entries/restrictions_document.h"
#include "core/ledger/canonical.h"
#include "tests/care/shipped_rules.h"
#include "tests/ledger/shipped_kinds.h"

namespace lanework::ledger {
namespace {

using test::about_session;
using test::corrects;
using test::id_of;
using test::received;
using test::shipped_kinds;

Entry entry(int n, const std::string& kind, const std::string& fields, int sequence = 0) {
  return test::read(test::entry_text(n, kind, fields, sequence == 0 ? n : sequence)).value();
}

State folded(std::vector<Received> entries) { return fold(std::move(entries), shipped_kinds()); }
std::string bytes(const State& state) { return canonical_json(to_node(state)).value(); }

const SessionState& only_session(const State& state) { return state.sessions.at({"u13", "2026-11-26", "18:00"}); }

std::vector<std::string> odd(const State& state) {
  std::vector<std::string> out;
  for (const Odd& one : state.odd) out.push_back(one.what);
  return out;
}

TEST(LedgerFold, NothingIsNothing) {
  const State state = folded({});
  EXPECT_TRUE(state.sessions.empty());
  EXPECT_EQ(state.latest_receipt, 0);
}

TEST(LedgerFold, AnEveningFromStartToWrapUp) {
  const State state = folded({
      received(1, entry(1, "session-started", about_session())),
      received(2, entry(2, "drill-marked", about_session(R"("drill":"side-plank","mark":"skipped")"))),
      received(3, entry(3, "drill-marked", about_session(R"("drill":"side-plank","mark":"done")"))),
      received(4, entry(4, "attendance", about_session(R"("there":14)"))),
      received(5, entry(5, "wrap-up",
                        R"("squad":"u13","day":"2026-11-26","start":"18:00:00","happened":"held","did_it":"most")")),
  });
  const SessionState& session = only_session(state);
  EXPECT_TRUE(session.started);
  EXPECT_EQ(session.drills, (std::map<std::string, DrillMarks>{{"side-plank", {"done", "", false}}}));
  EXPECT_EQ(session.attendance->find("there")->integer, 14);
  EXPECT_EQ(session.wrap_up->find("did_it")->text, "most");
  EXPECT_FALSE(session.twice);
  EXPECT_TRUE(state.gaps.empty());
  EXPECT_TRUE(state.odd.empty());
}

TEST(LedgerFold, OfADrillEachThingThatWasMarkedStands) {
  const auto marked = [](unsigned n, const std::string& mark) {
    return received(n, entry(n, "drill-marked", about_session(R"("drill":"side-plank","mark":")" + mark + "\"")));
  };
  const auto marks = [](const std::vector<Received>& entries) {
    return only_session(folded(entries)).drills.at("side-plank");
  };
  const std::vector<Received> all = {marked(1, "easier"), marked(2, "needs-help"), marked(3, "done")};
  EXPECT_EQ(marks(all), (DrillMarks{"done", "easier", true}));
  EXPECT_EQ(marks({all[0], all[2], marked(4, "harder")}), (DrillMarks{"done", "harder", false}));
  EXPECT_EQ(marks({all[2], marked(4, "skipped")}), (DrillMarks{"skipped", "", false}));
}

TEST(LedgerFold, TheReceiversNumberOrdersNotTheDevicesClock) {
  Entry early = entry(1, "wrap-up", about_session(R"("happened":"missed")"));
  Entry late = entry(2, "wrap-up", about_session(R"("happened":"held")"));
  late.device_time = "2019-01-01T00:00:00Z";
  EXPECT_EQ(only_session(folded({received(2, late), received(1, early)})).wrap_up->find("happened")->text, "held");
  EXPECT_EQ(only_session(folded({received(1, late), received(2, early)})).wrap_up->find("happened")->text, "missed");
}

TEST(LedgerFold, ACorrectionReplacesAndTakingBackTakesBack) {
  const Received first = received(1, entry(1, "attendance", about_session(R"("there":14)")));
  const Received mended = received(2, entry(2, "attendance", about_session(R"("there":15,)" + corrects(1))));
  const Received other = received(3, entry(3, "session-started", about_session()));
  const Received back = received(4, entry(4, "taken-back", about_session(corrects(2))));
  EXPECT_EQ(only_session(folded({first, mended})).attendance->find("there")->integer, 15);
  const State state = folded({first, mended, other, back});
  EXPECT_FALSE(only_session(state).attendance) << "what it had corrected does not come back by itself";
  EXPECT_TRUE(state.odd.empty());
}

TEST(LedgerFold, ACorrectionOfAnotherKindTakesNothingAway) {
  const State state = folded({received(1, entry(1, "attendance", about_session(R"("there":14)"))),
                              received(2, entry(2, "session-started", about_session(corrects(1))))});
  EXPECT_TRUE(only_session(state).attendance);
  EXPECT_EQ(odd(state), std::vector<std::string>{"corrects an entry of another kind: both stand"});
}

// A hurt child is not taken back by a tap on an evening.
TEST(LedgerFold, NothingAboutAnEveningTakesBackACareEntry) {
  const State state = folded({received(1, entry(1, "hurt", R"("player":"Q07","place":"knee")")),
                              received(2, entry(2, "taken-back", about_session(corrects(1))))});
  EXPECT_EQ(state.care.size(), 1U);
  EXPECT_EQ(state.odd.size(), 1U);
}

TEST(LedgerFold, NothingAboutAnEveningTakesBackAnInjuryOrAConsent) {
  const State state = folded(
      {received(1, entry(1, "injury-opened", R"("player":"Q07","squad":"u13","day":"2026-11-20")")),
       received(
           2,
           entry(2, "consent",
                 R"("player":"Q07","purpose":"statistics","by":"guardian","answer":"withdrawn","day":"2026-11-20")")),
       received(3, entry(3, "taken-back", about_session(corrects(1)))),
       received(4, entry(4, "taken-back", about_session(corrects(2))))});
  EXPECT_EQ(state.injuries.size(), 1U);
  EXPECT_EQ(state.consents.size(), 1U);
  EXPECT_EQ(state.odd.size(), 2U);
}

TEST(LedgerFold, ACorrectionBeforeItsOriginalWaitsAndThenHolds) {
  const Received mended = received(1, entry(2, "attendance", about_session(R"("there":15,)" + corrects(1))));
  const Received original = received(2, entry(1, "attendance", about_session(R"("there":14)")));
  EXPECT_EQ(odd(folded({mended})), std::vector<std::string>{"corrects an entry that is not there yet"});
  EXPECT_EQ(only_session(folded({mended, original})).attendance->find("there")->integer, 15);
  EXPECT_TRUE(folded({mended, original}).odd.empty());
}

TEST(LedgerFold, CorrectionsInACircleTakeNothingAway) {
  const State state = folded({received(1, entry(1, "attendance", about_session(R"("there":14,)" + corrects(2)))),
                              received(2, entry(2, "attendance", about_session(R"("there":15,)" + corrects(1))))});
  EXPECT_EQ(only_session(state).attendance->find("there")->integer, 15);
  EXPECT_EQ(state.odd.size(), 2U);
}

TEST(LedgerFold, TwoCoachesOfOneEveningAreBothKeptAndTold) {
  const State state = folded({received(1, entry(1, "wrap-up", about_session(R"("happened":"held")")), "a", "ann"),
                              received(2, entry(2, "wrap-up", about_session(R"("happened":"held")"), 1), "b", "bo")});
  EXPECT_TRUE(only_session(state).twice);
}

TEST(LedgerFold, GapsForksAndOtherContentAreTold) {
  const State state = folded({received(1, entry(1, "session-started", about_session(), 1)),
                              received(2, entry(2, "attendance", about_session(R"("there":1)"), 4)),
                              received(3, entry(3, "attendance", about_session(R"("there":2)"), 4)),
                              received(4, entry(1, "session-started", about_session(R"("plan":"x")"), 1))});
  EXPECT_EQ(state.gaps, (std::vector<Gap>{{"phone", 2, 3}}));
  EXPECT_EQ(odd(state), (std::vector<std::string>{"came again with other content: the first stands",
                                                  "has the device's number 4, as another entry has"}));
}

TEST(LedgerFold, AnInjuryFromOpeningToReturn) {
  const std::string player = R"("player":"Q07")";
  const std::string injury = R"(,"injury":")" + to_text(id_of(1)) + "\"";
  const State state = folded(
      {received(1, entry(1, "injury-opened", player + R"(,"squad":"u13","day":"2026-11-20","what":["region knee"])")),
       received(2, entry(2, "injury-opened",
                         player + R"(,"squad":"u13","day":"2026-11-21","what":["region knee"],)" + corrects(1))),
       received(3, entry(3, "injury-updated", player + injury + R"(,"note":"seen on Monday")")),
       received(4, entry(4, "injury-closed", player + injury + R"(,"returned":"2026-12-04")")),
       received(5, entry(5, "injury-closed", R"("player":"Q08")" + injury + R"(,"returned":"2026-12-01")"))});
  ASSERT_EQ(state.injuries.size(), 1U);
  const Injury& one = state.injuries.at(id_of(1));
  EXPECT_EQ(one.day, "2026-11-21");
  EXPECT_EQ(one.note, "seen on Monday");
  EXPECT_EQ(one.returned, "2026-12-04");
  EXPECT_EQ(odd(state), std::vector<std::string>{"is about an injury of somebody else"});
}

std::string of_injury(int n) { return R"("player":"Q07","injury":")" + to_text(id_of(n)) + "\""; }
Received opening(int n, const std::string& more = "") {
  return received(n, entry(n, "injury-opened", R"("player":"Q07","squad":"u13","day":"2026-11-20")" + more));
}

TEST(LedgerFold, AReturnIsTakenBackAndComesAgain) {
  std::vector<Received> entries = {
      opening(1), received(2, entry(2, "injury-updated", of_injury(1) + R"(,"loss_began":"2026-11-22")")),
      received(3, entry(3, "injury-closed", of_injury(1) + R"(,"returned":"2026-12-04")")),
      received(4, entry(4, "injury-reopened", of_injury(1)))};
  const State open = folded(entries);
  EXPECT_EQ(open.injuries.at(id_of(1)).returned, "");
  EXPECT_EQ(open.injuries.at(id_of(1)).loss_began, "2026-11-22") << "the rest stays";
  entries.push_back(received(5, entry(5, "injury-closed", of_injury(1) + R"(,"returned":"2026-12-11")")));
  EXPECT_EQ(folded(entries).injuries.at(id_of(1)).returned, "2026-12-11");
  EXPECT_TRUE(folded(entries).odd.empty());
}

TEST(LedgerFold, AnInjuryThatNeverWasIsNowhereUntilThatIsTakenBack) {
  std::vector<Received> entries = {
      opening(1), received(2, entry(2, "injury-closed", of_injury(1) + R"(,"returned":"2026-12-04")")),
      received(3, entry(3, "injury-never-was", of_injury(1))),
      received(4, entry(4, "injury-updated", of_injury(1) + R"(,"note":"heard late")")),
      received(5, entry(5, "injury-opened", R"("player":"Q07","squad":"u13","day":"2026-11-21",)" + corrects(1)))};
  EXPECT_TRUE(folded(entries).injuries.empty());
  EXPECT_TRUE(folded(entries).odd.empty());
  entries.push_back(received(6, entry(6, "injury-reopened", of_injury(1))));
  const State back = folded(entries);
  ASSERT_EQ(back.injuries.size(), 1U);
  EXPECT_EQ(back.injuries.at(id_of(1)).returned, "2026-12-04") << "as it stood";
  EXPECT_EQ(back.injuries.at(id_of(1)).day, "2026-11-21");
  EXPECT_EQ(back.injuries.at(id_of(1)).note, "") << "the correction says it anew";
}

TEST(LedgerFold, NobodyTakesOffAnInjuryOfSomebodyElse) {
  const std::string other = R"("player":"Q08","injury":")" + to_text(id_of(1)) + "\"";
  const State state = folded({opening(1), received(2, entry(2, "injury-never-was", other)),
                              received(3, entry(3, "injury-reopened", other)),
                              received(4, entry(4, "injury-never-was", of_injury(9)))});
  EXPECT_EQ(state.injuries.size(), 1U);
  EXPECT_EQ(odd(state),
            (std::vector<std::string>{"is about an injury of somebody else", "is about an injury of somebody else",
                                      "is about an injury that nobody has opened"}));
}

TEST(LedgerFold, WhatWasSaidBeforeAnOpeningWasPutRightIsNotLost) {
  const State state = folded(
      {opening(1), received(2, entry(2, "injury-closed", of_injury(1) + R"(,"returned":"2026-12-04")")),
       received(3, entry(3, "injury-opened", R"("player":"Q07","squad":"u13","day":"2026-11-19",)" + corrects(1)))});
  EXPECT_EQ(state.injuries.at(id_of(1)).day, "2026-11-19");
  EXPECT_EQ(state.injuries.at(id_of(1)).returned, "2026-12-04");
  EXPECT_TRUE(state.odd.empty());
}

TEST(LedgerFold, AnOpeningThatComesAfterItsCorrectionChangesNothing) {
  const Received mended =
      received(1, entry(2, "injury-opened", R"("player":"Q07","squad":"u13","day":"2026-11-19",)" + corrects(1)));
  const Received late = received(2, entry(1, "injury-opened", R"("player":"Q07","squad":"u13","day":"2026-11-20")"));
  const State state = folded({mended, late});
  ASSERT_EQ(state.injuries.size(), 1U);
  EXPECT_EQ(state.injuries.at(id_of(1)).day, "2026-11-19");
}

TEST(LedgerFold, KindsOfANewerVersionAreCounted) {
  EXPECT_EQ(folded({received(1, entry(1, "weather-felt", R"("how":"damp")"))}).not_known, 1);
}

std::vector<Received> random_entries() {
  const int count = *rc::gen::inRange(0, 40);
  std::vector<Received> out;
  std::map<std::string, int> sequence;
  for (int n = 1; n <= count; ++n) {
    const std::string device = *rc::gen::element<std::string>("a", "b", "c");
    const std::string day = *rc::gen::element<std::string>("2026-11-24", "2026-11-26");
    std::string session = R"("squad":"u13","day":")" + day + R"(","start":"18:00")";
    if (n > 1 && *rc::gen::inRange(0, 4) == 0) session += "," + corrects(*rc::gen::inRange(1, n));
    const std::string player = *rc::gen::element<std::string>(R"("player":"Q07")", R"("player":"Q08")");
    const std::string there = std::to_string(*rc::gen::inRange(0, 20));
    const std::vector<std::pair<std::string, std::string>> choices = {
        {"session-started", session},
        {"attendance", session + ",\"there\":" + there},
        {"taken-back", session},
        {"wrap-up", session + R"(,"happened":"held")"},
        {"drill-marked", session + R"(,"drill":"squat","mark":"done")"},
        {"hurt", player + R"(,"place":"knee")"},
        {"soreness", player + R"(,"place":"knee","before":5)"},
        {"injury-opened", player + R"(,"squad":"u13","day":"2026-11-20")"},
        {"injury-closed",
         player + R"(,"returned":"2026-12-04","injury":")" + to_text(id_of(std::max(1, n - 3))) + "\""},
        {"injury-reopened", player + R"(,"injury":")" + to_text(id_of(std::max(1, n - 2))) + "\""},
        {"injury-never-was", player + R"(,"injury":")" + to_text(id_of(std::max(1, n - 3))) + "\""},
        {"consent", player + R"(,"purpose":"statistics","by":"guardian","answer":"given","day":"2026-11-20")"},
        {"weather-felt", R"("how":"damp")"}};
    const auto [kind, fields] = *rc::gen::elementOf(choices);
    sequence[device] += *rc::gen::inRange(0, 8) == 0 ? 2 : 1;
    out.push_back(received(n, entry(n, kind, fields, sequence[device]), device,
                           *rc::gen::element<std::string>("ann", "bo"), *rc::gen::element(Role::kLead, Role::kCoach)));
  }
  return out;
}

TEST(LedgerFold, AnyOrderAndAnyRepeatsGiveTheSameBytes) {
  EXPECT_TRUE(rc::check([] {
    const std::vector<Received> entries = random_entries();
    const std::string once = bytes(folded(entries));
    std::vector<Received> mixed = entries;
    if (!entries.empty()) {
      for (int i = *rc::gen::inRange(0, 10); i > 0; --i) {
        mixed.push_back(entries[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(entries.size())))]);
        // Sent again, it is received again, under a later number.
        if (*rc::gen::arbitrary<bool>()) mixed.back().receipt += 1000;
      }
    }
    for (std::size_t i = mixed.size(); i > 1; --i) {
      std::swap(mixed[i - 1], mixed[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(i)))]);
    }
    RC_ASSERT(bytes(folded(mixed)) == once);
  }));
}

// The demo's entries as a ledger would hold them, in any order and twice, hold back what the file itself holds back.
TEST(LedgerFold, CareReadsItsOwnOfTheLedger) {
  namespace care = lanework::care;
  const Document file = catalogue::test::read_toml(std::string(LANEWORK_SOURCE_DIR) + "/demo/quillmere/entries.toml");
  const auto stands = [](const Document& document) {
    const auto read = care::read_entries(document, care::test::return_rules(), {});
    if (!read) throw std::runtime_error(to_line(read.faults().front()));
    const care::Knowledge known = care::fold(read.value(), care::test::pain_rule(), care::test::return_rules());
    return to_json(care::restrictions_document(known.standing, known.as_known));
  };
  std::map<std::string, std::string> ids;  // the file's to the ledger's
  const Node& rows = *file.root.find("entry");
  for (std::size_t i = 0; i < rows.items.size(); ++i) {
    ids[rows.items[i].find("id")->text] = to_text(id_of(static_cast<int>(i) + 1));
  }
  std::vector<Received> entries;
  for (std::size_t i = 0; i < rows.items.size(); ++i) {
    Node whole = Node::make_table();
    Role role = Role::kCoach;
    std::string author;
    std::string stamp;
    for (auto [key, value] : rows.items[i].entries) {
      if (value.kind == Node::Kind::kText && ids.count(value.text) > 0) value.text = ids[value.text];
      for (Node& item : value.items) {
        if (ids.count(item.text) > 0) item.text = ids[item.text];
      }
      if (key == "by" && (value.text == "lead" || value.text == "clinician")) role = Role::kLead;
      if (key == "received") stamp = value.text;
      if (key == "author") author = value.text;
      const bool receivers =
          key == "by" || key == "received" || key == "receipt" || key == "author" || key == "device_time";
      if (!receivers) whole.set(key, value);
    }
    whole.set("sequence", Node::make_integer(static_cast<std::int64_t>(i) + 1));
    whole.set("device_time", Node::make_text("2026-11-26T18:04:10+01:00"));
    auto read = read_entry(whole, "entry", shipped_kinds());
    ASSERT_TRUE(read.ok()) << to_line(read.faults().front());
    const std::int64_t receipt = rows.items[i].find("receipt")->integer;
    entries.push_back({std::move(read).value(), receipt, stamp, "phone", author, role});
  }
  std::vector<Received> twice = entries;
  twice.insert(twice.end(), entries.rbegin(), entries.rend());
  const State state = fold(twice, shipped_kinds());
  EXPECT_EQ(state.care.size(), rows.items.size());
  EXPECT_EQ(stands({"ledger", care_document(state, shipped_kinds())}), stands(file));
}

}  // namespace
}  // namespace lanework::ledger
