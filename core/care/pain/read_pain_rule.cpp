#include "core/care/pain/read_pain_rule.h"

#include <algorithm>

#include "core/people/instruction.h"

namespace lanework::care {
namespace {

class PainRuleReader {
 public:
  PainRuleReader(const Document& document, const std::vector<catalogue::Source>& sources)
      : sources_(sources), root_(document.file, &document.root, {}, faults_) {}

  Result<PainRule> read() {
    rule_.joins_in_up_to = static_cast<int>(root_.integer("joins_in_up_to", 0, kMostPain));
    rule_.swaps_up_to = static_cast<int>(root_.integer("swaps_up_to", rule_.joins_in_up_to, kMostPain));
    rule_.settled_up_to = static_cast<int>(root_.integer("settled_up_to", 0, rule_.joins_in_up_to));
    rule_.sources = sources_of(root_);
    read_trend(root_.table("trend"));
    read_swaps(root_.table("swaps"));
    read_places(root_.table("refer_at_once"));
    for (TableReader& row : root_.tables("sign")) read_sign(row);
    for (std::size_t i = 0; i < kPainSigns; ++i) {
      if (!seen_.at(i))
        root_.fault(FaultCode::kMissing, "sign", "no row " + std::string(pain_sign_words()[i]), "each sign once");
    }
    for (TableReader& row : root_.tables("published")) rule_.published.push_back(published(row));
    root_.finish();
    if (!faults_.empty()) return std::move(faults_);
    return std::move(rule_);
  }

 private:
  const std::vector<catalogue::Source>& sources_;
  Faults faults_;
  TableReader root_;
  PainRule rule_;
  std::array<bool, kPainSigns> seen_{};

  std::vector<std::string> sources_of(TableReader& table) {
    std::vector<std::string> out = table.texts("sources");
    if (out.empty()) table.fault(FaultCode::kMissing, "sources", "nothing", "at least one key of sources.toml");
    for (const std::string& key : out) {
      const auto same = [&](const catalogue::Source& source) { return source.key == key; };
      if (std::any_of(sources_.begin(), sources_.end(), same)) continue;
      table.fault(FaultCode::kUnknownName, "sources", quote(key), "a key of sources.toml");
    }
    return out;
  }

  void read_trend(TableReader table) {
    if (!table.present()) return missing("trend");
    constexpr int kMostDays = 60;
    rule_.days_from = static_cast<int>(table.integer("days_from", 1, kMostDays));
    rule_.days_to = static_cast<int>(table.integer("days_to", rule_.days_from, kMostDays));
    rule_.trend_sources = sources_of(table);
    table.finish();
  }

  void read_swaps(TableReader table) {
    if (!table.present()) return missing("swaps");
    static const std::vector<std::string_view> kAllowed = {"none", "light", "moderate"};
    rule_.kinds = words<catalogue::StressKind>(table, "kinds", catalogue::stress_kind_words());
    rule_.allowed_grade = table.word("allowed", kAllowed);
    rule_.instruction = table.text("instruction");
    if (const std::string word = people::private_word_in(rule_.instruction); !word.empty()) {
      table.fault(FaultCode::kContradiction, "instruction", quote(word),
                  "words for the coach without what is the matter");
    }
    constexpr int kMostDays = 30;
    rule_.review_after_days = static_cast<int>(table.integer("review_after_days", 1, kMostDays));
    rule_.swaps_sources = sources_of(table);
    table.finish();
  }

  void read_places(TableReader table) {
    if (!table.present()) return missing("refer_at_once");
    rule_.refer_at_once = words<catalogue::BodyArea>(table, "places", catalogue::body_area_words());
    rule_.places_sources = sources_of(table);
    table.finish();
  }

  void read_sign(TableReader& table) {
    const auto index = static_cast<std::size_t>(table.word("key", pain_sign_words()));
    SignRule sign;
    sign.words = table.text("words");
    sign.at_once = table.boolean_or("at_once", true);
    sign.sources = sources_of(table);
    table.finish();
    if (seen_.at(index))
      table.fault(FaultCode::kDuplicate, "key", quote(std::string(pain_sign_words()[index])), "each sign once");
    seen_.at(index) = true;
    rule_.signs.at(index) = std::move(sign);
  }

  PublishedCuts published(TableReader& table) {
    PublishedCuts out;
    out.key = table.text("key");
    out.words = table.text("words");
    out.unchanged_up_to = static_cast<int>(table.integer("unchanged_up_to", 0, kMostPain));
    if (table.has("goes_on_up_to")) {
      out.goes_on_up_to = static_cast<int>(table.integer("goes_on_up_to", out.unchanged_up_to, kMostPain));
    }
    out.unverified = table.boolean_or("unverified", false);
    out.sources = sources_of(table);
    table.finish();
    // Where sources disagree ours is the safest of them.
    if (out.unchanged_up_to < rule_.joins_in_up_to || out.goes_on_up_to.value_or(kMostPain) < rule_.swaps_up_to) {
      table.fault(FaultCode::kContradiction, "unchanged_up_to", quote(out.key),
                  "no published cut below the rule's own");
    }
    return out;
  }

  void missing(const char* key) { root_.fault(FaultCode::kMissing, key, "nothing", "a table"); }

  template <class T>
  std::vector<T> words(TableReader& table, std::string_view key, const std::vector<std::string_view>& known) {
    std::vector<T> out;
    for (const std::string& text : table.texts(key)) {
      const auto found = std::find(known.begin(), known.end(), text);
      if (found == known.end()) {
        table.fault(FaultCode::kUnknownName, key, quote(text),
                    "words of the catalogue such as " + std::string(known.front()));
        continue;
      }
      out.push_back(static_cast<T>(found - known.begin()));
    }
    return out;
  }
};

}  // namespace

Result<PainRule> read_pain_rule(const Document& document, const std::vector<catalogue::Source>& sources) {
  return PainRuleReader(document, sources).read();
}

}  // namespace lanework::care
