#include "app/serve/sync/writer.h"

#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "tests/ledger/shipped_kinds.h"
#include "tests/serve/house_of_test.h"

namespace lanework::serve::sync {
namespace {

using ledger::test::entry_text;

store::Batch batch(int n) {
  store::Batch out{{"d-1", "a-1", ledger::Role::kLead, false}, {}, {}, "2026-11-26T18:05:00+01:00"};
  out.entries.push_back(
      {ledger::test::read(entry_text(n, "session-started", ledger::test::about_session(), n)).value(), ""});
  return out;
}

TEST(Writer, ManySendersAtOnceAreEachAnsweredAndEachStoredOnce) {
  test::HouseOfTest house;
  constexpr int kSenders = 16;
  constexpr int kEach = 20;
  std::atomic<int> stored{0};
  std::vector<std::thread> senders;
  for (int s = 0; s < kSenders; ++s) {
    senders.emplace_back([&, s] {
      for (int i = 1; i <= kEach; ++i) {
        const auto verdicts = house.house().writer->take_in(batch(s * kEach + i));
        if (verdicts && verdicts.value().front().verdict == store::Verdict::kStored) ++stored;
      }
    });
  }
  for (std::thread& sender : senders) sender.join();
  EXPECT_EQ(stored, kSenders * kEach);
  const auto all = house.room().store->entries_after(0, 10'000, ledger::test::shipped_kinds()).value();
  ASSERT_EQ(all.size(), static_cast<std::size_t>(kSenders * kEach));
  EXPECT_FALSE(house.room().store->audit().value().broken_at);
}

TEST(Writer, AStoreThatCannotBeOpenedIsAFaultForEachAndTriedAgain) {
  std::atomic<int> tries{0};
  Writer writer(
      [&tries]() -> Result<Room> {
        ++tries;
        return Fault{FaultCode::kFileUnreadable, {"ledger.sqlite", 0, 0, {}}, "nothing", "a ledger", {}};
      },
      ledger::test::shipped_kinds());
  EXPECT_FALSE(writer.take_in(batch(1)));
  EXPECT_FALSE(writer.take_in(batch(2)));
  EXPECT_GE(tries, 2);
}

}  // namespace
}  // namespace lanework::serve::sync
