#include "app/cli/evening_care.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "app/cli/care/entry_files.h"
#include "app/cli/care/evening_weather.h"
#include "app/cli/document_edits.h"
#include "app/cli/ledger/ledger_state.h"
#include "app/read/club_care.h"
#include "app/read/files.h"
#include "app/read/reported.h"
#include "core/care/entries/read_cautiously.h"
#include "core/care/entries/restrictions_document.h"

namespace lanework::cli {
namespace {

bool is_of(const std::vector<people::Player>& roster, const std::string& id) {
  return std::any_of(roster.begin(), roster.end(), [&](const people::Player& player) { return player.id == id; });
}

std::string text_at(const Node& table, const char* key) {
  const Node* node = table.find(key);
  return node != nullptr && node->kind == Node::Kind::kText ? node->text : std::string();
}

void add_as_known(Node& restrictions, const std::string& reports) {
  restrictions.set("as_known", Node::make_text(people::known_together(text_at(restrictions, "as_known"), reports)));
}

// Players of other rosters are passed over; whole-squad rows are taken as they are.
void add_rows(const Node& from, const std::vector<people::Player>& roster, Node& restrictions) {
  const Node* rows = from.find("restriction");
  if (rows == nullptr) return;
  for (const Node& row : rows->items) {
    const std::string player = text_at(row, "player");
    if (player.empty() || is_of(roster, player)) add_to(restrictions, "restriction", row);
  }
}

struct Slot {
  std::optional<Date> date;
  std::optional<TimeOfDay> start;
  Seconds length;
};

// What the weather and the entries ask of the squad file; its faults are its own.
Slot slot_of(const Document& squad) {
  Faults passed_over;
  TableReader root(squad.file, &squad.root, "", passed_over);
  TableReader slot = root.table("slot");
  return {slot.date("date"), slot.time("start"), Seconds(slot.scaled_or("minutes", 60, 0, 0, 1000))};
}

// By the squad file's own age, else the youngest of its roster.
std::optional<int> youngest_of(const read::EveningFiles& files, Date day) {
  const Node* stated = files.squad.root.find("age");
  if (stated != nullptr && stated->kind == Node::Kind::kInteger) return static_cast<int>(stated->integer);
  const std::string squad = text_at(files.squad.root, "in_roster");
  std::optional<int> youngest;
  for (const people::Player& player : files.roster) {
    const bool theirs =
        squad.empty() || std::find(player.squads.begin(), player.squads.end(), squad) != player.squads.end();
    const std::optional<int> age = theirs ? people::age_on(player, day) : std::nullopt;
    if (age && (!youngest || *age < *youngest)) youngest = age;
  }
  return youngest;
}

// 'Q05=knee': sore, nobody asked how much; 'Q05=knee/5': 5 of 10 before the session, by the pain rule.
class SoreTonight {
 public:
  SoreTonight(const std::string& catalogue, const read::EveningFiles& files) : catalogue_(catalogue), files_(files) {}

  std::optional<Faults> fold(const std::string& sore, Node& restrictions) {
    const std::size_t equals = sore.find('=');
    const std::size_t slash = sore.find('/', equals == std::string::npos ? 0 : equals);
    const std::string area = equals == std::string::npos ? "" : sore.substr(equals + 1, slash - equals - 1);
    if (equals == std::string::npos || equals == 0 || area.empty()) return Faults{usage(sore)};
    const std::string player = sore.substr(0, equals);
    const auto rule = read_care_rules(catalogue_);
    if (!rule) return rule.faults();
    care::PainReport report;
    report.day = slot_of(files_.squad).date;
    const auto& words = catalogue::body_area_words();
    const auto place = std::find(words.begin(), words.end(), area);
    if (place == words.end()) return Faults{unknown_area(area)};
    report.place = static_cast<catalogue::BodyArea>(place - words.begin());
    if (slash != std::string::npos) {
      const std::string number = sore.substr(slash + 1);
      const bool sound =
          !number.empty() && number.size() <= 2 && number.find_first_not_of("0123456789") == std::string::npos;
      if (!sound || std::stoi(number) > care::kMostPain) return Faults{usage(sore)};
      report.before = std::stoi(number);
    }
    care::PainJudgement judged = care::judge_pain(rule.value().pain, {report});
    const bool asked = report.before.has_value() || judged.at_once;
    if (asked && !judged.restriction) return {};
    if (!asked) judged.restriction = swaps_only(*report.place);
    judged.restriction->player = player;
    const Node made = care::restrictions_document({{*judged.restriction, {}, false, {}}}, {});
    add_to(restrictions, "restriction", made.find("restriction")->items.front());
    return {};
  }

 private:
  const std::string& catalogue_;
  const read::EveningFiles& files_;

  // Nobody asked how much: nothing that asks anything of the area.
  static people::Restriction swaps_only(catalogue::BodyArea place) {
    people::Restriction out;
    out.areas = {place};
    out.instruction = "sore tonight: swaps only, stop if it hurts";
    return out;
  }
  static Fault usage(const std::string& sore) {
    return {FaultCode::kUsage,
            {"", 0, 0, "--sore"},
            quote(sore),
            "PLAYER=AREA, such as Q05=knee, or with how much of 10, such as Q05=knee/5",
            {}};
  }
  static Fault unknown_area(const std::string& area) {
    std::string known;
    for (const std::string_view word : catalogue::body_area_words())
      known += (known.empty() ? "" : ", ") + std::string(word);
    return {FaultCode::kUnknownName, {"", 0, 0, "--sore"}, quote(area), "one of " + known, {}};
  }
};

// What holds on that day, of players of this roster.
void add_known(const care::Knowledge& known, Date day, read::EveningFiles& files) {
  const auto document = care::restrictions_document(care::holding_on(known.standing, day), known.as_known);
  add_rows(document, files.roster, files.restrictions.root);
  const std::string as_known = text_at(document, "as_known");
  if (!as_known.empty()) add_as_known(files.restrictions.root, as_known);
}

// The club's entries, or those named in their place, and what was entered in a ledger.
std::optional<Faults> fold_entries(const CareFlags& flags, const read::ClubCare& club, const std::string& catalogue,
                                   read::EveningFiles& files) {
  std::optional<read::EntriesFile> file;
  if (club.entries) file = read::EntriesFile{*club.entries, club.entries_place};
  if (flags.entries) file = read::EntriesFile{*flags.entries, {}};
  const std::optional<Date> day = slot_of(files.squad).date;
  if (!day || (!file && flags.ledger.folder.empty())) return {};
  const auto rules = read::read_care_rules({catalogue, club.return_rules.value_or(""), club.return_rules_place});
  if (!rules) return rules.faults();
  const care::Ages ages = read::ages_on(files.roster, *day);
  if (file) {
    const auto folded = read::fold_entries_file(*file, rules.value(), ages);
    if (!folded) return folded.faults();
    add_known(folded.value(), *day, files);
  }
  if (flags.ledger.folder.empty()) return {};
  LedgerFlags place = flags.ledger;
  place.catalogue = catalogue;
  const auto known = read_known(place);
  if (!known) return known.faults();
  add_known(care::fold(care::read_cautiously(known.value().care, rules.value().returns), rules.value().pain,
                       rules.value().returns, ages),
            *day, files);
  return {};
}

std::optional<Faults> fold_weather(const CareFlags& flags, const read::ClubCare& club, const std::string& catalogue,
                                   read::EveningFiles& files) {
  const Slot slot = slot_of(files.squad);
  if (!slot.date || !slot.start || slot.length.count <= 0) return {};
  const auto weather = read_evening_weather(*flags.weather, catalogue, {club.region, club.region_place});
  if (!weather) return weather.faults();
  const auto change = weather_change(weather.value(), {flags.now, care::environment::moment_of(*slot.date, *slot.start),
                                                       slot.length, youngest_of(files, *slot.date)});
  if (!change) return change.faults();
  fold_change(change.value(), text_at(files.squad.root, "name"), files.squad, files.restrictions.root);
  return {};
}

}  // namespace

void add_care_flags(CLI::App& command, CareFlags& flags) {
  command.add_option("--sore", flags.sore,
                     "PLAYER=AREA: sore tonight, such as Q05=knee, or Q05=knee/5 of 10; may stand more than once");
  command.add_option("--entries", flags.entries,
                     "what was reported of players, in place of the club's (docs/formats/entries.md)");
  add_ledger_source(command, flags.ledger);
  command.add_option("--more-restrictions", flags.more_restrictions,
                     "restrictions beside the squad file's, such as those of 'care growth'; may stand more than once");
  command.add_option("--weather", flags.weather, "tonight's weather (docs/formats/weather.md)");
  command.add_option("--now", flags.now, "the moment at which the weather is asked about; the start if not stated");
}

std::optional<Faults> fold_care(const CareFlags& flags, const std::string& catalogue, read::EveningFiles& files) {
  const auto club = read::club_care_above(files.squad.file);
  if (!club) return club.faults();
  for (const std::string& path : flags.more_restrictions) {
    const auto more = read::read_toml_file(path);
    if (!more) return more.faults();
    add_rows(more.value().root, files.roster, files.restrictions.root);
  }
  if (auto faults = fold_entries(flags, club.value(), catalogue, files)) return faults;
  SoreTonight sore_tonight(catalogue, files);
  for (const std::string& sore : flags.sore) {
    if (auto faults = sore_tonight.fold(sore, files.restrictions.root)) return faults;
  }
  if (!flags.weather) return {};
  return fold_weather(flags, club.value(), catalogue, files);
}

}  // namespace lanework::cli
