#include <gtest/gtest.h>

#include "app/serve/sync/aside_key.h"
#include "app/serve/sync/read_batch.h"
#include "app/store/aside.h"
#include "tests/ledger/shipped_kinds.h"

namespace lanework::serve::sync {
namespace {

using ledger::Role;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;

const access::SquadsOfPlayer kPlayers = {{"Q07", {"u13"}}, {"Q20", {"u16"}}};
const Now kNow = now_at(seconds_of_stamp("2026-11-26T18:10:00+01:00"));

access::Viewer coach(Role role = Role::kCoach) {
  return {"a-1", role, {{"u13", *parse_iso_date("2026-08-01"), *parse_iso_date("2027-06-30"), false}}, kNow.day};
}

Node node(const std::string& text) { return parse_json("entry", text).value().root; }

Node with_time(const std::string& time, const std::string& kind = "session-started",
               const std::string& fields = ledger::test::about_session()) {
  Node out = node(entry_text(1, kind, fields));
  out.set("device_time", Node::make_text(time));
  return out;
}

std::string why(const Node& entry, const access::Viewer& by = coach()) {
  const auto read = ledger::read_entry(entry, "entries.1", shipped_kinds());
  return read ? why_aside(read.value(), by, kPlayers, shipped_kinds(), kNow) : "unread";
}

TEST(ReadBatch, NothingIsAgainstTonightsOwnEntries) {
  EXPECT_EQ(why(with_time("2026-11-26T18:04:10+01:00")), "");
  EXPECT_EQ(why(with_time("2026-11-26T18:04:10+01:00", "hurt", R"("player":"Q07")")), "");
}

TEST(ReadBatch, AClockThatIsFarOffIsToldAndTheEntryKeptAside) {
  EXPECT_EQ(why(with_time("2026-11-26T18:15:00+01:00")), "");
  EXPECT_NE(why(with_time("2026-11-26T18:15:01+01:00")), "");
  EXPECT_NE(why(with_time("2029-11-26T18:04:10+01:00")), "");
  EXPECT_NE(why(with_time("2023-11-26T18:04:10+01:00")), "");
  EXPECT_EQ(why(with_time("2026-11-12T18:11:00+01:00")), "");
  EXPECT_NE(why(with_time("2026-11-12T18:09:00+01:00")), "");
  EXPECT_EQ(why(with_time("2023-11-26T18:04:10+01:00"), coach(Role::kLead)), "") << "the lead enters what is on paper";
}

TEST(ReadBatch, AnotherSquadsAndNobodysAreKeptAside) {
  const std::string other = R"("squad":"u16","day":"2026-11-26","start":"18:00")";
  EXPECT_NE(why(with_time("2026-11-26T18:04:10+01:00", "session-started", other)), "");
  EXPECT_EQ(why(with_time("2026-11-26T18:04:10+01:00", "session-started", other), coach(Role::kLead)), "");
  EXPECT_NE(why(with_time("2026-11-26T18:04:10+01:00", "hurt", R"("player":"Q20")")), "");
  EXPECT_NE(why(with_time("2026-11-26T18:04:10+01:00", "hurt", R"("player":"Q99")")), "");
  EXPECT_NE(why(with_time("2026-11-26T18:04:10+01:00", "hurt", R"("player":"Q99")"), coach(Role::kLead)), "");
}

TEST(ReadBatch, WhoeverHadTheSquadOnTheDayMayStillSendIt) {
  access::Viewer former = coach();
  former.charges[0].until = *parse_iso_date("2026-11-25");
  const std::string then = R"("squad":"u13","day":"2026-11-24","start":"18:00")";
  EXPECT_EQ(why(with_time("2026-11-24T18:04:10+01:00", "session-started", then), former), "");
  EXPECT_NE(why(with_time("2026-11-26T18:04:10+01:00"), former), "");
}

TEST(ReadBatch, OneThatCannotBeReadDoesNotHoldUpTheOthers) {
  std::vector<Node> list;
  for (int n = 1; n <= 50; ++n)
    list.push_back(node(entry_text(n, "session-started", ledger::test::about_session(), n)));
  list[36] = node(R"({"id":"nonsense","note":"a name"})");
  const ReadBatch batch =
      read_batch(list, {"d-1", "a-1", Role::kCoach, false}, coach(), kPlayers, shipped_kinds(), kNow);
  EXPECT_EQ(batch.batch.entries.size(), 49U);
  ASSERT_EQ(batch.unread, std::vector<std::size_t>{36});
  EXPECT_EQ(batch.read[36], 37U);
  EXPECT_EQ(batch.batch.unread[0].why.find("a name"), std::string::npos) << "what was found is somebody's";
  EXPECT_NE(batch.batch.unread[0].why.find("entries.37"), std::string::npos) << batch.batch.unread[0].why;
}

TEST(AsideKey, IsAKeyForEachOfTheWords) {
  const auto key = [](const std::string& words) { return std::string(aside_key(words)); };
  EXPECT_EQ(key(why(with_time("2029-11-26T18:04:10+01:00"))), "clock-ahead");
  EXPECT_EQ(key(why(with_time("2023-11-26T18:04:10+01:00"))), "too-old");
  EXPECT_EQ(key(store::aside::kRevoked), "revoked");
  EXPECT_EQ(key(store::aside::kOtherContent), "other-content");
  EXPECT_EQ(key(store::aside::kDayToCome), "day-to-come");
  EXPECT_EQ(key(store::aside::kNobodyListed), "nobody-listed");
  EXPECT_EQ(key(store::aside::kNotTheirSquad), "not-their-squad");
  EXPECT_EQ(key(std::string("a recorder") + store::aside::kDoesNotEnter + "visit"), "not-their-role");
  EXPECT_EQ(key("an operator does not enter visit"), "not-their-role");
  EXPECT_EQ(key("entries.1.kind: expected a day"), "not-an-entry");
  EXPECT_EQ(key(""), "not-an-entry");
}

}  // namespace
}  // namespace lanework::serve::sync
