#include "core/people/partners.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>
#include <tuple>

#include "core/people/grouping.h"
#include "core/people/measure_line.h"

namespace lanework::people {
namespace {

// Further apart than this in per cent of their mean, two who are measured do without holds and contact.
// common-practice: no published tolerance for partner holds was found.
constexpr std::int64_t kMostApartPercent = 15;

bool far_apart(const Player& one, const Player& other, PartnerMeasure measure) {
  if (measure != PartnerMeasure::kBodyMass || !one.body_mass_grams || !other.body_mass_grams) return false;
  const std::int64_t sum = std::int64_t{*one.body_mass_grams} + *other.body_mass_grams;
  const std::int64_t apart = std::abs(std::int64_t{*one.body_mass_grams} - *other.body_mass_grams);
  return apart * 200 > kMostApartPercent * sum;
}

bool forbids(const PartnerRules& rules, const std::string& one, const std::string& other) {
  return std::any_of(rules.forbidden.begin(), rules.forbidden.end(), [&](const auto& pair) {
    return (pair.first == one && pair.second == other) || (pair.first == other && pair.second == one);
  });
}

Faults faults_in(const std::vector<Player>& sorted, const PartnerRules& rules) {
  Faults faults;
  if (sorted.empty()) {
    faults.push_back({FaultCode::kMissing, {"", 0, 0, "players"}, "nobody", "at least one player who takes part", {}});
  }
  for (std::size_t i = 1; i < sorted.size(); ++i) {
    if (sorted[i].id != sorted[i - 1].id) continue;
    faults.push_back(
        {FaultCode::kDuplicate, {"", sorted[i].row, 0, "players"}, quote(sorted[i].id), "each id once", {}});
  }
  for (const auto& [one, other] : rules.forbidden) {
    if (one != other) continue;
    faults.push_back(
        {FaultCode::kContradiction, {"", 0, 0, "partners.forbidden"}, quote(one), "two different players", {}});
  }
  return faults;
}

PairTable table_of(const std::vector<Player>& sorted, const PartnerRules& rules, const MeasureLine& line) {
  const int size = static_cast<int>(sorted.size());
  PairTable table(size);
  for (int i = 0; i < size; ++i) {
    const auto a = static_cast<std::size_t>(i);
    for (int j = 0; j < i; ++j) {
      const auto b = static_cast<std::size_t>(j);
      table.non_contact.set(i, j, do_without_contact(sorted[a], sorted[b], rules.measure) ? 1 : 0);
      if (forbids(rules, sorted[a].id, sorted[b].id)) continue;
      table.difference.set(i, j, std::abs(line.place[a] - line.place[b]));
    }
  }
  return table;
}

// The place of the other in a player's order, from 0; kNoEdge where it is not there.
std::int64_t place_of(const Player& other, const PartnerOrder* order) {
  if (order == nullptr) return kNoEdge;
  const auto found = std::find(order->others.begin(), order->others.end(), other.id);
  return found == order->others.end() ? kNoEdge : found - order->others.begin();
}

const PartnerOrder* order_of(const Player& player, const PartnerOrders& orders) {
  const auto found =
      std::find_if(orders.begin(), orders.end(), [&](const PartnerOrder& order) { return order.player == player.id; });
  return found == orders.end() ? nullptr : &*found;
}

PairTable table_of_orders(const std::vector<Player>& sorted, const PartnerOrders& orders) {
  std::vector<const PartnerOrder*> own;
  for (const Player& player : sorted) own.push_back(order_of(player, orders));
  const auto is_without = [&](std::size_t self, std::size_t other) {
    if (own[self] == nullptr) return false;
    const std::vector<std::string>& names = own[self]->without_contact;
    return std::find(names.begin(), names.end(), sorted[other].id) != names.end();
  };
  const int size = static_cast<int>(sorted.size());
  PairTable table(size);
  for (int i = 0; i < size; ++i) {
    const auto a = static_cast<std::size_t>(i);
    for (int j = 0; j < i; ++j) {
      const auto b = static_cast<std::size_t>(j);
      const bool without = !sorted[a].contact_ok || !sorted[b].contact_ok || is_without(a, b) || is_without(b, a);
      table.non_contact.set(i, j, without ? 1 : 0);
      const std::int64_t there = place_of(sorted[b], own[a]);
      const std::int64_t back = place_of(sorted[a], own[b]);
      if (there != kNoEdge && back != kNoEdge) table.difference.set(i, j, there + back);
    }
  }
  return table;
}

// The others for one player, nearest first; of those alike the ones that need no special version, then by id.
std::vector<int> order_for(int self, const PairTable& table) {
  std::vector<int> others;
  for (int other = 0; other < table.size(); ++other) {
    if (other != self && table.difference.at(self, other) != kNoEdge) others.push_back(other);
  }
  std::sort(others.begin(), others.end(), [&](int a, int b) {
    return std::make_tuple(table.difference.at(self, a), table.non_contact.at(self, a), a) <
           std::make_tuple(table.difference.at(self, b), table.non_contact.at(self, b), b);
  });
  return others;
}

// The same as the order says, of those who are there.
std::vector<int> order_for(int self, const std::vector<Player>& sorted, const PairTable& table,
                           const PartnerOrders& orders) {
  std::vector<int> others = order_for(self, table);
  const PartnerOrder* order = order_of(sorted[static_cast<std::size_t>(self)], orders);
  const auto place = [&](int other) { return place_of(sorted[static_cast<std::size_t>(other)], order); };
  std::sort(others.begin(), others.end(), [&](int a, int b) { return place(a) < place(b); });
  return others;
}

std::string counted(int count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::vector<std::string> notes_on(const MeasureLine& line, PartnerMeasure measure) {
  std::vector<std::string> notes;
  if (line.without_measure > 0 && measure != PartnerMeasure::kAge) {
    const std::string what = measure == PartnerMeasure::kSizeGroup ? "size group" : "measure";
    notes.push_back(what + " missing for " + counted(line.without_measure, "player", "players") + ": age was used");
  }
  if (line.without_age > 0) {
    notes.push_back("age missing for " + counted(line.without_age, "player", "players") +
                    ": neighbours in the list were used");
  }
  return notes;
}

std::vector<std::string> group_notes_on(const Partners& partners) {
  std::vector<std::string> notes;
  for (const PartnerGroup& group : partners.groups) {
    if (group.players.size() == 3) notes.emplace_back("one group of three, taking turns");
  }
  const auto quiet = std::count_if(partners.groups.begin(), partners.groups.end(),
                                   [](const PartnerGroup& group) { return group.non_contact; });
  if (quiet > 0) {
    notes.push_back(counted(static_cast<int>(quiet), "group takes", "groups take") +
                    " the non-contact or wall-anchored version");
  }
  if (!partners.alone.empty()) {
    notes.push_back(counted(static_cast<int>(partners.alone.size()), "player has", "players have") +
                    " no partner tonight: wall or coach");
  }
  return notes;
}

}  // namespace

bool do_without_contact(const Player& one, const Player& other, PartnerMeasure measure) {
  return !one.contact_ok || !other.contact_ok || far_apart(one, other, measure);
}

std::vector<std::string> Partners::all_notes() const {
  std::vector<std::string> out = notes;
  out.insert(out.end(), group_notes.begin(), group_notes.end());
  return out;
}

Result<Partners> pair_up(const std::vector<Player>& players, const PartnerRules& rules, Date day) {
  std::vector<int> by_id(players.size());
  std::iota(by_id.begin(), by_id.end(), 0);
  const auto player = [&](int position) -> const Player& { return players[static_cast<std::size_t>(position)]; };
  std::sort(by_id.begin(), by_id.end(),
            [&](int a, int b) { return std::tie(player(a).id, a) < std::tie(player(b).id, b); });
  std::vector<Player> sorted;
  for (const int position : by_id) sorted.push_back(player(position));
  Faults faults = faults_in(sorted, rules);
  if (!faults.empty()) return faults;

  const MeasureLine line = rules.orders ? MeasureLine{} : measure_line(sorted, rules.measure, day);
  const PairTable table = rules.orders ? table_of_orders(sorted, *rules.orders) : table_of(sorted, rules, line);
  const Grouping grouping = best_grouping(table);

  const auto handed_in = [&](const std::vector<int>& ids) {
    std::vector<int> out;
    for (const int i : ids) out.push_back(by_id[static_cast<std::size_t>(i)]);
    return out;
  };
  Partners out;
  for (const std::vector<int>& members : grouping.groups) {
    PartnerGroup group;
    group.players = handed_in(members);
    std::sort(group.players.begin(), group.players.end());
    for (const int a : members) {
      for (const int b : members) group.non_contact = group.non_contact || table.non_contact.at(a, b) == 1;
    }
    out.groups.push_back(std::move(group));
  }
  std::sort(out.groups.begin(), out.groups.end(),
            [](const PartnerGroup& a, const PartnerGroup& b) { return a.players < b.players; });
  out.alone = handed_in(grouping.alone);
  std::sort(out.alone.begin(), out.alone.end());
  out.permitted.resize(players.size());
  for (int i = 0; i < table.size(); ++i) {
    const std::vector<int> others = rules.orders ? order_for(i, sorted, table, *rules.orders) : order_for(i, table);
    out.permitted[static_cast<std::size_t>(by_id[static_cast<std::size_t>(i)])] = handed_in(others);
  }
  if (!rules.orders) out.notes = notes_on(line, rules.measure);
  out.group_notes = group_notes_on(out);
  return out;
}

}  // namespace lanework::people
