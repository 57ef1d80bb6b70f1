#include "core/records/mapping.h"

#include <algorithm>

#include "core/people/roster_headings.h"

namespace lanework::records {
namespace {

class MappingReader {
 public:
  MappingReader(const Document& document, const Terms& terms, const people::TextForms& forms)
      : root_(document.file, &document.root, {}, faults_), terms_(terms), forms_(forms) {}

  Result<Mapping> read() {
    for (std::size_t i = 0; i < kSheets; ++i) {
      const auto kind = static_cast<SheetKind>(i);
      TableReader table = root_.table(sheet_name(kind));
      if (table.present()) read_sheet(kind, table, out_.sheets[i]);
    }
    root_.finish();
    if (faults_.empty()) return std::move(out_);
    std::stable_sort(faults_.begin(), faults_.end(),
                     [](const Fault& a, const Fault& b) { return a.place.line < b.place.line; });
    return std::move(faults_);
  }

 private:
  Faults faults_;
  TableReader root_;
  const Terms& terms_;
  const people::TextForms& forms_;
  Mapping out_;

  void read_sheet(SheetKind kind, TableReader& table, SheetMapping& out) {
    const int dates = table.word("dates", {"as-the-column-tells", "day-first", "month-first", "iso", "serial-1904"}, 0);
    if (dates == 1) out.dates = people::DateOrder::kDayFirst;
    if (dates == 2) out.dates = people::DateOrder::kMonthFirst;
    out.iso_dates_only = dates == 3;
    if (dates == 4) out.serials = people::SerialSystem::k1904;
    out.duration = static_cast<DurationUnit>(table.word("duration", {"minutes", "hours"}, 0));
    out.decimal = static_cast<DecimalMark>(table.word("decimal", {"as-the-cell-tells", "point", "comma"}, 0));
    TableReader columns = table.table("columns");
    if (columns.present()) read_headings(kind, columns, out);
    TableReader words = table.table("words");
    if (words.present()) read_words(kind, words, out);
    table.finish();
  }

  static std::string known_keys(SheetKind kind, bool with_words) {
    std::string out;
    for (const SheetColumn& column : columns_of(kind)) {
      if (with_words && !column.field && !column.is_squad) continue;
      out += (out.empty() ? "" : ", ") + key_of(column.known.name);
    }
    return out.empty() ? "none in this sheet" : "one of " + out;
  }

  void read_headings(SheetKind kind, TableReader& table, SheetMapping& out) {
    out.headings.resize(columns_of(kind).size());
    std::map<std::string, std::string> seen;
    for (const std::string& key : table.keys()) {
      const std::optional<std::size_t> column = column_with_key(kind, key);
      const std::string heading = table.text(key);
      if (!column) {
        table.fault(FaultCode::kUnknownKey, key, quote(key), known_keys(kind, false));
        continue;
      }
      const std::string words = people::plain_words(heading, forms_);
      if (words.empty()) {
        table.fault(FaultCode::kOutOfRange, key, quote(heading), "a heading with a letter or a digit");
      } else if (!seen.emplace(words, key).second) {
        table.fault(FaultCode::kDuplicate, key, quote(heading) + " twice", "a heading for one column only");
      }
      out.headings[*column] = heading;
    }
  }

  void read_words(SheetKind kind, TableReader& table, SheetMapping& out) {
    for (const std::string& key : table.keys()) {
      TableReader words = table.table(key);
      const std::optional<std::size_t> column = column_with_key(kind, key);
      const SheetColumn* known = column ? &columns_of(kind)[*column] : nullptr;
      if (known == nullptr || (!known->field && !known->is_squad)) {
        table.fault(FaultCode::kUnknownKey, key, quote(key), known_keys(kind, true));
      } else if (known->is_squad) {
        read_squad_words(words, out);
      } else {
        read_term_words(*known->field, words, out);
      }
    }
  }

  // To what the words of a cell mean, once each.
  template <class Value>
  void add_words(std::map<std::string, Value>& meanings, TableReader& table, const std::string& key,
                 const Value& value) {
    for (const std::string& text : table.texts(key)) {
      const std::string words = people::plain_words(text, forms_);
      if (words.empty()) {
        table.fault(FaultCode::kOutOfRange, key, quote(text), "a word with a letter or a digit");
        continue;
      }
      const auto [known, is_new] = meanings.emplace(words, value);
      if (!is_new && known->second != value)
        table.fault(FaultCode::kDuplicate, key, quote(text) + " twice", "a word with one meaning only");
    }
  }

  void read_squad_words(TableReader& table, SheetMapping& out) {
    for (const std::string& id : table.keys()) add_words(out.squads, table, id, id);
  }

  void read_term_words(Field field, TableReader& table, SheetMapping& out) {
    for (const std::string& key : table.keys()) {
      const std::optional<std::uint8_t> term = terms_.with_key(field, key);
      if (term) {
        add_words(out.terms[Terms::index(field)], table, key, *term);
        continue;
      }
      std::string keys;
      for (const Term& known : terms_.of(field)) keys += (keys.empty() ? "" : ", ") + known.key;
      table.fault(FaultCode::kUnknownName, key, quote(key), "one of " + keys);
    }
  }
};

}  // namespace

Result<Mapping> read_mapping(const Document& document, const Terms& terms, const people::TextForms& forms) {
  return MappingReader(document, terms, forms).read();
}

}  // namespace lanework::records
