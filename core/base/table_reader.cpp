#include <algorithm>
#include <cmath>

#include "core/base/document.h"

namespace lanework {
namespace {

std::string range_in_words(std::int64_t least, std::int64_t most) {
  return "a whole number from " + std::to_string(least) + " to " + std::to_string(most);
}

std::string short_number(double value) {
  Node node;
  if (value == std::floor(value)) {
    node = Node::make_integer(static_cast<std::int64_t>(value));
  } else {
    node.kind = Node::Kind::kReal;
    node.real = value;
  }
  return to_json(node);
}

// What is printed must not steer a terminal or break a line; an escape such as \u001B brings in what no file may hold.
bool is_one_line(const std::string& text) {
  return std::none_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7F;
  });
}

// What was expected where the node is no such text; null where it is one.
const char* not_a_text(const Node& node, const char* expected) {
  if (node.kind != Node::Kind::kText) return expected;
  return is_one_line(node.text) ? nullptr : "text of one line without control characters";
}

}  // namespace

TableReader::TableReader(std::string file, const Node* table, std::string path, Faults& faults)
    : file_(std::move(file)), table_(table), path_(std::move(path)), faults_(&faults) {
  if (table_ != nullptr) known_.reserve(table_->entries.size());
}

std::string TableReader::path_of(std::string_view key) const {
  if (key.empty()) return path_;
  return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

bool TableReader::has(std::string_view key) const { return table_ != nullptr && table_->find(key) != nullptr; }

Place TableReader::place(std::string_view key) const {
  const Node* node = table_;
  if (table_ != nullptr && !key.empty()) {
    if (const Node* child = table_->find(key)) node = child;
  }
  return {file_, node != nullptr ? node->line : 0, node != nullptr ? node->column : 0, path_of(key)};
}

void TableReader::fault(FaultCode code, std::string_view key, std::string found, std::string expected,
                        std::string hint) {
  faults_->push_back(Fault{code, place(key), std::move(found), std::move(expected), std::move(hint)});
}

const Node* TableReader::find(std::string_view key) {
  known_.emplace_back(key);
  return table_ != nullptr ? table_->find(key) : nullptr;
}

const Node* TableReader::get(std::string_view key, Node::Kind kind, bool required) {
  const Node* node = find(key);
  if (node == nullptr) {
    if (required && table_ != nullptr) fault(FaultCode::kMissing, key, "nothing", kind_in_words(kind));
    return nullptr;
  }
  const char* expected = kind_in_words(kind);
  if (node->kind == kind) expected = kind == Node::Kind::kText ? not_a_text(*node, expected) : nullptr;
  if (expected == nullptr) return node;
  fault(FaultCode::kWrongType, key, found_in_words(*node), expected);
  return nullptr;
}

std::string TableReader::text(std::string_view key) {
  const Node* node = get(key, Node::Kind::kText, true);
  if (node == nullptr) return {};
  if (node->text.empty()) fault(FaultCode::kMissing, key, "empty text", "text");
  return node->text;
}

std::string TableReader::text_or(std::string_view key, std::string fallback) {
  const Node* node = get(key, Node::Kind::kText, false);
  if (node != nullptr) return node->text;
  return fallback;
}

std::int64_t TableReader::integer(std::string_view key, std::int64_t least, std::int64_t most) {
  if (table_ != nullptr && !has(key)) {
    known_.emplace_back(key);
    fault(FaultCode::kMissing, key, "nothing", range_in_words(least, most));
    return least;
  }
  return integer_or(key, least, least, most);
}

std::int64_t TableReader::integer_or(std::string_view key, std::int64_t fallback, std::int64_t least,
                                     std::int64_t most) {
  const Node* node = find(key);
  if (node == nullptr) return fallback;
  if (node->kind != Node::Kind::kInteger) {
    fault(FaultCode::kWrongType, key, found_in_words(*node), range_in_words(least, most));
    return fallback;
  }
  if (node->integer < least || node->integer > most) {
    fault(FaultCode::kOutOfRange, key, found_in_words(*node), range_in_words(least, most));
    return fallback;
  }
  return node->integer;
}

std::int64_t TableReader::scaled(std::string_view key, std::int64_t scale, double least, double most) {
  if (table_ != nullptr && !has(key)) {
    known_.emplace_back(key);
    fault(FaultCode::kMissing, key, "nothing", "a number from " + short_number(least) + " to " + short_number(most));
    return static_cast<std::int64_t>(std::llround(least * static_cast<double>(scale)));
  }
  return scaled_or(key, scale, least, least, most);
}

std::int64_t TableReader::scaled_or(std::string_view key, std::int64_t scale, double fallback, double least,
                                    double most) {
  const Node* node = find(key);
  const auto scaled_whole = [scale](double value) {
    return static_cast<std::int64_t>(std::llround(value * static_cast<double>(scale)));
  };
  if (node == nullptr) return scaled_whole(fallback);
  const std::string expected = "a number from " + short_number(least) + " to " + short_number(most);
  double value = 0;
  if (node->kind == Node::Kind::kInteger) {
    value = static_cast<double>(node->integer);
  } else if (node->kind == Node::Kind::kReal) {
    value = node->real;
  } else {
    fault(FaultCode::kWrongType, key, found_in_words(*node), expected);
    return scaled_whole(fallback);
  }
  if (!(value >= least && value <= most)) {
    fault(FaultCode::kOutOfRange, key, found_in_words(*node), expected);
    return scaled_whole(fallback);
  }
  return scaled_whole(value);
}

std::vector<std::int64_t> TableReader::scaled_list(std::string_view key, std::size_t size, std::int64_t scale,
                                                   double least, double most) {
  const auto scaled_whole = [scale](double value) {
    return static_cast<std::int64_t>(std::llround(value * static_cast<double>(scale)));
  };
  std::vector<std::int64_t> out;
  const Node* node = get(key, Node::Kind::kArray, true);
  if (node != nullptr && node->items.size() != size) {
    fault(FaultCode::kOutOfRange, key, std::to_string(node->items.size()) + " numbers",
          "a list of " + std::to_string(size) + " numbers");
  } else if (node != nullptr) {
    for (const Node& item : node->items) {
      const bool whole = item.kind == Node::Kind::kInteger;
      const double value = whole ? static_cast<double>(item.integer) : item.real;
      const bool number = whole || item.kind == Node::Kind::kReal;
      if (number && value >= least && value <= most) {
        out.push_back(scaled_whole(value));
        continue;
      }
      fault(number ? FaultCode::kOutOfRange : FaultCode::kWrongType, key, found_in_words(item),
            "numbers from " + short_number(least) + " to " + short_number(most));
      break;
    }
  }
  out.resize(size, scaled_whole(least));
  return out;
}

bool TableReader::boolean_or(std::string_view key, bool fallback) {
  const Node* node = get(key, Node::Kind::kBoolean, false);
  return node != nullptr ? node->boolean : fallback;
}

std::optional<Date> TableReader::date(std::string_view key) {
  const Node* node = find(key);
  if (node == nullptr) return {};
  if (node->kind == Node::Kind::kText) {
    if (const auto date = parse_iso_date(node->text)) return date;
  }
  fault(FaultCode::kBadDate, key, found_in_words(*node), "a date such as 2026-11-26");
  return {};
}

std::optional<TimeOfDay> TableReader::time(std::string_view key) {
  const Node* node = find(key);
  if (node == nullptr) return {};
  if (node->kind == Node::Kind::kText) {
    if (const auto time = parse_time_of_day(node->text)) return time;
  }
  fault(FaultCode::kBadDate, key, found_in_words(*node), "a time of day such as 18:00:00");
  return {};
}

std::vector<std::string> TableReader::texts(std::string_view key) {
  std::vector<std::string> out;
  const Node* node = get(key, Node::Kind::kArray, false);
  if (node == nullptr) return out;
  for (const Node& item : node->items) {
    if (const char* expected = not_a_text(item, "a list of texts")) {
      fault(FaultCode::kWrongType, key, found_in_words(item), expected);
    } else {
      out.push_back(item.text);
    }
  }
  return out;
}

std::vector<std::vector<std::string>> TableReader::text_lists(std::string_view key) {
  std::vector<std::vector<std::string>> out;
  const Node* node = get(key, Node::Kind::kArray, false);
  if (node == nullptr) return out;
  for (const Node& inner : node->items) {
    if (inner.kind != Node::Kind::kArray) {
      fault(FaultCode::kWrongType, key, found_in_words(inner), "a list of lists of texts");
      continue;
    }
    std::vector<std::string> texts;
    for (const Node& item : inner.items) {
      if (const char* expected = not_a_text(item, "a list of lists of texts")) {
        fault(FaultCode::kWrongType, key, found_in_words(item), expected);
      } else {
        texts.push_back(item.text);
      }
    }
    out.push_back(std::move(texts));
  }
  return out;
}

TableReader TableReader::table(std::string_view key) {
  const Node* node = get(key, Node::Kind::kTable, false);
  return {file_, node, path_of(key), *faults_};
}

std::vector<TableReader> TableReader::tables(std::string_view key) {
  std::vector<TableReader> out;
  const Node* node = get(key, Node::Kind::kArray, false);
  if (node == nullptr) return out;
  for (std::size_t i = 0; i < node->items.size(); ++i) {
    const Node& item = node->items[i];
    if (item.kind == Node::Kind::kTable) {
      out.emplace_back(file_, &item, path_of(key) + "." + std::to_string(i + 1), *faults_);
    } else {
      fault(FaultCode::kWrongType, key, found_in_words(item), "a list of tables");
    }
  }
  return out;
}

int TableReader::word(std::string_view key, const std::vector<std::string_view>& known, int fallback) {
  const Node* node = get(key, Node::Kind::kText, fallback < 0);
  if (node == nullptr) return fallback < 0 ? 0 : fallback;
  for (std::size_t i = 0; i < known.size(); ++i) {
    if (known[i] == node->text) return static_cast<int>(i);
  }
  std::string list;
  for (const std::string_view word : known) list += (list.empty() ? "" : ", ") + std::string(word);
  fault(FaultCode::kUnknownName, key, quote(node->text), "one of " + list);
  return fallback < 0 ? 0 : fallback;
}

std::vector<std::string> TableReader::keys() {
  std::vector<std::string> out;
  if (table_ == nullptr) return out;
  for (const auto& entry : table_->entries) out.push_back(entry.first);
  return out;
}

void TableReader::finish() {
  if (table_ == nullptr) return;
  for (const auto& [key, value] : table_->entries) {
    if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
    std::string list;
    for (auto name = known_.begin(); name != known_.end(); ++name) {
      if (std::find(known_.begin(), name, *name) == name) list += (list.empty() ? "" : ", ") + *name;
    }
    faults_->push_back(Fault{
        FaultCode::kUnknownKey, {file_, value.line, value.column, path_of(key)}, quote(key), "one of " + list, {}});
  }
}

}  // namespace lanework
