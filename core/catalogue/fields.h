// Fields that several files of the catalogue share. Inside this folder only.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/document.h"
#include "core/catalogue/drill.h"

namespace lanework::catalogue {

inline constexpr int kYoungestAge = 8;
inline constexpr int kOldestAge = 19;

// Lower case letters, digits and single hyphens between them: 'side-plank'.
bool is_key(std::string_view text);
// Required text of that form; a fault otherwise.
std::string read_key(TableReader& table, std::string_view key);
// A required key that is also the file's name without its ending, where the file is a TOML file.
std::string read_id(TableReader& table, const std::string& file);

struct AgeRange {
  int from;
  int to;
};
// The table 'ages = { from, to }', within 8 to 19.
AgeRange read_ages(TableReader& table);

// A list of words out of a known list, none twice, as positions.
std::vector<int> read_words(TableReader& table, std::string_view key, const std::vector<std::string_view>& known);
template <class Enumerator>
std::vector<Enumerator> read_enumerators(TableReader& table, std::string_view key,
                                         const std::vector<std::string_view>& known) {
  std::vector<Enumerator> out;
  for (const int position : read_words(table, key, known)) out.push_back(static_cast<Enumerator>(position));
  return out;
}

// A list of texts, none empty, as many as stated.
std::vector<std::string> read_lines(TableReader& table, std::string_view key, std::size_t least, std::size_t most);
// A list of source keys, at least one and none twice.
std::vector<std::string> read_sources(TableReader& table, std::string_view key = "sources");

// A list of tables, as many as stated; a fault otherwise.
std::vector<TableReader> read_tables(TableReader& table, std::string_view key, std::size_t least, std::size_t most);

// 'one of a, b, c'.
std::string one_of(const std::vector<std::string>& names);
std::string one_of(const std::vector<std::string_view>& names);

// Words between spaces.
int count_words(std::string_view text);

}  // namespace lanework::catalogue
