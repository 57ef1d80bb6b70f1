#include "app/cli/clinic_matter.h"

#include <algorithm>
#include <array>
#include <utility>

#include "app/cli/card_matter.h"
#include "app/draw/card_words.h"

namespace lanework::cli {
namespace {

using catalogue::Drill;
using catalogue::RoutineLine;

constexpr std::size_t kMostKeyDrills = 8;
constexpr int kSecondOfFamily = 3;  // in weights of families: what a further drill of a family counts less

const Drill& drill_of(const ClinicSource& source, const RoutineLine& line) {
  return source.catalogue->drills[static_cast<std::size_t>(line.drill)];
}

std::string dose_of(const Drill& drill, const RoutineLine& line) {
  return catalogue::dose_in_words(drill, drill.dose.steps[static_cast<std::size_t>(line.dose)]);
}

draw::WatchForMatter commonest_fault(const Drill& drill) {
  if (drill.watch.empty()) return {};
  return {drill.watch.front().fault, drill.watch.front().cue};
}

draw::EveningLineMatter evening_line(const ClinicSource& source, const RoutineLine& line) {
  const Drill& drill = drill_of(source, line);
  return {drill.name, dose_of(drill, line), static_cast<draw::Formation>(drill.formation)};
}

// The lines a coach should see good examples of: what hurts most when it is short comes first, a family's further
// drills later (own judgement). In the order of the routine.
std::vector<RoutineLine> key_lines(const ClinicSource& source) {
  std::array<int, catalogue::kFamilies> seen{};
  std::vector<std::pair<int, std::size_t>> ranked;  // less is better
  for (std::size_t i = 0; i < source.routine->lines.size(); ++i) {
    const Drill& drill = drill_of(source, source.routine->lines[i]);
    int& before = seen[static_cast<std::size_t>(drill.family)];
    ranked.emplace_back(kSecondOfFamily * before - source.catalogue->family(drill.family).weight, i);
    ++before;
  }
  std::sort(ranked.begin(), ranked.end());
  ranked.resize(std::min(ranked.size(), kMostKeyDrills));
  std::sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  std::vector<RoutineLine> lines;
  for (const auto& [rank, at] : ranked) lines.push_back(source.routine->lines[at]);
  return lines;
}

bool any_in(const ClinicSource& source, catalogue::Formation formation) {
  return std::any_of(source.routine->lines.begin(), source.routine->lines.end(),
                     [&](const RoutineLine& line) { return drill_of(source, line).formation == formation; });
}

// Common practice of laying out and of coaching youth groups, in the lead's words.
std::vector<std::string> lay_out_sentences(const ClinicSource& source) {
  const auto lane = static_cast<int>(source.strip.lane_length.count);
  const std::string end = std::to_string(session::cones_a_line(source.strip));
  std::vector<std::string> out = {
      "Walk the ground first: holes, glass, puddles, goals in the way. If it is bad, move the strip.",
      "Pace " + draw::words::paces(lane, kPaceMillimetres) + " for a lane and put down " + end +
          " cones. Check your pace once against a tape.",
      "Cones stay where they are all evening: no drill needs them moved.",
  };
  if (source.players > 0) {
    const int file = (source.players + source.strip.lanes - 1) / source.strip.lanes;
    const std::string files = source.strip.lanes == 1 ? "one file" : std::to_string(source.strip.lanes) + " files";
    out.push_back("Players stand in " + files + " behind the first cones, about " + std::to_string(file) +
                  " in each. They go down the lane and come back outside it.");
  } else {
    out.push_back(
        "Players stand in a file behind the first cone of each lane. They go down it and come back outside it.");
  }
  out.emplace_back(any_in(source, catalogue::Formation::kPairs)
                       ? "On the spot: arms out, nobody touches anybody. Partners as the slip of the evening says."
                       : "On the spot: arms out, nobody touches anybody.");
  out.emplace_back("Balls and bags off the strip; water at the side where you can see it.");
  return out;
}

std::string telling_span(const ClinicSource& source) {
  std::int64_t least = 1'000'000;
  std::int64_t most = 0;
  for (const RoutineLine& line : source.routine->lines) {
    least = std::min(least, drill_of(source, line).telling.count);
    most = std::max(most, drill_of(source, line).telling.count);
  }
  const std::string from = std::to_string(least / 1000);
  const std::string to = std::to_string(most / 1000);
  return from == to ? to + " s" : from + " to " + to + " s";
}

std::vector<std::string> tell_sentences(const ClinicSource& source) {
  return {
      "Stand where all can see you, the sun in your eyes and not in theirs.",
      "Say the name, show it once, give one cue, start. The clock allows " + telling_span(source) +
          " for a drill nobody knows yet.",
      "One cue at a time. Stay with it until most do it, then give the next.",
      "Say what to do, not what not to do: \u201Cland softly\u201D, not \u201Cdon\u2019t stamp\u201D.",
      "Look from where you see it: knees from the front, backs from the side.",
      "Say aloud who did it well, and what. The others copy it.",
      "Most cannot do it? Go to the easier version, not to more words.",
      "Tired and sloppy? End the set early. Good ones count, many do not.",
  };
}

}  // namespace

draw::ClinicMatter clinic_matter(const ClinicSource& source) {
  draw::ClinicMatter out;
  out.club = source.club;
  out.squad = source.squad;
  out.facts = source.facts;
  out.note = source.routine->note;
  out.date_iso = source.date_iso;
  out.taught = source.taught;
  out.strip = strip_matter(source.strip);
  out.lay_out = lay_out_sentences(source);
  out.tell = tell_sentences(source);
  for (const RoutineLine& line : source.routine->lines) out.evening.push_back(evening_line(source, line));
  for (const RoutineLine& line : key_lines(source)) {
    const Drill& drill = drill_of(source, line);
    const catalogue::Rung& rung = drill.rungs[static_cast<std::size_t>(line.rung)];
    out.key_drills.push_back({drill.name, rung.change, dose_of(drill, line),
                              static_cast<draw::Formation>(drill.formation), drill.cues, commonest_fault(drill),
                              &catalogue::figure_on(drill, rung)});
  }
  out.stop_always = stop_always();
  out.action_plan = source.action_plan;
  return out;
}

draw::VisitMatter visit_matter(const ClinicSource& source) {
  draw::VisitMatter out;
  out.club = source.club;
  out.squad = source.squad;
  out.facts = source.facts;
  out.date_iso = source.date_iso;
  for (const RoutineLine& line : source.routine->lines) {
    const Drill& drill = drill_of(source, line);
    out.drills.push_back(
        {evening_line(source, line), drill.cues.empty() ? "" : drill.cues.front(), commonest_fault(drill)});
  }
  return out;
}

}  // namespace lanework::cli
