#include "app/cli/summary_matter.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <map>
#include <set>

#include "app/draw/card_words.h"

namespace lanework::cli {
namespace {

constexpr int kQuartersASession = 4;

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

// '0.58 %', '3 %'.
std::string percent(int hundredths) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%d.%02d", hundredths / 100, hundredths % 100);
  std::string out = text.data();
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
  return out + " %";
}

// 'week 3', 'weeks 1-4, 6'.
std::string weeks_in_words(const std::set<int>& weeks) {
  std::string out;
  for (auto from = weeks.begin(); from != weeks.end();) {
    auto to = from;
    while (std::next(to) != weeks.end() && *std::next(to) == *to + 1) ++to;
    out += (out.empty() ? "" : ", ") + std::to_string(*from) + (to == from ? "" : "-" + std::to_string(*to));
    from = std::next(to);
  }
  return (weeks.size() == 1 ? "week " : "weeks ") + out;
}

struct Shortfall {
  std::set<int> weeks;
  int most_quarters = 0;
};

struct SquadSums {
  std::size_t targets = 0;
  std::size_t met = 0;
  std::map<std::size_t, Shortfall> short_of;  // by family
};

std::size_t family_index(const std::string& word) {
  const auto& words = catalogue::family_words();
  return static_cast<std::size_t>(std::find(words.begin(), words.end(), word) - words.begin());
}

SquadSums sums_of(const read::SquadBlock& block) {
  SquadSums sums;
  for (const read::BlockFamily& row : block.families) {
    const std::size_t family = family_index(row.family);
    if (row.target == 0 || family >= catalogue::family_words().size()) continue;
    ++sums.targets;
    if (row.credits >= row.target) {
      ++sums.met;
      continue;
    }
    Shortfall& shortfall = sums.short_of[family];
    shortfall.weeks.insert(row.week);
    shortfall.most_quarters = std::max(shortfall.most_quarters, row.target - row.credits);
  }
  return sums;
}

const catalogue::FamilyRow& family_row(const ClubPlan& plan, const club::ClubSquad& squad, std::size_t family) {
  return plan.club.catalogue_of(squad).families[family];
}

// 'trunk up to 30 s (weeks 1-4, 6)': seconds of work a player.
std::string shortfall_in_words(const catalogue::FamilyRow& row, const Shortfall& shortfall) {
  const auto seconds = static_cast<int>(row.session_work.count * shortfall.most_quarters / kQuartersASession);
  return row.name + " up to " + draw::words::duration(seconds) + " (" + weeks_in_words(shortfall.weeks) + ")";
}

std::string changes_in_words(const read::SquadBlock& block, const catalogue::Catalogue& catalogue) {
  std::string out;
  for (const read::BlockSpell& spell : block.spells) {
    if (spell.comes_in.empty() && spell.leaves.empty()) continue;
    out += (out.empty() ? "" : ". ") + std::string("Week ") + std::to_string(spell.first_week) + ": ";
    out += drill_names(spell.comes_in, catalogue);
    if (!spell.leaves.empty()) out += " for " + drill_names(spell.leaves, catalogue);
  }
  return out.empty() ? "None" : out;
}

struct Squad {
  const club::ClubSquad* squad;
  const read::SquadBlock* block;
  SquadSums sums;
};

std::vector<Squad> squads_of(const ClubPlan& plan) {
  std::vector<Squad> out;
  for (const std::size_t at : plan.asked) {
    const club::ClubSquad& squad = plan.club.squads[at];
    if (const read::SquadBlock* block = plan.block_of(squad)) out.push_back({&squad, block, sums_of(*block)});
  }
  return out;
}

// Families that most squads are short of in most weeks: said once for the club, and not again in every row.
std::set<std::size_t> short_everywhere(const ClubPlan& plan, const std::vector<Squad>& squads) {
  std::map<std::size_t, std::size_t> times;
  for (const Squad& squad : squads) {
    for (const auto& [family, shortfall] : squad.sums.short_of) {
      if (2 * static_cast<int>(shortfall.weeks.size()) >= plan.answer->weeks) ++times[family];
    }
  }
  std::set<std::size_t> out;
  for (const auto& [family, count] : times) {
    if (squads.size() > 1 && 4 * count >= 3 * squads.size()) out.insert(family);
  }
  return out;
}

std::string facts_of(const read::SquadBlock& block) {
  const auto matches =
      static_cast<std::size_t>(std::count_if(block.sessions.begin(), block.sessions.end(),
                                             [](const read::BlockSession& session) { return session.match_day; }));
  if (block.sessions.empty()) return "no session";
  std::string out = counted(block.sessions.size() - matches, "evening", "evenings");
  if (matches > 0) out += ", " + counted(matches, "match", "matches");
  return out + ", gap " + percent(block.gap_hundredths);
}

std::string met_in_words(const Squad& squad) {
  if (!squad.block->feasible) return "No block keeps all rules";
  if (squad.sums.targets == 0) return "No weekly target";
  if (squad.sums.met == squad.sums.targets) return "All " + std::to_string(squad.sums.targets) + " met";
  return std::to_string(squad.sums.met) + " of " + std::to_string(squad.sums.targets) + " met";
}

std::vector<std::string> overall_of(const ClubPlan& plan, const std::vector<Squad>& squads,
                                    const std::set<std::size_t>& everywhere) {
  std::size_t targets = 0;
  std::size_t met = 0;
  const Squad* widest = nullptr;
  for (const Squad& squad : squads) {
    targets += squad.sums.targets;
    met += squad.sums.met;
    if (widest == nullptr || squad.block->gap_hundredths > widest->block->gap_hundredths) widest = &squad;
  }
  std::vector<std::string> out;
  out.push_back(std::to_string(met) + " of " + std::to_string(targets) +
                " weekly targets met, counted by squad, week and family.");
  std::string names;
  for (const std::size_t family : everywhere) {
    names += (names.empty() ? "" : ", ") + family_row(plan, *squads.front().squad, family).name;
  }
  if (!names.empty()) {
    out.push_back("Short in most squads and most weeks: " + names +
                  ". The slots hold less than the weekly targets ask; the rows below name what else falls short.");
  }
  out.push_back("Gap: no block of a squad can be worth more than so much above the one planned. The widest is " +
                percent(widest->block->gap_hundredths) + " (" + widest->squad->squad.name + ").");
  return out;
}

draw::SummaryRow row_of(const ClubPlan& plan, const Squad& squad, const std::set<std::size_t>& everywhere) {
  draw::SummaryRow row;
  row.squad = squad.squad->squad.name;
  row.facts = facts_of(*squad.block);
  row.met = met_in_words(squad);
  for (const auto& [family, shortfall] : squad.sums.short_of) {
    if (everywhere.count(family) > 0) continue;
    row.short_of +=
        (row.short_of.empty() ? "" : ", ") + shortfall_in_words(family_row(plan, *squad.squad, family), shortfall);
  }
  row.changes = changes_in_words(*squad.block, plan.club.catalogue_of(*squad.squad));
  return row;
}

}  // namespace

draw::SummaryMatter summary_matter(const ClubPlan& plan) {
  const std::vector<Squad> squads = squads_of(plan);
  const std::set<std::size_t> everywhere = short_everywhere(plan, squads);
  draw::SummaryMatter out;
  out.club = plan.club.settings.name;
  out.facts = counted(squads.size(), "squad", "squads") + ", " +
              counted(static_cast<std::size_t>(plan.answer->weeks), "week", "weeks") + " from " +
              to_words(plan.answer->monday) + ".";
  out.date_iso = to_iso(plan.answer->monday);
  out.overall = overall_of(plan, squads, everywhere);
  for (const Squad& squad : squads) out.rows.push_back(row_of(plan, squad, everywhere));
  return out;
}

std::string summary_text(const ClubPlan& plan) {
  const draw::SummaryMatter matter = summary_matter(plan);
  std::string out = matter.club + ", block: " + matter.facts + "\n";
  for (const std::string& sentence : matter.overall) out += sentence + "\n";
  const std::vector<Squad> squads = squads_of(plan);
  for (std::size_t i = 0; i < squads.size(); ++i) {
    const draw::SummaryRow& row = matter.rows[i];
    out += "\n" + row.squad + ": " + row.facts + "\n";
    out += "  Weekly targets: " + row.met + "\n";
    for (const std::string& sentence : squads[i].block->shortfalls) out += "    " + sentence + "\n";
    out += "  Changes of drills: " + row.changes + "\n";
  }
  return out;
}

}  // namespace lanework::cli
