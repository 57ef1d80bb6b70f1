#include "core/catalogue/fields.h"

#include <algorithm>

namespace lanework::catalogue {
namespace {

std::string count_range(std::size_t least, std::size_t most) {
  return least == most ? std::to_string(least) : std::to_string(least) + " to " + std::to_string(most);
}

template <class Text>
std::string joined(const std::vector<Text>& names) {
  std::string out = "one of ";
  for (std::size_t i = 0; i < names.size(); ++i) out += (i == 0 ? "" : ", ") + std::string(names[i]);
  return out;
}

}  // namespace

bool is_key(std::string_view text) {
  char before = '-';
  for (const char c : text) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (!letter && (c != '-' || before == '-')) return false;
    before = c;
  }
  return before != '-';
}

std::string read_key(TableReader& table, std::string_view key) {
  std::string text = table.text(key);
  if (!text.empty() && !is_key(text)) {
    table.fault(FaultCode::kContradiction, key, quote(text), "lower case letters, digits and hyphens");
  }
  return text;
}

std::string read_id(TableReader& table, const std::string& file) {
  std::string id = read_key(table, "id");
  constexpr std::string_view kEnding = ".toml";
  if (!is_key(id) || file.size() < kEnding.size() ||
      file.compare(file.size() - kEnding.size(), kEnding.size(), kEnding) != 0) {
    return id;
  }
  const std::size_t slash = file.find_last_of("/\\");
  const std::size_t start = slash == std::string::npos ? 0 : slash + 1;
  const std::string stem = file.substr(start, file.size() - kEnding.size() - start);
  if (id != stem) table.fault(FaultCode::kContradiction, "id", quote(id), "the name of the file, " + quote(stem));
  return id;
}

AgeRange read_ages(TableReader& table) {
  AgeRange range{kYoungestAge, kOldestAge};
  const bool present = table.has("ages");
  TableReader ages = table.table("ages");
  if (!present) table.fault(FaultCode::kMissing, "ages", "nothing", "a table such as { from = 8, to = 19 }");
  if (!ages.present()) return range;
  const std::size_t before = ages.faults_so_far();
  range.from = static_cast<int>(ages.integer("from", kYoungestAge, kOldestAge));
  range.to = static_cast<int>(ages.integer("to", kYoungestAge, kOldestAge));
  if (ages.faults_so_far() == before && range.from > range.to) {
    ages.fault(FaultCode::kContradiction, "to", std::to_string(range.to), std::to_string(range.from) + " or more");
  }
  ages.finish();
  return range;
}

std::vector<int> read_words(TableReader& table, std::string_view key, const std::vector<std::string_view>& known) {
  std::vector<int> out;
  for (const std::string& text : table.texts(key)) {
    const auto at = std::find(known.begin(), known.end(), text);
    const int position = static_cast<int>(at - known.begin());
    if (at == known.end()) {
      table.fault(FaultCode::kUnknownName, key, quote(text), one_of(known));
    } else if (std::find(out.begin(), out.end(), position) != out.end()) {
      table.fault(FaultCode::kDuplicate, key, quote(text), "each word once");
    } else {
      out.push_back(position);
    }
  }
  return out;
}

std::vector<std::string> read_lines(TableReader& table, std::string_view key, std::size_t least, std::size_t most) {
  const bool present = table.has(key);
  const std::size_t before = table.faults_so_far();
  std::vector<std::string> lines = table.texts(key);
  if (table.faults_so_far() != before) return lines;
  const std::string expected = count_range(least, most) + " lines of text";
  if (!present && least > 0) {
    table.fault(FaultCode::kMissing, key, "nothing", expected);
  } else if (lines.size() > most || (lines.size() < least && present)) {
    table.fault(FaultCode::kOutOfRange, key, std::to_string(lines.size()), expected);
  } else if (std::find(lines.begin(), lines.end(), "") != lines.end()) {
    table.fault(FaultCode::kMissing, key, "empty text", "text in every line");
  }
  return lines;
}

std::vector<std::string> read_sources(TableReader& table, std::string_view key) {
  const std::size_t before = table.faults_so_far();
  std::vector<std::string> keys = table.texts(key);
  if (table.faults_so_far() != before) return keys;
  if (keys.empty()) table.fault(FaultCode::kMissing, key, "nothing", "at least one key of sources.toml");
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (std::find(keys.begin(), keys.begin() + static_cast<std::ptrdiff_t>(i), keys[i]) !=
        keys.begin() + static_cast<std::ptrdiff_t>(i)) {
      table.fault(FaultCode::kDuplicate, key, quote(keys[i]), "each source once");
    }
  }
  return keys;
}

std::vector<TableReader> read_tables(TableReader& table, std::string_view key, std::size_t least, std::size_t most) {
  const bool present = table.has(key);
  const std::size_t before = table.faults_so_far();
  std::vector<TableReader> tables = table.tables(key);
  if (table.faults_so_far() != before) return tables;
  const std::string expected = count_range(least, most) + " tables [[" + std::string(key) + "]]";
  if (!present && least > 0) {
    table.fault(FaultCode::kMissing, key, "nothing", expected);
  } else if (tables.size() > most || (tables.size() < least && present)) {
    table.fault(FaultCode::kOutOfRange, key, std::to_string(tables.size()), expected);
  }
  return tables;
}

std::string one_of(const std::vector<std::string>& names) { return joined(names); }
std::string one_of(const std::vector<std::string_view>& names) { return joined(names); }

int count_words(std::string_view text) {
  int words = 0;
  bool inside = false;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\t' || c == '\n';
    if (!space && !inside) ++words;
    inside = !space;
  }
  return words;
}

}  // namespace lanework::catalogue
