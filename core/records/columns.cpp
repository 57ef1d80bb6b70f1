#include "core/records/columns.h"

namespace lanework::records {
namespace {

constexpr std::string_view kSquadHeadings =
    "squad|team|squad id|team id|squad name|team name|mannschaft|equipe|equipo|squadra|ploeg";
constexpr std::string_view kPlayerHeadings =
    "player|player id|athlete|athlete id|pseudonym|player code|code|spieler|joueur|jugador|giocatore";
constexpr std::string_view kSettingHeadings =
    "setting|type|session type|activity type|training or match|match or training|kind|session|art|where";

SheetColumn plain(std::string_view name, std::string_view headings, bool required = false) {
  return {{name, headings, required}, {}, false, false};
}
SheetColumn squad(std::string_view name, std::string_view headings, bool required = true) {
  return {{name, headings, required}, {}, true, false};
}
SheetColumn duration(std::string_view name, std::string_view headings) {
  return {{name, headings, false}, {}, false, true};
}
SheetColumn terms(Field field, std::string_view name, std::string_view headings, bool required = false) {
  return {{name, headings, required}, field, false, false};
}

std::vector<SheetColumn> squad_columns() {
  return {
      plain("squad", "squad|squad id|id|team|team id|mannschaft|equipe|equipo|squadra|ploeg", true),
      plain("name", "name|squad name|team name|full name"),
      plain("club", "club|club name|verein|club id"),
      plain("age band", "age band|age group|age|ages|age category|category|altersklasse|categorie|categoria"),
      terms(Field::kSex, "sex", "sex|gender|girls or boys|girls boys|geschlecht|sexe|sexo"),
      plain("players", "players|squad size|number of players|players in squad|player count|size|spieler"),
      duration(
          "training minutes",
          "training minutes|usual training minutes|training min|minutes of training|training length|training duration"),
      duration("match minutes",
               "match minutes|usual match minutes|match min|minutes of match|match length|match duration|game minutes"),
      plain("on the field",
            "on the field|players on the field|players on field|on field|on the pitch|players on the pitch|field "
            "players"),
      plain("taught", "taught|coach taught|coach taught on|taught on|date taught"),
  };
}

std::vector<SheetColumn> hours_columns() {
  return {
      squad("squad", kSquadHeadings),
      plain("date", "date|day|session date|on|datum|tag|fecha|data|jour", true),
      terms(Field::kSetting, "setting", kSettingHeadings, true),
      duration("minutes",
               "minutes|min|mins|duration|length|session minutes|duration min|length min|duration h|duration hours|"
               "dauer|duree|minuten"),
      plain("players",
            "players|attendance|present|number of players|players present|attended|turnout|on the field|anwesend"),
      plain("hours", "hours|player hours|hours of all players|total player hours|exposure hours|team hours"),
      plain("player", kPlayerHeadings),
      terms(Field::kWarmUp, "warm-up", "warm up|warmup|warm up done|who did the warm up|did it|fidelity"),
      duration("warm-up minutes", "warm up minutes|warmup minutes|warm up min|warm up length"),
      plain("left out", "left out|drills left out|skipped|not done|omitted"),
      plain("needing help", "needing help|drills needing help|needs help|help|help with"),
      plain("confirmed", "confirmed|checked|hours confirmed|looked at"),
  };
}

std::vector<SheetColumn> injury_columns() {
  return {
      squad("squad", kSquadHeadings),
      plain("player", kPlayerHeadings),
      plain("event", "event|event id|event no|event number|incident|incident id"),
      plain("date", "date|date of injury|injury date|date of onset|onset date|injured on|day|datum|fecha|data|when",
            true),
      terms(Field::kSetting, "setting", kSettingHeadings),
      terms(Field::kOnset, "onset", "onset|mode of onset|onset mode|mode|how it began"),
      terms(Field::kContact, "contact", "contact|contact type|type of contact|mechanism"),
      terms(Field::kRegion, "region", "region|body region|body area|body part|area|location|injured area|site"),
      terms(Field::kTissue, "tissue",
            "tissue|tissue and pathology|pathology|injury type|type of injury|tissue type|diagnosis"),
      terms(Field::kSide, "side", "side|body side|injured side|left or right|seite|cote|lado"),
      terms(Field::kActivity, "activity", "activity|action|doing|what happened|inciting activity"),
      terms(Field::kRecurrence, "recurrence", "recurrence|recurrent|subsequent|re injury|reinjury|class"),
      plain("loss began", "loss began|time loss began|loss began on|out from|absent from|first day missed|out since"),
      plain("returned", "returned|return|return date|date of return|back|back on|available again|full return"),
      plain("days missed", "days missed|missed days|dates missed|missed|days off"),
      plain("note", "note|notes|remark|remarks|comment|comments|bemerkung|remarque|nota|opmerking"),
  };
}

std::vector<SheetColumn> player_columns() {
  return {
      plain("player", kPlayerHeadings, true),
      squad("squad", kSquadHeadings),
      plain("joined", "joined|joined on|from|start|since|first day|date joined"),
      plain("left", "left|left on|until|to|end|last day|date left"),
  };
}

}  // namespace

const std::vector<SheetColumn>& columns_of(SheetKind kind) {
  static const std::array<std::vector<SheetColumn>, kSheets> kColumns = {squad_columns(), hours_columns(),
                                                                         injury_columns(), player_columns()};
  return kColumns[static_cast<std::size_t>(kind)];
}

const char* sheet_name(SheetKind kind) {
  constexpr std::array<const char*, kSheets> kNames = {"squads", "hours", "injuries", "players"};
  return kNames[static_cast<std::size_t>(kind)];
}

std::string key_of(std::string_view column_name) {
  std::string key(column_name);
  for (char& c : key) c = c == ' ' || c == '-' ? '_' : c;
  return key;
}

std::optional<std::size_t> column_with_key(SheetKind kind, std::string_view key) {
  const std::vector<SheetColumn>& columns = columns_of(kind);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (key_of(columns[i].known.name) == key) return i;
  }
  return {};
}

}  // namespace lanework::records
