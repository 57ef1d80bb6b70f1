#include <algorithm>
#include <cmath>

#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"

namespace lanework::cli {
namespace {

using evidence::as_counted;
using evidence::in_digits;
using evidence::limits_words;
using findings::SquadFinding;

// In the club's own order: by rate it would be read as a ranking.
report::Chart drawn_in(const SeasonPageMatter& matter, const std::vector<SquadFinding>& squads) {
  report::Intervals data;
  data.x_title = "injuries in 1000 player-hours, drawn towards the club";
  report::Table table{"Squads, drawn in",
                      {{"squad", false},
                       {"injuries", true},
                       {"hours", true},
                       {"own rate", true},
                       {"drawn in", true},
                       {"own share", true}},
                      {}};
  for (const SquadFinding& squad : squads) {
    const std::string& name = matter.season->squads[squad.squad].shown();
    const evidence::Shrunken& s = squad.drawn_in;
    data.rows.push_back(
        {name, 1000 * s.estimate, 1000 * s.limits.low, 1000 * s.limits.high, std::to_string(squad.injuries)});
    table.rows.push_back({name, std::to_string(squad.injuries), as_counted(std::round(squad.hours)),
                          in_digits(1000 * squad.injuries / squad.hours),
                          in_digits(1000 * s.estimate) + " (" + limits_words(s.limits, 1000) + ")",
                          as_counted(std::round(100 * s.weight_of_own)) + " %"});
  }
  data.reference = report::Reference{1000 * matter.found->whole.rows.front().per_hour(), "club"};
  return {
      "squads-drawn-in", "Squads, each drawn towards the club",
      "Few events say little about one squad, so that its rate is moved towards the club's; where bars overlap, squads "
      "cannot be told apart.",
      std::move(data), std::move(table)};
}

// Lines for the expected counts from the least to the greatest.
std::vector<report::FunnelLine> lines_between(double least, double most, const evidence::OverDispersion& dispersion) {
  constexpr int kSteps = 60;
  std::vector<report::FunnelLine> out;
  for (int step = 0; step <= kSteps; ++step) {
    const double expected = least + (most - least) * step / kSteps;
    const auto limit = [&](double share) { return evidence::widened_limit(expected, share, dispersion); };
    out.push_back({expected, limit(0.025), limit(0.975), limit(0.001), limit(0.999)});
  }
  return out;
}

report::Chart funnel(const SeasonPageMatter& matter, const findings::SquadFindings& squads) {
  report::Funnel data;
  data.x_title = "injuries expected at the club's rate";
  data.y_title = "seen by expected";
  data.inner_name = "95 in 100 squads";
  data.outer_name = "998 in 1000";
  report::Table table{"Squads beside what was expected of their hours",
                      {{"squad", false},
                       {"injuries", true},
                       {"expected", true},
                       {"ratio", true},
                       {"inner lines", true},
                       {"outer lines", true}},
                      {}};
  double most = 0;
  for (const SquadFinding& squad : squads.squads) {
    const std::string& name = matter.season->squads[squad.squad].shown();
    const double ratio = squad.injuries / squad.expected;
    most = std::max(most, squad.expected);
    data.points.push_back({name, squad.expected, ratio});
    table.rows.push_back({name, std::to_string(squad.injuries), in_digits(squad.expected), in_digits(ratio),
                          limits_words(squad.inner), limits_words(squad.outer)});
  }
  data.lines = lines_between(most / 60, 1.1 * most, squads.dispersion);
  return {"squads-funnel", "Squads beside what chance would do",
          "Between the inner lines lie 95 of 100 squads whose true rate is the club's; outside them comes a question, "
          "not a "
          "verdict.",
          std::move(data), std::move(table)};
}

}  // namespace

std::vector<report::Section> squad_sections(const SeasonPageMatter& matter) {
  if (!matter.found->squads || matter.reader == findings::Reader::kBoard) return {};
  const findings::SquadFindings& squads = *matter.found->squads;
  report::Section section{"Squads", 1, {}};
  section.blocks.emplace_back(report::Paragraph{
      "This is no league table. Squads of few hours lie far out by chance alone; ages, pitches, matches and who writes "
      "injuries down move the rest."});
  if (squads.dispersion.beyond_chance)
    section.blocks.emplace_back(report::Paragraph{"Squads differ more than by chance (" +
                                                  in_digits(squads.dispersion.factor) +
                                                  " times the variance), so that the lines are drawn further apart."});
  section.blocks.emplace_back(drawn_in(matter, squads.squads));
  section.blocks.emplace_back(funnel(matter, squads));
  return {std::move(section)};
}

}  // namespace lanework::cli
