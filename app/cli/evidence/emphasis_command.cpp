#include <CLI/CLI.hpp>
#include <array>
#include <cstdio>
#include <filesystem>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/season_files.h"
#include "app/read/files.h"
#include "core/catalogue/read_catalogue.h"
#include "core/catalogue/words.h"
#include "core/findings/emphasis.h"

namespace lanework::cli {
namespace {

using findings::EmphasisProposal;
using findings::EmphasisReference;
using findings::FamilyRow;
using findings::Judged;
using findings::ShareRow;
using records::Field;
using records::Terms;

struct EmphasisFlags {
  EvidenceFlags common;
  SeasonFlags season;
  std::string write;
};

// What the answer is made of.
struct Found {
  findings::RegionCounts counts;
  std::vector<ShareRow> regions;
  EmphasisProposal proposal;
};

struct Asked {
  Terms terms;
  records::Season season;
  EmphasisReference reference;
  std::vector<findings::FamilyWeight> families;
  double level = 0;
};

Result<std::vector<findings::FamilyWeight>> family_weights(const std::string& folder) {
  const auto documents = read::read_catalogue_folders({folder});
  if (!documents) return documents.faults();
  const auto catalogue = catalogue::read_catalogue(documents.value());
  if (!catalogue) return catalogue.faults();
  std::vector<findings::FamilyWeight> out;
  for (const catalogue::FamilyRow& row : catalogue.value().families) {
    const std::string key(catalogue::word(catalogue::family_words(), row.family));
    out.push_back({key, row.name, row.emphasis ? row.emphasis->catalogue_weight : row.weight});
  }
  return out;
}

Result<Asked> read_asked(const EmphasisFlags& flags) {
  auto season = read_season_files(flags.season);
  if (!season) return season.faults();
  if (!season.value().read.faults.empty()) return season.value().read.faults;
  const auto folder = catalogue_folder(flags.season.catalogue);
  if (!folder) return folder.faults();
  auto families = family_weights(folder.value());
  if (!families) return families.faults();
  std::vector<std::string> keys;
  for (const findings::FamilyWeight& family : families.value()) keys.push_back(family.key);
  const auto document =
      read::read_toml_file((std::filesystem::path(folder.value()) / "emphasis_reference.toml").string());
  if (!document) return document.faults();
  auto reference = findings::read_emphasis_reference(document.value(), season.value().terms, keys);
  if (!reference) return reference.faults();
  return Asked{std::move(season.value().terms), std::move(season.value().read.season), std::move(reference).value(),
               std::move(families).value(), flags.common.level()};
}

std::string regions_words(const FamilyRow& row, const Terms& terms) {
  std::string out;
  for (const records::Region region : row.regions)
    out += (out.empty() ? "" : ", ") + terms.term(Field::kRegion, region).shown;
  return out;
}

const char* judged_key(Judged judged) {
  switch (judged) {
    case Judged::kRaise:
      return "raise";
    case Judged::kAtHighest:
      return "at-highest";
    case Judged::kUnclear:
      return "unclear";
    case Judged::kClearlyFewer:
      return "fewer";
    case Judged::kTooFew:
      return "too-few";
    case Judged::kNoRegion:
      break;
  }
  return "no-region";
}

std::string judged_words(const FamilyRow& row) {
  switch (row.judged) {
    case Judged::kRaise:
      return "clearly more than usual: " + std::to_string(row.family.weight) + " to " +
             std::to_string(row.proposed_weight);
    case Judged::kAtHighest:
      return "clearly more than usual, but no weight is higher";
    case Judged::kUnclear:
      return "not clearly more than usual: stays";
    case Judged::kClearlyFewer:
      return "fewer than usual: stays, its drills may be why";
    case Judged::kTooFew:
      return "too few injuries to tell: stays";
    case Judged::kNoRegion:
      break;
  }
  return "no region points to it: stays";
}

// Columns of one unit, read downwards: as many decimals in every row.
std::string with_decimals(double value, int decimals) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
  return text.data();
}

std::string times_words(const evidence::Interval& limits) {
  return with_decimals(limits.low, 2) + " to " + with_decimals(limits.high, 2);
}

std::vector<std::string> share_cells(const ShareRow& row) {
  return {std::to_string(row.injuries), as_counted(100 * row.usual) + " %", with_decimals(row.expected, 1),
          with_decimals(row.times_usual, 2), times_words(row.limits)};
}

std::vector<std::string> joined(std::vector<std::string> first, const std::vector<std::string>& then) {
  first.insert(first.end(), then.begin(), then.end());
  return first;
}

std::string regions_table(const Found& found, const Asked& asked) {
  std::vector<std::vector<std::string>> rows = {
      {"region", "counted", "usual share", "expected", "times usual", level_words(asked.level) + " limits"}};
  for (std::size_t i = 0; i < found.regions.size(); ++i)
    rows.push_back(joined({asked.terms.term(Field::kRegion, asked.reference.regions[i].region).shown},
                          share_cells(found.regions[i])));
  return in_columns(rows, "  ");
}

std::string families_table(const Found& found, const Asked& asked) {
  std::vector<std::vector<std::string>> rows = {
      {"family", "weight", "of", "counted", "times usual", level_words(asked.level) + " limits", ""}};
  for (const FamilyRow& row : found.proposal.families) {
    std::vector<std::string> cells = {row.family.name, std::to_string(row.family.weight)};
    const bool counted = !row.regions.empty();
    rows.push_back(joined(
        cells, {counted ? regions_words(row, asked.terms) : "-", counted ? std::to_string(row.share.injuries) : "-",
                counted ? with_decimals(row.share.times_usual, 2) : "-", counted ? times_words(row.share.limits) : "-",
                judged_words(row)}));
  }
  return in_columns(rows, "  ");
}

std::string left_out_words(const findings::RegionCounts& counts) {
  return "Left out: " + std::to_string(counts.contact) + " by direct contact, " + std::to_string(counts.recurrence) +
         " worse before they had healed,\n" + std::to_string(counts.tissue) +
         " bruises, wounds and complaints of growing or overloaded bone, " + std::to_string(counts.no_region) +
         " without one known region.\n";
}

// emphasis.toml of the club's folder.
std::string accepted_lines(const Found& found, const records::Period& period) {
  std::string out = "from = " + to_iso(period.first) + "\nto = " + to_iso(period.last) + "\n\n[weights]\n";
  for (const FamilyRow& row : found.proposal.families) {
    if (row.changes()) out += row.family.key + " = " + std::to_string(row.proposed_weight) + "\n";
  }
  return out;
}

std::string proposal_text(const Found& found, const records::Period& period) {
  if (!found.proposal.any_change()) return "Nothing is proposed: the weights stay as they are.\n";
  return "Proposed, for the lead to accept or not. Nothing changes until these lines stand in emphasis.toml beside\n"
         "club.toml (--write puts them there):\n\n" +
         accepted_lines(found, period);
}

std::string margin_words(int margin_percent) { return as_counted(1 + margin_percent / 100.0) + " times"; }

std::string conventions_text(const Asked& asked) {
  const EmphasisReference& reference = asked.reference;
  return "How it is reckoned. An injury counts once for each region it hurt. Each region's share of all that count is "
         "drawn\ntowards its usual share, which says as much as " +
         std::to_string(reference.weighs_as_injuries) +
         " injuries (beta limits). 'Clearly more' is a lower limit above\n" + margin_words(reference.margin_percent) +
         " the usual share, from " + std::to_string(reference.fewest_injuries) +
         " injuries on; then one step up, never more. Usual shares, margin and step are\nour own judgement, no "
         "published table stands behind them; a league's own may take their place\n"
         "(emphasis_reference.toml). No weight goes down where injuries are few: the drills may be why.\n";
}

constexpr const char* kMeaning =
    "What it means. Weights are relative: they say whose short dose hurts most when minutes lack; no ceiling and no\n"
    "restriction moves. The counts are small, and a share is an association: it does not show that more of these "
    "drills\n"
    "would have kept the injuries away. Where nothing is proposed there may yet be a difference too small to tell. "
    "Look\n"
    "first whether the drills were done at all (lanework evidence report). The lead decides; local rules and licensed\n"
    "practice come first.\n";

Node share_node(Node row, const ShareRow& share) {
  row.set("injuries", Node::make_integer(share.injuries));
  row.set("usual_share", Node::make_real(share.usual));
  row.set("expected", Node::make_real(share.expected));
  row.set("times_usual", Node::make_real(share.times_usual));
  row.set("limits", interval_node(share.limits));
  return row;
}

Node region_list(const Found& found, const Asked& asked) {
  Node list = Node::make_array();
  for (std::size_t i = 0; i < found.regions.size(); ++i) {
    Node row = Node::make_table();
    row.set("region", Node::make_text(asked.terms.term(Field::kRegion, asked.reference.regions[i].region).key));
    list.items.push_back(share_node(std::move(row), found.regions[i]));
  }
  return list;
}

Node family_list(const Found& found, const Terms& terms) {
  Node list = Node::make_array();
  for (const FamilyRow& family : found.proposal.families) {
    Node row = Node::make_table();
    row.set("family", Node::make_text(family.family.key));
    row.set("weight", Node::make_integer(family.family.weight));
    row.set("proposed_weight", Node::make_integer(family.proposed_weight));
    row.set("judged", Node::make_text(judged_key(family.judged)));
    Node regions = Node::make_array();
    for (const records::Region region : family.regions)
      regions.items.push_back(Node::make_text(terms.term(Field::kRegion, region).key));
    row.set("regions", std::move(regions));
    list.items.push_back(family.regions.empty() ? std::move(row) : share_node(std::move(row), family.share));
  }
  return list;
}

Node answer_node(const Found& found, const Asked& asked) {
  const records::Period& period = asked.season.period;
  Node out = evidence_node("emphasis", asked.level);
  out.set("estimated", Node::make_boolean(true));
  out.set("from", Node::make_text(to_iso(period.first)));
  out.set("to", Node::make_text(to_iso(period.last)));
  out.set("injuries", Node::make_integer(found.counts.all));
  Node left_out = Node::make_table();
  left_out.set("contact", Node::make_integer(found.counts.contact));
  left_out.set("recurrence", Node::make_integer(found.counts.recurrence));
  left_out.set("tissue", Node::make_integer(found.counts.tissue));
  left_out.set("no_region", Node::make_integer(found.counts.no_region));
  out.set("left_out", std::move(left_out));
  Node reference = Node::make_table();
  reference.set("weighs_as_injuries", Node::make_integer(asked.reference.weighs_as_injuries));
  reference.set("margin_percent", Node::make_integer(asked.reference.margin_percent));
  reference.set("fewest_injuries", Node::make_integer(asked.reference.fewest_injuries));
  out.set("reference", std::move(reference));
  out.set("regions", region_list(found, asked));
  out.set("families", family_list(found, asked.terms));
  out.set("proposes", Node::make_boolean(found.proposal.any_change()));
  return out;
}

std::string answer_text(const Found& found, const Asked& asked) {
  const records::Period& period = asked.season.period;
  return "Injuries by body region, " + to_iso(period.first) + " to " + to_iso(period.last) + "\n\n" +
         regions_table(found, asked) + "\n" + counted(found.counts.all, "injury counts", "injuries count") + ". " +
         left_out_words(found.counts) + "\nFamilies\n\n" + families_table(found, asked) + "\n" +
         proposal_text(found, period) + "\n" + conventions_text(asked) + "\n" + kMeaning;
}

Result<EvidenceAnswer> emphasise(const EmphasisFlags& flags) {
  const auto read = read_asked(flags);
  if (!read) return read.faults();
  const Asked& asked = read.value();
  const findings::RegionCounts counts = findings::count_regions(asked.season, asked.reference);
  if (counts.all == 0) return cannot("emphasis", asked.level, "no injury of the season counts for a region");
  const findings::WeightBounds bounds{catalogue::kEmphasisStep, catalogue::kMostWeight};
  const Found found{counts, findings::region_shares(counts, asked.reference, asked.level),
                    findings::propose_emphasis(counts, asked.reference, asked.families, bounds, asked.level)};
  EvidenceAnswer out;
  out.node = answer_node(found, asked);
  out.text = answer_text(found, asked);
  if (flags.write.empty()) return out;
  if (!found.proposal.any_change()) {
    out.text += "\nNothing written.\n";
    return out;
  }
  const std::string bytes =
      "# Accepted by the lead from what 'lanework evidence emphasis' proposed; without this file the catalogue's "
      "weights "
      "hold.\n" +
      accepted_lines(found, asked.season.period);
  if (const auto fault = read::write_file_atomically(flags.write, bytes)) return *fault;
  out.text += "\nWritten: " + flags.write + "\n";
  return out;
}

}  // namespace

void add_emphasis_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand(
      "emphasis", "once a season: which families the injuries by body region would have weigh more");
  const auto flags = std::make_shared<EmphasisFlags>();
  add_season_flags(*command, flags->season);
  add_season_ledger(*command, flags->season);
  add_evidence_flags(*command, flags->common);
  command->add_option("--write", flags->write,
                      "accept what is proposed: write it, such as into emphasis.toml of the club's folder");
  command->callback([flags, &exit_status] { exit_status = show(emphasise(*flags), flags->common.json); });
}

}  // namespace lanework::cli
