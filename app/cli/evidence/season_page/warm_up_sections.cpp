#include <algorithm>
#include <cmath>

#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"

namespace lanework::cli {
namespace {

using evidence::in_digits;
using evidence::limits_words;

constexpr std::array<const char*, records::kWarmUps + 1> kDoneWords = {"most did it", "half", "few", "not done",
                                                                       "not known"};

report::Chart shares(const SeasonPageMatter& matter) {
  report::Shares data;
  report::Table table{"Sessions by how many did the warm-up",
                      {{"squad", false},
                       {kDoneWords[0], true},
                       {kDoneWords[1], true},
                       {kDoneWords[2], true},
                       {kDoneWords[3], true},
                       {kDoneWords[4], true},
                       {"warm-ups a week", true},
                       {"first half", true},
                       {"second half", true}},
                      {}};
  for (const findings::SquadReach& squad : matter.found->reach.squads) {
    const std::string& name = matter.season->squads[squad.squad].shown();
    report::SharesRow row{name, {}};
    std::vector<std::string> cells = {name};
    for (std::size_t w = 0; w < kDoneWords.size(); ++w) {
      row.parts.push_back({kDoneWords[w], squad.sessions[w]});
      cells.push_back(std::to_string(squad.sessions[w]));
    }
    for (const std::optional<double>& a_week : {squad.warm_ups_a_week, squad.first_half, squad.second_half})
      cells.push_back(a_week ? in_digits(*a_week, 2) : "-");
    data.rows.push_back(std::move(row));
    table.rows.push_back(std::move(cells));
  }
  return {
      "warm-ups-done", "Was the warm-up done?",
      "Each bar is a squad's sessions: in how many of them most, half or few did the warm-up, or nobody. A session not "
      "known counts, in warm-ups a week, as the others of its week.",
      std::move(data), std::move(table)};
}

std::string name_of(const std::string& drill, const SeasonPageMatter& matter) {
  const auto known = matter.drill_names->find(drill);
  return known == matter.drill_names->end() ? drill : known->second;
}

report::Table ages_table(const findings::Reach& reach) {
  report::Table table{"By age band",
                      {{"", false},
                       {"squads", true},
                       {"did it once", true},
                       {"once a week or more", true},
                       {"most did it, of known sessions", true},
                       {"warm-ups a week", true},
                       {"first half", true},
                       {"second half", true}},
                      {}};
  for (const findings::AgeReach& age : reach.ages) {
    std::vector<std::string> cells = {
        age.age_band.empty() ? "not known" : age.age_band, std::to_string(age.squads), std::to_string(age.reached),
        std::to_string(age.taken_up),
        age.sessions > 0 ? evidence::percent(static_cast<double>(age.most_did_it) / age.sessions) : "-"};
    for (const std::optional<double>& a_week : {age.warm_ups_a_week, age.first_half, age.second_half})
      cells.push_back(a_week ? in_digits(*a_week, 2) : "-");
    table.rows.push_back(std::move(cells));
  }
  return table;
}

report::Section reach_section(const SeasonPageMatter& matter) {
  report::Section section{"Are the warm-ups done?", 1, claim_paragraphs(matter, findings::ClaimKind::kReach)};
  if (matter.found->reach.ages.size() > 1) section.blocks.emplace_back(ages_table(matter.found->reach));
  const std::vector<findings::DrillNamed>& drills = matter.found->reach.drills;
  if (drills.empty()) return section;
  report::Table table{"Drills most often left out, or that coaches ask for help with",
                      {{"drill", false}, {"left out", true}, {"help asked", true}},
                      {}};
  for (std::size_t i = 0; i < std::min<std::size_t>(10, drills.size()); ++i)
    table.rows.push_back(
        {name_of(drills[i].drill, matter), std::to_string(drills[i].left_out), std::to_string(drills[i].needing_help)});
  section.blocks.emplace_back(std::move(table));
  return section;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i)
    out += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return out;
}

std::string model_words(const findings::WarmUpModel& model) {
  std::string out =
      std::string(model.negative_binomial ? "A negative binomial" : "A Poisson") + " model of " +
      std::to_string(model.rows) + " squad-weeks with " + std::to_string(model.events) +
      " injuries, on the warm-ups a week of the last four weeks, with an effect of each squad's own; age bands, "
      "the share of match hours and the time of the season are held alike";
  if (!model.left_out.empty()) out += ", except " + joined(model.left_out) + ", which these rows cannot tell apart";
  out += ".";
  if (model.rows_unknown > 0)
    out += " " + std::to_string(model.rows_unknown) +
           " squad-weeks are left out: nobody knows whether warm-ups were done.";
  return out;
}

report::Section model_section(const SeasonPageMatter& matter) {
  const findings::WarmUpModel& model = matter.found->warm_ups;
  report::Section section{"Do weeks after more warm-ups have fewer injuries?", 1,
                          claim_paragraphs(matter, findings::ClaimKind::kWarmUps)};
  if (model.why_not || findings::is_withheld(matter.reader, model.events)) return section;
  report::Curve data;
  data.x_title = "warm-ups a week, lately";
  data.y_title = "times the rate without";
  data.reference_label = "no difference";
  data.log = true;
  report::Table table{"The rate by warm-ups a week, against none",
                      {{"warm-ups a week", false}, {"times", true}, {"95 % limits", true}},
                      {}};
  for (const evidence::CurvePoint& point : model.curve) {
    data.points.push_back({point.value, point.times, point.limits.low, point.limits.high});
    table.rows.push_back({evidence::as_counted(point.value), in_digits(point.times), limits_words(point.limits)});
  }
  section.blocks.emplace_back(
      report::Chart{"dose", "Injuries by warm-ups a week",
                    "The line is the rate against that without warm-ups, the band its 95 % limits.", std::move(data),
                    std::move(table)});
  section.blocks.emplace_back(report::Paragraph{model_words(model)});
  section.blocks.emplace_back(
      report::Paragraph{"Squads were not drawn by lot. Who warms up often may differ in coach, pitch and much "
                        "else that no record holds."});
  return section;
}

}  // namespace

std::vector<report::Section> warm_up_sections(const SeasonPageMatter& matter) {
  return {
      reach_section(matter), taught_section(matter), {"Squad by squad", 2, {shares(matter)}}, model_section(matter)};
}

}  // namespace lanework::cli
