#include "core/people/read_restrictions.h"

#include <algorithm>

#include "core/people/instruction.h"

namespace lanework::people {
namespace {

bool among(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

template <class T>
std::vector<T> read_words(TableReader& reader, std::string_view key, const std::vector<std::string_view>& known) {
  std::vector<T> out;
  for (const std::string& text : reader.texts(key)) {
    const auto found = std::find(known.begin(), known.end(), text);
    if (found != known.end()) {
      out.push_back(static_cast<T>(found - known.begin()));
      continue;
    }
    std::string list;
    for (const std::string_view word : known) list += (list.empty() ? "" : ", ") + std::string(word);
    reader.fault(FaultCode::kUnknownName, key, quote(text), "one of " + list);
  }
  return out;
}

// Exactly one of player and squad, and one that is there.
void read_whom(TableReader& reader, const std::vector<std::string>& players, const std::vector<std::string>& squads,
               Restriction& restriction) {
  restriction.player = reader.text_or("player", "");
  restriction.squad = reader.text_or("squad", "");
  if (restriction.player.empty() && restriction.squad.empty()) {
    reader.fault(FaultCode::kMissing, "player", "neither player nor squad", "the id of a player, or a squad");
  } else if (!restriction.player.empty() && !restriction.squad.empty()) {
    reader.fault(FaultCode::kContradiction, "squad", quote(restriction.squad), "no squad where a player is named");
  } else if (!restriction.player.empty() && !among(players, restriction.player)) {
    reader.fault(FaultCode::kUnknownName, "player", quote(restriction.player), "the id of a player of the roster");
  } else if (!restriction.squad.empty() && !among(squads, restriction.squad)) {
    reader.fault(FaultCode::kUnknownName, "squad", quote(restriction.squad), "a squad of the roster");
  }
}

Restriction read_one(TableReader& reader, const std::vector<std::string>& players,
                     const std::vector<std::string>& squads) {
  static const std::vector<std::string_view> kAllowed = {"none", "light", "moderate"};
  Restriction restriction;
  read_whom(reader, players, squads, restriction);
  restriction.areas = read_words<catalogue::BodyArea>(reader, "areas", catalogue::body_area_words());
  restriction.kinds = read_words<catalogue::StressKind>(reader, "kinds", catalogue::stress_kind_words());
  restriction.allowed_grade = reader.word("allowed", kAllowed, 0);
  restriction.until = reader.date("until");
  restriction.review = reader.date("review");
  restriction.sits_out = reader.boolean_or("sits_out", false);
  restriction.instruction = reader.text_or("instruction", "");
  const std::string word = private_word_in(restriction.instruction);
  if (!word.empty()) {
    reader.fault(FaultCode::kContradiction, "instruction", quote(word),
                 "words for the coach without an area of the body or what is the matter",
                 "say what to avoid, such as 'no jumping'; areas and kinds say the rest");
  }
  reader.finish();
  return restriction;
}

}  // namespace

Result<Restrictions> read_restrictions(const Document& document, const std::vector<std::string>& players,
                                       const std::vector<std::string>& squads) {
  Faults faults;
  TableReader reader(document.file, &document.root, "", faults);
  Restrictions out;
  out.as_known = reader.text_or("as_known", "");
  for (TableReader& table : reader.tables("restriction")) out.list.push_back(read_one(table, players, squads));
  reader.finish();
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace lanework::people
