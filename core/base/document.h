// A document: the neutral tree that TOML files and JSON requests are both read into, with the place of
// every value, so that each later fault can name file, line, column and field.
//
// Parsing checks syntax only. Meaning is read through TableReader, which collects every fault instead of
// stopping at the first, and reports keys that nobody asked for.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"

namespace lanework {

struct Node {
  enum class Kind { kTable, kArray, kText, kInteger, kReal, kBoolean };
  Kind kind = Kind::kTable;
  std::string text;                                   // kText; dates and times of TOML as text in ISO form, offset kept
  std::int64_t integer = 0;                           // kInteger
  double real = 0;                                    // kReal
  bool boolean = false;                               // kBoolean
  std::vector<Node> items;                            // kArray
  std::vector<std::pair<std::string, Node>> entries;  // kTable, in the order of the file
  int line = 0;
  int column = 0;

  // Made in document.cpp: a table holds pairs of its own type, which clang will not copy or destroy before the type is
  // complete.
  Node();
  ~Node();
  Node(const Node&);
  Node(Node&&) noexcept;
  Node& operator=(const Node&);
  Node& operator=(Node&&) noexcept;

  [[nodiscard]] const Node* find(std::string_view key) const;

  static Node make_text(std::string value);
  static Node make_integer(std::int64_t value);
  static Node make_real(double value);
  static Node make_boolean(bool value);
  static Node make_array();
  static Node make_table();
  // For tables: appends, or replaces the entry of that name.
  Node& set(std::string key, Node value);
};

struct Document {
  std::string file;  // as the user named it
  Node root;         // a table
};

Result<Document> parse_toml(std::string file, std::string_view text);
Result<Document> parse_json(std::string file, std::string_view text);

// Compact JSON (indent < 0) or indented; keys in the order of the tree; the same tree gives the same bytes.
std::string to_json(const Node& node, int indent = -1);

// The tree as TOML that parse_toml gives back: keys of the root first, then its tables and lists of tables, each under
// a heading; what lies deeper stands inline. Texts that are dates or times of day are written as such.
std::string to_toml(const Node& root);

// 'a table', 'text', 'a whole number'... as users read it.
const char* kind_in_words(Node::Kind kind);
// The value as found, for a fault: "'abc'", "-3", 'a table'.
std::string found_in_words(const Node& node);

// Reads one table key by key. Every getter marks its key as known; a wrong type or a value outside the
// limits adds a fault and yields the fallback. finish() reports keys never asked for.
class TableReader {
 public:
  // table may be null (an absent optional table): then every getter yields its fallback.
  TableReader(std::string file, const Node* table, std::string path, Faults& faults);

  [[nodiscard]] bool present() const { return table_ != nullptr; }
  [[nodiscard]] bool has(std::string_view key) const;
  [[nodiscard]] Place place(std::string_view key = {}) const;

  std::string text(std::string_view key);  // required, not empty
  std::string text_or(std::string_view key, std::string fallback);
  std::int64_t integer(std::string_view key, std::int64_t least, std::int64_t most);  // required
  std::int64_t integer_or(std::string_view key, std::int64_t fallback, std::int64_t least, std::int64_t most);
  // A number with decimals, times scale, rounded to the nearest whole: metres with scale 1000 are millimetres.
  std::int64_t scaled(std::string_view key, std::int64_t scale, double least, double most);  // required
  std::int64_t scaled_or(std::string_view key, std::int64_t scale, double fallback, double least, double most);
  // Exactly that many such numbers; after a fault that many times the least.
  std::vector<std::int64_t> scaled_list(std::string_view key, std::size_t size, std::int64_t scale, double least,
                                        double most);  // required
  bool boolean_or(std::string_view key, bool fallback);
  std::optional<Date> date(std::string_view key);                          // absent is fine
  std::optional<TimeOfDay> time(std::string_view key);                     // absent is fine
  std::vector<std::string> texts(std::string_view key);                    // absent is an empty list
  std::vector<std::vector<std::string>> text_lists(std::string_view key);  // a list of lists of texts; absent is empty
  TableReader table(std::string_view key);                                 // absent gives !present()
  std::vector<TableReader> tables(std::string_view key);                   // an array of tables; absent is empty
  // Position of a word in a list of known words; required when fallback < 0.
  int word(std::string_view key, const std::vector<std::string_view>& known, int fallback = -1);
  // Names of all keys, for tables whose keys are the user's own.
  std::vector<std::string> keys();

  void fault(FaultCode code, std::string_view key, std::string found, std::string expected, std::string hint = {});
  void finish();
  // Faults collected so far by everybody who shares the list: equal before and after means 'all was well'.
  [[nodiscard]] std::size_t faults_so_far() const { return faults_->size(); }

 private:
  const Node* get(std::string_view key, Node::Kind kind, bool required);
  const Node* find(std::string_view key);
  [[nodiscard]] std::string path_of(std::string_view key) const;

  std::string file_;
  const Node* table_;
  std::string path_;
  Faults* faults_;
  std::vector<std::string> known_;
};

}  // namespace lanework
