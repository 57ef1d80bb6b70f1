#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>
#include <set>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/lead_answer.h"
#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/today.h"
#include "app/read/decode_text.h"
#include "app/read/known_sheet.h"
#include "core/care/screens/screen_reading.h"
#include "core/care/sheet/care_sheet.h"

namespace lanework::cli {
namespace {

using care::short_decimal;
using namespace care::screens;  // NOLINT(google-build-using-namespace): all of this file is about it

constexpr int kDecimals = 2;

const char* side_words(Side side) {
  if (side == Side::kLeft) return "left";
  return side == Side::kRight ? "right" : "";
}

std::string change_words(const ScreenTest& test, ChangeWords change) {
  switch (change) {
    case ChangeWords::kNotJudged:
      return "not judged: nobody is known to have published what measuring alone makes";
    case ChangeWords::kTooFewTries:
      return "not judged: the published figure is of the mean of " + std::to_string(test.change->trials) + " tries";
    case ChangeWords::kWithin:
      return "none beyond what measuring alone makes (" + short_decimal(test.change->value, kDecimals) + " " +
             test.unit + ")";
    case ChangeWords::kBetter:
    case ChangeWords::kWorse:
      return std::string(change == ChangeWords::kBetter ? "towards" : "away from") + " what is wanted, by more than " +
             short_decimal(test.change->value, kDecimals) + " " + test.unit + ", which measuring alone makes";
  }
  return "";
}

const char* change_key(ChangeWords change) {
  static constexpr std::array<const char*, 5> kKeys = {"not-judged", "too-few-tries", "within", "better", "worse"};
  return kKeys.at(static_cast<std::size_t>(change));
}

std::string values_text(const SideReading& side) {
  std::string out;
  for (const ScreenValue& value : side.values) {
    out += (out.empty() ? "" : ", ") + to_iso(value.date) + ": " + short_decimal(value.mean, kDecimals);
    if (value.trials > 1) {
      out += " (mean of " + std::to_string(value.trials) + ", best " + short_decimal(value.best, kDecimals) + ")";
    }
  }
  return out;
}

std::string symmetry_text(const ScreenTests& tests, const SymmetryReading& symmetry) {
  std::string out = "weaker side " + short_decimal(symmetry.percent) + " % of the stronger on " + to_iso(symmetry.date);
  if (!symmetry.prompt) return out;
  return out + ": below " + short_decimal(tests.symmetry_prompt_percent) + " %, " + tests.symmetry_caution;
}

std::string test_text(const ScreenTests& tests, const TestReading& reading) {
  const ScreenTest& test = tests.tests[reading.test];
  std::vector<std::vector<std::string>> rows;
  for (const SideReading& side : reading.sides) {
    rows.push_back({side_words(side.side), values_text(side)});
    if (side.values.size() >= 2)
      rows.push_back({"", "change since the last day: " + change_words(test, side.since_last)});
    if (side.values.size() >= 3 && test.change)
      rows.push_back({"", "change since the first day: " + change_words(test, side.since_first)});
  }
  if (reading.symmetry) rows.push_back({"", symmetry_text(tests, *reading.symmetry)});
  return "  " + test.name + ", " + test.unit + "\n" + in_columns(rows, "    ");
}

std::string norms_text(const ScreenTests& tests, const std::set<std::size_t>& used) {
  std::string out = "\nWhat the tests are (docs/care/screens.md)\n";
  for (const std::size_t position : used) {
    const ScreenTest& test = tests.tests[position];
    out += "  " + test.name + ". " + test.protocol + "\n";
    if (!test.caution.empty()) out += "    " + test.caution + "\n";
    for (const Norm& norm : test.norms)
      out += "    Published, of " + norm.of + ": " + norm.words + (norm.unverified ? " (unverified)" : "") + "\n";
    if (test.norms.empty()) out += "    No published values are known to us.\n";
  }
  return out + "  Values of adults say nothing about a child: from 10 to 14 only a player's own change is of use.\n";
}

Node side_node(const SideReading& side) {
  Node out = Node::make_table();
  out.set("side", Node::make_text(side.side == Side::kBoth ? "both" : side_words(side.side)));
  Node values = Node::make_array();
  for (const ScreenValue& value : side.values) {
    Node one = Node::make_table();
    one.set("date", Node::make_text(to_iso(value.date)));
    one.set("mean", Node::make_real(value.mean));
    one.set("best", Node::make_real(value.best));
    one.set("tries", Node::make_integer(value.trials));
    values.items.push_back(std::move(one));
  }
  out.set("values", std::move(values));
  if (side.values.size() >= 2) out.set("change_since_last", Node::make_text(change_key(side.since_last)));
  if (side.values.size() >= 3) out.set("change_since_first", Node::make_text(change_key(side.since_first)));
  return out;
}

Node player_node(const ScreenTests& tests, const ScreenReading& reading) {
  Node out = Node::make_table();
  out.set("player", Node::make_text(reading.player));
  Node list = Node::make_array();
  for (const TestReading& test : reading.tests) {
    Node one = Node::make_table();
    one.set("test", Node::make_text(tests.tests[test.test].key));
    one.set("unit", Node::make_text(tests.tests[test.test].unit));
    Node sides = Node::make_array();
    for (const SideReading& side : test.sides) sides.items.push_back(side_node(side));
    one.set("sides", std::move(sides));
    if (test.symmetry) {
      Node symmetry = Node::make_table();
      symmetry.set("date", Node::make_text(to_iso(test.symmetry->date)));
      symmetry.set("percent", Node::make_real(test.symmetry->percent));
      symmetry.set("prompt", Node::make_boolean(test.symmetry->prompt));
      one.set("symmetry", std::move(symmetry));
    }
    list.items.push_back(std::move(one));
  }
  out.set("tests", std::move(list));
  return out;
}

Result<LeadAnswer> answer(const LeadFlags& flags) {
  const auto day = day_or_today("--date", flags.day);
  if (!day) return day.faults();
  const auto document = care_document(flags, "screens.toml");
  if (!document) return document.faults();
  const auto tests = read_screen_tests(document.value());
  if (!tests) return tests.faults();
  const people::TextForms forms = read::unicode_text_forms();
  const auto sheet = read::read_known_sheet(flags.sheet, screen_columns(), forms);
  if (!sheet) return sheet.faults();
  const auto values = read_screen_rows(sheet.value(), tests.value(), forms, day.value());
  if (!values) return values.faults();
  std::vector<ScreenReading> readings = read_screens(tests.value(), values.value());
  if (!flags.player.empty()) {
    std::erase_if(readings, [&](const ScreenReading& one) { return one.player != flags.player; });
    if (readings.empty()) return unknown_player(flags, flags.sheet);
  }
  LeadAnswer out = lead_answer("care-screen", "Screens", day.value());
  Node players = Node::make_array();
  std::set<std::size_t> used;
  for (const ScreenReading& reading : readings) {
    players.items.push_back(player_node(tests.value(), reading));
    out.text += "\n" + reading.player + "\n";
    for (const TestReading& test : reading.tests) {
      used.insert(test.test);
      out.text += test_text(tests.value(), test);
    }
  }
  out.node.set("players", std::move(players));
  out.text += norms_text(tests.value(), used);
  return out;
}

}  // namespace

void add_care_screen_command(CLI::App& care, int& exit_status) {
  CLI::App* command =
      care.add_subcommand("screen", "tests of balance, hopping, holding and alignment, each player against their own");
  const auto flags = std::make_shared<LeadFlags>();
  add_lead_flags(*command, *flags, "screens: player, date, test, side, value (docs/formats/screens.md)");
  command->callback([flags, &exit_status] { exit_status = show(answer(*flags), flags->json); });
}

}  // namespace lanework::cli
