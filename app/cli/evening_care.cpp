#include "app/cli/evening_care.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "app/cli/care/entry_files.h"
#include "app/cli/care/evening_weather.h"
#include "app/cli/document_edits.h"
#include "app/read/files.h"
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

void add_as_known(Node& restrictions, const std::string& more) {
  const std::string known = text_at(restrictions, "as_known");
  restrictions.set("as_known", Node::make_text(known.empty() ? more : known + ", reports " + more));
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

std::optional<Date> date_of(const Document& squad) {
  Faults passed_over;
  TableReader root(squad.file, &squad.root, "", passed_over);
  return root.table("slot").date("date");
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
    report.day = date_of(files_.squad);
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

std::optional<Faults> fold_entries(const std::string& path, const std::string& catalogue, read::EveningFiles& files) {
  const std::optional<Date> day = date_of(files.squad);
  if (!day) return {};  // the squad file's own fault
  const auto rules = read_care_rules(catalogue);
  if (!rules) return rules.faults();
  care::Ages ages;
  for (const people::Player& player : files.roster) {
    if (const auto age = people::age_on(player, *day)) ages.emplace(player.id, *age);
  }
  const auto folded = fold_entries_file(path, rules.value(), ages);
  if (!folded) return folded.faults();
  const auto document =
      care::restrictions_document(care::holding_on(folded.value().standing, *day), folded.value().as_known);
  add_rows(document, files.roster, files.restrictions.root);
  const std::string known = text_at(document, "as_known");
  if (!known.empty()) add_as_known(files.restrictions.root, known);
  return {};
}

}  // namespace

void add_care_flags(CLI::App& command, CareFlags& flags) {
  command.add_option("--sore", flags.sore,
                     "PLAYER=AREA: sore tonight, such as Q05=knee, or Q05=knee/5 of 10; may stand more than once");
  command.add_option("--entries", flags.entries, "what was reported of players (docs/formats/entries.md)");
  command.add_option("--more-restrictions", flags.more_restrictions,
                     "restrictions beside the squad file's, such as those of 'care growth'; may stand more than once");
  command.add_option("--weather", flags.weather, "tonight's weather (docs/formats/weather.md)");
  command.add_option("--now", flags.now, "the moment at which the weather is asked about; the start if not stated");
}

std::optional<Faults> fold_care(const CareFlags& flags, const std::string& catalogue, read::EveningFiles& files) {
  for (const std::string& path : flags.more_restrictions) {
    const auto more = read::read_toml_file(path);
    if (!more) return more.faults();
    add_rows(more.value().root, files.roster, files.restrictions.root);
  }
  if (flags.entries) {
    if (auto faults = fold_entries(*flags.entries, catalogue, files)) return faults;
  }
  SoreTonight sore_tonight(catalogue, files);
  for (const std::string& sore : flags.sore) {
    if (auto faults = sore_tonight.fold(sore, files.restrictions.root)) return faults;
  }
  if (!flags.weather) return {};
  return fold_weather(*flags.weather, flags.now, catalogue, files.squad, files.restrictions.root);
}

}  // namespace lanework::cli
