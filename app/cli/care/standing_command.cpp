#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <map>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/entry_files.h"
#include "app/cli/care/texts_node.h"
#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/today.h"
#include "app/read/files.h"
#include "core/care/entries/restrictions_document.h"
#include "core/people/instruction.h"

namespace lanework::cli {
namespace {

struct StandingFlags {
  EntryFiles files;
  std::string on;
  std::string restrictions;
  bool json = false;
};

struct PlayerStanding {
  std::string player;
  bool sits_out = false;
  std::vector<std::string> instructions;  // the coach's words
  std::vector<std::string> why;           // for the lead
};

std::vector<PlayerStanding> by_player(const std::vector<care::Standing>& standing, Date day) {
  std::vector<PlayerStanding> out;
  for (const care::Standing& one : standing) {
    if (out.empty() || out.back().player != one.restriction.player)
      out.push_back({one.restriction.player, false, {}, {}});
    PlayerStanding& player = out.back();
    player.sits_out = player.sits_out || one.restriction.sits_out;
    const std::string words = people::instruction_for(one.restriction, day);
    if (std::find(player.instructions.begin(), player.instructions.end(), words) == player.instructions.end()) {
      player.instructions.push_back(words);
    }
    if (std::find(player.why.begin(), player.why.end(), one.why) == player.why.end()) player.why.push_back(one.why);
  }
  return out;
}

std::string age_words(const std::optional<care::ReceiptTime>& as_known, Date day) {
  if (!as_known) return "Nothing was ever received: nothing is known of anybody.\n";
  const int days = days_between(care::local_day(*as_known), day);
  const std::string old = days < 0 ? "which is after the day asked about"
                          : days == 0
                              ? "the same day"
                              : std::to_string(days) + (days == 1 ? " day" : " days") + " before " + to_words(day);
  return "As known " + care::to_day_words(*as_known) + ", " + old + ". Ask who is sore tonight.\n";
}

std::string players_text(const char* heading, const std::vector<PlayerStanding>& players, bool out_ones,
                         const FoldedEntries& folded) {
  std::string out;
  for (const PlayerStanding& player : players) {
    if (player.sits_out != out_ones) continue;
    if (out.empty()) out = std::string("\n") + heading + "\n";
    out += "  " + folded.named(player.player) + "\n";
    for (const std::string& words : player.instructions) out += "    coach reads: " + words + "\n";
    for (const std::string& why : player.why) out += "    for the lead: " + why + "\n";
  }
  return out;
}

std::string gates_text(const FoldedEntries& folded) {
  std::string out;
  for (const care::CourseStanding& course : folded.known.courses) {
    const auto waiting = care::waiting_at(course.in_force.course, course.state);
    if (course.closed || !waiting) continue;
    if (out.empty()) out = "\nOn the way back\n";
    out += "  " + folded.named(course.player) + ", " + course.in_force.course.name + ": before '" +
           course.in_force.course.step(waiting->step).name + "'\n";
    for (const std::string& need : waiting->needs) out += "    waits for " + need + "\n";
    if (waiting->not_before) {
      out += "    not before " + care::to_day_words(care::at_same_offset(*waiting->not_before, course.since)) + "\n";
    }
  }
  return out;
}

std::string remarks_text(const FoldedEntries& folded) {
  std::vector<std::vector<std::string>> rows;
  for (const care::Remark& remark : folded.known.remarks) rows.push_back({remark.entry, remark.player, remark.words});
  return rows.empty() ? "" : "\nEntries that say more\n" + in_columns(rows, "  ");
}

Node courses_node(const FoldedEntries& folded) {
  Node list = Node::make_array();
  for (const care::CourseStanding& course : folded.known.courses) {
    const auto waiting = care::waiting_at(course.in_force.course, course.state);
    if (course.closed || !waiting) continue;
    Node row = Node::make_table();
    row.set("player", Node::make_text(course.player));
    row.set("course", Node::make_text(course.in_force.course.id));
    row.set("before", Node::make_text(course.in_force.course.step(waiting->step).key));
    row.set("needs", texts_node(waiting->needs));
    if (waiting->gate) row.set("gate", Node::make_text(course.in_force.course.gate(*waiting->gate).key));
    list.items.push_back(std::move(row));
  }
  return list;
}

Node node_of(const FoldedEntries& folded, const std::vector<PlayerStanding>& players, Date day) {
  Node out = Node::make_table();
  out.set("answer", Node::make_text("care-standing"));
  out.set("version", Node::make_integer(1));
  out.set("on", Node::make_text(to_iso(day)));
  if (folded.known.as_known) {
    out.set("as_known", Node::make_text(care::to_known_words(*folded.known.as_known)));
    out.set("days_old", Node::make_integer(days_between(care::local_day(*folded.known.as_known), day)));
  }
  Node list = Node::make_array();
  for (const PlayerStanding& player : players) {
    Node row = Node::make_table();
    row.set("player", Node::make_text(player.player));
    row.set("sits_out", Node::make_boolean(player.sits_out));
    row.set("instructions", texts_node(player.instructions));
    row.set("why", texts_node(player.why));
    list.items.push_back(std::move(row));
  }
  out.set("players", std::move(list));
  out.set("waiting", courses_node(folded));
  Node remarks = Node::make_array();
  for (const care::Remark& remark : folded.known.remarks) {
    Node row = Node::make_table();
    row.set("entry", Node::make_text(remark.entry));
    row.set("player", Node::make_text(remark.player));
    row.set("words", Node::make_text(remark.words));
    remarks.items.push_back(std::move(row));
  }
  out.set("remarks", std::move(remarks));
  out.set("note", Node::make_text("Local rules and licensed practice come first."));
  return out;
}

int stand(const StandingFlags& flags) {
  const auto day = day_or_today("--on", flags.on);
  if (!day) return report(day.faults());
  const auto folded = fold_entry_files(flags.files, day.value());
  if (!folded) return report(folded.faults());
  const care::Knowledge& known = folded.value().known;
  const std::vector<care::Standing> standing = care::holding_on(known.standing, day.value());
  if (!flags.restrictions.empty()) {
    const std::string bytes =
        "# Made by 'lanework care standing' from the entries: make it anew rather than edit it.\n" +
        to_toml(care::restrictions_document(standing, known.as_known));
    if (const auto fault = read::write_file_atomically(flags.restrictions, bytes)) return report({*fault});
  }
  const std::vector<PlayerStanding> players = by_player(standing, day.value());
  std::string out;
  if (flags.json) {
    out = to_json(node_of(folded.value(), players, day.value()), 2) + "\n";
  } else {
    out = age_words(known.as_known, day.value()) + players_text("Sits out", players, true, folded.value()) +
          players_text("Joins in with swaps", players, false, folded.value());
    if (players.empty()) out += "\nNothing that was received holds anybody back.\n";
    out += gates_text(folded.value()) + remarks_text(folded.value()) + "\n" + kWhoDecides;
    if (!flags.restrictions.empty()) out += "Written: " + flags.restrictions + "\n";
  }
  std::fputs(out.c_str(), stdout);
  return kDone;
}

}  // namespace

void add_care_standing_command(CLI::App& care, int& exit_status) {
  CLI::App* command =
      care.add_subcommand("standing", "who sits out, who has swaps and why, as known by the latest entry");
  const auto flags = std::make_shared<StandingFlags>();
  command->add_option("ENTRIES", flags->files.entries, "the entries (docs/formats/entries.md)")->required();
  command->add_option("--roster", flags->files.roster, "the roster of the club, for names and ages");
  command->add_option("--on", flags->on, "the day asked about, such as 2026-11-26 (today)");
  command->add_option("--restrictions", flags->restrictions,
                      "write what stands as a restrictions file, for a squad file to name");
  command->add_option("--catalogue", flags->files.catalogue, "folder of the catalogue, if not the shipped one");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/care-players-answer.schema.json)");
  command->callback([flags, &exit_status] { exit_status = stand(*flags); });
}

}  // namespace lanework::cli
