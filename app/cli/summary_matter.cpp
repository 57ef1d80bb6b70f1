#include "app/cli/summary_matter.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "app/draw/card_words.h"

namespace lanework::cli {
namespace {

constexpr int kQuartersASession = 4;

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

// '0.6 %': rounded up, so that it never says less than was proved.
std::string percent(int hundredths) {
  const int tenths = (hundredths + 9) / 10;
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " %";
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
  std::set<int> weeks;  // with a session: a week of holidays is nobody's shortfall
  for (const read::BlockSession& session : block.sessions) weeks.insert(session.week);
  for (const read::BlockFamily& row : block.families) {
    if (weeks.count(row.week) == 0) continue;
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

// 'trunk 30 s': seconds of work a player, in the week that has least of it.
std::string shortfall_in_words(const catalogue::FamilyRow& row, const Shortfall& shortfall) {
  const auto seconds = static_cast<int>(row.session_work.count * shortfall.most_quarters / kQuartersASession);
  return row.name + " " + draw::words::short_duration(seconds);
}

// The weeks in which spells with changes begin.
std::set<int> weeks_of_change(const read::SquadBlock& block) {
  std::set<int> weeks;
  for (const read::BlockSpell& spell : block.spells) {
    if (!spell.comes_in.empty() || !spell.leaves.empty()) weeks.insert(spell.first_week);
  }
  return weeks;
}

// 'Week 4: Step and hold for Squat'; without the week where it is said elsewhere.
std::string changes_in_words(const read::SquadBlock& block, const catalogue::Catalogue& catalogue, bool with_week) {
  std::string out;
  for (const read::BlockSpell& spell : block.spells) {
    if (spell.comes_in.empty() && spell.leaves.empty()) continue;
    out += out.empty() ? "" : ". ";
    if (with_week) out += "Week " + std::to_string(spell.first_week) + ": ";
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

// The one week in which every squad changes drills; 0 where they differ.
int week_of_all_changes(const std::vector<Squad>& squads) {
  std::set<int> weeks;
  for (const Squad& squad : squads) weeks.merge(weeks_of_change(*squad.block));
  return weeks.size() == 1 ? *weeks.begin() : 0;
}

// The squad and the sentence of the minutes more that bring most, for their number; empty where none bring anything.
std::string best_minutes(const std::vector<Squad>& squads) {
  std::string best;
  double most = 0;
  for (const Squad& squad : squads) {
    for (const read::BlockMinutePrice& price : squad.block->minute_prices) {
      if (price.minutes <= 0 || price.before <= 0) continue;
      const double brings = (static_cast<double>(price.after) - price.before) / price.before / price.minutes;
      if (brings <= most) continue;
      most = brings;
      best = squad.squad->squad.name + ", " + price.sentence;
    }
  }
  return best;
}

// 'so far 4 held, 1 missed'; empty where nothing is over. Match days are counted too.
std::string so_far_in_words(const std::vector<const read::SquadBlock*>& blocks) {
  std::map<std::string, std::size_t> times;
  for (const read::SquadBlock* block : blocks) {
    for (const read::BlockSession& session : block->sessions) ++times[session.happened];
  }
  std::string out;
  for (const auto& [word, words] :
       {std::pair{"held", "held"}, {"cut short", "cut short"}, {"missed", "missed"}, {"no word", "without a word"}}) {
    if (times[word] == 0) continue;
    out += (out.empty() ? "so far " : ", ") + std::to_string(times[word]) + " " + words;
  }
  return out;
}

std::string sessions_in_words(const read::SquadBlock& block) {
  const auto matches =
      static_cast<std::size_t>(std::count_if(block.sessions.begin(), block.sessions.end(),
                                             [](const read::BlockSession& session) { return session.match_day; }));
  if (block.sessions.empty()) return "no session";
  const std::string evenings = counted(block.sessions.size() - matches, "evening", "evenings");
  const std::string so_far = so_far_in_words({&block});
  return evenings + (matches > 0 ? ", " + counted(matches, "match", "matches") : "") +
         (so_far.empty() ? "" : " (" + so_far + ")");
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
  std::vector<const read::SquadBlock*> blocks;
  for (const Squad& squad : squads) blocks.push_back(squad.block);
  if (const std::string so_far = so_far_in_words(blocks); !so_far.empty()) {
    out.push_back("Sessions " + so_far + ".");
  }
  std::string names;
  for (const std::size_t family : everywhere) {
    names += (names.empty() ? "" : ", ") + family_row(plan, *squads.front().squad, family).name;
  }
  if (!names.empty()) {
    out.push_back("Short in most squads and most weeks: " + names +
                  ". The rows say what else is short, by so much work a player in the leanest week.");
  }
  if (const int week = week_of_all_changes(squads); week > 0) {
    out.push_back("Drills change in week " + std::to_string(week) + ": what comes in for what goes out.");
  }
  if (std::string best = best_minutes(squads); !best.empty())
    out.push_back("Minutes worth most: " + std::move(best) + ".");
  out.push_back("Gap: how far the plan can be from the best there is, at most. The widest is " +
                percent(widest->block->gap_hundredths) + " (" + widest->squad->squad.name + ").");
  return out;
}

draw::SummaryRow row_of(const ClubPlan& plan, const Squad& squad, const std::set<std::size_t>& everywhere,
                        bool with_week) {
  draw::SummaryRow row;
  row.squad = squad.squad->squad.name;
  row.gap = percent(squad.block->gap_hundredths);
  row.met = met_in_words(squad);
  for (const auto& [family, shortfall] : squad.sums.short_of) {
    if (everywhere.count(family) > 0) continue;
    row.short_of +=
        (row.short_of.empty() ? "" : ", ") + shortfall_in_words(family_row(plan, *squad.squad, family), shortfall);
  }
  row.changes = changes_in_words(*squad.block, plan.club.catalogue_of(*squad.squad), with_week);
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
  const bool with_week = week_of_all_changes(squads) == 0;
  for (const Squad& squad : squads) out.rows.push_back(row_of(plan, squad, everywhere, with_week));
  return out;
}

std::string summary_text(const ClubPlan& plan) {
  const draw::SummaryMatter matter = summary_matter(plan);
  std::string out = matter.club + ", block: " + matter.facts + "\n";
  for (const std::string& sentence : matter.overall) out += sentence + "\n";
  const std::vector<Squad> squads = squads_of(plan);
  for (std::size_t i = 0; i < squads.size(); ++i) {
    const draw::SummaryRow& row = matter.rows[i];
    out += "\n" + row.squad + ": " + sessions_in_words(*squads[i].block) + ", gap " + row.gap + "\n";
    out += "  Weekly targets: " + row.met + "\n";
    for (const std::string& sentence : squads[i].block->shortfalls) out += "    " + sentence + "\n";
    out += "  Changes of drills: " + row.changes + "\n";
    if (!squads[i].block->minute_prices.empty()) out += "  Minutes:\n";
    for (const read::BlockMinutePrice& price : squads[i].block->minute_prices) out += "    " + price.sentence + "\n";
  }
  return out;
}

}  // namespace lanework::cli
