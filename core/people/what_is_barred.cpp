#include "core/people/what_is_barred.h"

#include <algorithm>

#include "core/people/instruction.h"

namespace lanework::people {
namespace {

constexpr int kWhole = 100;
constexpr int kHeavy = 3;

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

}  // namespace

const std::vector<std::string_view>& allowed_words() {
  static const std::vector<std::string_view> kWords = {"none", "light", "moderate", "heavy"};
  return kWords;
}

void read_what_is_barred(TableReader& reader, Restriction& restriction) {
  const bool counts = reader.has("landings_percent") || reader.has("new_eccentric");
  const bool names = reader.has("areas") || reader.has("kinds");
  restriction.areas = read_words<catalogue::BodyArea>(reader, "areas", catalogue::body_area_words());
  restriction.kinds = read_words<catalogue::StressKind>(reader, "kinds", catalogue::stress_kind_words());
  restriction.allowed_grade = reader.word("allowed", allowed_words(), counts && !names ? kHeavy : 0);
  restriction.until = reader.date("until");
  restriction.review = reader.date("review");
  restriction.sits_out = reader.boolean_or("sits_out", false);
  restriction.landings_percent = static_cast<int>(reader.integer_or("landings_percent", kWhole, 0, kWhole));
  restriction.new_eccentric_ok = reader.boolean_or("new_eccentric", true);
  restriction.instruction = reader.text_or("instruction", "");
  const std::string word = private_word_in(restriction.instruction);
  if (!word.empty()) {
    reader.fault(FaultCode::kContradiction, "instruction", quote(word),
                 "words for the coach without an area of the body or what is the matter",
                 "say what to avoid, such as 'no jumping'; areas and kinds say the rest");
  }
}

}  // namespace lanework::people
