#include "core/door/slip_answer.h"

#include <algorithm>
#include <optional>

#include "core/catalogue/loads.h"
#include "core/clock/clock.h"
#include "core/people/contact.h"
#include "core/plan/availability.h"
#include "core/plan/candidates.h"
#include "core/plan/landings_tonight.h"

namespace lanework::door {
namespace {

// The evening as one player beside the squad has it: alone, with the same place and kit.
session::Evening alone(const session::Evening& evening) {
  session::Evening one = evening;
  one.turnout = 1;
  one.late = 0;
  one.bans.clear();
  return one;
}

std::vector<people::Restriction> restrictions_of(const std::string& player, const EveningMatter& matter) {
  std::vector<people::Restriction> out;
  for (const people::Restriction& restriction : matter.restrictions.list) {
    if (restriction.player == player && people::holds_on(restriction, matter.evening.date)) out.push_back(restriction);
  }
  return out;
}

bool of_squad(const people::Player& player, const session::Squad& squad) {
  const bool member = squad.in_roster.empty() ||
                      std::find(player.squads.begin(), player.squads.end(), squad.in_roster) != player.squads.end();
  return member && std::find(squad.away.begin(), squad.away.end(), player.id) == squad.away.end();
}

const char* taking_part_word(people::TakingPart part) {
  switch (part) {
    case people::TakingPart::kJoinsIn:
      return "joins in";
    case people::TakingPart::kJoinsInWithSwaps:
      return "joins in with swaps";
    case people::TakingPart::kSitsOut:
      return "sits out, see a clinician";
  }
  return "";
}

const char* swap_word(people::SwapKind kind) {
  switch (kind) {
    case people::SwapKind::kSameDrill:
      return "same-drill";
    case people::SwapKind::kOtherDrill:
      return "other-drill";
    case people::SwapKind::kNothing:
      return "nothing";
  }
  return "";
}

Node does_node(const people::Swap& swap, const catalogue::Catalogue& catalogue) {
  const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(swap.drill)];
  const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(swap.dose)];
  Node out = Node::make_table();
  out.set("drill", Node::make_text(drill.id));
  out.set("rung", Node::make_text(drill.rungs[static_cast<std::size_t>(swap.rung)].key));
  out.set("sets", Node::make_integer(step.sets));
  out.set("amount", Node::make_integer(step.amount));
  return out;
}

Node ids(const std::vector<int>& positions, const Slip& slip) {
  Node list = Node::make_array();
  for (const int p : positions) list.items.push_back(Node::make_text(slip.players[static_cast<std::size_t>(p)].id));
  return list;
}

Node group_node(const people::PartnerGroup& group, const Slip& slip) {
  Node node = Node::make_table();
  node.set("players", ids(group.players, slip));
  node.set("non_contact", Node::make_boolean(group.non_contact));
  return node;
}

Node swaps_node(const people::PlayerSwaps& player, const EveningMatter& matter, const PlanAnswer& plan) {
  Node node = Node::make_table();
  node.set("player", Node::make_text(player.player));
  node.set("takes_part", Node::make_text(taking_part_word(player.taking_part)));
  node.set("instruction", Node::make_text(player.instruction));
  Node list = Node::make_array();
  for (const people::Swap& swap : player.swaps) {
    const session::Item& item = plan.plan.session.items[static_cast<std::size_t>(swap.item)];
    Node row = Node::make_table();
    row.set("instead_of", Node::make_text(matter.catalogue.drills[static_cast<std::size_t>(item.drill)].id));
    row.set("instruction", Node::make_text(swap.instruction));
    row.set("kind", Node::make_text(swap_word(swap.kind)));
    if (swap.drill >= 0) row.set("does", does_node(swap, matter.catalogue));
    list.items.push_back(std::move(row));
  }
  node.set("swaps", std::move(list));
  return node;
}

// Who of the slip's players does the squad's own drill at this place of the session.
std::vector<int> who_does(int item, const Slip& slip) {
  std::vector<int> out;
  for (std::size_t p = 0; p < slip.players.size(); ++p) {
    bool swapped = false;
    for (const people::PlayerSwaps& player : slip.swaps) {
      if (player.player != slip.players[p].id) continue;
      for (const people::Swap& swap : player.swaps) swapped = swapped || swap.item == item;
    }
    if (!swapped) out.push_back(static_cast<int>(p));
  }
  return out;
}

std::optional<Faults> regroup(Slip& slip, const EveningMatter& matter, const PlanAnswer& plan) {
  const std::vector<session::Item>& items = plan.plan.session.items;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const catalogue::Drill& drill = matter.catalogue.drills[static_cast<std::size_t>(items[i].drill)];
    const std::vector<int> doing = who_does(static_cast<int>(i), slip);
    if (drill.formation != catalogue::Formation::kPairs || doing.empty() || doing.size() == slip.players.size())
      continue;
    std::vector<people::Player> players;
    for (const int p : doing) players.push_back(slip.players[static_cast<std::size_t>(p)]);
    const auto partners = people::pair_up(players, matter.squad.partners, matter.evening.date);
    if (!partners) return partners.faults();
    Regrouped regrouped{static_cast<int>(i), partners.value().groups, {}};
    for (people::PartnerGroup& group : regrouped.groups) {
      for (int& p : group.players) p = doing[static_cast<std::size_t>(p)];
    }
    for (const int p : partners.value().alone) regrouped.alone.push_back(doing[static_cast<std::size_t>(p)]);
    slip.regrouped.push_back(std::move(regrouped));
  }
  return {};
}

}  // namespace

Result<Slip> answer_slip(const EveningMatter& matter, const PlanAnswer& plan) {
  Slip slip;
  slip.players = session::players_tonight(matter.squad, matter.roster, matter.restrictions);
  for (people::Player& player : slip.players) {
    const std::vector<people::Restriction> held = restrictions_of(player.id, matter);
    if (std::any_of(held.begin(), held.end(), people::bars_contact)) player.contact_ok = false;
  }
  auto partners = people::pair_up(slip.players, matter.squad.partners, matter.evening.date);
  if (!partners) return partners.faults();
  slip.partners = std::move(partners).value();

  std::vector<people::SquadDrill> drills;
  for (const session::Item& item : plan.plan.session.items)
    drills.push_back({item.drill, item.rung, item.dose, item.takes});
  const session::Evening one = alone(matter.evening);
  people::Setting setting;
  setting.time_of = [&](int drill, int rung, int dose) -> std::int64_t {
    const catalogue::Drill& candidate = matter.catalogue.drills[static_cast<std::size_t>(drill)];
    const bool possible =
        candidate.formation != catalogue::Formation::kPairs && !plan::barred_because(candidate, rung, one);
    return possible ? rounded_up(clock::drill_time(matter.catalogue, candidate, rung, dose, one).total()).count : -1;
  };
  setting.landings_of = [&](int drill, int rung, int dose) -> std::int64_t {
    const catalogue::Drill& one_of = matter.catalogue.drills[static_cast<std::size_t>(drill)];
    return catalogue::load_of(one_of, one_of.rungs[static_cast<std::size_t>(rung)],
                              one_of.dose.steps[static_cast<std::size_t>(dose)], matter.evening.strip.lane_length,
                              matter.catalogue.limits)
        .contacts;
  };
  setting.landings_ceiling = plan::most_landings_tonight(matter.catalogue, matter.evening, matter.squad.weekly);
  setting.done_before = [&](int drill) {
    return plan::has_done(matter.evening, matter.catalogue.drills[static_cast<std::size_t>(drill)]);
  };
  std::vector<people::PlayerSwaps> sitting;
  for (const people::Player& player : matter.roster) {
    if (!of_squad(player, matter.squad)) continue;
    const std::vector<people::Restriction> held = restrictions_of(player.id, matter);
    if (held.empty()) continue;
    people::PlayerSwaps swaps =
        people::swaps_for(player.id, held, matter.catalogue, drills, setting, matter.evening.date);
    const bool sits = swaps.taking_part == people::TakingPart::kSitsOut;
    (sits ? sitting : slip.swaps).push_back(std::move(swaps));
  }
  slip.swaps.insert(slip.swaps.end(), sitting.begin(), sitting.end());
  if (auto faults = regroup(slip, matter, plan)) return *faults;
  return slip;
}

Node to_node(const Slip& slip, const EveningMatter& matter, const PlanAnswer& plan) {
  Node node = Node::make_table();
  node.set("answer", Node::make_text("slip"));
  node.set("version", Node::make_integer(1));
  Node groups = Node::make_array();
  for (const people::PartnerGroup& group : slip.partners.groups) groups.items.push_back(group_node(group, slip));
  node.set("groups", std::move(groups));
  node.set("alone", ids(slip.partners.alone, slip));
  Node regrouped = Node::make_array();
  for (const Regrouped& drill : slip.regrouped) {
    const session::Item& item = plan.plan.session.items[static_cast<std::size_t>(drill.item)];
    Node row = Node::make_table();
    row.set("drill", Node::make_text(matter.catalogue.drills[static_cast<std::size_t>(item.drill)].id));
    Node anew = Node::make_array();
    for (const people::PartnerGroup& group : drill.groups) anew.items.push_back(group_node(group, slip));
    row.set("groups", std::move(anew));
    row.set("alone", ids(drill.alone, slip));
    regrouped.items.push_back(std::move(row));
  }
  node.set("regrouped", std::move(regrouped));
  Node permitted = Node::make_array();
  for (std::size_t p = 0; p < slip.players.size(); ++p) {
    Node row = Node::make_table();
    row.set("player", Node::make_text(slip.players[p].id));
    row.set("partners", ids(slip.partners.permitted[p], slip));
    permitted.items.push_back(std::move(row));
  }
  node.set("permitted", std::move(permitted));
  Node notes = Node::make_array();
  for (const std::string& note : slip.partners.all_notes()) notes.items.push_back(Node::make_text(note));
  node.set("notes", std::move(notes));
  Node swaps = Node::make_array();
  for (const people::PlayerSwaps& player : slip.swaps) swaps.items.push_back(swaps_node(player, matter, plan));
  node.set("swaps", std::move(swaps));
  node.set("restrictions_as_known", Node::make_text(matter.restrictions.as_known));
  return node;
}

}  // namespace lanework::door
