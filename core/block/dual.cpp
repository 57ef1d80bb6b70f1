#include "core/block/dual.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "core/block/load_price.h"

namespace lanework::block {
namespace {

// Found by trial, docs/model/block.md.
constexpr double kUseScale = 1.0;
constexpr double kCreditScale = 0.3;
constexpr double kLoadScale = 6.0;
constexpr double kSwapScale = 2.0;
// Of what a credit is worth at the most.
constexpr double kFirstShare = 0.7;

constexpr std::int32_t kMostPrice = (std::int32_t{1} << 22) - 1;
// A use is charged or paid at most this; with the credits of an option it stays below kMostPrice.
constexpr std::int32_t kMostUse = std::int32_t{1} << 20;

std::int32_t fine(double points) {
  const double scaled = std::clamp(points * kFine, -static_cast<double>(kMostUse), static_cast<double>(kMostUse));
  return static_cast<std::int32_t>(std::lround(scaled));
}
std::int32_t fine_price(double points) { return std::max(0, fine(points)); }

}  // namespace

Layout::Layout(const Problem& problem) {
  const std::size_t sessions = problem.sessions.size();
  const std::size_t weeks = problem.weeks.size();
  const auto spells = static_cast<std::size_t>(problem.spells);
  const auto place = [&](std::size_t& where, std::size_t entries) {
    where = count;
    count += entries;
  };
  place(use, sessions * problem.drills.size());
  place(credit, sessions * problem.families.size());
  place(week_load, weeks * kLoads);
  place(ceiling, sessions * kLoads);
  place(light, sessions * 2);
  place(apart, problem.close.size());
  const bool limited = std::any_of(problem.sessions.begin(), problem.sessions.end(),
                                   [](const Session& session) { return session.unknown < kAnyNumber; });
  place(unknown, limited ? sessions : 0);
  place(most_in, spells);
  place(least_in, spells);
}

Dual::Dual(const Problem& problem, std::vector<int> times)
    : p_(problem),
      times_(std::move(times)),
      layout_(problem),
      kernel_(problem),
      close_of_(problem.sessions.size()),
      earns_(problem.sessions.size() * problem.drills.size()),
      pays_(problem.sessions.size()),
      light_choice_(problem.drills.size()) {
  for (std::size_t f = 0; f < problem.families.size(); ++f)
    family_kernels_.emplace_back(problem, static_cast<int>(f), times_);
  settle(SettledSets(static_cast<std::size_t>(problem.spells),
                     std::vector<Settled>(problem.drills.size(), Settled::kOpen)));
  for (std::size_t i = 0; i < problem.close.size(); ++i) {
    close_of_[static_cast<std::size_t>(problem.close[i].first)].push_back(static_cast<int>(i));
    close_of_[static_cast<std::size_t>(problem.close[i].second)].push_back(static_cast<int>(i));
  }
}

std::vector<double> Dual::first_prices() const {
  std::vector<double> prices(layout_.count, 0);
  for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const auto dearest = static_cast<double>(p_.families[f].weight * kFullPoints);
      prices[layout_.credit + s * p_.families.size() + f] = dearest * kFirstShare;
    }
  }
  return prices;
}

std::vector<double> Dual::scales() const {
  std::vector<double> scales(layout_.count, kUseScale);
  const auto place = [&](std::size_t i) { return scales.begin() + static_cast<std::ptrdiff_t>(i); };
  std::fill(place(layout_.credit), place(layout_.week_load), kCreditScale);
  std::fill(place(layout_.week_load), place(layout_.unknown), kLoadScale);
  std::fill(place(layout_.most_in), scales.end(), kSwapScale);
  return scales;
}

bool Dual::settle(const SettledSets& settled) {
  settled_ = settled;
  drills_settled_.assign(p_.families.size(), {});
  bool any = true;
  for (std::size_t f = 0; f < p_.families.size(); ++f) {
    const std::vector<int>& drills = family_kernels_[f].drills();
    for (const std::vector<Settled>& spell : settled) {
      std::uint32_t in = 0;
      std::uint32_t out = 0;
      for (std::size_t i = 0; i < drills.size(); ++i) {
        const Settled one = spell[static_cast<std::size_t>(drills[i])];
        if (one == Settled::kIn) in |= std::uint32_t{1} << i;
        if (one == Settled::kOut) out |= std::uint32_t{1} << i;
      }
      drills_settled_[f].in.push_back(in);
      drills_settled_[f].out.push_back(out);
      const int size = p_.families[f].drills;
      any = any && std::popcount(in) <= size && static_cast<int>(drills.size()) - std::popcount(out) >= size;
    }
  }
  return any;
}

void Dual::evaluate(const std::vector<double>& prices, DualPoint& out) {
  out.bound = 0;
  out.gradient.assign(layout_.count, 0);
  out.choice.resize(p_.sessions.size());
  out.patterns.resize(p_.families.size());
  for (std::size_t s = 0; s < p_.sessions.size(); ++s) session_side(prices, s, out);
  for (std::size_t i = 0; i < earns_.size(); ++i) earns_[i] = fine(prices[layout_.use + i]);
  const SetPrices set = set_side(prices, out);
  for (std::size_t f = 0; f < p_.families.size(); ++f) family_side(prices, set, f, out);
  constants(prices, out);
}

std::size_t Dual::family_of(std::size_t drill) const {
  return static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(p_.drills[drill].group)].family);
}

// Above what a credit is worth at the most, a price only raises the bound.
std::int32_t Dual::credit_price(const std::vector<double>& prices, std::size_t s, std::size_t f) const {
  const auto dearest = static_cast<std::int32_t>(p_.families[f].weight * kFullPoints * kFine);
  return std::min(fine_price(prices[layout_.credit + s * p_.families.size() + f]), dearest);
}

void Dual::price_options(const Session& session, const LoadPrices& loads, const std::vector<double>& prices,
                         std::size_t s) {
  const Kind& kind = p_.kinds[static_cast<std::size_t>(session.kind)];
  option_price_.clear();
  for (std::size_t d = 0; d < p_.drills.size(); ++d) {
    const std::int64_t a_credit = credit_price(prices, s, family_of(d));
    std::int64_t a_use = fine(prices[layout_.use + s * p_.drills.size() + d]);
    if (p_.drills[d].unknown && session.unknown < kAnyNumber) a_use += fine_price(prices[layout_.unknown + s]);
    const bool out = settled_[static_cast<std::size_t>(session.spell)][d] == Settled::kOut;
    for (const Option& option : kind.options[d]) {
      if (out) {
        option_price_.push_back(-kMostPrice);
        continue;
      }
      std::int64_t price = a_credit * option.credits - option.departure * kFine - a_use;
      // Rounded down: what is taken off is never more than what the constants give back.
      for (std::size_t l = 0; l < kLoads; ++l) price -= load_cost(loads.unit[l], option.loads[l]);
      option_price_.push_back(static_cast<std::int32_t>(std::clamp<std::int64_t>(price, -kMostPrice, kMostPrice)));
    }
  }
}

void Dual::session_side(const std::vector<double>& prices, std::size_t s, DualPoint& out) {
  const Session& session = p_.sessions[s];
  const Week& week = p_.weeks[static_cast<std::size_t>(session.week)];
  LoadPrices loads;
  std::int64_t always = 0;
  for (std::size_t l = 0; l < kLoads; ++l) {
    const std::size_t by_week = layout_.week_load + static_cast<std::size_t>(session.week) * kLoads + l;
    const std::int64_t own = unit_price(prices[layout_.ceiling + s * kLoads + l], session.ceiling[l]);
    loads.unit[l] = own + unit_price(prices[by_week], week.ceiling[l]);
    always += ceiling_constant(own, session.ceiling[l]);
  }
  if (session.unknown < kAnyNumber) always += std::int64_t{fine_price(prices[layout_.unknown + s])} * session.unknown;
  std::vector<int>& choice = out.choice[s];
  choice.resize(p_.drills.size());
  price_options(session, loads, prices, s);
  std::int64_t value = kernel_.solve(session, option_price_, choice);
  bool light = false;
  if (!close_of_[s].empty()) {
    for (const int pair : close_of_[s]) value -= fine_price(prices[layout_.apart + static_cast<std::size_t>(pair)]);
    std::int64_t given = 0;
    for (std::size_t l = 0; l < 2; ++l) {
      const std::int64_t unit = unit_price(prices[layout_.light + s * 2 + l], session.hard[l]);
      loads.unit[l] += unit;
      given += ceiling_constant(unit, session.hard[l]);
    }
    price_options(session, loads, prices, s);
    const std::int64_t value_light = kernel_.solve(session, option_price_, light_choice_) + given;
    if (value_light >= value) {
      value = value_light;
      choice = light_choice_;
      light = true;
    }
  }
  out.bound += (value + always) * times(s);
  session_gradient(s, light, out);
}

void Dual::session_gradient(std::size_t s, bool light, DualPoint& out) {
  const Session& session = p_.sessions[s];
  const Kind& kind = p_.kinds[static_cast<std::size_t>(session.kind)];
  const auto week = static_cast<std::size_t>(session.week);
  Loads used{};
  const int count = times(s);
  const bool limited = session.unknown < kAnyNumber;
  if (limited) out.gradient[layout_.unknown + s] = count * session.unknown;
  for (std::size_t d = 0; d < p_.drills.size(); ++d) {
    if (out.choice[s][d] < 0) continue;
    if (limited && p_.drills[d].unknown) out.gradient[layout_.unknown + s] -= count;
    const Option& option = kind.options[d][static_cast<std::size_t>(out.choice[s][d])];
    out.gradient[layout_.credit + s * p_.families.size() + family_of(d)] += count * option.credits;
    out.gradient[layout_.use + s * p_.drills.size() + d] -= count;
    for (std::size_t l = 0; l < kLoads; ++l) used[l] += option.loads[l];
  }
  for (std::size_t l = 0; l < kLoads; ++l) {
    if (session.ceiling[l] > 0)
      out.gradient[layout_.ceiling + s * kLoads + l] = count * (1 - static_cast<double>(used[l]) / session.ceiling[l]);
    const int weekly = p_.weeks[week].ceiling[l];
    if (weekly > 0)
      out.gradient[layout_.week_load + week * kLoads + l] -= count * (static_cast<double>(used[l]) / weekly);
  }
  for (const int pair : close_of_[s]) out.gradient[layout_.apart + static_cast<std::size_t>(pair)] -= light ? 0 : count;
  if (!light) return;
  for (std::size_t l = 0; l < 2; ++l) {
    if (session.hard[l] > 0)
      out.gradient[layout_.light + s * 2 + l] = count * (1 - static_cast<double>(used[l]) / session.hard[l]);
  }
}

SetPrices Dual::set_side(const std::vector<double>& prices, DualPoint& out) {
  SetPrices set;
  for (std::size_t p = 0; p < static_cast<std::size_t>(p_.spells); ++p) {
    const std::int32_t most = fine_price(prices[layout_.most_in + p]);
    const std::int32_t least = p > 0 ? fine_price(prices[layout_.least_in + p]) : 0;
    set.comes_in.push_back(most - least);
    out.bound += std::int64_t{most} * most_swaps_of(p_, p) - std::int64_t{least} * p_.least_swaps;
    out.gradient[layout_.most_in + p] = most_swaps_of(p_, p);
    out.gradient[layout_.least_in + p] = p > 0 ? -p_.least_swaps : 0;
  }
  return set;
}

void Dual::family_side(const std::vector<double>& prices, const SetPrices& set, std::size_t f, DualPoint& out) {
  for (std::size_t s = 0; s < p_.sessions.size(); ++s) pays_[s] = credit_price(prices, s, f);
  FamilyKernel& kernel = family_kernels_[f];
  FamilyPattern& pattern = out.patterns[f];
  kernel.solve(earns_, pays_, set, drills_settled_[f], pattern);
  out.bound += pattern.value;
  const std::vector<int>& drills = kernel.drills();
  for (std::size_t i = 0; i < drills.size(); ++i) {
    const auto d = static_cast<std::size_t>(drills[i]);
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      const int option = pattern.option[s][i];
      if (option < 0) continue;
      const Kind& kind = p_.kinds[static_cast<std::size_t>(p_.sessions[s].kind)];
      out.gradient[layout_.use + s * p_.drills.size() + d] += times(s);
      out.gradient[layout_.credit + s * p_.families.size() + f] -=
          times(s) * kind.options[d][static_cast<std::size_t>(option)].credits;
    }
    for (std::size_t p = 0; p < static_cast<std::size_t>(p_.spells); ++p) {
      const bool now = (pattern.members[p] >> i & 1U) != 0;
      const bool then = p == 0 ? p_.drills[d].current : (pattern.members[p - 1] >> i & 1U) != 0;
      if (now && !then) {
        out.gradient[layout_.most_in + p] -= 1;
        if (p > 0) out.gradient[layout_.least_in + p] += 1;
      }
    }
  }
}

void Dual::constants(const std::vector<double>& prices, DualPoint& out) {
  for (std::size_t w = 0; w < p_.weeks.size(); ++w) {
    for (std::size_t l = 0; l < kLoads; ++l) {
      const std::size_t at = layout_.week_load + w * kLoads + l;
      const int ceiling = p_.weeks[w].ceiling[l];
      out.bound += ceiling_constant(unit_price(prices[at], ceiling), ceiling) * times_[w];
      if (ceiling > 0) out.gradient[at] += times_[w];
    }
  }
  for (std::size_t i = 0; i < p_.close.size(); ++i) {
    // Both sessions are of one week, or of weeks that stand for themselves alone.
    const int count = times(static_cast<std::size_t>(p_.close[i].first));
    out.bound += std::int64_t{fine_price(prices[layout_.apart + i])} * count;
    out.gradient[layout_.apart + i] += count;
  }
}

}  // namespace lanework::block
