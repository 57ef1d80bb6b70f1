#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/entry_files.h"
#include "app/cli/care/explore_words.h"
#include "app/cli/care/texts_node.h"
#include "app/cli/command.h"
#include "app/cli/today.h"
#include "core/care/return_to_sport/heart_rate.h"
#include "core/people/instruction.h"

namespace lanework::cli {
namespace {

struct ReturnFlags {
  EntryFiles files;
  std::string player;
  std::string date;
  bool explore = false;
  bool json = false;
};

// What 'care return' tells of one course, gathered once for words and for JSON.
struct CourseTold {
  std::string step;  // 'step 3 of 6: ...'
  std::string since;
  std::string allowed;
  std::vector<std::string> coach;
  std::vector<std::string> heart_rate;
  std::string next;        // empty at the last step
  std::string not_before;  // empty where there is no next one
  std::vector<std::string> needed;
  std::string gate;  // key of the gate that is shut before it; may be empty
  std::vector<std::string> sets_back;
  std::vector<std::string> notes;
};

std::string hours_words(int hours) { return std::to_string(hours) + " h"; }

std::vector<std::string> heart_rates(const care::CourseStanding& course) {
  std::vector<std::string> out;
  const care::StepRule& step = course.in_force.course.step(course.state.step);
  if (!course.state.begun || step.heart_rate_percent.empty()) return out;
  if (!course.age) return {"the age is not known, so no heart rate can be named: ask the clinician"};
  for (const int percent : step.heart_rate_percent) {
    out.push_back((out.empty() ? "first up to " : "then up to ") +
                  std::to_string(care::whole_heart_rate_cap(*course.age, percent)) + " beats a minute (" +
                  std::to_string(percent) + " % of 220 - " + std::to_string(*course.age) + ")");
  }
  return out;
}

std::vector<std::string> what_sets_back(const care::Course& course, const care::CourseState& state) {
  const care::StepRule& step = course.step(state.step);
  const std::string rest = ", sits out at least " + hours_words(course.rest_hours) + ", and until it is begun again";
  std::vector<std::string> out;
  out.push_back(std::string(step.symptom_free ? "any symptoms" : "worse symptoms") + ": back to '" +
                course.step(step.back_to).name + "'" + (step.back_to_unverified ? " (unverified)" : "") + rest +
                "; later gates shut");
  if (!step.symptom_free && course.mild) {
    out.push_back("worse by at most " + std::to_string(course.mild->most_points) + " points for less than " +
                  std::to_string(course.mild->less_than_minutes) + " min: " +
                  (course.mild->unverified
                       ? "the step's time starts anew (the rule that would let it go on is unverified: "
                         "the careful side)"
                       : "goes on"));
  }
  out.emplace_back("another hurt that concerns it: back to the first step, every gate shut");
  return out;
}

CourseTold told(const care::CourseStanding& course) {
  const care::Course& rules = course.in_force.course;
  const care::StepRule& step = rules.step(course.state.step);
  CourseTold out;
  out.step =
      "step " + std::to_string(course.state.step + 1) + " of " + std::to_string(rules.steps.size()) + ", " + step.name;
  out.since = (course.state.begun ? "begun " : "not begun; as it is since ") + care::to_day_words(course.since);
  out.allowed = course.state.begun ? step.allows : "nothing until the step is begun by an entry";
  for (const auto& held : care::restrictions_at(rules, course.state, course.places)) {
    out.coach.push_back(people::instruction_for(held));
  }
  out.heart_rate = heart_rates(course);
  if (const auto waiting = care::waiting_at(rules, course.state)) {
    out.next = rules.step(waiting->step).name;
    out.not_before = waiting->not_before ? care::to_day_words(care::at_same_offset(*waiting->not_before, course.since))
                                         : "not known before a check without any symptoms";
    out.needed = waiting->needs;
    out.needed.emplace_back("an entry by the lead or a clinician that begins it");
    if (waiting->gate) out.gate = rules.gate(*waiting->gate).key;
  }
  out.sets_back = what_sets_back(rules, course.state);
  for (const care::GateRule& gate : rules.gates) {
    if (gate.symptom_free_hours == 0) continue;
    out.notes.push_back(std::to_string(gate.symptom_free_hours / care::kHoursADay) + " days without symptoms before '" +
                        gate.name + "'");
  }
  out.notes.insert(out.notes.end(), course.in_force.notes.begin(), course.in_force.notes.end());
  return out;
}

std::string line(const std::string& heading, const std::string& words) {
  constexpr std::size_t kWide = 14;
  return "  " + heading + std::string(kWide - heading.size(), ' ') + words + "\n";
}

std::string lines(const std::string& heading, const std::vector<std::string>& all) {
  std::string out;
  for (const std::string& one : all) out += line(out.empty() ? heading : "", one);
  return out;
}

std::string text_of(const care::CourseStanding& course, const FoldedEntries& folded) {
  const CourseTold words = told(course);
  std::string out = folded.named(course.player) + ": " + course.in_force.course.name + " (" + course.id + ")";
  if (course.closed) return out + ", over\n";
  out += "\n" + line("now", words.step) + line("", words.since) + line("allowed", words.allowed) +
         lines("heart rate", words.heart_rate) + lines("coach reads", words.coach);
  if (!words.next.empty()) {
    out += line("next", words.next) + line("not before", words.not_before) + lines("needed", words.needed);
  }
  return out + lines("sets it back", words.sets_back) + lines("rules", words.notes);
}

Node node_of(const care::CourseStanding& course) {
  const CourseTold words = told(course);
  Node out = Node::make_table();
  out.set("player", Node::make_text(course.player));
  out.set("course", Node::make_text(course.in_force.course.id));
  out.set("entry", Node::make_text(course.id));
  out.set("over", Node::make_boolean(course.closed));
  out.set("step", Node::make_text(course.in_force.course.step(course.state.step).key));
  out.set("step_number", Node::make_integer(course.state.step + 1));
  out.set("begun", Node::make_boolean(course.state.begun));
  out.set("since", Node::make_text(words.since));
  out.set("allowed", Node::make_text(words.allowed));
  out.set("coach", texts_node(words.coach));
  out.set("heart_rate", texts_node(words.heart_rate));
  if (!words.next.empty()) {
    out.set("next", Node::make_text(words.next));
    out.set("not_before", Node::make_text(words.not_before));
    out.set("needed", texts_node(words.needed));
  }
  if (!words.gate.empty()) out.set("gate", Node::make_text(words.gate));
  out.set("sets_back", texts_node(words.sets_back));
  out.set("notes", texts_node(words.notes));
  return out;
}

std::string remarks_text(const FoldedEntries& folded, const std::string& player) {
  std::string out;
  for (const care::Remark& remark : folded.known.remarks) {
    if (remark.player == player)
      out += (out.empty() ? "Entries that say more:\n" : "") + line(remark.entry, remark.words);
  }
  return out;
}

int tell(const ReturnFlags& flags) {
  const auto day = day_or_today("--date", flags.date);
  if (!day) return report(day.faults());
  const auto folded = fold_entry_files(flags.files, day.value());
  if (!folded) return report(folded.faults());
  const std::vector<people::Player>& roster = folded.value().roster;
  const auto same = [&](const people::Player& player) { return player.id == flags.player; };
  if (!roster.empty() && std::none_of(roster.begin(), roster.end(), same)) {
    return report({Fault{
        FaultCode::kUnknownName, {"", 0, 0, "--player"}, quote(flags.player), "the id of a player of the roster", {}}});
  }
  Node list = Node::make_array();
  std::string text;
  for (const care::CourseStanding& course : folded.value().known.courses) {
    if (course.player != flags.player) continue;
    text += text_of(course, folded.value());
    list.items.push_back(node_of(course));
  }
  if (text.empty()) text = "No return course of " + folded.value().named(flags.player) + " is known.\n";
  if (flags.json) {
    Node out = Node::make_table();
    out.set("answer", Node::make_text("care-return"));
    out.set("version", Node::make_integer(1));
    if (folded.value().known.as_known)
      out.set("as_known", Node::make_text(care::to_known_words(*folded.value().known.as_known)));
    out.set("courses", std::move(list));
    out.set("note", Node::make_text("Local rules and licensed practice come first."));
    text = to_json(out, 2) + "\n";
  } else {
    text += remarks_text(folded.value(), flags.player);
    if (folded.value().known.as_known) text += "As known " + care::to_day_words(*folded.value().known.as_known) + ".\n";
    text += std::string("Nothing begins by itself: a step begins with an entry by the lead or a clinician.\n") +
            kWhoDecides;
  }
  std::fputs(text.c_str(), stdout);
  return kDone;
}

int explore(const ReturnFlags& flags) {
  const auto rules = read_care_rules(flags.files.catalogue, flags.files.return_rules);
  if (!rules) return report(rules.faults());
  const ExploreAnswer answer = explore_rules(
      rules.value().returns, flags.files.return_rules.empty() ? "the shipped rules" : flags.files.return_rules);
  const std::string out = flags.json ? to_json(answer.node, 2) + "\n" : answer.text;
  std::fputs(out.c_str(), stdout);
  return answer.sound ? kDone : kAnswerIsNo;
}

Fault missing(const char* flag, const char* expected) {
  return {FaultCode::kMissing, {"", 0, 0, flag}, "nothing", expected, {}};
}

int run(const ReturnFlags& flags) {
  if (flags.explore) return explore(flags);
  if (flags.files.entries.empty()) return report({missing("--from", "a file of entries")});
  if (flags.player.empty()) return report({missing("--player", "the id of a player")});
  return tell(flags);
}

}  // namespace

void add_care_return_command(CLI::App& care, int& exit_status) {
  CLI::App* command =
      care.add_subcommand("return", "where a player stands on the way back, and what the next step waits for");
  const auto flags = std::make_shared<ReturnFlags>();
  command->add_option("RULES", flags->files.return_rules, "return rules, if not the shipped ones");
  command->add_option("--from", flags->files.entries, "the entries (docs/formats/entries.md)");
  command->add_option("--player", flags->player, "the player's id");
  command->add_option("--roster", flags->files.roster, "the roster, for names and ages");
  command->add_option("--date", flags->date, "the day that ages are reckoned for (today)");
  command->add_option("--catalogue", flags->files.catalogue, "folder of the catalogue, if not the shipped one");
  command->add_flag("--explore", flags->explore, "go through every sequence of events instead, and print the figures");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/care-players-answer.schema.json)");
  command->callback([flags, &exit_status] { exit_status = run(*flags); });
}

}  // namespace lanework::cli
