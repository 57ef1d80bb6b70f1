#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/today.h"
#include "app/read/files.h"
#include "app/read/read_roster.h"
#include "core/people/partners.h"

namespace lanework::cli {
namespace {

struct PairsFlags {
  std::string roster;
  std::string squad;
  std::string measure = "age";
  std::string date;
  std::vector<std::string> apart;
  std::vector<std::string> away;
  bool json = false;
};

Fault usage(const std::string& flag, const std::string& found, const std::string& expected) {
  return {FaultCode::kUsage, {"", 0, 0, flag}, quote(found), expected, {}};
}

Result<people::PartnerRules> rules_of(const PairsFlags& flags) {
  people::PartnerRules rules;
  if (flags.measure == "size-group") rules.measure = people::PartnerMeasure::kSizeGroup;
  if (flags.measure == "body-mass") rules.measure = people::PartnerMeasure::kBodyMass;
  for (const std::string& pair : flags.apart) {
    const std::size_t plus = pair.find('+');
    if (plus == std::string::npos) return usage("--apart", pair, "two players, such as Q03+Q11");
    rules.forbidden.emplace_back(pair.substr(0, plus), pair.substr(plus + 1));
  }
  return rules;
}

std::vector<people::Player> present(const PairsFlags& flags, const std::vector<people::Player>& roster) {
  std::vector<people::Player> out;
  for (const people::Player& player : roster) {
    const bool member = flags.squad.empty() ||
                        std::find(player.squads.begin(), player.squads.end(), flags.squad) != player.squads.end();
    if (member && std::find(flags.away.begin(), flags.away.end(), player.id) == flags.away.end()) out.push_back(player);
  }
  return out;
}

std::string pairs_text(const std::vector<people::Player>& players, const people::Partners& partners) {
  std::vector<std::vector<std::string>> rows;
  const auto name = [&](int p) { return players[static_cast<std::size_t>(p)].name; };
  for (const people::PartnerGroup& group : partners.groups) {
    std::string names;
    for (const int p : group.players) names += (names.empty() ? "" : " + ") + name(p);
    rows.push_back({names, group.non_contact ? "version without contact, or at the wall" : ""});
  }
  for (const int p : partners.alone) rows.push_back({name(p), "with the coach, or at the wall"});
  std::string out = in_columns(rows, "");
  for (const std::string& note : partners.all_notes()) out += note + "\n";
  return out;
}

Node pairs_node(const std::vector<people::Player>& players, const people::Partners& partners) {
  const auto ids = [&](const std::vector<int>& positions) {
    Node list = Node::make_array();
    for (const int p : positions) list.items.push_back(Node::make_text(players[static_cast<std::size_t>(p)].id));
    return list;
  };
  Node out = Node::make_table();
  out.set("answer", Node::make_text("pairs"));
  out.set("version", Node::make_integer(1));
  Node groups = Node::make_array();
  for (const people::PartnerGroup& group : partners.groups) {
    Node row = Node::make_table();
    row.set("players", ids(group.players));
    row.set("non_contact", Node::make_boolean(group.non_contact));
    groups.items.push_back(std::move(row));
  }
  out.set("groups", std::move(groups));
  out.set("alone", ids(partners.alone));
  Node permitted = Node::make_array();
  for (std::size_t p = 0; p < players.size(); ++p) {
    Node row = Node::make_table();
    row.set("player", Node::make_text(players[p].id));
    row.set("partners", ids(partners.permitted[p]));
    permitted.items.push_back(std::move(row));
  }
  out.set("permitted", std::move(permitted));
  Node notes = Node::make_array();
  for (const std::string& note : partners.all_notes()) notes.items.push_back(Node::make_text(note));
  out.set("notes", std::move(notes));
  return out;
}

int pairs(const PairsFlags& flags) {
  const Result<Date> day = day_or_today("--date", flags.date);
  if (!day) return report(day.faults());
  const Date date = day.value();
  const auto rules = rules_of(flags);
  if (!rules) return report(rules.faults());
  const auto bytes = read::read_file(flags.roster);
  if (!bytes) return report(bytes.faults());
  const auto roster = read::read_roster(flags.roster, bytes.value(), date);
  if (!roster) return report(roster.faults());
  const std::vector<people::Player> players = present(flags, roster.value());
  if (players.size() < 2) {
    return report({{FaultCode::kOutOfRange,
                    {flags.roster, 0, 0, "--in-roster"},
                    std::to_string(players.size()) + " players of " + quote(flags.squad),
                    "2 or more",
                    {}}});
  }
  const auto partners = people::pair_up(players, rules.value(), date);
  if (!partners) return report(partners.faults());
  const std::string out =
      flags.json ? to_json(pairs_node(players, partners.value()), 2) + "\n" : pairs_text(players, partners.value());
  std::fputs(out.c_str(), stdout);
  return kDone;
}

}  // namespace

void add_pairs_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("pairs", "who stands with whom: an order of permitted partners");
  const auto flags = std::make_shared<PairsFlags>();
  command->add_option("--roster", flags->roster, "the roster, as a spreadsheet exported it")->required();
  command->add_option("--in-roster", flags->squad, "only players whose squad column says so");
  command->add_option("--measure", flags->measure, "age, size-group or body-mass")
      ->check(CLI::IsMember({"age", "size-group", "body-mass"}));
  command->add_option("--date", flags->date, "the evening, for ages; today if not stated");
  command->add_option("--apart", flags->apart, "two players never together, such as Q03+Q11; more than once");
  command->add_option("--away", flags->away, "a player who is not there; more than once");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/pairs-answer.schema.json)");
  command->callback([flags, &exit_status] { exit_status = pairs(*flags); });
}

}  // namespace lanework::cli
