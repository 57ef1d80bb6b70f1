// The queue of plans, on both databases: a job is one worker's at a time, and its plan is kept once, whoever falls
// silent and whoever comes back.
#include "app/store/queue.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <fstream>
#include <latch>
#include <map>
#include <mutex>
#include <set>
#include <sstream>
#include <thread>

#include "tests/store/gate_people.h"
#include "tests/store/long_run.h"

namespace lanework::store {
namespace {

using test::Backend;
using test::must;

constexpr std::int64_t kNow = 1'795'700'000;
constexpr std::int64_t kHold = 60;

std::unique_ptr<Queue> open_queue(const Backend& backend, const std::string& club = "quillmere") {
  Key key = must(read_key_file(backend.file().key_file()));
  return must(backend.where().empty() ? open_sqlite_queue(backend.file().file(club), std::move(key))
                                      : open_postgres_queue(backend.where(), club, std::move(key)));
}

Held held_of(const PlanningJob& job) { return {job.number, job.worker, job.takings}; }
KeptPlan plan_of(const std::string& squad, const std::string& text) { return {0, squad, 0, 7, text}; }

class Queues : public testing::TestWithParam<const char*> {
 protected:
  Backend backend{GetParam()};
  std::unique_ptr<Queue> queue = open_queue(backend);
};
INSTANTIATE_TEST_SUITE_P(Stores, Queues, testing::Values("SQLite", "PostgreSQL"),
                         [](const auto& one) { return std::string(one.param); });

TEST_P(Queues, WhatCalendarsWereToldIsToldOnAndOnlyInPlaceOfTheLast) {
  EXPECT_EQ(must(queue->told("u13")), ToldEvenings{});
  EXPECT_TRUE(must(queue->tell("u13", 0, "first", kNow)));
  EXPECT_FALSE(must(queue->tell("u13", 0, "another first", kNow)));
  EXPECT_FALSE(must(queue->tell("u13", 2, "third", kNow)));
  EXPECT_TRUE(must(queue->tell("u13", 1, "second", kNow + 1)));
  EXPECT_EQ(must(queue->told("u13")), (ToldEvenings{2, "second"}));
  EXPECT_EQ(must(queue->told("u10")), ToldEvenings{});
  EXPECT_EQ(must(queue->forget_before(kNow + 1)), 0);
  EXPECT_EQ(must(queue->forget_before(kNow + 2)), 1);
  EXPECT_EQ(must(queue->told("u13")), ToldEvenings{});
}

TEST_P(Queues, WhatWaitsCanBeWithdrawnAndNothingElse) {
  EXPECT_FALSE(must(queue->withdraw(1, kNow, "not wanted"))) << "nothing was asked for";
  const auto number = must(queue->ask("u13", "a-lead", kNow));
  EXPECT_TRUE(must(queue->withdraw(number, kNow + 1, "not wanted")));
  EXPECT_FALSE(must(queue->withdraw(number, kNow + 2, "not wanted"))) << "twice";
  EXPECT_FALSE(must(queue->take("w-1", kNow + 3, kHold))) << "nobody plans it";
  EXPECT_EQ(must(queue->jobs(10)).front(),
            (PlanningJob{number, "u13", "a-lead", kNow, JobState::kFailed, 0, "", kNow + 1, "not wanted"}));
  const auto again = must(queue->ask("u13", "a-lead", kNow + 4));
  EXPECT_GT(again, number);
  const auto job = must(queue->take("w-1", kNow + 5, kHold));
  ASSERT_TRUE(job);
  EXPECT_FALSE(must(queue->withdraw(again, kNow + 6, "not wanted"))) << "somebody is at it";
  EXPECT_TRUE(must(queue->finish(held_of(*job), kNow + 7, plan_of("u13", "the plan"))));
  EXPECT_FALSE(must(queue->withdraw(again, kNow + 8, "not wanted"))) << "it is over";
}

TEST_P(Queues, AJobIsTakenPlannedAndKept) {
  EXPECT_FALSE(must(queue->take("w-1", kNow, kHold))) << "nothing was asked for";
  const auto number = must(queue->ask("u13", "a-lead", kNow));
  const auto job = must(queue->take("w-1", kNow + 5, kHold));
  ASSERT_TRUE(job);
  EXPECT_EQ(*job, (PlanningJob{number, "u13", "a-lead", kNow, JobState::kTaken, 1, "w-1", kNow + 5 + kHold, ""}));
  EXPECT_FALSE(must(queue->take("w-2", kNow + 6, kHold))) << "somebody is at it";
  EXPECT_FALSE(must(queue->latest_plan("u13")));
  EXPECT_TRUE(must(queue->finish(held_of(*job), kNow + 9, plan_of("u13", "the plan"))));
  const auto plan = must(queue->latest_plan("u13"));
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->text, "the plan");
  EXPECT_EQ(plan->made, kNow + 9);
  EXPECT_EQ(plan->as_of, 7);
  EXPECT_EQ(must(queue->jobs(10)).front().state, JobState::kDone);
  EXPECT_FALSE(must(queue->take("w-2", kNow + 1000, kHold))) << "done is done";
  EXPECT_FALSE(must(queue->latest_plan("u16"))) << "another squad's";
}

TEST_P(Queues, OneThatWaitsIsNotAskedForTwice) {
  const auto first = must(queue->ask("u13", "a-lead", kNow));
  EXPECT_EQ(must(queue->ask("u13", "a-other", kNow + 1)), first);
  const auto other = must(queue->ask("u16", "a-lead", kNow + 2));
  EXPECT_NE(other, first);
  const auto job = must(queue->take("w-1", kNow + 3, kHold));
  ASSERT_EQ(job->number, first) << "who has waited longest comes first";
  const auto again = must(queue->ask("u13", "a-lead", kNow + 4));
  EXPECT_NE(again, first) << "what is under way may have read the ledger before this was asked";
  EXPECT_EQ(must(queue->jobs(10)).size(), 3U);
  EXPECT_EQ(must(queue->jobs(1)).front().number, again) << "latest first";
}

TEST_P(Queues, WhoeverFallsSilentLosesTheJobAndWhatComesLateIsNotTaken) {
  must(queue->ask("u13", "a-lead", kNow));
  const auto first = must(queue->take("w-1", kNow, kHold));
  EXPECT_FALSE(must(queue->take("w-2", kNow + kHold, kHold))) << "until then, with it";
  const auto second = must(queue->take("w-2", kNow + kHold + 1, kHold));
  ASSERT_TRUE(second);
  EXPECT_EQ(second->takings, 2);
  EXPECT_FALSE(must(queue->hold_on(held_of(*first), kNow + 500)));
  EXPECT_FALSE(must(queue->finish(held_of(*first), kNow + 70, plan_of("u13", "late"))));
  EXPECT_FALSE(must(queue->fail(held_of(*first), kNow + 70, "late")));
  EXPECT_FALSE(must(queue->latest_plan("u13"))) << "nothing of it was kept";
  EXPECT_TRUE(must(queue->finish(held_of(*second), kNow + 71, plan_of("u13", "in time"))));
  EXPECT_FALSE(must(queue->finish(held_of(*second), kNow + 72, plan_of("u13", "twice"))));
  EXPECT_EQ(must(queue->latest_plan("u13"))->text, "in time");
  EXPECT_EQ(must(queue->plans("u13", 10)).size(), 1U);
}

// The same worker may take a job of its own again: the first taking is over all the same.
TEST_P(Queues, ALaterTakingByTheSameWorkerEndsTheFirst) {
  must(queue->ask("u13", "", kNow));
  const auto first = must(queue->take("w-1", kNow, kHold));
  const auto second = must(queue->take("w-1", kNow + kHold + 1, kHold));
  EXPECT_FALSE(must(queue->finish(held_of(*first), kNow + 62, plan_of("u13", "late"))));
  EXPECT_TRUE(must(queue->finish(held_of(*second), kNow + 62, plan_of("u13", "in time"))));
}

TEST_P(Queues, WhoeverHoldsOnKeepsIt) {
  must(queue->ask("u13", "a-lead", kNow));
  const auto job = must(queue->take("w-1", kNow, kHold));
  EXPECT_TRUE(must(queue->hold_on(held_of(*job), kNow + 500)));
  EXPECT_FALSE(must(queue->take("w-2", kNow + 400, kHold)));
  EXPECT_TRUE(must(queue->finish(held_of(*job), kNow + 450, plan_of("u13", "a plan"))));
}

TEST_P(Queues, AJobThatEndedThreeWorkersHasFailed) {
  must(queue->ask("u13", "a-lead", kNow));
  std::int64_t when = kNow;
  for (int i = 0; i < kMostTakings; ++i, when += kHold + 1) EXPECT_TRUE(must(queue->take("w-1", when, kHold)));
  EXPECT_FALSE(must(queue->take("w-2", when, kHold)));
  const auto job = must(queue->jobs(1)).front();
  EXPECT_EQ(job.state, JobState::kFailed);
  EXPECT_NE(job.why.find("three times"), std::string::npos) << job.why;
}

TEST_P(Queues, AFailureSaysWhyAndDoesNotLieThereInTheClear) {
  must(queue->ask("u13", "a-lead", kNow));
  const auto job = must(queue->take("w-1", kNow, kHold));
  const std::string why = "roster.csv:7: born: found 'canary Tamsin 12/13/2013', expected a day";
  EXPECT_TRUE(must(queue->fail(held_of(*job), kNow + 1, why)));
  EXPECT_EQ(must(queue->jobs(1)).front().why, why);
  must(queue->ask("u16", "a-lead", kNow));
  const auto other = must(queue->take("w-1", kNow + 2, kHold));
  EXPECT_TRUE(must(queue->finish(held_of(*other), kNow + 3, plan_of("u16", "canary of a plan"))));
  if (!backend.where().empty()) GTEST_SKIP() << "SQLite's file is looked through byte by byte";
  std::string bytes;
  for (const char* end : {"", "-wal"}) {
    std::ifstream in(backend.file().file("quillmere") + end, std::ios::binary);
    std::ostringstream all;
    all << in.rdbuf();
    bytes += all.str();
  }
  ASSERT_NE(bytes.find("u13"), std::string::npos) << "the file was read";
  EXPECT_EQ(bytes.find("canary"), std::string::npos);
}

TEST_P(Queues, WhatIsPastItsTimeGoesAndTheLatestPlanStays) {
  const auto plan = [&](const std::string& squad, std::int64_t when) {
    must(queue->ask(squad, "a-lead", when));
    const auto job = must(queue->take("w-1", when, kHold));
    ASSERT_TRUE(must(queue->finish(held_of(*job), when, plan_of(squad, "of " + std::to_string(when)))));
  };
  plan("u13", kNow);
  plan("u13", kNow + 10);
  plan("u16", kNow + 20);
  must(queue->ask("u18", "a-lead", kNow));
  EXPECT_FALSE(must(queue->plan_at("u13", kNow - 1))) << "none had been made";
  EXPECT_EQ(must(queue->plan_at("u13", kNow + 9))->made, kNow);
  EXPECT_EQ(must(queue->plan_at("u13", kNow + 10))->made, kNow + 10);
  EXPECT_EQ(must(queue->forget_before(kNow + 1000)), 4) << "three jobs, and the older plan of u13";
  EXPECT_EQ(must(queue->forget_before(kNow + 1000)), 0);
  EXPECT_EQ(must(queue->latest_plan("u13"))->made, kNow + 10);
  EXPECT_EQ(must(queue->plans("u13", 10)).size(), 1U);
  EXPECT_EQ(must(queue->latest_plan("u16"))->made, kNow + 20);
  EXPECT_EQ(must(queue->jobs(10)).size(), 1U) << "one waits";
}

TEST_P(Queues, OfAnotherClubNothingIsSeen) {
  if (backend.where().empty()) GTEST_SKIP() << "a file is one club's";
  must(queue->ask("u13", "a-lead", kNow));
  const auto other = open_queue(backend, "elsewhere");
  EXPECT_FALSE(must(other->take("w-1", kNow, kHold)));
  EXPECT_TRUE(must(other->jobs(10)).empty());
  EXPECT_TRUE(must(queue->take("w-1", kNow, kHold)));
}

TEST_P(Queues, ManyWorkersAtOnceTakeEveryJobOnce) {
  constexpr int kWorkers = 8;
  constexpr int kJobs = 40;
  for (int i = 0; i < kJobs; ++i) must(queue->ask("s" + std::to_string(i), "a-lead", kNow));
  std::latch ready(kWorkers);
  std::mutex guard;
  std::multiset<std::int64_t> taken;
  std::string faults;
  std::vector<std::thread> threads;
  for (int w = 0; w < kWorkers; ++w) {
    threads.emplace_back([&, w] {
      const auto own = open_queue(backend);
      ready.arrive_and_wait();
      while (true) {
        const auto job = own->take("w-" + std::to_string(w), kNow, kHold);
        const std::lock_guard<std::mutex> lock(guard);
        if (!job) faults += to_line(job.faults().front()) + "\n";
        if (!job || !job.value()) return;
        taken.insert(job.value()->number);
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_EQ(faults, "");
  EXPECT_EQ(taken.size(), static_cast<std::size_t>(kJobs));
  EXPECT_EQ(std::set<std::int64_t>(taken.begin(), taken.end()).size(), taken.size());
}

// A queue made of a list, as plain as can be.
class PlainQueue {
 public:
  std::int64_t ask(const std::string& squad, std::int64_t when) {
    for (const auto& [number, job] : jobs_) {
      if (job.squad == squad && job.state == JobState::kWaiting) return number;
    }
    const std::int64_t number = ++last_;
    jobs_[number] = {number, squad, "a-lead", when, JobState::kWaiting, 0, "", 0, ""};
    return number;
  }
  std::optional<PlanningJob> take(const std::string& worker, std::int64_t when) {
    std::optional<PlanningJob> out;
    for (auto& [number, job] : jobs_) {
      const bool silent = job.state == JobState::kTaken && job.until < when;
      if (silent && job.takings >= kMostTakings) {
        job.state = JobState::kFailed;
        job.until = when;
      } else if (!out && (silent || job.state == JobState::kWaiting)) {
        job.state = JobState::kTaken;
        job.worker = worker;
        job.until = when + kHold;
        ++job.takings;
        out = job;
      }
    }
    return out;
  }
  bool end(const Held& held, std::int64_t when, JobState state) {
    PlanningJob& job = jobs_[held.number];
    if (job.state != JobState::kTaken || job.worker != held.worker || job.takings != held.taking) return false;
    job.state = state;
    job.until = when;
    if (state == JobState::kDone) ++plans_[job.squad];
    return true;
  }
  [[nodiscard]] const std::map<std::int64_t, PlanningJob>& jobs() const { return jobs_; }
  int plans(const std::string& squad) { return plans_[squad]; }

 private:
  std::map<std::int64_t, PlanningJob> jobs_;
  std::map<std::string, int> plans_;
  std::int64_t last_ = 0;
};

RC_GTEST_PROP(QueueModel, AnySequenceOfVerbsEndsAsAPlainListDoes, ()) {
  const Backend backend("SQLite");
  const auto queue = open_queue(backend);
  PlainQueue plain;
  std::vector<Held> held;
  std::int64_t when = kNow;
  std::map<std::int64_t, std::int64_t> names;  // of the plain list's numbers
  const auto steps = *rc::gen::container<std::vector<std::tuple<int, int>>>(
      rc::gen::tuple(rc::gen::inRange(0, 5), rc::gen::inRange(0, 6)));
  for (const auto& [verb, number] : steps) {
    when += number * 11;
    const std::string word = "s" + std::to_string(number % 3);
    if (verb == 0) names[plain.ask(word, when)] = must(queue->ask(word, "a-lead", when));
    if (verb == 1) {
      const auto ours = must(queue->take(word, when, kHold));
      const auto theirs = plain.take(word, when);
      RC_ASSERT(ours.has_value() == theirs.has_value());
      if (!ours) continue;
      RC_ASSERT(ours->number == names[theirs->number]);
      RC_ASSERT(ours->takings == theirs->takings);
      held.push_back(held_of(*theirs));
    }
    if (verb >= 2 && !held.empty()) {
      const Held& one = held[static_cast<std::size_t>(number) % held.size()];
      const Held same{names[one.number], one.worker, one.taking};
      if (verb == 2) {
        RC_ASSERT(must(queue->finish(same, when, plan_of(plain.jobs().at(one.number).squad, "x"))) ==
                  plain.end(one, when, JobState::kDone));
      } else {
        RC_ASSERT(must(queue->fail(same, when, "why")) == plain.end(one, when, JobState::kFailed));
      }
    }
  }
  for (const PlanningJob& job : must(queue->jobs(1000))) {
    const auto same =
        std::find_if(names.begin(), names.end(), [&](const auto& one) { return one.second == job.number; });
    RC_ASSERT(same != names.end());
    RC_ASSERT(job.state == plain.jobs().at(same->first).state);
  }
  for (const std::string squad : {"s0", "s1", "s2"}) {
    RC_ASSERT(must(queue->plans(squad, 1000)).size() == static_cast<std::size_t>(plain.plans(squad)));
  }
}

}  // namespace
}  // namespace lanework::store
