#include "core/records/terms.h"

#include <algorithm>

#include "core/people/roster_headings.h"

namespace lanework::records {
namespace {

struct FieldRow {
  const char* key;
  Words name;
  std::vector<std::string_view> known;  // keys the program tells apart, in their order
};

const FieldRow& row_of(Field field) {
  static const std::array<FieldRow, kFields> kRows = {{
      {"setting", {"training or match", "entrenamiento o partido"}, {"training", "match"}},
      {"onset", {"mode of onset", "modo de inicio"}, {"acute-sudden", "repetitive-sudden", "repetitive-gradual"}},
      {"contact",
       {"contact", "contacto"},
       {"none", "indirect-athlete", "indirect-object", "direct-athlete", "direct-object"}},
      {"region", {"body region", "región corporal"}, {}},
      {"tissue", {"tissue and pathology", "tejido y patología"}, {}},
      {"side", {"side", "lado"}, {"left", "right", "both", "middle"}},
      {"activity", {"activity", "actividad"}, {}},
      {"recurrence",
       {"recurrence", "recurrencia"},
       {"first", "re-injury", "exacerbation", "subsequent-local", "subsequent-new"}},
      {"sex", {"girls or boys", "chicas o chicos"}, {"girls", "boys", "mixed"}},
      {"warm-up", {"warm-up", "calentamiento"}, {"most", "half", "few", "no"}},
  }};
  return kRows[Terms::index(field)];
}

const std::vector<std::string_view>& region_group_keys() {
  static const std::vector<std::string_view> kKeys = {"head-and-neck", "upper-limb", "trunk", "lower-limb", "several"};
  return kKeys;
}

constexpr std::size_t kMostTerms = 200;

std::string plain(const std::string& text) { return people::plain_words(text, {}); }

}  // namespace

class TermsReader {
 public:
  explicit TermsReader(const Document& document) : root_(document.file, &document.root, {}, faults_) {}

  Result<Terms> read() {
    for (const std::string& words : root_.texts("not_known")) out_.not_known_.push_back(plain(words));
    for (std::size_t i = 0; i < kFields; ++i) read_field(static_cast<Field>(i));
    root_.finish();
    if (!faults_.empty()) return std::move(faults_);
    return std::move(out_);
  }

 private:
  Faults faults_;
  TableReader root_;
  Terms out_;

  void read_field(Field field) {
    const FieldRow& fixed = row_of(field);
    std::vector<TableReader> tables = root_.tables(fixed.key);
    if (tables.size() < std::max<std::size_t>(1, fixed.known.size()) || tables.size() > kMostTerms ||
        (!fixed.known.empty() && tables.size() > fixed.known.size())) {
      root_.fault(
          FaultCode::kOutOfRange, fixed.key, std::to_string(tables.size()) + " terms",
          fixed.known.empty() ? "1 to " + std::to_string(kMostTerms) : std::to_string(fixed.known.size()) + " terms");
      return;
    }
    for (std::size_t i = 0; i < tables.size(); ++i) {
      const std::string_view expected = fixed.known.empty() ? std::string_view() : fixed.known[i];
      read_term(field, tables[i], static_cast<std::uint8_t>(i), expected);
    }
  }

  void read_term(Field field, TableReader& table, std::uint8_t position, std::string_view expected) {
    Term term;
    term.key = table.text("key");
    if (!expected.empty() && !term.key.empty() && term.key != expected) {
      table.fault(FaultCode::kContradiction, "key", quote(term.key), quote(std::string(expected)) + " in this place");
    }
    term.shown = table.text("shown");
    term.shown_in_spanish = table.text("shown_in_spanish");
    if (field == Field::kRegion) {
      const int group = table.word("group", region_group_keys());
      out_.region_groups_.push_back(static_cast<RegionGroup>(group));
      term.group = region_group_keys()[static_cast<std::size_t>(group)];
    } else if (field == Field::kTissue) {
      term.group = table.text("group");
    }
    term.sources = table.texts("sources");
    if (term.sources.empty()) {
      table.fault(FaultCode::kMissing, "sources", "nothing", "at least one key of sources.toml");
    }
    add_words(field, table, "key", term.key, position);
    add_words(field, table, "shown", term.shown, position);
    for (const std::string& words : table.texts("read_as")) add_words(field, table, "read_as", words, position);
    table.finish();
    out_.rows_[Terms::index(field)].push_back(std::move(term));
  }

  void add_words(Field field, TableReader& table, const char* key, const std::string& text, std::uint8_t position) {
    const std::string words = plain(text);
    if (words.empty()) return;
    const auto [known, is_new] = out_.words_[Terms::index(field)].emplace(words, position);
    if ((!is_new && known->second != position) || out_.not_known(words)) {
      table.fault(FaultCode::kDuplicate, key, quote(text), "words that mean this term only");
    }
  }
};

std::optional<std::uint8_t> Terms::with_key(Field field, std::string_view key) const {
  const std::vector<Term>& rows = of(field);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].key == key) return static_cast<std::uint8_t>(i);
  }
  return {};
}

std::optional<std::uint8_t> Terms::meant_by(Field field, const std::string& words) const {
  const auto& known = words_[index(field)];
  const auto found = known.find(words);
  if (found == known.end()) return {};
  return found->second;
}

bool Terms::not_known(const std::string& words) const {
  return std::find(not_known_.begin(), not_known_.end(), words) != not_known_.end();
}

const char* field_key(Field field) { return row_of(field).key; }

Words field_name(Field field) { return row_of(field).name; }

const char* region_group_name(RegionGroup group) {
  constexpr std::array<const char*, 5> kNames = {"head and neck", "upper limb", "trunk", "lower limb",
                                                 "several regions"};
  return kNames[static_cast<std::size_t>(group)];
}

Result<Terms> read_terms(const Document& document) { return TermsReader(document).read(); }

}  // namespace lanework::records
