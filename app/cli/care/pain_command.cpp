#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/entry_files.h"
#include "app/cli/care/texts_node.h"
#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/today.h"
#include "core/care/pain/judge_pain.h"
#include "core/people/instruction.h"

namespace lanework::cli {
namespace {

struct PainFlags {
  std::optional<int> before;
  std::optional<int> during;
  std::optional<int> next_morning;
  std::optional<int> a_week_ago;
  std::string place;
  std::vector<std::string> signs;
  std::string date;
  std::string catalogue;
  bool why = false;
  bool json = false;
};

// Position of a word; a fault where it is none.
std::optional<std::size_t> find_word(const char* flag, const std::string& text,
                                     const std::vector<std::string_view>& known, Faults& faults) {
  const auto found = std::find(known.begin(), known.end(), text);
  if (found != known.end()) return static_cast<std::size_t>(found - known.begin());
  std::string list;
  for (const std::string_view one : known) list += (list.empty() ? "" : ", ") + std::string(one);
  faults.push_back({FaultCode::kUnknownName, {"", 0, 0, flag}, quote(text), "one of " + list, {}});
  return {};
}

Result<std::vector<care::PainReport>> reports_of(const PainFlags& flags) {
  Faults faults;
  care::PainReport now;
  const auto day = day_or_today("--date", flags.date);
  if (!day) return day.faults();
  now.day = day.value();
  now.before = flags.before;
  now.during = flags.during;
  now.next_morning = flags.next_morning;
  if (!flags.place.empty()) {
    const auto place = find_word("--place", flags.place, catalogue::body_area_words(), faults);
    if (place) now.place = static_cast<catalogue::BodyArea>(*place);
  }
  for (const std::string& text : flags.signs) {
    const auto sign = find_word("--sign", text, care::pain_sign_words(), faults);
    if (sign) now.signs.push_back(static_cast<care::PainSign>(*sign));
  }
  if (!faults.empty()) return faults;
  std::vector<care::PainReport> out;
  if (flags.a_week_ago) {
    care::PainReport then;
    constexpr int kDays = 7;
    then.day = Date{now.day->days_since_epoch - kDays};
    then.before = flags.a_week_ago;
    then.place = now.place;
    out.push_back(then);
  }
  out.push_back(std::move(now));
  return out;
}

std::string listed(const std::vector<std::string>& all) {
  std::string out;
  for (const std::string& one : all) out += (out.empty() ? "" : ", ") + one;
  return out;
}

std::string cuts_text(const care::PainRule& rule) {
  const auto to = [](int number) { return std::to_string(number); };
  return "Numbers (own judgement, for youth): 0-" + to(rule.joins_in_up_to) + " joins in; up to " +
         to(rule.swaps_up_to) + " joins in with swaps; above, or\nabove " + to(rule.settled_up_to) +
         " the next morning, or with any sign: sits out and sees a clinician. One answer more careful\nwhere it is "
         "worse "
         "than " +
         to(rule.days_from) + "-" + to(rule.days_to) +
         " days before. Head, neck, chest, a swollen joint, suspected bone or growth-plate pain: seen at\nonce, "
         "whatever "
         "the number.\n";
}

std::string published_text(const care::PainRule& rule) {
  std::vector<std::vector<std::string>> rows;
  for (const care::PublishedCuts& cuts : rule.published) {
    rows.push_back({cuts.words + (cuts.unverified ? " (unverified)" : ""), listed(cuts.sources)});
  }
  return "Others have used (they disagree; ours is as careful as the most careful of them):\n" + in_columns(rows, "  ");
}

std::string text_of(const care::PainJudgement& judged, const care::PainRule& rule, bool why) {
  std::string out = std::string("Answer: ") + care::words_of(judged.taking_part) + ".\n";
  if (!judged.why.empty()) out += "Why: " + listed(judged.why) + ".\n";
  if (!judged.not_known.empty()) out += "Not known: " + listed(judged.not_known) + ".\n";
  if (judged.restriction) {
    out += "The coach reads: " + people::instruction_for(*judged.restriction) + ". It holds until the lead lifts it.\n";
  }
  if (why) out += "\n" + cuts_text(rule) + published_text(rule);
  return out + kWhoDecides;
}

Node node_of(const care::PainJudgement& judged) {
  Node out = Node::make_table();
  out.set("answer", Node::make_text("care-pain"));
  out.set("version", Node::make_integer(1));
  out.set("takes_part", Node::make_text(care::words_of(judged.taking_part)));
  out.set("refers_at_once", Node::make_boolean(judged.at_once));
  out.set("why", texts_node(judged.why));
  out.set("not_known", texts_node(judged.not_known));
  if (judged.restriction) out.set("instruction", Node::make_text(people::instruction_for(*judged.restriction)));
  out.set("note", Node::make_text("Local rules and licensed practice come first."));
  return out;
}

int judge(const PainFlags& flags) {
  const auto reports = reports_of(flags);
  if (!reports) return report(reports.faults());
  const auto rules = read_care_rules(flags.catalogue);
  if (!rules) return report(rules.faults());
  const care::PainJudgement judged = care::judge_pain(rules.value().pain, reports.value());
  const std::string out =
      flags.json ? to_json(node_of(judged), 2) + "\n" : text_of(judged, rules.value().pain, flags.why);
  std::fputs(out.c_str(), stdout);
  return kDone;
}

}  // namespace

void add_care_pain_command(CLI::App& care, int& exit_status) {
  CLI::App* command = care.add_subcommand(
      "pain", "pain of 0 to 10 and signs: joins in, joins in with swaps, or sits out, see a clinician");
  const auto flags = std::make_shared<PainFlags>();
  const auto number = [&](const char* name, std::optional<int>& into, const char* words) {
    command->add_option(name, into, words)->check(CLI::Range(0, care::kMostPain));
  };
  command->add_option("--place", flags->place, "where, such as knee; left out: not known");
  number("--before", flags->before, "0 to 10 before the session");
  number("--during", flags->during, "0 to 10 during it");
  number("--next-morning", flags->next_morning, "0 to 10 the next morning");
  number("--a-week-ago", flags->a_week_ago, "0 to 10 at the same place a week before");
  command->add_option("--sign", flags->signs, "such as limp or swelling; may stand more than once");
  command->add_option("--date", flags->date, "of the session, such as 2026-11-26 (today)");
  command->add_option("--catalogue", flags->catalogue, "folder of the catalogue, if not the shipped one");
  command->add_flag("--why", flags->why, "where the numbers come from");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/care-players-answer.schema.json)");
  command->callback([flags, &exit_status] { exit_status = judge(*flags); });
}

}  // namespace lanework::cli
