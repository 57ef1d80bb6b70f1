#include "core/ledger/entry.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/ledger/canonical.h"
#include "tests/ledger/shipped_kinds.h"

namespace lanework::ledger {
namespace {

using test::about_session;
using test::entry_text;
using test::read;

std::vector<std::string> fields_at_fault(const std::string& text) {
  std::vector<std::string> out;
  const auto entry = read(text);
  if (entry) return out;
  for (const Fault& fault : entry.faults()) out.push_back(fault.place.field);
  return out;
}

TEST(Entry, IsReadWithEveryKeyItCameWith) {
  const auto entry = read(
      entry_text(1, "drill-marked", about_session(R"("drill":"side-plank","mark":"easier","mood":{"x":[1,2.5]})")));
  ASSERT_TRUE(entry.ok()) << to_line(entry.faults().front());
  EXPECT_EQ(entry.value().kind, "drill-marked");
  EXPECT_TRUE(entry.value().known);
  EXPECT_NE(bytes_of(entry.value()).find(R"("mood":{"x":[1,2.5]})"), std::string::npos);
}

TEST(Entry, AKindOfANewerVersionIsKept) {
  const auto entry = read(entry_text(1, "weather-felt", R"("how":"damp")"));
  ASSERT_TRUE(entry.ok());
  EXPECT_FALSE(entry.value().known);
  EXPECT_NE(bytes_of(entry.value()).find(R"("how":"damp")"), std::string::npos);
}

TEST(Entry, EveryMistakeIsToldAtItsField) {
  EXPECT_EQ(fields_at_fault("[]"), std::vector<std::string>{""});  // the parser's own fault
  EXPECT_EQ(fields_at_fault(entry_text(1, "drill-marked", about_session(R"("drill":"side plank","mark":"great")"))),
            (std::vector<std::string>{"entry.drill", "entry.mark"}));
  EXPECT_EQ(fields_at_fault(
                entry_text(1, "wrap-up", R"("squad":"u13","day":"2026-02-30","start":"25:00","happened":"held")")),
            (std::vector<std::string>{"entry.day", "entry.start"}));
  EXPECT_EQ(fields_at_fault(entry_text(1, "wrap-up", R"("squad":"u13")")),
            (std::vector<std::string>{"entry.day", "entry.start", "entry.happened"}));
  EXPECT_EQ(fields_at_fault(entry_text(1, "attendance", about_session(R"("there":201)"))),
            std::vector<std::string>{"entry.there"});
  EXPECT_EQ(fields_at_fault(entry_text(1, "lifted", R"("player":"Q07","names":["lead-1"])")),
            std::vector<std::string>{"entry.names"});
  EXPECT_EQ(fields_at_fault(entry_text(1, "hurt", R"("player":"' OR 1=1 --")")),
            std::vector<std::string>{"entry.player"});
  EXPECT_EQ(fields_at_fault(entry_text(
                1, "wrap-up", about_session("\"happened\":\"held\",\"note\":\"" + std::string(501, 'x') + "\""))),
            std::vector<std::string>{"entry.note"});
  EXPECT_EQ(fields_at_fault(entry_text(1, "session-started", about_session(test::corrects(1)))),
            std::vector<std::string>{"entry.corrects"});
}

TEST(Entry, TheDevicesClockHasAnOffset) {
  const std::string good = entry_text(1, "session-started", about_session());
  for (const char* stamp : {"2026-11-26T18:04:10+01:00", "2026-11-26T18:04Z", "2026-11-26T18:04:10.123-03:30"}) {
    std::string text = good;
    text.replace(text.find("2026-11-26T18:04:10+01:00"), 25, stamp);
    EXPECT_TRUE(read(text).ok()) << stamp;
  }
  for (const char* stamp : {"2026-11-26T18:04:10", "2026-11-26", "yesterday", "2026-11-26 18:04:10Z",
                            "2026-11-26T18:04:10.Z", "2026-11-26T18:04:10+1:00", "2026-11-26T18:04:10Zz"}) {
    std::string text = good;
    text.replace(text.find("2026-11-26T18:04:10+01:00"), 25, stamp);
    EXPECT_EQ(fields_at_fault(text), std::vector<std::string>{"entry.device_time"}) << stamp;
  }
}

TEST(Entry, IsNoLargerThanItsLimit) {
  const auto with = [](std::size_t letters) {
    return read(entry_text(1, "weather-felt", "\"how\":\"" + std::string(letters, 'x') + "\""));
  };
  EXPECT_TRUE(with(kMostEntryBytes - 200).ok());
  EXPECT_FALSE(with(kMostEntryBytes).ok());
}

// Found by fuzzing: a number written with a fraction or an exponent may be a whole one, whose text is read back as
// such.
TEST(Entry, AWholeNumberThatIsNotExactIsNoneHoweverItIsWritten) {
  const auto with = [](const std::string& number) { return read(entry_text(1, "weather-felt", "\"felt\":" + number)); };
  for (const char* number : {"9007199254740992", "9007199254740992.0", "-9.007199254740992e15",
                             "19007199254740993.50e+2", "999999999999999900000.0"}) {
    EXPECT_FALSE(with(number).ok()) << number;
  }
  for (const char* number : {"9007199254740991.0", "-9007199254740991", "1e21", "-1.5e300", "0.5", "1.50e+2"}) {
    const auto entry = with(number);
    ASSERT_TRUE(entry.ok()) << number;
    EXPECT_EQ(bytes_of(read(bytes_of(entry.value())).value()), bytes_of(entry.value())) << number;
  }
}

// Whatever order and blanks it came with, one entry has one text, which reads back as itself.
TEST(Entry, OneTextForOneEntry) {
  EXPECT_TRUE(rc::check([] {
    std::vector<std::pair<std::string, std::string>> members = {
        {"id", "\"" + to_text(test::id_of(*rc::gen::inRange(1, 5000))) + "\""},
        {"sequence", std::to_string(*rc::gen::inRange(1, 1000))},
        {"device_time", "\"2026-11-26T18:04:10+01:00\""},
        {"kind", "\"weather-felt\""},
        {"at", "[" + std::to_string(*rc::gen::inRange(-50, 50)) + ", 0.25]"},
        {"word", to_json(Node::make_text(*rc::gen::container<std::string>(rc::gen::inRange('\x01', '\x7f'))))}};
    const auto joined = [&] {
      std::string out = "{";
      for (std::size_t i = 0; i < members.size(); ++i) {
        out += (i > 0 ? " ,\n" : " ") + to_json(Node::make_text(members[i].first)) + " : " + members[i].second;
      }
      return out + "}";
    };
    const auto one = read(joined());
    for (std::size_t i = members.size(); i > 1; --i) {
      std::swap(members[i - 1], members[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(i)))]);
    }
    const auto other = read(joined());
    RC_ASSERT(one.ok() && other.ok());
    RC_ASSERT(bytes_of(one.value()) == bytes_of(other.value()));
    RC_ASSERT(bytes_of(read(bytes_of(one.value())).value()) == bytes_of(one.value()));
  }));
}

}  // namespace
}  // namespace lanework::ledger
