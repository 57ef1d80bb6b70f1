#include "core/block/session_lister.h"

#include <algorithm>
#include <cassert>
#include <tuple>

#include "core/block/value_rows.h"

namespace lanework::block {
namespace {

constexpr std::int32_t kReached = kNever / 2;

auto key(const ListedSession& one) { return std::tie(one.credits, one.loads, one.fresh); }

}  // namespace

SessionLister::SessionLister(const Problem& problem) : p_(problem) {
  assert(problem.families.size() <= catalogue::kFamilies);
  int longest = 0;
  int budget = 0;
  for (const Kind& kind : problem.kinds) {
    int slowest = 0;
    for (const auto& from : kind.change) slowest = std::max(slowest, *std::max_element(from.begin(), from.end()));
    for (const std::vector<Option>& options : kind.options) {
      for (const Option& option : options) longest = std::max(longest, option.steps);
    }
    longest = std::max(longest, slowest);
  }
  for (const Session& session : problem.sessions) budget = std::max(budget, session.budget);
  // What shifts a row to the right reads the pad, which holds kNever.
  pad_ = static_cast<std::size_t>(longest + 8) / 8 * 8;
  stride_ = pad_ + static_cast<std::size_t>(budget / 8 + 1) * 8;
  take_.assign(stride_, kNever);
}

void SessionLister::begin(const Session& session, std::span<const int> members, std::uint32_t unknown,
                          const Ways& ways) {
  assert(members.size() <= kMostMembers);
  session_ = &session;
  kind_ = &p_.kinds[static_cast<std::size_t>(session.kind)];
  unknown_ = unknown;
  live_.clear();
  live_options_.clear();
  std::array<int, catalogue::kFamilies> count{};
  for (std::size_t i = 0; i < members.size(); ++i) {
    const auto d = static_cast<std::size_t>(members[i]);
    if (kind_->options[d].empty()) continue;
    const Drill& drill = p_.drills[d];
    const auto family = static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(drill.group)].family);
    ++count[family];
    live_.push_back({static_cast<int>(i), members[i], family, static_cast<std::size_t>(drill.formation), -1, false,
                     p_.families[family].required, (ways[i] & kLeftOut) == 0, 0});
  }
  bits_ = 0;
  always_ = 0;
  for (std::size_t f = 0; f < p_.families.size(); ++f) {
    if (p_.families[f].required && count[f] == 0) always_ += p_.uncovered;
    const int bit = p_.families[f].required && count[f] > 1 ? bits_++ : -1;
    int seen = 0;
    for (Live& live : live_) {
      if (live.family != f) continue;
      live.bit = bit;
      live.last = ++seen == count[f];
    }
  }
  open_.assign(live_.size() + 1, 0);
  for (std::size_t k = 0; k < live_.size(); ++k) {
    open_[k + 1] = open_[k];
    if (live_[k].bit < 0) continue;
    const std::uint32_t bit = std::uint32_t{1} << live_[k].bit;
    open_[k + 1] = live_[k].last ? open_[k] & ~bit : open_[k] | bit;
  }
}

Points SessionLister::skip_cost(const Live& live, std::uint32_t bits) const {
  const bool covered = live.bit >= 0 && (bits >> live.bit & 1U) != 0;
  const bool uncovers = live.required && live.last && !covered;
  return p_.drills[static_cast<std::size_t>(live.drill)].left_out + (uncovers ? p_.uncovered : 0);
}

std::uint32_t SessionLister::bits_after(const Live& live, std::uint32_t bits, bool taken) {
  if (live.bit < 0) return bits;
  const std::uint32_t bit = std::uint32_t{1} << live.bit;
  if (live.last) return bits & ~bit;
  return taken ? bits | bit : bits;
}

std::int64_t SessionLister::sweep() {
  const std::size_t rows = ((live_.size() + 1) << bits_) * kForms;
  if (rows_.size() < rows * stride_) rows_.assign(rows * stride_, kNever);
  const auto steps = static_cast<std::size_t>(session_->budget) + 1;
  for (std::size_t form = 0; form < kForms; ++form) std::fill_n(row(live_.size(), 0, form), steps, 0);
  for (std::size_t k = live_.size(); k-- > 0;) sweep_drill(k);
  best_ = row(0, 0, kNothing)[session_->budget];
  if (best_ <= kReached) return kDoesNotFit;
  return static_cast<std::int64_t>(best_) - always_ * kFine;
}

void SessionLister::sweep_drill(std::size_t k) {
  const Live& live = live_[k];
  const int steps = session_->budget + 1;
  std::int32_t* take = take_.data() + pad_;
  // All sets of open families, largest first.
  for (std::uint32_t bits = open_[k];; bits = (bits - 1) & open_[k]) {
    std::fill_n(take, steps, kNever);
    const std::int32_t* after = row(k + 1, bits_after(live, bits, true), live.formation);
    for (std::size_t o = static_cast<std::size_t>(live.first); o < end_of_options(k); ++o)
      raise_row(take, after - live_options_[o].steps, live_options_[o].price, steps);
    const auto cost = static_cast<std::int32_t>(skip_cost(live, bits) * kFine);
    for (std::size_t form = 0; form < kForms; ++form) {
      const std::int32_t* taken = take - change(form, live.formation);
      if (live.forced) {
        std::copy_n(taken, steps, row(k, bits, form));
      } else {
        merge_row(row(k, bits, form), row(k + 1, bits_after(live, bits, false), form), cost, taken, steps);
      }
    }
    if (bits == 0) break;
  }
}

void SessionLister::search(std::int32_t within, std::int64_t most, std::vector<ListedSession>& out) {
  out.clear();
  within_ = within;
  work_left_ = most;
  out_ = &out;
  now_ = {};
  now_.option.fill(-1);
  now_.cost = always_;
  go_on(0, {0, kNothing, session_->budget, 0});
}

ListedSession SessionLister::best() {
  std::vector<ListedSession> found;
  keep_ceilings_ = false;
  search(0, static_cast<std::int64_t>(live_.size()) + 1, found);  // straight to the first
  keep_ceilings_ = true;
  return found.front();
}

bool SessionLister::list(std::int32_t within, std::int64_t most, std::vector<ListedSession>& out) {
  search(within, most, out);
  std::sort(out.begin(), out.end(), [](const ListedSession& a, const ListedSession& b) {
    return key(a) != key(b) ? key(a) < key(b) : a.cost < b.cost;
  });
  out.erase(std::unique(out.begin(), out.end(),
                        [](const ListedSession& a, const ListedSession& b) { return key(a) == key(b); }),
            out.end());
  std::stable_sort(out.begin(), out.end(),
                   [](const ListedSession& a, const ListedSession& b) { return a.short_of < b.short_of; });
  return work_left_ > 0;
}

void SessionLister::go_on(std::size_t k, const Made& made) {
  if (work_left_ <= 0) return;
  --work_left_;
  if (k == live_.size()) {
    out_->push_back(now_);
    out_->back().short_of = made.short_of;
    return;
  }
  const Live& live = live_[k];
  const std::int32_t here = row(k, made.bits, made.form)[made.steps_left];
  for (std::size_t o = static_cast<std::size_t>(live.first); o < end_of_options(k); ++o)
    take(k, made, live_options_[o], here);
  skip(k, made, here);
}

void SessionLister::skip(std::size_t k, const Made& made, std::int32_t to_go) {
  const Live& live = live_[k];
  if (live.forced) return;
  const std::uint32_t bits = bits_after(live, made.bits, false);
  const Points cost = skip_cost(live, made.bits);
  const std::int32_t then = row(k + 1, bits, made.form)[made.steps_left];
  const std::int32_t short_of = made.short_of + (to_go - (then - static_cast<std::int32_t>(cost * kFine)));
  if (short_of > within_) return;
  now_.cost += cost;
  go_on(k + 1, {bits, made.form, made.steps_left, short_of});
  now_.cost -= cost;
}

void SessionLister::take(std::size_t k, const Made& made, const LiveOption& chosen, std::int32_t to_go) {
  const Live& live = live_[k];
  const int left = made.steps_left - change(made.form, live.formation) - chosen.steps;
  if (left < 0) return;
  const std::uint32_t bits = bits_after(live, made.bits, true);
  const std::int32_t then = row(k + 1, bits, live.formation)[left];
  if (then <= kReached) return;
  const std::int32_t short_of = made.short_of + (to_go - (then + chosen.price));
  if (short_of > within_) return;
  const Option& option = options_of(live)[static_cast<std::size_t>(chosen.option)];
  const Loads before = now_.loads;
  bool keeps = true;
  for (std::size_t l = 0; l < kLoads; ++l) {
    now_.loads[l] += option.loads[l];
    keeps = keeps && (!keep_ceilings_ || now_.loads[l] <= session_->ceiling[l]);
  }
  if (keeps) {
    const std::uint32_t fresh = now_.fresh;
    now_.fresh |= unknown_ & (std::uint32_t{1} << live.member);
    now_.cost += option.departure;
    now_.credits[live.family] = static_cast<std::uint8_t>(now_.credits[live.family] + option.credits);
    now_.option[static_cast<std::size_t>(live.member)] = static_cast<std::int16_t>(chosen.option);
    go_on(k + 1, {bits, live.formation, left, short_of});
    now_.option[static_cast<std::size_t>(live.member)] = -1;
    now_.credits[live.family] = static_cast<std::uint8_t>(now_.credits[live.family] - option.credits);
    now_.cost -= option.departure;
    now_.fresh = fresh;
  }
  now_.loads = before;
}

}  // namespace lanework::block
