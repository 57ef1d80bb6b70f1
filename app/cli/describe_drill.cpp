#include "app/cli/describe_drill.h"

#include <array>

#include "app/cli/columns.h"

namespace lanework::cli {
namespace {

using catalogue::Catalogue;
using catalogue::Drill;

std::string list(const std::string& title, const std::vector<std::string>& lines) {
  if (lines.empty()) return "";
  std::string out = title + "\n";
  for (const std::string& line : lines) out += "  " + line + "\n";
  return out;
}

std::string stress_words(const catalogue::Stress& stress) {
  static constexpr std::array<const char*, 4> kGrades = {"none", "light", "moderate", "heavy"};
  return std::string(catalogue::word(catalogue::body_area_words(), stress.area)) + " " +
         std::string(catalogue::word(catalogue::stress_kind_words(), stress.kind)) + ", " +
         kGrades.at(static_cast<std::size_t>(stress.grade));
}

std::vector<std::string> stress_lines(const Drill& drill) {
  std::vector<std::string> out;
  for (const catalogue::Stress& stress : drill.stress) out.push_back(stress_words(stress));
  for (const catalogue::Rung& rung : drill.rungs) {
    for (const catalogue::Stress& stress : rung.stress) out.push_back(stress_words(stress) + " when " + rung.change);
  }
  return out;
}

std::vector<std::string> dose_lines(const Drill& drill) {
  std::vector<std::string> out;
  for (const catalogue::DoseStep& step : drill.dose.steps) out.push_back(catalogue::dose_in_words(drill, step));
  return out;
}

std::vector<std::string> rung_lines(const Drill& drill) {
  std::vector<std::string> out;
  for (const catalogue::Rung& rung : drill.rungs) {
    std::string line = rung.change + " (" + rung.key + ")";
    if (rung.age_from > drill.age_from) line += ", from " + std::to_string(rung.age_from) + " years";
    out.push_back(line);
  }
  return out;
}

std::vector<std::string> watch_lines(const Drill& drill) {
  std::vector<std::string> out;
  for (const catalogue::WatchFor& watch : drill.watch) out.push_back(watch.fault + ": '" + watch.cue + "'");
  return out;
}

std::vector<std::string> source_lines(const Drill& drill, const Catalogue& catalogue) {
  return {"dose: " + source_words(drill.sources.dose, catalogue),
          "timing: " + source_words(drill.sources.timing, catalogue),
          "loads: " + source_words(drill.sources.loads, catalogue),
          "stresses: " + source_words(drill.sources.stress, catalogue),
          "technique: " + source_words(drill.sources.technique, catalogue)};
}

}  // namespace

std::string describe_drill(const Drill& drill, const Catalogue& catalogue) {
  std::string out = drill.name + " (" + drill.id + ")\n";
  out += catalogue.family(drill.family).name + ", phase " +
         std::string(catalogue::word(catalogue::phase_words(), drill.phase)) + ", stand in " +
         std::string(catalogue::word(catalogue::formation_words(), drill.formation)) + ", ages " +
         std::to_string(drill.age_from) + " to " + std::to_string(drill.age_to) + "\n";
  out += drill.purpose + "\n" + drill.how + "\n\n";
  out += list("Rungs, easiest first", rung_lines(drill));
  out += list("Doses", dose_lines(drill));
  out += list("Say", drill.cues);
  out += list("Watch for, and say", watch_lines(drill));
  out += list("Stop if", drill.stop_if);
  out += list("What it asks of the body", stress_lines(drill));
  out += list("Where the numbers come from", source_lines(drill, catalogue));
  out += "Local rules and licensed practice come first.\n";
  return out;
}

std::string source_words(const std::string& key, const Catalogue& catalogue) {
  if (key == "common-practice") return "common practice";
  if (key == "own-judgement") return "own judgement";
  if (key == "from-memory") return "unverified, from memory";
  const catalogue::Source* source = catalogue.source(key);
  if (source == nullptr) return key;
  std::string out = source->author + " (" + std::to_string(source->year) + ")";
  if (!source->doi.empty()) out += ", doi " + source->doi;
  if (source->unverified) out += " (unverified)";
  return out;
}

std::string source_words(const std::vector<std::string>& keys, const Catalogue& catalogue) {
  std::string out;
  for (const std::string& key : keys) out += (out.empty() ? "" : "; ") + source_words(key, catalogue);
  return out.empty() ? "none stated" : out;
}

}  // namespace lanework::cli
