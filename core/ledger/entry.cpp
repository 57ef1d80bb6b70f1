#include "core/ledger/entry.h"

#include <algorithm>

#include "core/ledger/canonical.h"

namespace lanework::ledger {
namespace {

std::size_t code_points_in(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U; }));
}

bool is_key(const std::string& text) {
  const auto good = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_' ||
           c == '.';
  };
  return !text.empty() && text.size() <= kMostKeyBytes && std::all_of(text.begin(), text.end(), good);
}

class EntryReader {
 public:
  EntryReader(const Node& node, const std::string& path, const KindTable& kinds)
      : node_(node), kinds_(kinds), table_("", &node, path, faults_) {}

  Result<Entry> read() {
    if (node_.kind != Node::Kind::kTable) {
      return Fault{FaultCode::kWrongType, table_.place(), found_in_words(node_), "an entry", {}};
    }
    Entry out;
    if (const auto id = entry_id("id")) out.id = *id;
    out.sequence = table_.integer("sequence", 1, kMostSequence);
    out.device_time = table_.text("device_time");
    if (!out.device_time.empty() && !is_time_with_offset(out.device_time))
      fault(FaultCode::kBadDate, "device_time", out.device_time,
            "a time with its offset, such as 2026-11-26T18:04:10+01:00");
    out.kind = table_.text("kind");
    if (!out.kind.empty() && !is_key(out.kind)) fault(FaultCode::kUnknownName, "kind", out.kind, "the key of a kind");
    if (table_.has("corrects")) out.corrects = entry_id("corrects");
    if (out.corrects && *out.corrects == out.id)
      fault(FaultCode::kContradiction, "corrects", to_text(out.id), "the id of an older entry");
    const Kind* kind = kinds_.find(out.kind);
    out.known = kind != nullptr;
    if (kind != nullptr) read_kind(*kind);
    write_bytes(out);
    if (!faults_.empty()) return std::move(faults_);
    return out;  // without the whole
  }

 private:
  const Node& node_;
  const KindTable& kinds_;
  Faults faults_;
  TableReader table_;

  void fault(FaultCode code, std::string_view key, const std::string& found, std::string expected) {
    table_.fault(code, key, quote(found), std::move(expected));
  }

  std::optional<EntryId> entry_id(std::string_view key) {
    const std::string text = table_.text(key);
    const auto id = parse_entry_id(text);
    if (!id && !text.empty()) fault(FaultCode::kUnknownName, key, text, "a UUID of version 7");
    return id;
  }

  void key(std::string_view name) {
    const std::string text = table_.text(name);
    if (!text.empty() && !is_key(text))
      fault(FaultCode::kUnknownName, name, text, "an id of letters, digits and hyphens");
  }

  void day(std::string_view name) {
    if (!table_.has(name)) {
      table_.fault(FaultCode::kMissing, name, "nothing", "a day such as 2026-11-26");
      return;
    }
    table_.date(name);
  }

  void read_kind(const Kind& kind) {
    for (const std::string_view name : keys_about(kind.about)) {
      if (name == "day") {
        day(name);
      } else if (name == "start") {
        if (!table_.has(name)) table_.fault(FaultCode::kMissing, name, "nothing", "a time of day such as 18:00");
        table_.time(name);
      } else {
        key(name);
      }
    }
    for (const Field& field : kind.fields) {
      if (!field.optional || table_.has(field.key)) read_field(field);
    }
  }

  void text(const std::string& name, const std::string& value, std::int64_t most) {
    if (static_cast<std::int64_t>(code_points_in(value)) > most)
      fault(FaultCode::kOutOfRange, name, value, "at most " + std::to_string(most) + " characters");
  }

  std::vector<std::string> list(const Field& field, bool empty_too) {
    std::vector<std::string> out = table_.texts(field.key);
    if (out.size() > kMostInList)
      table_.fault(FaultCode::kOutOfRange, field.key, std::to_string(out.size()),
                   "at most " + std::to_string(kMostInList));
    if (out.empty() && !empty_too) table_.fault(FaultCode::kMissing, field.key, "nothing", "at least one");
    return out;
  }

  void read_field(const Field& field) {
    switch (field.type) {
      case FieldType::kText:
        return text(field.key, table_.text(field.key), field.most);
      case FieldType::kTexts:
        for (const std::string& one : list(field, true)) text(field.key, one, kMostTextPoints);
        return;
      case FieldType::kKey:
        return key(field.key);
      case FieldType::kKeys:
        for (const std::string& one : list(field, true)) {
          if (!is_key(one)) fault(FaultCode::kUnknownName, field.key, one, "ids of letters, digits and hyphens");
        }
        return;
      case FieldType::kWhole:
        table_.integer(field.key, field.least, field.most);
        return;
      case FieldType::kBoolean:
        table_.boolean_or(field.key, false);
        return;
      case FieldType::kDay:
        return day(field.key);
      case FieldType::kWord: {
        const std::vector<std::string_view> words(field.words.begin(), field.words.end());
        table_.word(field.key, words);
        return;
      }
      case FieldType::kEntry:
        entry_id(field.key);
        return;
      case FieldType::kEntries:
        for (const std::string& one : list(field, false)) {
          if (!parse_entry_id(one)) fault(FaultCode::kUnknownName, field.key, one, "UUIDs of version 7");
        }
        return;
    }
  }

  void write_bytes(Entry& entry) {
    auto bytes = canonical_json(node_);
    if (!bytes) {
      table_.fault(FaultCode::kContradiction, {}, "an entry that has no canonical form",
                   "UTF-8, each key once, whole numbers below 2^53");
    } else if (bytes->size() > kMostEntryBytes) {
      table_.fault(FaultCode::kOutOfRange, {}, std::to_string(bytes->size()) + " bytes",
                   "at most " + std::to_string(kMostEntryBytes) + " bytes");
    } else {
      entry.bytes = std::move(*bytes);
    }
  }
};

}  // namespace

bool is_time_with_offset(const std::string& text) {
  constexpr std::size_t kDay = 10;
  constexpr std::size_t kToMinutes = 16;
  if (text.size() < kToMinutes + 1 || text.size() > 35 || text[kDay] != 'T') return false;
  if (!parse_iso_date(text.substr(0, kDay)) || !parse_time_of_day(text.substr(kDay + 1, 5))) return false;
  std::size_t at = kToMinutes;
  const auto digits = [&](std::size_t count) {
    for (std::size_t i = 0; i < count; ++i, ++at) {
      if (at >= text.size() || text[at] < '0' || text[at] > '9') return false;
    }
    return true;
  };
  if (text[at] == ':' && (++at, !digits(2))) return false;
  if (at < text.size() && text[at] == '.') {
    ++at;
    const std::size_t from = at;
    while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
    if (at == from) return false;
  }
  if (at >= text.size()) return false;
  if (text[at] == 'Z') return at + 1 == text.size();
  if (text[at] != '+' && text[at] != '-') return false;
  return at + 6 == text.size() && parse_time_of_day(text.substr(at + 1)).has_value();
}

Result<Entry> read_entry(const Node& node, const std::string& path, const KindTable& kinds) {
  auto out = EntryReader(node, path, kinds).read();
  if (out) out.value().whole = node;
  return out;
}

Result<Entry> read_entry(Node&& node, const std::string& path, const KindTable& kinds) {
  auto out = EntryReader(node, path, kinds).read();
  if (out) out.value().whole = std::move(node);
  return out;
}

}  // namespace lanework::ledger
