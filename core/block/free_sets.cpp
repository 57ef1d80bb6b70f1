#include "core/block/free_sets.h"

#include <algorithm>

namespace lanework::block {
namespace {

// How often the price charged to the last spell is doubled and halved: own judgement.
constexpr int kDoubled = 3;
constexpr int kHalved = 3;
// How much of a block's work goes into each spell alone. Found by trial on three squads: more of it lowers the gap by
// less than half a percent.
constexpr double kShare = 0.25;

// What the limits on new drills let in up to each session, in the order of the block.
std::vector<int> let_in(const Problem& problem) {
  std::vector<int> out;
  int before = 0;  // in the weeks before
  int in_week = 0;
  for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
    const bool same_week = s > 0 && problem.sessions[s].week == problem.sessions[s - 1].week;
    if (!same_week) {
      before += in_week;
      in_week = 0;
    }
    in_week = std::min(in_week + problem.most_new_in_session, problem.most_new_in_week);
    out.push_back(before + in_week);
  }
  return out;
}

int places_of(const Problem& problem) {
  int places = 0;
  for (const Family& family : problem.families) places += family.drills;
  return places;
}

}  // namespace

Problem spell_alone(const Problem& problem, int spell, Points swap) {
  Problem alone = problem;
  alone.sessions.clear();
  alone.weeks.clear();
  alone.close.clear();
  std::vector<int> week(problem.weeks.size(), -1);
  for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
    if (problem.weeks[w].spell != spell) continue;
    week[w] = static_cast<int>(alone.weeks.size());
    alone.weeks.push_back(problem.weeks[w]);
    alone.weeks.back().spell = 0;
  }
  const std::vector<int> unknown = let_in(problem);
  const int places = places_of(problem);
  std::vector<int> session(problem.sessions.size(), -1);
  for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
    const Session& one = problem.sessions[s];
    if (one.spell != spell) continue;
    session[s] = static_cast<int>(alone.sessions.size());
    alone.sessions.push_back(one);
    alone.sessions.back().spell = 0;
    alone.sessions.back().week = week[static_cast<std::size_t>(one.week)];
    if (unknown[s] < places) alone.sessions.back().unknown = unknown[s];
  }
  for (const auto& [a, b] : problem.close) {
    const int first = session[static_cast<std::size_t>(a)];
    const int second = session[static_cast<std::size_t>(b)];
    if (first >= 0 && second >= 0) alone.close.emplace_back(first, second);
  }
  for (Drill& drill : alone.drills) drill.must = must_be(drill, static_cast<std::size_t>(spell)) ? 1U : 0U;
  alone.spells = 1;
  alone.least_swaps = 0;
  alone.swap = swap;
  if (spell > 0) {
    alone.first_swaps = places;
    // What the spells before it have taught is not known here.
    alone.most_new_in_session = alone.most_new_in_week = kAnyNumber;
  }
  return alone;
}

namespace {

// A drill of the last set that is not of the routine has come in at the start of the first spell or of the last. So
// each spell may be charged a part of what it costs: 'late' points the last one, what is left the first. Above the
// price of a swap the last spell pays more than there is to pay, and gets it back for as many drills as it may swap.
class Search {
 public:
  Search(const Problem& problem, const Work& work, const Progress& progress)
      : p_(problem), work_(work), progress_(progress) {}

  FreeSets run() {
    // Drills never done before come in slowly, so few new ones are tried too.
    if (p_.first_swaps > p_.most_swaps) {
      Problem few = spell_alone(p_, 0, p_.swap);
      few.first_swaps = p_.most_swaps;
      like(few);
    }
    if (p_.spells == 2) share_out();
    return std::move(out_);
  }

 private:
  const Problem& p_;
  const Work& work_;
  const Progress& progress_;
  FreeSets out_;

  struct Liked {
    std::int64_t bound_fine;
    int come_in;  // drills of the set that are not of the routine
  };

  Liked like(const Problem& alone) {
    const Answer answer = solve(alone, times(work_, kShare), progress_);
    const std::vector<char>& set = answer.plan.sets.front();
    if (std::find(out_.wished.begin(), out_.wished.end(), set) == out_.wished.end()) out_.wished.push_back(set);
    int come_in = 0;
    for (std::size_t d = 0; d < set.size(); ++d) come_in += set[d] != 0 && !p_.drills[d].current ? 1 : 0;
    return {answer.bound_fine, come_in};
  }

  // Positive: a higher price would raise the bound.
  int look_at(Points late) {
    const Liked first = like(spell_alone(p_, 0, p_.swap - late));
    const Liked last = like(spell_alone(p_, 1, late));
    const Points over = late - p_.swap;
    const Points given_back = over > 0 ? over * p_.most_swaps : over * p_.least_swaps;
    out_.bound_fine = std::min(out_.bound_fine, first.bound_fine + last.bound_fine + given_back * kFine);
    const int slope = first.come_in - last.come_in;
    if (over == 0) return slope + p_.most_swaps < 0 ? -1 : slope + p_.least_swaps > 0 ? 1 : 0;
    return slope + (over > 0 ? p_.most_swaps : p_.least_swaps);
  }

  void share_out() {
    Points low = 0;
    Points high = p_.swap;
    int slope = look_at(high);
    for (int doubled = 0; doubled < kDoubled && slope < 0; ++doubled) {
      low = high;
      high *= 2;
      slope = look_at(high);
    }
    for (int halved = 0; halved < kHalved && slope != 0 && high - low > 1; ++halved) {
      const Points middle = low + (high - low) / 2;
      slope = look_at(middle);
      (slope < 0 ? low : high) = middle;
    }
  }
};

}  // namespace

FreeSets free_sets(const Problem& problem, const Work& work, const Progress& progress) {
  return Search(problem, work, progress).run();
}

}  // namespace lanework::block
