#include "core/block/week_solver.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>

#include "core/block/bundle.h"
#include "core/block/load_price.h"

namespace lanework::block {
namespace {

// Lists reach so far beyond a session's nearest at first.
constexpr std::int32_t kFirstReach = 2 * kFine;
// The first step of prices aims at this share of the first bound; points that are not worth another round.
constexpr double kFirstAim = 0.97;
constexpr double kLittle = 0.5;
// A use earns or costs at most this, in fine points, and the load of a ceiling likewise.
constexpr double kMostUse = 1 << 20;
// Drills that lean less than this to one side are settled; the weight of a drill that uses nothing of a ceiling beside
// one that uses all, and of whether a drill is used at all beside how much.
constexpr double kDoubt = 0.05;
constexpr double kAnyDrill = 0.1;
constexpr double kUseFirst = 4;
// So many ways of letting new drills into a week are looked at, no more.
constexpr std::size_t kMostWays = 6;

}  // namespace

WeekSolver::WeekSolver(const Problem& problem)
    : p_(problem),
      lister_(problem),
      families_(problem),
      sessions_(problem.weeks.size()),
      close_(problem.weeks.size()),
      known_(problem.weeks.size()),
      solved_(problem.weeks.size()) {
  std::vector<int> position;
  for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
    std::vector<int>& week = sessions_[static_cast<std::size_t>(problem.sessions[s].week)];
    position.push_back(static_cast<int>(week.size()));
    week.push_back(static_cast<int>(s));
  }
  for (const auto& [a, b] : problem.close) {
    const auto first = static_cast<std::size_t>(a);
    const auto second = static_cast<std::size_t>(b);
    if (problem.sessions[first].week != problem.sessions[second].week) continue;
    close_[static_cast<std::size_t>(problem.sessions[first].week)].emplace_back(position[first], position[second]);
  }
}

void WeekSolver::begin(std::size_t week, const std::vector<char>& set, const std::vector<char>& done) {
  week_ = week;
  members_.clear();
  unknown_ = 0;
  for (std::size_t d = 0; d < set.size(); ++d) {
    if (set[d] == 0) continue;
    if (p_.drills[d].unknown && done[d] == 0) unknown_ |= std::uint32_t{1} << members_.size();
    members_.push_back(static_cast<int>(d));
  }
  new_left_ = std::max(0, p_.most_new_in_week - p_.weeks[week].begun);
  now_.clear();
  for (const int s : sessions_[week]) now_.push_back(p_.sessions[static_cast<std::size_t>(s)]);
  load_price_.assign(now_.size(), {});
  families_.begin(week, now_, members_);
  at_ = {now_.size(), members_.size(), p_.families.size()};
  start_ = known_[week].start(at_, p_, members_);
  lists_.resize(now_.size());
  joining_.assign(now_.size(), nullptr);
  ways_.assign(now_.size(), Ways(members_.size(), kAnyWay));
  take_nothing();
}

// What always keeps every row: each session empty.
void WeekSolver::take_nothing() {
  best_ = {};
  best_.choice.assign(now_.size(), std::vector<int>(p_.drills.size(), -1));
  for (const Session& session : now_) {
    for (const int d : members_) {
      const auto at = static_cast<std::size_t>(d);
      if (!p_.kinds[static_cast<std::size_t>(session.kind)].options[at].empty()) best_.value -= p_.drills[at].left_out;
    }
    for (const Family& family : p_.families) best_.value -= family.required ? p_.uncovered : 0;
  }
  for (std::size_t f = 0; f < p_.families.size(); ++f) best_.value += families_.worth(f, 0) / kFine;
}

WeekAnswer WeekSolver::solve(std::size_t week, const std::vector<char>& set, const std::vector<char>& done, bool light,
                             const WeekEffort& effort) {
  // From the best prices of the same set a few rounds would see too little of what may be chosen.
  if (set == solved_[week]) known_[week].forget();
  solved_[week] = set;
  begin(week, set, done);
  if (now_.empty()) {
    best_.bound_fine = best_.value * kFine;
    return std::move(best_);
  }
  if (light) make_light(0);
  parts_.clear();
  closed_ = best_.value * kFine;
  start_new_drills(effort);
  for (int split = 0; split < effort.splits && split_highest(effort); ++split) {
  }
  best_.bound_fine = std::max(closed_, best_.value * kFine);
  for (const Part& part : parts_) best_.bound_fine = std::max(best_.bound_fine, part.proven);
  return std::move(best_);
}

void WeekSolver::make_light(std::size_t session) {
  Session& made = now_[session];
  for (std::size_t l = 0; l < 2; ++l) made.ceiling[l] = std::min(made.ceiling[l], made.hard[l]);
}

namespace {

// Every choice of 'size' of the bits, up to so many.
std::vector<std::uint32_t> choices(std::uint32_t bits, int size, std::size_t most) {
  std::vector<std::uint32_t> out;
  for (std::uint32_t some = bits; out.size() < most; some = (some - 1) & bits) {
    if (std::popcount(some) == size) out.push_back(some);
    if (some == 0) break;
  }
  return out;
}

}  // namespace

// Where the limits on new drills can bind, each way of letting some into the week and into its first session is a part
// of its own; what the later ones may still hold is counted when sessions are put together.
void WeekSolver::start_new_drills(const WeekEffort& effort) {
  if (std::popcount(unknown_) <= std::min(p_.most_new_in_session, new_left_)) return start_lights(0, effort);
  const int in_week = std::min(std::popcount(unknown_), new_left_);
  const std::vector<std::uint32_t> weeks = choices(unknown_, in_week, kMostWays + 1);
  for (std::size_t k = 0; k < std::min(weeks.size(), kMostWays); ++k) {
    for (const std::uint32_t first : choices(weeks[k], std::min(in_week, p_.most_new_in_session), kMostWays)) {
      for (std::size_t i = 0; i < now_.size(); ++i) leave_out(i, unknown_ & ~(i == 0 ? first : weeks[k]));
      start_lights(0, effort);
    }
  }
  if (weeks.size() <= kMostWays) return;
  for (std::size_t i = 0; i < now_.size(); ++i) leave_out(i, 0);
  find_prices(effort.rounds, false);
  closed_ = std::max(closed_, bound_);
}

void WeekSolver::leave_out(std::size_t session, std::uint32_t members) {
  for (std::size_t m = 0; m < members_.size(); ++m) ways_[session][m] = (members >> m & 1U) != 0 ? kLeftOut : kAnyWay;
}

// Of every close pair one session is light: each way is a part of its own.
void WeekSolver::start_lights(std::size_t pair, const WeekEffort& effort) {
  if (pair == close_[week_].size()) {
    look_at_part(effort, effort.rounds);
    return;
  }
  for (const int which : {close_[week_][pair].first, close_[week_][pair].second}) {
    const Loads before = now_[static_cast<std::size_t>(which)].ceiling;
    const std::vector<Ways> ways = ways_;
    make_light(static_cast<std::size_t>(which));
    start_lights(pair + 1, effort);
    now_[static_cast<std::size_t>(which)].ceiling = before;
    ways_ = ways;
  }
}

// A dose that takes more than a session's ceiling on its own.
void WeekSolver::leave_out_too_heavy() {
  for (std::size_t i = 0; i < now_.size(); ++i) {
    const Kind& kind = p_.kinds[static_cast<std::size_t>(now_[i].kind)];
    for (std::size_t m = 0; m < members_.size(); ++m) {
      const std::vector<Option>& all = kind.options[static_cast<std::size_t>(members_[m])];
      for (int o = 0; o < static_cast<int>(all.size()); ++o) {
        const Option& option = all[static_cast<std::size_t>(o)];
        for (std::size_t l = 0; l < kLoads; ++l) {
          if (option.loads[l] > now_[i].ceiling[l]) ways_[i][m] &= ~way_of(o);
        }
      }
    }
  }
}

// What now_ and ways_ allow, from prices_ of the same week on.
void WeekSolver::look_at_part(const WeekEffort& effort, int rounds) {
  leave_out_too_heavy();
  const std::int64_t proven = work_out(effort, rounds);
  if (proven - best_.value * kFine < kFine) return;
  Part part{{}, ways_, prices_, proven, most_doubtful()};
  for (const Session& session : now_) part.ceilings.push_back(session.ceiling);
  parts_.push_back(std::move(part));
}

// Where lists cannot close what the bound leaves open, the part is split at the drill of a session about whose dose the
// prices say least: the smaller doses, or none, in one half, the larger ones in the other.
bool WeekSolver::split_highest(const WeekEffort& effort) {
  const auto highest =
      std::max_element(parts_.begin(), parts_.end(), [](const Part& a, const Part& b) { return a.proven < b.proven; });
  if (highest == parts_.end() || highest->proven - best_.value * kFine < effort.worth_splitting * kFine) return false;
  const Part part = std::move(*highest);
  parts_.erase(highest);
  if (part.doubt.lower == 0) {
    closed_ = std::max(closed_, part.proven);
    return true;
  }
  for (std::size_t i = 0; i < now_.size(); ++i) now_[i].ceiling = part.ceilings[i];
  ways_ = part.ways;
  std::uint64_t& ways = ways_[part.doubt.session][part.doubt.member];
  const std::uint64_t all = ways;
  for (const std::uint64_t half : {all & part.doubt.lower, all & ~part.doubt.lower}) {
    start_ = part.prices;
    ways = half;
    look_at_part(effort, effort.rounds_of_a_half);
    if (!parts_.empty()) parts_.back().proven = std::min(parts_.back().proven, part.proven);
  }
  return true;
}

std::int64_t WeekSolver::bound(std::size_t week, const std::vector<char>& set, int rounds) {
  begin(week, set, std::vector<char>(set.size(), 0));
  find_prices(rounds, false);
  return bound_;
}

// The most of a week's ceiling that a use of the member takes in one piece.
double WeekSolver::share_of_ceilings(std::size_t session, std::size_t member) const {
  const Kind& kind = p_.kinds[static_cast<std::size_t>(now_[session].kind)];
  double share = 0;
  for (const Option& option : kind.options[static_cast<std::size_t>(members_[member])]) {
    for (std::size_t l = 0; l < kLoads; ++l)
      share = std::max(share, static_cast<double>(option.loads[l]) / std::max(1, p_.weeks[week_].ceiling[l]));
  }
  return std::min(1.0, share);
}

WeekSolver::Doubt WeekSolver::most_doubtful() const {
  Doubt out;
  double most = 0;
  for (std::size_t i = 0; i < now_.size(); ++i) {
    for (std::size_t m = 0; m < members_.size(); ++m) {
      // What uses much of a ceiling in one piece is what the prices get wrong, and whether it is used at all before how
      // much. Doses rise with the options.
      const double weight = kAnyDrill + share_of_ceilings(i, m);
      double below = 0;
      std::uint64_t ways = 0;
      for (std::size_t o = 0; o < lean_[i][m].size(); ++o) {
        below += lean_[i][m][o];
        ways |= std::uint64_t{1} << o;
        const double doubt = std::min(below, 1 - below);
        const double score = doubt < kDoubt ? 0 : doubt * weight * (o == 0 ? kUseFirst : 1);
        if (score <= most) continue;
        most = score;
        out = {i, m, ways};
      }
    }
  }
  return out.lower != 0 ? out : heaviest();
}

// Where the prices are sure of all and the lists still leave something open: what takes most of a ceiling in one piece,
// and may be done otherwise than they choose, more of it in one half, less in the other.
WeekSolver::Doubt WeekSolver::heaviest() const {
  Doubt out;
  double most = 0;
  for (std::size_t i = 0; i < now_.size(); ++i) {
    for (std::size_t m = 0; m < members_.size(); ++m) {
      const std::size_t count = lean_[i][m].size();
      const std::uint64_t ways = ways_[i][m] & ((std::uint64_t{1} << count) - 1);
      const double weight = kAnyDrill + share_of_ceilings(i, m);
      if (std::popcount(ways) < 2 || weight <= most) continue;
      most = weight;
      const auto chosen =
          static_cast<std::size_t>(std::max_element(lean_[i][m].begin(), lean_[i][m].end()) - lean_[i][m].begin());
      const std::uint64_t less = ways & ((std::uint64_t{1} << chosen) - 1);
      out = {i, m, less != 0 ? less : ways & (~ways + 1)};
    }
  }
  return out;
}

// Lists as far as they can matter: each session's from its own nearest on, further and further, until nothing that is
// not listed could be better.
std::int64_t WeekSolver::work_out(const WeekEffort& effort, int rounds) {
  find_prices(rounds, true);
  if (bound_ == SessionLister::kDoesNotFit) return best_.value * kFine;
  price_sessions(prices_);
  joins_left_ = effort.joins;
  nearest_.assign(now_.size(), 0);
  listed_to_.assign(now_.size(), 0);
  std::int64_t proven = bound_;
  for (std::int32_t reach = kFirstReach;; reach *= 2) {
    const std::int64_t known = best_.value * kFine;
    // Values are whole points: what is less than one above is not better.
    if (proven - known < kFine) return known;
    const std::int64_t open = bound_ - std::accumulate(nearest_.begin(), nearest_.end(), std::int64_t{0}) - known;
    const auto further = static_cast<std::int32_t>(std::min<std::int64_t>(reach, open));
    const bool whole = list(further, effort);
    const std::int64_t nearest = bound_ - std::accumulate(nearest_.begin(), nearest_.end(), std::int64_t{0});
    to_come_.assign(now_.size() + 1, 0);
    for (std::size_t i = now_.size(); i-- > 0;) to_come_[i] = to_come_[i + 1] + nearest_[i];
    join(0, bound_, {});
    if (!whole) return proven;
    if (joins_left_ <= 0) return std::min(proven, nearest);
    // What is not listed falls short of its own list's end, the others at least of their nearest.
    std::int32_t beyond = INT32_MAX;
    for (std::size_t i = 0; i < now_.size(); ++i) beyond = std::min(beyond, listed_to_[i] - nearest_[i]);
    proven = std::min(proven, nearest - beyond);
    proven = std::max(proven, best_.value * kFine);
  }
}

void WeekSolver::find_prices(int rounds, bool join) {
  prices_ = start_;
  bound_ = INT64_MAX;
  chosen_.clear();
  Bundle bundle(prices_, at_.scales(), at_.at_credit(0, 0));
  Prices gradient(at_.count(), 0);
  for (int round = 0; round < rounds; ++round) {
    const std::int64_t bound = evaluate(bundle.next(), gradient, join);
    if (bound == SessionLister::kDoesNotFit) {
      bound_ = bound;
      forget_leaning();
      return;
    }
    if (bound < bound_) {
      bound_ = bound;
      prices_ = bundle.next();
    }
    const double points = static_cast<double>(bound) / kFine;
    bundle.add(points, gradient, points * kFirstAim);
    if (bound_ < (best_.value + 1) * kFine) break;
    if (bundle.foretold_fall() < kLittle) break;
  }
  start_ = prices_;
  known_[week_].keep(at_, p_, members_, prices_);
  lean(bundle);
}

// How often each way is chosen in the rounds that balance each other.
void WeekSolver::lean(const Bundle& bundle) {
  forget_leaning();
  const std::vector<Bundle::Share> shares = bundle.shares();
  double all = 0;
  for (const Bundle::Share& share : shares) all += share.share;
  for (const Bundle::Share& share : shares) {
    for (std::size_t i = 0; i < now_.size(); ++i) {
      const Options& chosen = chosen_[share.round * now_.size() + i];
      for (std::size_t m = 0; m < members_.size(); ++m)
        lean_[i][m][static_cast<std::size_t>(chosen[m] + 1)] += share.share / all;
    }
  }
}

void WeekSolver::forget_leaning() {
  lean_.resize(now_.size());
  for (std::size_t i = 0; i < now_.size(); ++i) {
    const Kind& kind = p_.kinds[static_cast<std::size_t>(now_[i].kind)];
    lean_[i].resize(members_.size());
    for (std::size_t m = 0; m < members_.size(); ++m)
      lean_[i][m].assign(kind.options[static_cast<std::size_t>(members_[m])].size() + 1, 0);
  }
}

// Whole prices from those; the constants that they add to the bound.
std::int64_t WeekSolver::price_sessions(const Prices& prices) {
  std::int64_t constant = 0;
  const int whole = families_.whole_load();
  whole_prices_.use.resize(now_.size() * members_.size());
  whole_prices_.credit.resize(now_.size() * p_.families.size());
  whole_prices_.load.assign(now_.size(), 0);
  const auto fine = [](double points) { return std::lround(std::clamp(points * kFine, -kMostUse, kMostUse)); };
  for (std::size_t i = 0; i < now_.size(); ++i) {
    for (std::size_t m = 0; m < members_.size(); ++m)
      whole_prices_.use[at_.at_use(i, m)] = static_cast<std::int32_t>(fine(prices[at_.at_use(i, m)]));
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const double dearest = static_cast<double>(p_.families[f].weight * kFullPoints);
      const double price = std::clamp(prices[at_.at_credit(i, f)], 0.0, dearest);
      whole_prices_.credit[i * p_.families.size() + f] = static_cast<std::int32_t>(std::lround(price * kFine));
    }
    if (whole < 0) continue;
    const int ceiling = std::max(1, p_.weeks[week_].ceiling[static_cast<std::size_t>(whole)]);
    whole_prices_.load[i] = fine(prices[at_.at_whole(i)]) * (std::int64_t{1} << kLoadShift) / ceiling;
  }
  std::array<std::int64_t, kLoads> weekly{};
  for (std::size_t l = 0; l < kLoads; ++l) {
    if (static_cast<int>(l) == whole) continue;
    const int ceiling = p_.weeks[week_].ceiling[l];
    weekly[l] = unit_price(prices[at_.at_week_load(l)], ceiling);
    constant += ceiling_constant(weekly[l], ceiling);
  }
  for (std::size_t i = 0; i < now_.size(); ++i) {
    for (std::size_t l = 0; l < kLoads; ++l) {
      const std::int64_t own = unit_price(prices[at_.at_ceiling(i, l)], now_[i].ceiling[l]);
      constant += ceiling_constant(own, now_[i].ceiling[l]);
      load_price_[i][l] = own + weekly[l];
    }
  }
  return constant;
}

std::int64_t WeekSolver::session_at_prices(std::size_t i) {
  const int whole = families_.whole_load();
  return lister_.prepare(now_[i], members_, unknown_, ways_[i], [&](int member, const Option& option) {
    const auto d = static_cast<std::size_t>(members_[static_cast<std::size_t>(member)]);
    const int f = p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family;
    std::int64_t price =
        std::int64_t{whole_prices_.credit[i * p_.families.size() + static_cast<std::size_t>(f)]} * option.credits -
        whole_prices_.use[at_.at_use(i, static_cast<std::size_t>(member))];
    if (whole >= 0) price -= load_cost(whole_prices_.load[i], option.loads[static_cast<std::size_t>(whole)]);
    // Rounded down: what is taken off is never more than what the constants give back.
    for (std::size_t l = 0; l < kLoads; ++l) price -= load_cost(load_price_[i][l], option.loads[l]);
    constexpr std::int64_t kMost = (std::int64_t{1} << 22) - 1;
    return static_cast<std::int32_t>(std::clamp(price, -kMost, kMost));
  });
}

std::int64_t WeekSolver::evaluate(const Prices& prices, Prices& gradient, bool join) {
  std::int64_t bound = price_sessions(prices);
  std::fill(gradient.begin(), gradient.end(), 0);
  Joined sums;
  bool fits = true;
  std::vector<ListedSession> chosen;
  for (std::size_t i = 0; i < now_.size(); ++i) {
    const std::int64_t session = session_at_prices(i);
    if (session == SessionLister::kDoesNotFit) return SessionLister::kDoesNotFit;
    bound += session;
    chosen.push_back(lister_.best());
    const ListedSession& one = chosen.back();
    chosen_.push_back(one.option);
    for (std::size_t m = 0; m < members_.size(); ++m) gradient[at_.at_use(i, m)] -= one.option[m] >= 0 ? 1 : 0;
    for (std::size_t f = 0; f < p_.families.size(); ++f) gradient[at_.at_credit(i, f)] += one.credits[f];
    for (std::size_t l = 0; l < kLoads; ++l) {
      const int weekly = p_.weeks[week_].ceiling[l];
      const double share = static_cast<double>(one.loads[l]) / std::max(1, weekly);
      if (static_cast<int>(l) == families_.whole_load()) {
        gradient[at_.at_whole(i)] -= share;
      } else if (weekly > 0) {
        gradient[at_.at_week_load(l)] -= share;
      }
      if (now_[i].ceiling[l] > 0)
        gradient[at_.at_ceiling(i, l)] = 1 - static_cast<double>(one.loads[l]) / now_[i].ceiling[l];
      fits = fits && one.loads[l] <= now_[i].ceiling[l];
    }
  }
  for (std::size_t i = 0; join && fits && i < now_.size(); ++i) {
    joining_[i] = &chosen[i];
    fits = add(chosen[i], sums);
  }
  if (join && fits) look(sums);
  const std::int64_t families = families_.solve(now_, ways_, whole_prices_, family_choice_);
  if (families == SessionLister::kDoesNotFit) return families;
  bound += families;
  slope_of_families(gradient);
  return bound;
}

// What the families' side adds to the slope.
void WeekSolver::slope_of_families(Prices& gradient) const {
  const int whole = families_.whole_load();
  for (std::size_t i = 0; i < now_.size(); ++i) {
    const Kind& kind = p_.kinds[static_cast<std::size_t>(now_[i].kind)];
    for (std::size_t m = 0; m < members_.size(); ++m) {
      const int chosen = family_choice_[i * members_.size() + m];
      if (chosen < 0) continue;
      const auto d = static_cast<std::size_t>(members_[m]);
      const Option& option = kind.options[d][static_cast<std::size_t>(chosen)];
      const auto f = static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family);
      gradient[at_.at_use(i, m)] += 1;
      gradient[at_.at_credit(i, f)] -= option.credits;
      if (whole < 0) continue;
      const auto l = static_cast<std::size_t>(whole);
      gradient[at_.at_whole(i)] += static_cast<double>(option.loads[l]) / std::max(1, p_.weeks[week_].ceiling[l]);
    }
  }
  for (std::size_t l = 0; l < kLoads; ++l) {
    if (static_cast<int>(l) != whole && p_.weeks[week_].ceiling[l] > 0) gradient[at_.at_week_load(l)] += 1;
  }
}

// Each session's list from the nearest that keeps its ceilings on; where none is met, the nearest is further off.
// False: one was too long, what is there is a part of it.
bool WeekSolver::list(std::int32_t further, const WeekEffort& effort) {
  bool whole = true;
  for (std::size_t i = 0; i < now_.size(); ++i) {
    session_at_prices(i);
    listed_to_[i] = nearest_[i] + further;
    whole = lister_.list(listed_to_[i], effort.list_steps, lists_[i]) && whole;
    if (!whole) continue;
    nearest_[i] = lists_[i].empty() ? listed_to_[i] : lists_[i].front().short_of;
  }
  return whole;
}

// False: a ceiling of the week or a limit on new drills is passed.
bool WeekSolver::add(const ListedSession& one, Joined& sums) const {
  for (std::size_t l = 0; l < kLoads; ++l) {
    sums.loads[l] += one.loads[l];
    if (sums.loads[l] > p_.weeks[week_].ceiling[l]) return false;
  }
  if (const std::uint32_t fresh = one.fresh & ~sums.fresh; fresh != 0) {
    const int count = std::popcount(fresh);
    sums.fresh |= fresh;
    sums.fresh_count += count;
    if (count > p_.most_new_in_session || sums.fresh_count > new_left_) return false;
  }
  for (std::size_t f = 0; f < p_.families.size(); ++f) sums.credits[f] += one.credits[f];
  sums.cost += one.cost;
  return true;
}

void WeekSolver::look(const Joined& sums) {
  std::int64_t value = -sums.cost * kFine;
  for (std::size_t f = 0; f < p_.families.size(); ++f)
    value += families_.worth(f, static_cast<std::size_t>(sums.credits[f]));
  const Points points = value / kFine;
  if (points <= best_.value) return;
  best_.value = points;
  best_.choice.assign(now_.size(), std::vector<int>(p_.drills.size(), -1));
  for (std::size_t i = 0; i < now_.size(); ++i) {
    for (std::size_t m = 0; m < members_.size(); ++m)
      best_.choice[i][static_cast<std::size_t>(members_[m])] = joining_[i]->option[m];
  }
}

// left: what the sessions chosen so far leave of the bound, the best for the others.
void WeekSolver::join(std::size_t i, std::int64_t left, const Joined& so_far) {
  if (i + 1 == now_.size()) return join_last(left, so_far);
  for (const ListedSession& one : lists_[i]) {
    if (left - one.short_of - to_come_[i + 1] < (best_.value + 1) * kFine) break;
    if (--joins_left_ <= 0) return;
    Joined sums = so_far;
    joining_[i] = &one;
    if (add(one, sums)) join(i + 1, left - one.short_of, sums);
  }
}

// The same for the last session: where nearly all the work is.
void WeekSolver::join_last(std::int64_t left, const Joined& so_far) {
  const std::size_t families = p_.families.size();
  std::int64_t needed = (best_.value + 1) * kFine;
  for (const ListedSession& one : lists_.back()) {
    if (left - one.short_of < needed) break;
    if (--joins_left_ <= 0) return;
    std::int64_t value = -(so_far.cost + one.cost) * kFine;
    for (std::size_t f = 0; f < families; ++f)
      value += families_.worth(f, static_cast<std::size_t>(so_far.credits[f] + one.credits[f]));
    if (value < needed) continue;
    Joined sums = so_far;
    if (!add(one, sums)) continue;
    joining_.back() = &one;
    look(sums);
    needed = (best_.value + 1) * kFine;
  }
}

}  // namespace lanework::block
