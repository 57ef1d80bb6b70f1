// A block that has begun: what past sessions count for, and that the rest changes only where what happened asks for it.
#include "core/block/replan.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/block/drawn_squads.h"
#include "tests/block/standing_of.h"

namespace lanework::block {
namespace {

using Happened = Report::Happened;

struct Begun {
  Outline outline;  // without what became of it
  Built built;      // as planned at first
  Plan plan;
  Standing standing;
};

Begun begun(std::uint64_t seed) {
  Begun out{draw_squad(seed, {.sessions_a_week = 3}), {}, {}, {}};
  plan::KernelWorkspace workspace;
  out.built = build_problem(out.outline, workspace);
  Work little;
  little.first_rounds = 20;
  little.splits = 2;
  little.more_splits = 0;
  out.plan = solve(out.built.problem, little).plan;
  out.standing = standing_of(out.outline, out.built, out.plan);
  return out;
}

const Begun& block_of(std::uint64_t seed) {
  static std::map<std::uint64_t, Begun> kBegun;
  const auto found = kBegun.find(seed);
  return found != kBegun.end() ? found->second : kBegun.emplace(seed, begun(seed)).first->second;
}

// The first sessions of the block as reported.
Outline after(const Begun& block, const std::vector<Report>& reports) {
  Outline out = block.outline;
  Rolling rolling;
  rolling.standing = block.standing;
  for (std::size_t e = 0; e < reports.size(); ++e) {
    const StandingSession* stands = block.standing.find(out.evenings[e].date, out.evenings[e].start);
    rolling.past.push_back(past_session(*out.catalogue, out.evenings[e], e, stands->items, reports[e]));
  }
  rolling.today = out.evenings[std::min(reports.size(), out.evenings.size() - 1)].date;
  out.rolling = std::move(rolling);
  return out;
}

Report report(Happened happened, int quarters = 4) { return {happened, {}, quarters, {}}; }

struct Result {
  Built built;
  Replanned replanned;
};

Result planned_on(const Outline& outline) {
  plan::KernelWorkspace workspace;
  Result out{build_problem(outline, workspace), {}};
  out.replanned = replan(outline, out.built, {});
  return out;
}

std::size_t evenings_of_first_week(const Outline& outline) {
  std::size_t count = 0;
  while (days_between(outline.monday, outline.evenings[count].date) < 7) ++count;
  return count;
}

TEST(PastSession, HeldIsWhatWasPlanned) {
  const Begun& block = block_of(1);
  const Outline outline = after(block, {report(Happened::kHeld)});
  const PastSession& past = outline.rolling->past.front();
  EXPECT_EQ(past.given, past.promised);
  const Evaluation planned = evaluate(block.built.problem, block.plan);
  EXPECT_EQ(past.used, planned.session_loads.front());
}

TEST(PastSession, LoadsCountInFullAndCreditsByHowManyDidIt) {
  const Begun& block = block_of(1);
  const PastSession whole = after(block, {report(Happened::kHeld)}).rolling->past.front();
  for (const int quarters : {2, 1}) {
    const PastSession part = after(block, {report(Happened::kHeld, quarters)}).rolling->past.front();
    EXPECT_EQ(part.used, whole.used);
    for (std::size_t f = 0; f < part.given.size(); ++f) EXPECT_EQ(part.given[f], whole.given[f] * quarters / 4);
  }
}

TEST(PastSession, NoWordUsesAndGivesNothingMissedDoesNeither) {
  const Begun& block = block_of(1);
  const PastSession whole = after(block, {report(Happened::kHeld)}).rolling->past.front();
  const PastSession no_word = after(block, {report(Happened::kNoWord)}).rolling->past.front();
  const PastSession missed = after(block, {report(Happened::kMissed)}).rolling->past.front();
  EXPECT_EQ(no_word.used, whole.used);
  EXPECT_EQ(missed.used, Loads{});
  for (const PastSession* past : {&no_word, &missed}) {
    EXPECT_EQ(past->promised, whole.promised);
    EXPECT_EQ(past->given, std::vector<int>(whole.given.size(), 0));
  }
}

// Minute by minute drills come in, in order; the one that was begun has used its loads before it gives anything.
TEST(PastSession, CutShortGoesInOrder) {
  const Begun& block = block_of(2);
  int last_done = 0;
  for (int minutes = 1; minutes <= static_cast<int>(block.outline.evenings.front().slot.count / 60); ++minutes) {
    Report cut = report(Happened::kCutShort);
    cut.minutes = minutes;
    const PastSession past = after(block, {cut}).rolling->past.front();
    int used = 0;
    int done = 0;
    for (const PastItem& item : past.items) {
      if (item.used && used != &item - past.items.data()) ADD_FAILURE() << "a gap at " << minutes;
      used += item.used ? 1 : 0;
      done += item.done ? 1 : 0;
      EXPECT_TRUE(item.used || !item.done);
    }
    EXPECT_LE(used - done, 1);
    EXPECT_GE(done, last_done);
    last_done = done;
  }
  // The slot has room for the whole session.
  EXPECT_EQ(last_done, static_cast<int>(block.standing.sessions.front().items.size()));
}

TEST(PastSession, WhatWasLeftOutGivesAndUsesNothing) {
  const Begun& block = block_of(2);
  Report without = report(Happened::kHeld);
  without.left_out = {block.standing.sessions.front().items.front().drill};
  const PastSession past = after(block, {without}).rolling->past.front();
  EXPECT_FALSE(past.items.front().used);
  EXPECT_FALSE(past.items.front().done);
  EXPECT_TRUE(past.items.back().done);
}

TEST(Replan, EverythingAsPlannedChangesNothing) {
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const Begun& block = block_of(seed);
    for (const std::size_t held :
         {std::size_t{0}, std::size_t{2}, evenings_of_first_week(block.outline), std::size_t{8}}) {
      const Outline outline = after(block, std::vector<Report>(held, report(Happened::kHeld)));
      const Result result = planned_on(outline);
      EXPECT_EQ(result.replanned.answer.plan, result.replanned.standing) << seed << ' ' << held;
      for (const std::vector<Cause>& causes : result.replanned.causes)
        EXPECT_TRUE(causes.empty()) << seed << ' ' << held;
      EXPECT_TRUE(result.replanned.answer.feasible);
      EXPECT_EQ(standing_of(outline, result.built, result.replanned.answer.plan).sets, block.standing.sets);
    }
  }
}

TEST(Replan, WhateverHappenedThePlanKeepsEveryRowAndTheBoundIsAboveIt) {
  const std::vector<Happened> kinds = {Happened::kNoWord, Happened::kHeld, Happened::kMissed, Happened::kCutShort};
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const Begun& block = block_of(seed);
    for (std::size_t count = 1; count < block.outline.evenings.size(); count += 4) {
      std::vector<Report> reports;
      for (std::size_t e = 0; e < count; ++e) {
        Report one = report(kinds[(seed + 3 * e) % 4], e % 3 == 0 ? 1 : e % 3 == 1 ? 2 : 4);
        if (one.happened == Happened::kCutShort) one.minutes = static_cast<int>(3 + (seed * e) % 9);
        reports.push_back(one);
      }
      const Result result = planned_on(after(block, reports));
      const Answer& answer = result.replanned.answer;
      const Evaluation evaluation = evaluate(result.built.problem, answer.plan);
      EXPECT_TRUE(answer.feasible);
      EXPECT_TRUE(evaluation.broken.empty()) << seed << ' ' << count << ' ' << evaluation.broken.front();
      EXPECT_EQ(answer.value, evaluation.value);
      EXPECT_GE(answer.bound_fine, answer.value * kFine);
      // Weeks that nothing touched stand.
      for (std::size_t s = 0; s < result.built.problem.sessions.size(); ++s) {
        if (!result.replanned.causes[s].empty()) continue;
        EXPECT_EQ(answer.plan.choice[s], result.replanned.standing.choice[s]) << seed << ' ' << count << ' ' << s;
      }
    }
  }
}

TEST(Replan, TheSameEveryTime) {
  const Begun& block = block_of(3);
  const Outline outline = after(block, {report(Happened::kMissed), report(Happened::kHeld, 1)});
  const Result one = planned_on(outline);
  const Result two = planned_on(outline);
  EXPECT_EQ(one.replanned.answer.plan, two.replanned.answer.plan);
  EXPECT_EQ(one.replanned.answer.bound_fine, two.replanned.answer.bound_fine);
}

// An evening five minutes shorter: the others of other weeks do not move.
TEST(Replan, AShorterEveningMovesItsOwnWeekAtMost) {
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const Begun& block = block_of(seed);
    Outline outline = after(block, {});
    const std::size_t shorter = block.built.evening_of[block.built.evening_of.size() / 2];
    outline.evenings[shorter].slot = outline.evenings[shorter].slot - Seconds(300);
    const Result result = planned_on(outline);
    EXPECT_TRUE(result.replanned.answer.feasible);
    const int week = days_between(outline.monday, outline.evenings[shorter].date) / 7;
    for (std::size_t s = 0; s < result.built.problem.sessions.size(); ++s) {
      if (result.built.problem.sessions[s].week == week) continue;
      EXPECT_EQ(result.replanned.answer.plan.choice[s], result.replanned.standing.choice[s]);
    }
  }
}

// A drill that may no longer be done leaves every set to come, and one of its family takes its place.
TEST(Replan, AClosedDrillIsReplacedAndNothingElseIs) {
  const Begun& block = block_of(1);
  Outline outline = after(block, {report(Happened::kHeld)});
  const int closed = block.standing.sets.front().back();
  const catalogue::Drill& drill = outline.catalogue->drills[static_cast<std::size_t>(closed)];
  for (session::Evening& evening : outline.evenings) evening.bans.push_back(drill.id);
  const Result result = planned_on(outline);
  EXPECT_TRUE(result.replanned.answer.feasible);
  ASSERT_EQ(result.replanned.swapped.size(), 1U);
  const std::vector<Drill>& drills = result.built.problem.drills;
  EXPECT_EQ(drills[static_cast<std::size_t>(result.replanned.swapped.front().leaves)].drill, closed);
  const int in = drills[static_cast<std::size_t>(result.replanned.swapped.front().comes_in)].drill;
  EXPECT_EQ(outline.catalogue->drills[static_cast<std::size_t>(in)].family, drill.family);
  for (std::size_t p = 0; p < block.standing.sets.size(); ++p) {
    const std::vector<int>& before = block.standing.sets[p];
    std::vector<int> wanted = before;
    std::replace(wanted.begin(), wanted.end(), closed, in);
    std::vector<int> now = standing_of(outline, result.built, result.replanned.answer.plan).sets[p];
    std::sort(now.begin(), now.end());
    std::sort(wanted.begin(), wanted.end());
    EXPECT_EQ(now, wanted);
  }
}

// The second spell's first week falls out: what came in with it must still be told in the week after.
TEST(Replan, WhatWasMissedIsStillNew) {
  int told_again = 0;
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const Begun& block = block_of(seed);
    const Problem& p = block.built.problem;
    const auto first =
        std::find_if(p.sessions.begin(), p.sessions.end(), [](const Session& one) { return one.spell == 1; });
    const int week = first->week;
    std::vector<Report> held;
    std::vector<Report> missed;
    for (const session::Evening& evening : block.outline.evenings) {
      const int at = days_between(block.outline.monday, evening.date) / 7;
      if (at > week) break;
      held.push_back(report(Happened::kHeld));
      missed.push_back(report(at == week ? Happened::kMissed : Happened::kHeld));
    }
    const Result known = planned_on(after(block, held));
    const Result fresh = planned_on(after(block, missed));
    int longer = 0;
    for (std::size_t d = 0; d < fresh.built.problem.drills.size(); ++d) {
      const auto steps = [&](const Result& result) {
        const Problem& problem = result.built.problem;
        const auto& options = problem.kinds[static_cast<std::size_t>(problem.sessions.front().kind)].options[d];
        return options.empty() ? 0 : options.front().steps;
      };
      EXPECT_GE(steps(fresh), steps(known));
      longer += steps(fresh) > steps(known) ? 1 : 0;
    }
    told_again += longer;
    // Drills never done before count as new again.
    for (std::size_t d = 0; d < fresh.built.problem.drills.size(); ++d)
      EXPECT_GE(fresh.built.problem.drills[d].unknown, known.built.problem.drills[d].unknown);
  }
  EXPECT_GT(told_again, 0);
}

}  // namespace
}  // namespace lanework::block
