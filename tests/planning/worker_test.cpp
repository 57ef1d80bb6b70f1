// A worker over a real store: what was asked for is planned from the demo club's folder and kept; what cannot be
// planned says why; what somebody else took over is not kept twice.
#include "app/planning/worker.h"

#include <gtest/gtest.h>

#include "tests/planning/planning_of_demo.h"
#include "tests/store/sqlite_file.h"

namespace lanework::planning {
namespace {

using test::demo_files;
using test::kestrels;

constexpr const char* kStamp = "2026-11-26T18:05:00+01:00";

template <class T>
T must(Result<T> result) {
  if (!result) throw std::runtime_error(to_line(result.faults().front()));
  return std::move(result).value();
}

class Workers : public testing::Test {
 protected:
  store::test::SqliteFile file;
  std::int64_t now = 1'795'700'000;
  Date today = test::day("2026-11-20");
  std::vector<Told> told;
  bool away = false;

  store::Key key() { return must(store::read_key_file(file.key_file())); }
  Result<Desk> open() {
    if (away) return Fault{FaultCode::kFileUnreadable, {"store", 0, 0, {}}, "nothing", "a store", {}};
    return Desk{file.open(), must(store::open_sqlite_queue(file.file(), key())),
                must(store::open_sqlite_directory(file.file(), key()))};
  }
  Worker worker(const std::string& id, const PlanningFiles& files = demo_files()) {
    return {[this] { return open(); },
            {id, files, kHoldSeconds},
            ledger::test::shipped_kinds(),
            {[this] { return now; }, [this](std::int64_t) { return today; }},
            [this](const Told& one) { told.push_back(one); }};
  }
  std::unique_ptr<store::Queue> queue() { return must(store::open_sqlite_queue(file.file(), key())); }
  void enter(const std::vector<test::Said>& said, const std::string& device = "phone") {
    std::vector<ledger::Entry> entries;
    for (ledger::Received& one : test::received_of(said)) entries.push_back(std::move(one.entry));
    static_cast<void>(must(file.open()->take_in({device, "ann", ledger::Role::kLead, false}, entries,
                                                ledger::test::shipped_kinds(), kStamp)));
  }
};

TEST_F(Workers, PlanWhatWasAskedForAndKeepIt) {
  Worker one = worker("w-1");
  EXPECT_FALSE(must(one.work_once())) << "nothing was asked for";
  must(queue()->ask("u13-kestrels", "a-lead", now));
  EXPECT_TRUE(must(one.work_once()));
  const auto plan = must(queue()->latest_plan("u13-kestrels"));
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->text, must(plan_squad(demo_files(), "u13-kestrels", test::known_of({}), today, {})).text);
  EXPECT_EQ(plan->as_of, 0);
  ASSERT_EQ(told.size(), 1U);
  EXPECT_EQ(told.front().event, "planned");
  EXPECT_FALSE(must(one.work_once()));
}

TEST_F(Workers, ThePlanThatStandsIsPlannedOnFromWhatWasEnteredSince) {
  Worker one = worker("w-1");
  must(queue()->ask("u13-kestrels", "a-lead", now));
  EXPECT_TRUE(must(one.work_once()));
  const auto stands = must(queue()->latest_plan("u13-kestrels"));
  today = test::day("2026-11-25");
  const std::vector<test::Said> said = {{"wrap-up", kestrels("2026-11-24", R"("happened":"missed")")}};
  enter(said);
  must(queue()->ask("u13-kestrels", "a-lead", now));
  EXPECT_TRUE(must(one.work_once()));
  const auto next = must(queue()->latest_plan("u13-kestrels"));
  EXPECT_EQ(next->as_of, 1);
  EXPECT_EQ(next->text, must(plan_squad(demo_files(), "u13-kestrels", test::known_of(said), today, stands->text)).text);
  EXPECT_NE(next->text, stands->text);
}

TEST_F(Workers, WhoWasErasedIsForgottenByAWorkerThatRunsOn) {
  enter({{"restriction", R"("player":"Q07","sits_out":true,"instruction":"sits out")"}});
  const auto directory = must(store::open_sqlite_directory(file.file(), key()));
  must(directory->keep({"Quillmere", {{"u13-kestrels", "Kestrels"}}, {{"Q07", {"u13-kestrels"}, "Kit", ""}}}, kStamp));
  Worker one = worker("w-1");
  must(queue()->ask("u13-kestrels", "a-lead", now));
  EXPECT_TRUE(must(one.work_once()));
  const auto held_back = must(queue()->latest_plan("u13-kestrels"))->text;
  EXPECT_TRUE(
      must(file.open()->erase_person("Q07", kStamp, [](const auto&, const auto&) { return std::optional<Fault>(); })));
  EXPECT_TRUE(must(directory->forget("Q07")));
  must(queue()->ask("u13-kestrels", "a-lead", now));
  EXPECT_TRUE(must(one.work_once()));
  EXPECT_NE(must(queue()->latest_plan("u13-kestrels"))->text, held_back);
}

TEST_F(Workers, WhatCannotBePlannedFailsAndTheLeadIsToldWhyTheLogOnlyWhatKind) {
  must(queue()->ask("u99-canary", "a-lead", now));
  Worker one = worker("w-1");
  EXPECT_TRUE(must(one.work_once()));
  const auto job = must(queue()->jobs(1)).front();
  EXPECT_EQ(job.state, store::JobState::kFailed);
  EXPECT_NE(job.why.find("u99-canary"), std::string::npos) << job.why;
  ASSERT_EQ(told.size(), 1U);
  EXPECT_EQ(told.front().event, "failed");
  EXPECT_EQ(told.front().why.find("canary"), std::string::npos) << told.front().why;
  EXPECT_FALSE(must(one.work_once())) << "and is not tried for ever";
}

TEST_F(Workers, AWorkerThatEndsInTheMiddleLeavesTheJobToAnother) {
  must(queue()->ask("u13-kestrels", "a-lead", now));
  const auto taken = must(queue()->take("w-gone", now, kHoldSeconds));
  Worker one = worker("w-1");
  EXPECT_FALSE(must(one.work_once())) << "w-gone may be at it still";
  now += kHoldSeconds + 1;
  EXPECT_TRUE(must(one.work_once()));
  EXPECT_FALSE(must(queue()->finish({taken->number, "w-gone", 1}, now, {0, "u13-kestrels", 0, 0, "late"})));
  EXPECT_EQ(must(queue()->plans("u13-kestrels", 10)).size(), 1U);
}

TEST_F(Workers, AStoreThatIsAwayIsToldOnceAndTriedAgain) {
  must(queue()->ask("u13-kestrels", "a-lead", now));
  away = true;
  Worker one = worker("w-1");
  int looks = 0;
  one.run([&] {
    if (++looks == 3) away = false;
    return looks == 5;
  });
  EXPECT_TRUE(must(queue()->latest_plan("u13-kestrels")));
  EXPECT_EQ(std::count_if(told.begin(), told.end(), [](const Told& one_of) { return one_of.event == "no-store"; }), 1);
}

}  // namespace
}  // namespace lanework::planning
