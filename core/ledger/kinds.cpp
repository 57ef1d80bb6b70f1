#include "core/ledger/kinds.h"

#include <algorithm>

namespace lanework::ledger {
namespace {

constexpr std::int64_t kMany = 1'000'000'000'000;
constexpr std::int64_t kMostText = 10'000;

bool holds(const std::vector<std::string_view>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

class KindsReader {
 public:
  explicit KindsReader(const Document& document) : root_(document.file, &document.root, {}, faults_) {}

  Result<KindTable> read() {
    for (TableReader& table : root_.tables("kind")) read_kind(table);
    root_.finish();
    check_purposes();
    if (out_.kinds.empty() && faults_.empty()) root_.fault(FaultCode::kMissing, "kind", "nothing", "at least one kind");
    if (!faults_.empty()) return std::move(faults_);
    return std::move(out_);
  }

 private:
  Faults faults_;
  TableReader root_;
  KindTable out_;

  void read_kind(TableReader& table) {
    Kind kind;
    kind.key = table.text("key");
    if (out_.find(kind.key) != nullptr)
      table.fault(FaultCode::kDuplicate, "key", quote(kind.key), "a key of its own for every kind");
    kind.data_class = static_cast<DataClass>(table.word("class", data_class_words()));
    kind.about = static_cast<About>(table.word("about", about_words()));
    kind.care = table.boolean_or("care", false);
    kind.purpose = table.text_or("purpose", "");
    if (!kind.purpose.empty() && (kind.care || kind.about != About::kPlayer)) {
      table.fault(FaultCode::kContradiction, "purpose", quote(kind.purpose),
                  "none where care goes by it or it is about no player: that never waits for consent");
    }
    for (const std::string& role : table.texts("enter")) {
      const auto& words = role_words();
      const auto found = std::find(words.begin(), words.end(), role);
      if (found == words.end()) {
        table.fault(FaultCode::kUnknownName, "enter", quote(role), "lead, coach, recorder, board or operator");
        continue;
      }
      kind.enter.push_back(static_cast<Role>(found - words.begin()));
    }
    if (kind.enter.empty()) table.fault(FaultCode::kMissing, "enter", "nobody", "at least one role");
    for (TableReader& field : table.tables("fields")) read_field(field, kind);
    table.finish();
    out_.kinds.push_back(std::move(kind));
  }

  // One that nobody can be asked about would be closed for ever.
  void check_purposes() {
    const Kind* consent = out_.find("consent");
    const Field* asked = consent == nullptr ? nullptr : consent->field("purpose");
    for (std::size_t i = 0; i < out_.kinds.size(); ++i) {
      const std::string& purpose = out_.kinds[i].purpose;
      if (purpose.empty()) continue;
      if (asked != nullptr && std::find(asked->words.begin(), asked->words.end(), purpose) != asked->words.end())
        continue;
      root_.fault(FaultCode::kUnknownName, "kind." + std::to_string(i + 1) + ".purpose", quote(purpose),
                  "one of the words of 'purpose' of the kind 'consent'");
    }
  }

  static void read_field(TableReader& table, Kind& kind) {
    Field field;
    field.key = table.text("key");
    const std::size_t before = table.faults_so_far();
    field.type = static_cast<FieldType>(table.word("type", field_type_words()));
    const bool known_type = table.faults_so_far() == before;
    field.optional = table.boolean_or("optional", false);
    const bool taken = kind.field(field.key) != nullptr || holds(envelope_keys(), field.key) ||
                       holds(keys_about(kind.about), field.key);
    if (taken) table.fault(FaultCode::kDuplicate, "key", quote(field.key), "a key of its own for every field");
    if (field.type == FieldType::kWord) {
      field.words = table.texts("words");
      if (field.words.size() < 2) table.fault(FaultCode::kMissing, "words", "fewer than two", "at least two words");
    }
    if (known_type && field.type == FieldType::kText) field.most = table.integer("most", 1, kMostText);
    if (field.type == FieldType::kWhole) {
      field.least = table.integer("least", -kMany, kMany);
      field.most = table.integer("most", field.least, kMany);
    }
    table.finish();
    kind.fields.push_back(std::move(field));
  }
};

}  // namespace

const Field* Kind::field(std::string_view name) const {
  const auto found = std::find_if(fields.begin(), fields.end(), [&](const Field& one) { return one.key == name; });
  return found == fields.end() ? nullptr : &*found;
}

const Kind* KindTable::find(std::string_view key) const {
  const auto found = std::find_if(kinds.begin(), kinds.end(), [&](const Kind& one) { return one.key == key; });
  return found == kinds.end() ? nullptr : &*found;
}

const std::vector<std::string_view>& data_class_words() {
  static const std::vector<std::string_view> kWords = {"club", "personal", "health"};
  return kWords;
}

const std::vector<std::string_view>& about_words() {
  static const std::vector<std::string_view> kWords = {"session", "player", "squad", "coach"};
  return kWords;
}

const std::vector<std::string_view>& role_words() {
  static const std::vector<std::string_view> kWords = {"lead", "coach", "recorder", "board", "operator"};
  return kWords;
}

const std::vector<std::string_view>& field_type_words() {
  static const std::vector<std::string_view> kWords = {"text",    "texts", "key",  "keys",  "whole",
                                                       "boolean", "day",   "word", "entry", "entries"};
  return kWords;
}

const std::vector<std::string_view>& envelope_keys() {
  static const std::vector<std::string_view> kKeys = {"id", "sequence", "device_time", "kind", "corrects"};
  return kKeys;
}

std::vector<std::string_view> keys_about(About about) {
  switch (about) {
    case About::kSession:
      return {"squad", "day", "start"};
    case About::kPlayer:
      return {"player"};
    case About::kSquad:
      return {"squad"};
    case About::kCoach:
      return {"coach"};
  }
  return {};
}

Result<KindTable> read_kinds(const Document& document) { return KindsReader(document).read(); }

}  // namespace lanework::ledger
