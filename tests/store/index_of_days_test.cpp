// The index of days is checked against the entries that it is of, on both stores and in what a backup reads.
#include "app/store/index_of_days.h"

#include <algorithm>
#include <random>

#include "tests/ledger/shipped_kinds.h"
#include "tests/store/gate_people.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using ledger::test::shipped_kinds;
using test::Backend;
using test::must;
using test::said;

Row row(std::int64_t receipt, const std::string& body, const std::string& person = "") {
  Row out;
  out.receipt = receipt;
  out.person = person;
  out.body = body;
  return out;
}

TEST(IndexOfDays, IsOfWhatHasADayAndASquadAndIsAboutNobody) {
  const std::string evening = R"({"day":"2026-11-26","squad":"u13"})";
  EXPECT_EQ(day_of(row(1, evening)), (DayOfEntry{"2026-11-26", "u13"}));
  EXPECT_FALSE(day_of(row(1, evening, "tag")));
  EXPECT_FALSE(day_of(row(1, R"({"day":"2026-11-26"})")));
  EXPECT_FALSE(day_of(row(1, R"({"day":7,"squad":"u13"})")));
  EXPECT_FALSE(day_of(row(1, "no JSON")));
}

TEST(IndexOfDays, TellsTheLowestThatIsMissingOrShouldNotBeThereInAnyOrder) {
  const auto wrong = [](std::vector<std::pair<DayOfEntry, std::int64_t>> rows) {
    std::shuffle(rows.begin(), rows.end(), std::mt19937(1));
    IndexOfDays index;
    for (const std::int64_t receipt : {2, 5, 9}) index.expect(row(receipt, R"({"day":"2026-11-26","squad":"u13"})"));
    for (const auto& [day, receipt] : rows) index.found(day, receipt);
    return index.first_wrong().value_or(0);
  };
  const DayOfEntry day{"2026-11-26", "u13"};
  EXPECT_EQ(wrong({{day, 2}, {day, 5}, {day, 9}}), 0);
  EXPECT_EQ(wrong({{day, 2}, {day, 9}}), 5) << "missing";
  EXPECT_EQ(wrong({{day, 2}, {day, 4}, {day, 5}, {day, 9}}), 4) << "of an entry that has no day";
  EXPECT_EQ(wrong({{day, 2}, {{"2026-11-27", "u13"}, 5}, {day, 9}}), 5) << "another day";
  EXPECT_EQ(wrong({{day, 2}, {{"2026-11-26", "u14"}, 2}, {day, 5}, {day, 9}}), 2) << "twice";
}

class IndexOfDaysOn : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Stores, IndexOfDaysOn, testing::Values("SQLite", "PostgreSQL"), test::name_of);

TEST_P(IndexOfDaysOn, WhoeverChangesItIsFoundByWhoeverChecksTheBooks) {
  struct Change {
    const char* statement;
    std::int64_t at;
  };
  const Sender coach{"phone-1", "ann", ledger::Role::kCoach, false};
  for (const Change& change : {Change{"UPDATE evening SET receipt = 2 WHERE receipt = 3", 2},
                               Change{"UPDATE evening SET day = '2026-11-27' WHERE receipt = 3", 3},
                               Change{"UPDATE evening SET squad = 'u14' WHERE receipt = 1", 1},
                               Change{"DELETE FROM evening WHERE receipt = 3", 3}}) {
    const Backend backend(GetParam());
    const auto store = backend.open();
    for (int n = 1; n <= 3; ++n) {
      const std::string text = n == 2
                                   ? ledger::test::entry_text(n, "hurt", R"("player":"Q07","place":"knee")", n)
                                   : ledger::test::entry_text(n, "session-started", ledger::test::about_session(), n);
      must(store->take_in(coach, {ledger::test::read(text).value()}, shipped_kinds(), "2026-11-26T18:05:00+01:00"));
    }
    ASSERT_FALSE(must(store->audit()).broken_at);
    said(backend, change.statement);
    EXPECT_EQ(must(store->audit()).broken_at.value_or(0), change.at) << change.statement;
  }
}

}  // namespace
}  // namespace lanework::store
