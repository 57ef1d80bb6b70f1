#include "app/cli/evening_flags.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>

#include "app/cli/document_edits.h"
#include "app/read/evening_files.h"

namespace lanework::cli {
namespace {

Node real(double value) {
  Node node;
  node.kind = Node::Kind::kReal;
  node.real = value;
  return node;
}

bool is_pinned(const Node& tonight, const std::string& drill) {
  const Node* pins = tonight.find("pins");
  return pins != nullptr && std::any_of(pins->items.begin(), pins->items.end(), [&](const Node& pin) {
           const Node* id = pin.find("drill");
           return id != nullptr && id->text == drill;
         });
}

void fold_demands(const EveningFlags& flags, Node& tonight) {
  for (const std::string& drill : flags.bans) add_to(tonight, "bans", Node::make_text(drill));
  for (const std::string& drill : flags.pins) {
    if (is_pinned(tonight, drill)) continue;
    Node pin = Node::make_table();
    pin.set("drill", Node::make_text(drill));
    add_to(tonight, "pins", std::move(pin));
  }
}

void fold_into_squad(const EveningFlags& flags, Node& squad) {
  if (flags.minutes) set_in(squad, "slot", "minutes", real(*flags.minutes));
  if (flags.days_to_match) set_in(squad, "slot", "days_to_match", Node::make_integer(*flags.days_to_match));
  if (flags.turnout) set_in(squad, "tonight", "turnout", Node::make_integer(*flags.turnout));
  if (flags.late) set_in(squad, "tonight", "late", Node::make_integer(*flags.late));
  if (flags.free_composition) set_in(squad, "tonight", "free_composition", Node::make_boolean(true));
  if (Node* tonight = kept_or_put(squad, "tonight", Node::make_table())) fold_demands(flags, *tonight);
  if (flags.balls) set_in(squad, "kit", "balls", Node::make_integer(*flags.balls));
  if (flags.cones) set_in(squad, "kit", "cones", Node::make_integer(*flags.cones));
}

void fold_into_strip(const EveningFlags& flags, Node& strip) {
  if (flags.lane_length_metres) strip.set("lane_length_metres", real(*flags.lane_length_metres));
  if (flags.lanes) strip.set("lanes", Node::make_integer(*flags.lanes));
  if (flags.surface.empty()) return;
  Node surface = Node::make_array();
  for (const std::string& word : flags.surface) surface.items.push_back(Node::make_text(word));
  strip.set("surface", std::move(surface));
}

}  // namespace

void add_evening_flags(CLI::App& command, EveningFlags& flags) {
  command.add_option("--squad", flags.squad, "the squad file (TOML)")->required();
  command.add_option("--catalogue", flags.catalogue, "folder of the catalogue, if not the shipped one");
  command.add_option("--minutes", flags.minutes, "minutes available tonight");
  command.add_option("--turnout", flags.turnout, "players there who take part");
  command.add_option("--late", flags.late, "of these, how many come after the first drill");
  command.add_option("--days-to-match", flags.days_to_match, "days to the next match; 0 is today");
  command.add_option("--lanes", flags.lanes, "lanes laid out");
  command.add_option("--lane-length", flags.lane_length_metres, "length of a lane in metres");
  command.add_option("--surface", flags.surface, "wet, hard, uneven, dark; 'wet,dark' for both")->delimiter(',');
  command.add_option("--balls", flags.balls, "balls there");
  command.add_option("--cones", flags.cones, "cones there");
  command.add_option("--roster", flags.roster, "the roster, in place of the squad file's");
  command.add_option("--routine", flags.routine, "the routine, in place of the squad file's");
  command.add_option("--strip", flags.strip, "the strip, in place of the squad file's");
  command.add_option("--restrictions", flags.restrictions, "the restrictions, in place of the squad file's");
  add_care_flags(command, flags.care);
  command.add_option("--pin", flags.pins, "a drill that must stand; may stand more than once");
  command.add_option("--ban", flags.bans, "a drill that must not; may stand more than once");
  command.add_flag("--free", flags.free_composition, "compose freely from the whole catalogue");
}

Result<door::EveningDocuments> load_evening(const EveningFlags& flags) {
  const auto folder = catalogue_folder(flags.catalogue);
  if (!folder) return folder.faults();
  auto files = read::read_evening_files(flags.squad, folder.value(),
                                        {flags.roster, flags.routine, flags.strip, flags.restrictions});
  if (!files) return files.faults();
  read::EveningFiles& read = files.value();
  fold_into_squad(flags, read.squad.root);
  fold_into_strip(flags, read.strip.root);
  if (const auto faults = fold_care(flags.care, folder.value(), read)) return *faults;
  return door::EveningDocuments{std::move(read.catalogue), std::move(read.routine),      std::move(read.strip),
                                std::move(read.squad),     std::move(read.restrictions), std::move(read.roster)};
}

Result<std::string> catalogue_folder(const std::string& stated) {
  namespace fs = std::filesystem;
  if (!stated.empty()) return stated;
  std::error_code ignored;
  fs::path at = fs::read_symlink("/proc/self/exe", ignored).parent_path();
  for (; !at.empty(); at = at.parent_path()) {
    const fs::path folder = at / "catalogue";
    if (fs::exists(folder / "families.toml", ignored)) return folder.string();
    if (at == at.root_path()) break;
  }
  return Fault{FaultCode::kFileUnreadable,
               {"", 0, 0, "--catalogue"},
               "no catalogue folder at or above the program",
               "a folder with drills/ and families.toml",
               "name it with --catalogue"};
}

}  // namespace lanework::cli
