#include "app/cli/care/explore_words.h"

#include <vector>

#include "app/cli/care/entry_files.h"
#include "app/cli/columns.h"
#include "core/care/return_to_sport/explore.h"

namespace lanework::cli {
namespace {

struct HeldAs {
  const char* words;
  std::optional<int> age;
};

Node path_node(const care::BrokenPromise& broken) {
  Node out = Node::make_table();
  out.set("promise", Node::make_text(broken.promise));
  Node path = Node::make_array();
  for (const std::string& event : broken.path) path.items.push_back(Node::make_text(event));
  out.set("path", std::move(path));
  return out;
}

Node exploration_node(const std::string& course, const std::string& rules, const HeldAs& as,
                      const care::Exploration& found) {
  Node out = Node::make_table();
  out.set("course", Node::make_text(course));
  out.set("rules", Node::make_text(rules));
  out.set("held_as", Node::make_text(as.words));
  out.set("states", Node::make_integer(found.states));
  out.set("transitions", Node::make_integer(found.transitions));
  out.set("refused", Node::make_integer(found.refused));
  out.set("dead_ends", Node::make_integer(found.dead_ends));
  out.set("tick_minutes", Node::make_integer(found.tick_minutes));
  if (found.earliest_last_step_hours)
    out.set("earliest_last_step_hours", Node::make_integer(*found.earliest_last_step_hours));
  Node broken = Node::make_array();
  for (const care::BrokenPromise& one : found.broken) broken.items.push_back(path_node(one));
  out.set("broken", std::move(broken));
  return out;
}

std::string broken_text(const std::string& course, const std::string& rules, const care::Exploration& found) {
  std::string out;
  for (const care::BrokenPromise& one : found.broken) {
    out += "\nBroken in " + course + ", " + rules + ": " + one.promise + ".\n  A shortest way there:\n";
    for (const std::string& event : one.path) out += "    " + event + "\n";
  }
  if (found.dead_ends > 0) out += "\n" + std::to_string(found.dead_ends) + " states of " + course + " lead nowhere.\n";
  return out;
}

}  // namespace

ExploreAnswer explore_rules(const care::ReturnRules& rules, const std::string& file) {
  constexpr int kAdult = 25;
  constexpr int kChild = 14;
  std::vector<std::vector<std::string>> rows = {
      {"course", "rules", "held as", "states", "taken", "refused", "dead ends", "last step, earliest", "promises"}};
  ExploreAnswer out;
  Node list = Node::make_array();
  std::string broken;
  for (const care::Course& course : rules.courses) {
    for (const care::RuleSet& set : rules.rule_sets) {
      for (const HeldAs& as : {HeldAs{"a child", kChild}, HeldAs{"an adult", kAdult}, HeldAs{"age not known", {}}}) {
        const care::Course held = care::course_in_force(rules, course.id, set.id, as.age).course;
        const care::Exploration found = care::explore(held, care::promises_of(course.id));
        out.sound = out.sound && found.sound();
        const std::string earliest =
            found.earliest_last_step_hours ? std::to_string(*found.earliest_last_step_hours) + " h" : "never";
        rows.push_back({course.id, set.id, as.words, std::to_string(found.states), std::to_string(found.transitions),
                        std::to_string(found.refused), std::to_string(found.dead_ends), earliest,
                        found.sound() ? "all kept" : "broken"});
        broken += broken_text(course.id, set.id, found);
        list.items.push_back(exploration_node(course.id, set.id, as, found));
      }
    }
  }
  out.text =
      "Every sequence of events through " + file + ", over time, until nothing new is reached:\n\n" +
      in_columns(rows, "  ") + broken +
      "\nPromised on every path: no contact, no risk of impact and no match without the clearance of a named "
      "clinician\nsince the last symptoms; no step passed over or left too soon; symptoms set back or hold; nothing "
      "begins but by\nan entry of the lead or a clinician; and from every state the last step can be reached.\n" +
      kWhoDecides;
  out.node = Node::make_table();
  out.node.set("answer", Node::make_text("care-return-exploration"));
  out.node.set("version", Node::make_integer(1));
  out.node.set("sound", Node::make_boolean(out.sound));
  out.node.set("explorations", std::move(list));
  out.node.set("note", Node::make_text("Local rules and licensed practice come first."));
  return out;
}

}  // namespace lanework::cli
