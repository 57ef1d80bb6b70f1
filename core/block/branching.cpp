#include "core/block/branching.h"

#include <algorithm>
#include <cmath>

#include "core/block/bundle.h"
#include "core/block/set_limits.h"

namespace lanework::block {
namespace {

// The first step of prices aims at this share of the first bound; points that are not worth another round.
constexpr double kFirstAim = 0.95;
constexpr double kLittle = 4;
// Points that a line handed on may be off, its slope being kept in single precision.
constexpr double kRounding = 0.5;
// Of drills that the prices are sure of, one that would come in is settled before one that would stay.
constexpr double kNewFirst = 0.1;
// A drill that leans less than this to either side is settled next by what is wished, not by doubt.
constexpr double kDoubt = 0.02;

}  // namespace

Branching::Branching(const Problem& problem, int spell)
    : p_(problem),
      spell_(static_cast<std::size_t>(spell)),
      open_(open_part(problem, spell)),
      dual_(open_.problem, open_.times),
      last_prices_(dual_.first_prices()) {}

std::size_t Branching::family_of(std::size_t d) const {
  return static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family);
}

// A family with all its places taken leaves the others out; one with just enough drills left takes them.
bool Branching::settle_family(std::vector<Settled>& spell, std::size_t f, bool& changed) const {
  int in = 0;
  int open = 0;
  for (std::size_t d = 0; d < spell.size(); ++d) {
    if (family_of(d) != f) continue;
    in += spell[d] == Settled::kIn ? 1 : 0;
    open += spell[d] == Settled::kOpen ? 1 : 0;
  }
  const int size = p_.families[f].drills;
  if (in > size || in + open < size) return false;
  if (open == 0 || (in < size && in + open > size)) return true;
  for (std::size_t d = 0; d < spell.size(); ++d) {
    if (family_of(d) == f && spell[d] == Settled::kOpen) spell[d] = in == size ? Settled::kOut : Settled::kIn;
  }
  changed = true;
  return true;
}

// Where as many come in, or leave, as may, the others do not.
bool Branching::settle_swaps(std::vector<Settled>& spell, const std::vector<char>& before, int most,
                             bool& changed) const {
  int come_in = 0;
  int leave = 0;
  for (std::size_t d = 0; d < spell.size(); ++d) {
    come_in += spell[d] == Settled::kIn && before[d] == 0 ? 1 : 0;
    leave += spell[d] == Settled::kOut && before[d] != 0 ? 1 : 0;
  }
  if (come_in > most || leave > most) return false;
  for (std::size_t d = 0; d < spell.size(); ++d) {
    if (spell[d] != Settled::kOpen) continue;
    if (come_in == most && before[d] == 0) {
      spell[d] = Settled::kOut;
      changed = true;
    } else if (leave == most && before[d] != 0) {
      spell[d] = Settled::kIn;
      changed = true;
    }
  }
  return true;
}

std::vector<char> Branching::set_before(const SettledSets& settled) const {
  std::vector<char> before;
  for (std::size_t d = 0; d < p_.drills.size(); ++d) {
    const bool in = spell_ == 0 ? p_.drills[d].current : settled[spell_ - 1][d] == Settled::kIn;
    before.push_back(in ? 1 : 0);
  }
  return before;
}

bool Branching::settle_what_follows(SettledSets& settled) const {
  const std::vector<char> before = set_before(settled);
  for (bool changed = true; changed;) {
    changed = false;
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      if (!settle_family(settled[spell_], f, changed)) return false;
    }
    if (!settle_swaps(settled[spell_], before, most_swaps_of(p_, spell_), changed)) return false;
  }
  return true;
}

void Branching::open(const Sets& before, std::int64_t before_fine, int rounds) {
  Part whole;
  whole.prices = last_prices_;
  whole.before = before_fine;
  whole.bound = INT64_MAX;
  for (std::size_t p = 0; p < spell_; ++p) {
    whole.settled.emplace_back();
    for (const char in : before[p]) whole.settled[p].push_back(in != 0 ? Settled::kIn : Settled::kOut);
  }
  whole.settled.emplace_back();
  for (const Drill& drill : p_.drills)
    whole.settled.back().push_back(must_be(drill, spell_) ? Settled::kIn : Settled::kOpen);
  if (!settle_what_follows(whole.settled)) return;
  look_at(std::move(whole), rounds);
  if (!parts_.empty()) last_prices_ = parts_.back().prices;
}

bool Branching::split(int rounds, Points known) {
  const auto highest =
      std::max_element(parts_.begin(), parts_.end(), [](const Part& a, const Part& b) { return a.bound < b.bound; });
  if (highest == parts_.end() || highest->bound < (known + 1) * kFine || highest->bound <= closed_) return false;
  const Part part = std::move(*highest);
  parts_.erase(highest);
  const std::size_t d = most_doubtful(part);
  for (const Settled side : {Settled::kIn, Settled::kOut}) {
    Part half = part;
    half.settled[spell_][d] = side;
    if (settle_what_follows(half.settled)) look_at(std::move(half), rounds);
  }
  return true;
}

bool Branching::only_sets(const Part& part, Sets& sets) const {
  sets.clear();
  for (const std::vector<Settled>& spell : part.settled) {
    sets.emplace_back();
    for (const Settled one : spell) {
      if (one == Settled::kOpen) return false;
      sets.back().push_back(one == Settled::kIn ? 1 : 0);
    }
  }
  return true;
}

void Branching::look_at(Part part, int rounds) {
  if (Sets sets; only_sets(part, sets)) {
    if (!keeps_set_limits(p_, sets)) return;
    wished_ = sets;
    closed_ = std::max(closed_, std::min(part.bound, worth_at_most(sets)));
    return;
  }
  if (!dual_.settle(part.settled)) return;
  Bundle bundle(part.prices, dual_.scales(), dual_.layout().credit);
  bundle.set_step(part.step);
  DualPoint point;
  std::vector<Look> looks;
  std::int64_t own = INT64_MAX;
  for (int round = 0; round < rounds; ++round) {
    dual_.evaluate(bundle.next(), point);
    ++rounds_;
    if (point.bound < own) {
      own = point.bound;
      part.prices = bundle.next();
    }
    const double points = static_cast<double>(point.bound) / kFine;
    if (round == 0) looks = hand_on(part, points, bundle);
    bundle.add(points, point.gradient, points * kFirstAim);
    looks.push_back(look_of(point, bundle.last_at_zero()));
    if (bundle.foretold_fall() < kLittle) break;
  }
  part.bound = std::min(part.bound, part.before + own);
  part.step = bundle.step();
  lean(std::move(looks), bundle, part);
  wish(part);
  parts_.push_back(std::move(part));
}

double Branching::value_at(const Look& look, const std::vector<double>& prices) {
  double value = look.at_zero;
  for (std::size_t i = 0; i < prices.size(); ++i) value += static_cast<double>(look.slope[i]) * prices[i];
  return value;
}

// The lines of the part's looks that still hold go to the bundle. Where a price lies above what a credit is worth at
// the most it counts as that, so that a line found there may lie too high: such a one shows at the start, 'points'
// there.
std::vector<Branching::Look> Branching::hand_on(Part& part, double points, Bundle& bundle) const {
  std::vector<Look> looks;
  for (Look& look : part.looks) {
    if (!still_holds(look, part.settled) || value_at(look, bundle.next()) > points + kRounding) continue;
    bundle.know(look.at_zero, look.slope);
    looks.push_back(std::move(look));
  }
  part.looks.clear();
  return looks;
}

Branching::Look Branching::look_of(const DualPoint& point, double at_zero) const {
  Look look;
  look.at_zero = at_zero;
  for (const double slope : point.gradient) look.slope.push_back(static_cast<float>(slope));
  for (const FamilyPattern& pattern : point.patterns) look.members.push_back(pattern.members[spell_]);
  look.used.assign(p_.drills.size(), 0);
  for (const std::vector<int>& session : point.choice) {
    for (std::size_t d = 0; d < session.size(); ++d) {
      if (session[d] >= 0) look.used[d] = 1;
    }
  }
  return look;
}

// May the choice that it comes from still be made?
bool Branching::still_holds(const Look& look, const SettledSets& settled) const {
  for (std::size_t f = 0; f < p_.families.size(); ++f) {
    const std::vector<int>& drills = dual_.family(f).drills();
    for (std::size_t i = 0; i < drills.size(); ++i) {
      const auto d = static_cast<std::size_t>(drills[i]);
      const bool member = (look.members[f] >> i & 1U) != 0;
      const Settled now = settled[spell_][d];
      if (now == Settled::kIn && !member) return false;
      if (now == Settled::kOut && (member || look.used[d] != 0)) return false;
    }
  }
  return true;
}

// How the families' sides of the looks that balance each other lean. Those are kept.
void Branching::lean(std::vector<Look> looks, const Bundle& bundle, Part& part) const {
  part.leaning.assign(p_.drills.size(), 0);
  part.looks.clear();
  const std::vector<Bundle::Share> shares = bundle.shares();
  double all = 0;
  for (const Bundle::Share& share : shares) all += share.share;
  for (const Bundle::Share& share : shares) {
    Look& look = looks[share.round];
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const std::vector<int>& drills = dual_.family(f).drills();
      for (std::size_t i = 0; i < drills.size(); ++i) {
        if ((look.members[f] >> i & 1U) != 0) part.leaning[static_cast<std::size_t>(drills[i])] += share.share / all;
      }
    }
    part.looks.push_back(std::move(look));
  }
}

void Branching::wish(const Part& part) {
  wished_.clear();
  for (std::size_t p = 0; p < spell_; ++p) {
    wished_.emplace_back();
    for (const Settled one : part.settled[p]) wished_[p].push_back(one == Settled::kIn ? 1 : 0);
  }
  std::vector<char> wished;
  for (const double lean : part.leaning) wished.push_back(lean >= 0.5 ? 1 : 0);
  // In the first spell places that the routine does not fill are filled already.
  const std::vector<char> before = spell_ == 0 ? empty_plan(p_).sets.front() : set_before(part.settled);
  const int filled = spell_ == 0 ? coming_in(p_, {before}, 0) : 0;
  const int least = spell_ == 0 ? 0 : p_.least_swaps;
  wished_.push_back(nearest_set(p_, spell_, part.leaning, before, wished, least, most_swaps_of(p_, spell_) - filled));
}

// The open drill about whose place the prices say least; where they are sure of all, one that they want in.
std::size_t Branching::most_doubtful(const Part& part) const {
  const std::vector<char> before = set_before(part.settled);
  std::size_t doubtful = 0;
  std::size_t wanted = 0;
  double most_doubt = 0;
  double most = -1;
  for (std::size_t d = 0; d < p_.drills.size(); ++d) {
    if (part.settled[spell_][d] != Settled::kOpen) continue;
    const double doubt = std::min(part.leaning[d], 1 - part.leaning[d]);
    const double score = doubt < kDoubt ? 0 : doubt * static_cast<double>(p_.families[family_of(d)].weight);
    if (score > most_doubt) {
      most_doubt = score;
      doubtful = d;
    }
    const double wish = part.leaning[d] + (before[d] == 0 ? kNewFirst : 0);
    if (wish > most) {
      most = wish;
      wanted = d;
    }
  }
  return most_doubt > 0 ? doubtful : wanted;
}

std::int64_t Branching::bound_fine() const {
  std::int64_t bound = closed_;
  for (const Part& part : parts_) bound = std::max(bound, part.bound);
  return bound;
}

}  // namespace lanework::block
