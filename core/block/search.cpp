#include "core/block/search.h"

#include <algorithm>
#include <tuple>

#include "core/base/elementary.h"
#include "core/base/random.h"
#include "core/block/running_sums.h"
#include "core/block/session_kernel.h"

namespace lanework::block {
namespace {

// A step too long, or a hundredth of a ceiling too much, costs this much while the search still breaks it.
constexpr Points kBrokenPoints = 200;
// Points by which a worse plan is taken now and then, at the start and at the end.
constexpr double kHottest = 40;
constexpr double kColdest = 2;
// Fine points: what a drill outside the set is priced at.
constexpr std::int32_t kOutOfSet = 1 << 21;

class WordStream {
 public:
  explicit WordStream(std::uint64_t seed) : key_(random_key(seed)) {}
  std::uint32_t next() {
    if (used_ == 4) {
      words_ = philox({static_cast<std::uint32_t>(count_), static_cast<std::uint32_t>(count_ >> 32U), 0, 0}, key_);
      ++count_;
      used_ = 0;
    }
    return words_[used_++];
  }
  // Uniform in 0 .. count - 1.
  std::size_t below(std::size_t count) {
    return static_cast<std::size_t>((std::uint64_t{next()} * static_cast<std::uint64_t>(count)) >> 32U);
  }

 private:
  RandomKey key_;
  std::uint64_t count_ = 0;
  RandomBlock words_{};
  std::size_t used_ = 4;
};

struct Undo {
  std::size_t session;
  std::size_t drill;
  int option;
};
struct UndoMember {
  std::size_t spell;
  std::size_t drill;
  bool in;
};

class Searching {
 public:
  Searching(const Problem& problem, const Plan& start, const Guide& guide, std::uint64_t seed)
      : p_(problem),
        guide_(guide),
        sums_(problem, start),
        kernel_(problem),
        choice_(problem.drills.size(), -1),
        random_(seed) {
    note_best();
  }

  // Every session at prices, once.
  Found settled() {
    settle(0, spells() - 1);
    note_best();
    return std::move(best_);
  }

  Found with_better_sets(std::int64_t moves) {
    improve_sets(moves);
    return std::move(best_);
  }

  Found with_better_sessions(const SessionEffort& effort) {
    settle(0, spells() - 1);
    note_best();
    go_back_to_best();
    move_sessions(effort.session_moves);
    go_back_to_best();
    anneal_drills(effort.drill_moves);
    return std::move(best_);
  }

 private:
  const Problem& p_;
  const Guide& guide_;
  RunningSums sums_;
  SessionKernel kernel_;
  std::vector<std::int32_t> prices_;
  std::vector<int> choice_;
  WordStream random_;
  double temperature_ = 0;
  Found best_;
  std::vector<Undo> undo_;
  std::vector<UndoMember> undo_members_;

  [[nodiscard]] std::size_t spells() const { return static_cast<std::size_t>(p_.spells); }

  void move_sessions(std::int64_t moves) {
    for (std::int64_t move = 0; move < moves; ++move) {
      const double part = static_cast<double>(move) / static_cast<double>(moves);
      temperature_ = kHottest * elementary_exp(part * elementary_log(kColdest / kHottest));
      begin();
      const Points before = score();
      solve_session(random_session(), chance(), 0.2);
      end(before);
    }
  }

  void anneal_drills(std::int64_t moves) {
    constexpr std::int64_t kStretch = 256;  // moves at one temperature
    for (std::int64_t move = 0; move < moves; ++move) {
      if (move % kStretch == 0) {
        const double part = static_cast<double>(move) / static_cast<double>(moves);
        temperature_ = kHottest * elementary_exp(part * elementary_log(kColdest / kHottest));
      }
      begin();
      const Points before = score();
      const std::uint32_t kind = random_.next() >> 22U;  // 0 .. 1023
      if (kind < 350) {
        change_one(random_session());
      } else if (kind < 720) {
        const std::size_t s = random_session();
        change_one(s);
        change_one(s);
      } else {
        exchange();
      }
      end(before);
    }
  }

  // Every session of the spells at prices, first those of the bound, then nearer and nearer the true margins.
  void settle(std::size_t first, std::size_t last) {
    for (const double towards_margin : {0.2, 0.5, 0.8}) {
      for (std::size_t p = first; p <= last; ++p) {
        for (const int s : sums_.sessions_of(p)) solve_session(static_cast<std::size_t>(s), towards_margin, 0);
      }
    }
  }

  void note_best() {
    const bool feasible = sums_.broken() == 0;
    const bool better = feasible ? !best_.feasible || sums_.value() > best_.value : best_.plan.sets.empty();
    if (!better) return;
    best_.plan = sums_.plan();
    best_.value = sums_.value();
    best_.feasible = feasible;
  }
  void go_back_to_best() {
    if (best_.feasible) sums_ = RunningSums(p_, best_.plan);
  }

  void begin() {
    undo_.clear();
    undo_members_.clear();
  }
  void end(Points before) {
    if (undo_.empty() && undo_members_.empty()) return;
    if (accepts(score() - before)) {
      note_best();
    } else {
      take_back();
    }
  }

  // The session's best at linear prices: credits between what one more is worth now and the bound's own price,
  // some way off either by chance.
  void solve_session(std::size_t s, double towards_margin, double noise) {
    const Session& session = p_.sessions[s];
    const auto w = static_cast<std::size_t>(session.week);
    const auto spell = static_cast<std::size_t>(session.spell);
    std::array<double, catalogue::kFamilies> price{};
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const int own = own_credits(s, f);
      const int others = sums_.credits(w, f) - own;
      const int credits = others + static_cast<int>(own * (noise > 0 ? chance() : 0.5));
      const double margin = static_cast<double>(slope(p_.families[f], p_.weeks[w].target[f], credits));
      price[f] = towards_margin * margin + (1 - towards_margin) * guide_.credit[s][f];
      price[f] *= 1 + noise * (2 * chance() - 1);
    }
    std::array<double, kLoads> load = guide_.load[s];
    for (double& l : load) l *= 1 + noise * (2 * chance() - 1);
    const Loads room = room_for(s);
    constexpr int kRises = 4;
    for (int rise = 0;; ++rise) {
      price_members(s, price, load);
      kernel_.solve(session, prices_, choice_);
      const Loads used = used_by_choice(s);
      bool keeps = true;
      for (std::size_t l = 0; l < kLoads; ++l) {
        if (used[l] <= room[l]) continue;
        keeps = false;
        // At this price all that may be used is worth one session's full dose of a heavy family.
        const double dear = 300.0 / std::max(1, room[l]);
        load[l] = std::max(load[l] * 1.6, dear);
      }
      if (keeps) break;
      if (rise == kRises) {
        cut_down(s, room);
        break;
      }
    }
    for (const int member : sums_.members(spell)) {
      const auto d = static_cast<std::size_t>(member);
      if (choice_[d] < 0) set(s, d, -1);
    }
    for (const int member : sums_.members(spell)) {
      const auto d = static_cast<std::size_t>(member);
      if (choice_[d] >= 0) set(s, d, choice_[d]);
    }
  }

  // What the session may use: its own ceilings, what the other sessions leave of the week's, and no more than a
  // session that is not hard where one of those close to it is.
  [[nodiscard]] Loads room_for(std::size_t s) const {
    const Session& session = p_.sessions[s];
    const auto w = static_cast<std::size_t>(session.week);
    Loads room = session.ceiling;
    const bool light = sums_.hard_nearby(s);
    for (std::size_t l = 0; l < kLoads; ++l) {
      room[l] = std::min(room[l], p_.weeks[w].ceiling[l] - sums_.week_load(w, l) + sums_.session_load(s, l));
      if (light && l < 2) room[l] = std::min(room[l], session.hard[l]);
    }
    return room;
  }

  void price_members(std::size_t s, const std::array<double, catalogue::kFamilies>& price,
                     const std::array<double, kLoads>& load) {
    const Session& session = p_.sessions[s];
    prices_.assign(static_cast<std::size_t>(kernel_.first_option(session.kind).back()), -kOutOfSet);
    for (const int member : sums_.members(static_cast<std::size_t>(session.spell))) {
      const auto d = static_cast<std::size_t>(member);
      const auto f = static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family);
      const std::vector<Option>& all = options(s, d);
      const auto first = static_cast<std::size_t>(kernel_.first_option(session.kind)[d]);
      for (std::size_t o = 0; o < all.size(); ++o) {
        double points = price[f] * all[o].credits + static_cast<double>(p_.drills[d].left_out - all[o].departure);
        for (std::size_t l = 0; l < kLoads; ++l) points -= load[l] * all[o].loads[l];
        prices_[first + o] = static_cast<std::int32_t>(std::clamp(points, -8000.0, 8000.0) * kFine);
      }
    }
  }

  [[nodiscard]] Loads used_by_choice(std::size_t s) const {
    Loads used{};
    for (const int member : sums_.members(static_cast<std::size_t>(p_.sessions[s].spell))) {
      const auto d = static_cast<std::size_t>(member);
      if (choice_[d] < 0) continue;
      const Option& option = options(s, d)[static_cast<std::size_t>(choice_[d])];
      for (std::size_t l = 0; l < kLoads; ++l) used[l] += option.loads[l];
    }
    return used;
  }

  // Where prices did not do it: the drill that uses most of what is short goes, until it fits.
  void cut_down(std::size_t s, const Loads& room) {
    for (std::size_t l = 0; l < kLoads; ++l) {
      while (used_by_choice(s)[l] > room[l]) {
        std::size_t most = choice_.size();
        int amount = 0;
        for (const int member : sums_.members(static_cast<std::size_t>(p_.sessions[s].spell))) {
          const auto d = static_cast<std::size_t>(member);
          if (choice_[d] < 0) continue;
          const int uses = options(s, d)[static_cast<std::size_t>(choice_[d])].loads[l];
          if (uses > amount) {
            amount = uses;
            most = d;
          }
        }
        if (most == choice_.size()) return;
        choice_[most] = -1;
      }
    }
  }

  [[nodiscard]] int own_credits(std::size_t s, std::size_t f) const {
    int sum = 0;
    for (const int member : sums_.members(static_cast<std::size_t>(p_.sessions[s].spell))) {
      const auto d = static_cast<std::size_t>(member);
      const int option = sums_.option(s, d);
      if (option < 0 || p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family != static_cast<int>(f)) continue;
      sum += options(s, d)[static_cast<std::size_t>(option)].credits;
    }
    return sum;
  }

  [[nodiscard]] int family_of(std::size_t d) const {
    return p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family;
  }

  static Points slope(const Family& family, int target, int credits) {
    if (credits < target) return family.weight * kFullPoints;
    return credits < target + target / 2 ? family.weight * kLessPoints : 0;
  }

  double chance() { return uniform_from(random_.next()); }

  [[nodiscard]] const std::vector<Option>& options(std::size_t s, std::size_t d) const {
    return p_.kinds[static_cast<std::size_t>(p_.sessions[s].kind)].options[d];
  }
  [[nodiscard]] Points score() const { return sums_.value() - kBrokenPoints * sums_.broken(); }

  void set(std::size_t s, std::size_t d, int option) {
    const int before = sums_.option(s, d);
    if (before == option) return;
    undo_.push_back({s, d, before});
    sums_.set_option(s, d, option);
  }
  void set_member(std::size_t p, std::size_t d, bool in) {
    undo_members_.push_back({p, d, !in});
    sums_.set_member(p, d, in);
  }
  void take_back() {
    // Uses of those that came in go first, then the sets, then the uses of those that had left.
    for (auto it = undo_.rbegin(); it != undo_.rend(); ++it) {
      if (it->option < 0) sums_.set_option(it->session, it->drill, -1);
    }
    for (auto it = undo_members_.rbegin(); it != undo_members_.rend(); ++it) {
      sums_.set_member(it->spell, it->drill, it->in);
    }
    for (auto it = undo_.rbegin(); it != undo_.rend(); ++it) sums_.set_option(it->session, it->drill, it->option);
  }

  bool accepts(Points gain) {
    if (gain >= 0) return true;
    const double worse = static_cast<double>(gain);
    if (worse < -12 * temperature_) return false;
    return worse > temperature_ * elementary_log(uniform_from(random_.next()));
  }

  std::size_t random_session() { return random_.below(p_.sessions.size()); }

  // Another option of a drill of the set, or none.
  void change_one(std::size_t s) {
    const std::vector<int>& members = sums_.members(static_cast<std::size_t>(p_.sessions[s].spell));
    if (members.empty()) return;
    const auto d = static_cast<std::size_t>(members[random_.below(members.size())]);
    const std::size_t count = options(s, d).size();
    if (count == 0) return;
    const int before = sums_.option(s, d);
    // One of the others: -1 and the options without the one before.
    auto option = static_cast<int>(random_.below(count)) - 1;
    if (option >= before) ++option;
    set(s, d, option);
  }

  // A drill is given more in one session and less in another of the same week.
  void exchange() {
    const std::size_t a = random_session();
    const std::size_t b = random_session();
    if (a == b || p_.sessions[a].week != p_.sessions[b].week) return change_one(a);
    const std::vector<int>& members = sums_.members(static_cast<std::size_t>(p_.sessions[a].spell));
    if (members.empty()) return;
    const auto d = static_cast<std::size_t>(members[random_.below(members.size())]);
    const int in_a = sums_.option(a, d);
    const int in_b = sums_.option(b, d);
    if (in_a >= static_cast<int>(options(b, d).size()) || in_b >= static_cast<int>(options(a, d).size())) return;
    if (in_a != in_b) {
      set(a, d, in_b);
      set(b, d, in_a);
      return;
    }
    change_one(a);
    change_one(b);
  }

  // What the score gains when a drill comes into the spell's set or leaves it, seen on one week of the spell.
  Points gain_of(std::size_t p, std::size_t d, const std::vector<std::size_t>& week, Points before) {
    begin();
    const bool in = !sums_.member(p, d);
    if (!in) {
      for (const std::size_t s : week) set(s, d, -1);
      for (const int s : sums_.sessions_of(p)) set(static_cast<std::size_t>(s), d, -1);
    }
    set_member(p, d, in);
    for (const std::size_t s : week) solve_session(s, 0.5, 0);
    for (const std::size_t s : week) solve_session(s, 0.9, 0);
    const Points gain = score() - before;
    take_back();
    return gain;
  }

  // Swaps tried where a look at one week of the spell says that they are worth most.
  void improve_sets(std::int64_t moves) {
    temperature_ = kColdest;
    std::int64_t done = 0;
    while (done < moves) {
      bool better = false;
      for (std::size_t p = 0; p < spells() && done < moves; ++p) better = improve_set(p, moves, done) || better;
      if (!better) break;
    }
  }

  struct Swap {
    std::size_t in;
    std::size_t out;
    Points promise;
  };

  bool improve_set(std::size_t p, std::int64_t moves, std::int64_t& done) {
    constexpr std::size_t kTried = 12;
    std::vector<Swap> swaps = promising(p);
    done += static_cast<std::int64_t>(p_.drills.size()) / 8;
    bool better = false;
    for (std::size_t i = 0; i < std::min(kTried, swaps.size()) && done < moves; ++i) {
      for (const std::size_t last : {spells() - 1, p}) {
        if (sums_.member(p, swaps[i].in) || !sums_.member(p, swaps[i].out)) continue;
        ++done;
        begin();
        const Points before = score();
        for (std::size_t q = p; q <= last; ++q) swap(q, swaps[i].in, swaps[i].out);
        settle(p, last);
        if (score() > before) {
          note_best();
          better = true;
        } else {
          take_back();
        }
        if (last == p) break;
      }
    }
    return better;
  }

  std::vector<Swap> promising(std::size_t p) {
    std::vector<std::size_t> week;
    const std::vector<int>& sessions = sums_.sessions_of(p);
    if (sessions.empty()) return {};
    const int middle = p_.sessions[static_cast<std::size_t>(sessions[sessions.size() / 2])].week;
    for (const int s : sessions) {
      if (p_.sessions[static_cast<std::size_t>(s)].week == middle) week.push_back(static_cast<std::size_t>(s));
    }
    begin();
    for (const std::size_t s : week) solve_session(s, 0.5, 0);
    for (const std::size_t s : week) solve_session(s, 0.9, 0);
    const Points before = score();
    take_back();
    std::vector<Points> gain(p_.drills.size(), 0);
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      bool open = false;
      for (const std::size_t s : week) open = open || !options(s, d).empty();
      if (open || sums_.member(p, d)) gain[d] = gain_of(p, d, week, before);
    }
    std::vector<Swap> swaps;
    for (std::size_t in = 0; in < gain.size(); ++in) {
      if (sums_.member(p, in)) continue;
      for (const int out : sums_.members(p)) {
        const auto o = static_cast<std::size_t>(out);
        if (family_of(in) != family_of(o)) continue;
        swaps.push_back({in, o, gain[in] + gain[o]});
      }
    }
    std::sort(swaps.begin(), swaps.end(), [](const Swap& a, const Swap& b) {
      return std::tie(b.promise, a.in, a.out) < std::tie(a.promise, b.in, b.out);
    });
    return swaps;
  }

  void swap(std::size_t p, std::size_t in, std::size_t out) {
    if (sums_.member(p, in) || !sums_.member(p, out)) return;
    for (const int s : sums_.sessions_of(p)) set(static_cast<std::size_t>(s), out, -1);
    set_member(p, out, false);
    set_member(p, in, true);
  }
};

bool better(const Found& a, const Found& b) { return a.feasible != b.feasible ? a.feasible : a.value > b.value; }

}  // namespace

std::vector<Found> search_sets(const Problem& problem, const std::vector<Sets>& starts, const Guide& guide,
                               std::int64_t set_moves) {
  std::vector<Found> found;
  for (const Sets& sets : starts) {
    Plan plan = empty_plan(problem);
    plan.sets = sets;
    found.push_back(Searching(problem, plan, guide, 1).settled());
  }
  std::stable_sort(found.begin(), found.end(), better);
  if (set_moves > 0 && !found.empty()) {
    Found improved = Searching(problem, found.front().plan, guide, 1).with_better_sets(set_moves);
    if (better(improved, found.front())) found.insert(found.begin(), std::move(improved));
  }
  return found;
}

Found search_sessions(const Problem& problem, const Plan& start, const Guide& guide, const SessionEffort& effort,
                      std::uint64_t seed) {
  return Searching(problem, start, guide, seed).with_better_sessions(effort);
}

}  // namespace lanework::block
