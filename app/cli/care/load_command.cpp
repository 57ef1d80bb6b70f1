#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/lead_answer.h"
#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/today.h"
#include "app/read/decode_text.h"
#include "app/read/known_sheet.h"
#include "core/care/load/load_reading.h"
#include "core/care/sheet/care_sheet.h"

namespace lanework::cli {
namespace {

using care::short_decimal;
using care::load::LoadReading;
using care::load::PlayerWeek;
using care::load::Sessions;

constexpr const char* kHow =
    "\nHow this is made (docs/care/load.md)\n"
    "  Load is effort (0 to 10, by the player) times minutes (Foster 2001). A day without a row counts as rest, so "
    "that a\n"
    "  forgotten row makes a week look lighter than it was.\n"
    "  Monotony is the mean of the seven days over their deviation (the sample's, over six; the source leaves it "
    "open),\n"
    "  strain the week's load times that; whole weeks only, and not applicable where every day is alike.\n"
    "  Weighted means: today's weight is 2 / (N + 1) (Williams 2017); their seed is the mean of the first seven days, "
    "and\n"
    "  before 28 days they hang on it.\n"
    "  This describes what was done. Such numbers cannot say whether risk is rising (Impellizzeri 2020), and dividing\n"
    "  recent load by usual load makes artefacts: a fixed or a random number in its place did about as well "
    "(Impellizzeri\n"
    "  2021). So no ratio, no zone and no score of anybody is shown.\n";

std::string or_dash(const std::optional<double>& value, int decimals, const char* without) {
  return value ? short_decimal(*value, decimals) : without;
}

std::string weeks_text(const LoadReading& reading) {
  std::vector<std::vector<std::string>> rows = {{"week of", "sessions", "minutes", "load", "monotony", "strain", ""}};
  for (const PlayerWeek& week : reading.weeks) {
    const char* without = week.whole ? "not applicable" : "-";
    rows.push_back({to_iso(week.monday), std::to_string(week.sessions), std::to_string(week.minutes),
                    short_decimal(week.load.total, 0), or_dash(week.load.monotony, 2, without),
                    or_dash(week.load.strain, 0, without), week.whole ? "" : "not a whole week"});
  }
  return in_columns(rows, "  ");
}

std::string means_text(const LoadReading& reading) {
  if (!reading.means) return "  Weighted means: from the eighth day on.\n";
  return "  Weighted means of a day's load: " + short_decimal(reading.means->short_mean, 0) + " (7 days), " +
         short_decimal(reading.means->long_mean, 0) + " (28 days); " +
         (reading.means->settled ? "" : "not settled before " + to_iso(reading.means->settled_from) + "; ") + "seed " +
         short_decimal(reading.means->seed, 0) + "\n";
}

std::vector<std::string> prompts_of(const PlayerWeek& week) {
  std::vector<std::string> out;
  if (week.more_hours_than_years) {
    out.push_back("week of " + to_iso(week.monday) + ": " + short_decimal(week.minutes / 60.0) +
                  " hours, more than the " + std::to_string(*week.age) + " years of age");
  }
  if (week.little_rest) {
    out.push_back("week of " + to_iso(week.monday) + ": " + std::to_string(week.rest_days) +
                  (week.rest_days == 1 ? " day" : " days") + " of rest, fewer than two");
  }
  return out;
}

std::string prompts_text(const LoadReading& reading) {
  std::string out;
  bool any_age = false;
  for (const PlayerWeek& week : reading.weeks) {
    any_age = any_age || week.age.has_value();
    for (const std::string& prompt : prompts_of(week)) out += "    " + prompt + "\n";
  }
  if (!out.empty()) out = "  To talk about (prompts from memory, unverified, no limits):\n" + out;
  if (reading.silent) {
    out += "  No row since " + to_iso(reading.last) + ": rest, or not entered; the means fall in either case.\n";
  }
  if (!any_age) out += "  No age in the sheet: hours are not set against it.\n";
  return out;
}

Node week_node(const PlayerWeek& week) {
  Node out = Node::make_table();
  out.set("monday", Node::make_text(to_iso(week.monday)));
  out.set("whole", Node::make_boolean(week.whole));
  out.set("sessions", Node::make_integer(week.sessions));
  out.set("minutes", Node::make_integer(week.minutes));
  out.set("load", Node::make_real(week.load.total));
  if (week.load.monotony) out.set("monotony", Node::make_real(*week.load.monotony));
  if (week.load.strain) out.set("strain", Node::make_real(*week.load.strain));
  Node prompts = Node::make_array();
  for (const std::string& prompt : prompts_of(week)) prompts.items.push_back(Node::make_text(prompt));
  out.set("prompts_unverified", std::move(prompts));
  return out;
}

Node player_node(const LoadReading& reading) {
  Node out = Node::make_table();
  out.set("player", Node::make_text(reading.player));
  out.set("first", Node::make_text(to_iso(reading.first)));
  out.set("last", Node::make_text(to_iso(reading.last)));
  Node weeks = Node::make_array();
  for (const PlayerWeek& week : reading.weeks) weeks.items.push_back(week_node(week));
  out.set("weeks", std::move(weeks));
  if (!reading.means) return out;
  Node means = Node::make_table();
  means.set("seed", Node::make_real(reading.means->seed));
  means.set("of_7_days", Node::make_real(reading.means->short_mean));
  means.set("of_28_days", Node::make_real(reading.means->long_mean));
  means.set("settled", Node::make_boolean(reading.means->settled));
  out.set("weighted_means", std::move(means));
  return out;
}

// What was kept out, by row: a guess of somebody else's is no feed.
void add_kept_out(const Sessions& sessions, const std::string& file, LeadAnswer& answer) {
  Node rows = Node::make_array();
  std::string text;
  for (const care::load::KeptOut& one : sessions.kept_out) {
    const std::string by = one.entered_by.empty() ? "nobody is named" : "entered by " + quote(one.entered_by);
    text += "  " + file + ":" + std::to_string(one.line) + ": " + quote(one.player) + ", " + by + "\n";
    Node row = Node::make_table();
    row.set("line", Node::make_integer(one.line));
    row.set("player", Node::make_text(one.player));
    row.set("entered_by", Node::make_text(one.entered_by));
    rows.items.push_back(std::move(row));
  }
  answer.node.set("kept_out", std::move(rows));
  if (text.empty()) return;
  answer.text +=
      "\nKept out: only the player or the lead may say how hard it was. These weeks look lighter than they were.\n" +
      text;
}

Result<LeadAnswer> answer(const LeadFlags& flags) {
  const auto day = day_or_today("--date", flags.day);
  if (!day) return day.faults();
  const people::TextForms forms = read::unicode_text_forms();
  const auto sheet = read::read_known_sheet(flags.sheet, care::load::session_columns(), forms);
  if (!sheet) return sheet.faults();
  auto sessions = care::load::read_sessions(sheet.value(), forms, day.value());
  if (!sessions) return sessions.faults();
  std::vector<LoadReading> readings = care::load::read_loads(sessions.value(), day.value());
  if (!flags.player.empty()) {
    std::erase_if(readings, [&](const LoadReading& one) { return one.player != flags.player; });
    std::erase_if(sessions.value().kept_out, [&](const auto& one) { return one.player != flags.player; });
    if (readings.empty() && sessions.value().kept_out.empty()) return unknown_player(flags, flags.sheet);
  }
  LeadAnswer out = lead_answer("care-load", "Session load", day.value());
  Node players = Node::make_array();
  for (const LoadReading& reading : readings) {
    players.items.push_back(player_node(reading));
    out.text += "\n" + reading.player + ", from " + to_iso(reading.first) + " on\n" + weeks_text(reading) +
                means_text(reading) + prompts_text(reading);
  }
  out.node.set("players", std::move(players));
  add_kept_out(sessions.value(), flags.sheet, out);
  if (readings.empty()) out.text += "\nNo row that may be used.\n";
  out.text += kHow;
  out.exit_status = readings.empty() ? kAnswerIsNo : kDone;
  return out;
}

}  // namespace

void add_care_load_command(CLI::App& care, int& exit_status) {
  CLI::App* command = care.add_subcommand("load", "what the weeks asked of each player, as the players say");
  const auto flags = std::make_shared<LeadFlags>();
  add_lead_flags(*command, *flags, "sessions: player, date, minutes, effort, entered_by (docs/formats/load.md)");
  command->callback([flags, &exit_status] { exit_status = show(answer(*flags), flags->json); });
}

}  // namespace lanework::cli
