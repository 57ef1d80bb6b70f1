#include "core/release/audit.h"

#include <algorithm>
#include <limits>
#include <optional>

#include "core/release/circulation.h"

namespace lanework::release {
namespace {

constexpr std::int64_t kAsFarAsItGoes = std::numeric_limits<std::int64_t>::max();

Count count_in(const Counts& counts, Table table, const std::string& key) {
  const auto found = counts.of(table).find(key);
  return found == counts.of(table).end() ? Count{} : found->second;
}

// A release that speaks of injuries, and what it says about the days that others gave out before.
struct Family {
  const Release* whole = nullptr;
  std::vector<const Release*> pieces;  // that speak of injuries themselves
  // What is left when the pieces are taken off: the days nobody gave out, and pieces that are silent. Nobody can tell
  // one of these from another.
  std::vector<const Release*> silent;
  bool rest = false;
  [[nodiscard]] bool leaves_something() const { return rest || !silent.empty(); }
  [[nodiscard]] bool leaves_one() const { return silent.size() + (rest ? 1 : 0) == 1; }
};

Family family_of(const Release& release, const std::vector<Release>& others) {
  Family out{&release, {}, {}, false};
  std::vector<Period> pieces;
  for (const Release& other : others) {
    if (other.period == release.period || !lies_within(other.period, release.period)) continue;
    pieces.push_back(other.period);
    (other.silent ? out.silent : out.pieces).push_back(&other);
  }
  out.rest = new_days(release.period, pieces) > 0;
  return out;
}

// One table of a family as a net: from a hub to each row (the whole period), and on to each piece and to what is left.
// All injuries together of the whole and of each piece are given, so what goes into a piece is known, whatever lies
// between.
class TableNet {
 public:
  TableNet(const Family& family, Table table)
      : family_(family), table_(table), net_(2 + rows().size() + family.pieces.size()) {
    std::size_t place = 0;
    for (const auto& [key, count] : rows()) {
      ++place;
      const bool shown = family.whole->shows(table, key);
      const std::size_t sum = net_.add(kHub, place, count.injuries, shown);
      if (!shown) targets_.push_back({sum, family.whole, false, key});
      std::int64_t left = count.injuries;
      for (std::size_t i = 0; i < family.pieces.size(); ++i) {
        const Release& piece = *family.pieces[i];
        if (piece.whole.of(table).count(key) == 0) continue;
        const std::int64_t injuries = count_in(piece.whole, table, key).injuries;
        left -= injuries;
        const bool given = piece.shows(table, key);
        const std::size_t part = net_.add(place, 1 + rows().size() + i, injuries, given);
        parts_.push_back(part);
        if (!given) targets_.push_back({part, &piece, false, key});
      }
      if (!family.leaves_something()) continue;
      const std::size_t part = net_.add(place, 1 + rows().size() + family.pieces.size(), left, false);
      parts_.push_back(part);
      const bool is_the_whole = family.pieces.empty() && family.silent.empty();
      if (!is_the_whole) targets_.push_back({part, nullptr, true, key});
    }
  }

  std::vector<NotGiven> not_given(bool only_exposed) {
    std::vector<NotGiven> out;
    for (const Target& target : targets_) {
      if (!target.left) {
        add(out, named(*target.of, Days::kPeriod, target, count_in(target.of->whole, table_, target.key)), target, true,
            only_exposed);
        continue;
      }
      const bool alone = family_.leaves_one();
      for (const Release* silent : family_.silent) {
        add(out, named(*silent, Days::kPeriod, target, count_in(silent->whole, table_, target.key)), target, alone,
            only_exposed);
      }
      if (family_.rest) {
        add(out, named(*family_.whole, Days::kRest, target, count_in(family_.whole->own, table_, target.key)), target,
            alone, only_exposed);
      }
    }
    return out;
  }

 private:
  static constexpr std::size_t kHub = 0;
  struct Target {
    std::size_t arc = 0;
    const Release* of = nullptr;
    bool left = false;
    std::string key;
  };
  const Family& family_;
  Table table_;
  Circulation net_;
  std::vector<Target> targets_;
  std::vector<std::size_t> parts_;  // arcs that one child's injury is on

  [[nodiscard]] const std::map<std::string, Count>& rows() const { return family_.whole->whole.of(table_); }

  [[nodiscard]] NotGiven named(const Release& release, Days days, const Target& target, const Count& actual) const {
    return {release.number, release.period, days, table_, target.key, actual, {}, 0};
  }

  void add(std::vector<NotGiven>& out, NotGiven one, const Target& target, bool alone, bool only_exposed) {
    const bool small = is_small(one.actual);
    if (!small && (only_exposed || target.left)) return;
    one.width = narrowest(target.arc, alone);
    if (only_exposed && !one.exposed()) return;
    one.interval = {alone ? net_.flow(target.arc) - net_.fall(target.arc, kAsFarAsItGoes) : 0,
                    net_.flow(target.arc) + net_.rise(target.arc, kAsFarAsItGoes)};
    out.push_back(std::move(one));
  }

  // With another that cannot be told from it, a number may be as little as none.
  [[nodiscard]] std::int64_t width(std::size_t arc, bool alone, std::int64_t enough) const {
    const std::int64_t down = alone ? net_.fall(arc, enough) : net_.flow(arc);
    return down >= enough ? enough : std::min(enough, down + net_.rise(arc, enough));
  }

  // One injury that is known besides takes at most one off each side, since it holds back one step of a path.
  [[nodiscard]] std::int64_t narrowest(std::size_t arc, bool alone) {
    std::int64_t out = width(arc, alone, kLeastWidth + 2);
    if (out >= kLeastWidth + 2) return kLeastWidth;
    for (const std::size_t part : parts_) {
      if (net_.known(part) || net_.flow(part) == 0) continue;
      net_.set_least(part, 1);
      out = std::min(out, width(arc, alone, kLeastWidth + 2) - (part == arc && !alone ? 1 : 0));
      net_.set_least(part, 0);
    }
    return std::min(out, kLeastWidth);
  }
};

std::vector<NotGiven> exposed_totals_of(const Family& family) {
  std::vector<NotGiven> out;
  const auto add = [&](const Release& release, Days days, const Count& actual, Interval interval, std::int64_t width) {
    const NotGiven one{release.number, release.period, days, Table::kSquads, {}, actual, interval, width};
    if (one.exposed()) out.push_back(one);
  };
  const Counts& whole = family.whole->whole;
  add(*family.whole, Days::kPeriod, whole.all, {whole.all.injuries, whole.all.injuries}, 0);
  std::int64_t left = whole.all.injuries;
  for (const Release* piece : family.pieces) left -= piece->whole.all.injuries;
  const bool alone = family.leaves_one();
  const Interval interval{alone ? left : 0, left};
  const std::int64_t width = alone ? 0 : std::min(left - 1, kLeastWidth);
  for (const Release* silent : family.silent) add(*silent, Days::kPeriod, silent->whole.all, interval, width);
  const bool is_the_whole = family.pieces.empty() && family.silent.empty();
  if (family.rest && !is_the_whole) add(*family.whole, Days::kRest, family.whole->own.all, interval, width);
  return out;
}

}  // namespace

std::vector<NotGiven> exposed_totals(const Release& release, const std::vector<Release>& earlier) {
  return release.silent ? std::vector<NotGiven>() : exposed_totals_of(family_of(release, earlier));
}

std::vector<NotGiven> exposed_in(const Release& release, const std::vector<Release>& earlier, Table table) {
  if (release.silent) return {};
  const Family family = family_of(release, earlier);
  return TableNet(family, table).not_given(true);
}

std::vector<NotGiven> audit(const std::vector<Release>& releases) {
  std::vector<NotGiven> out;
  for (const Release& release : releases) {
    const bool is_a_piece = std::any_of(releases.begin(), releases.end(), [&](const Release& other) {
      return !other.silent && other.period != release.period && lies_within(release.period, other.period);
    });
    if (release.silent || is_a_piece) continue;
    const Family family = family_of(release, releases);
    std::vector<NotGiven> some = exposed_totals_of(family);
    out.insert(out.end(), some.begin(), some.end());
    for (const Table table : kEveryTable) {
      some = TableNet(family, table).not_given(false);
      out.insert(out.end(), some.begin(), some.end());
    }
  }
  return out;
}

std::string in_words(const NotGiven& one) {
  std::string out = one.key.empty() ? "all injuries" : std::string(table_key(one.table)) + " " + one.key;
  out += ", " + to_iso(one.period.from) + " to " + to_iso(one.period.until);
  if (one.days == Days::kRest) out += " without what was released of it before";
  out += ": " + std::to_string(one.interval.least);
  if (one.interval.most > one.interval.least) out += " to " + std::to_string(one.interval.most);
  return out;
}

}  // namespace lanework::release
