// JSON as RFC 8259 has it, read straight into the tree. Stricter than some: each key once, no null, at most 64 levels.
#include <array>
#include <cerrno>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <set>

#include "core/base/document.h"

namespace lanework {
namespace {

constexpr std::size_t kMostDepth = 64;
constexpr std::size_t kFewKeys = 16;  // up to here every one is looked at
constexpr char32_t kFirstBeyond16 = 0x10000;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// What may stand in a text as it is, one byte a letter.
constexpr std::array<bool, 256> plain_bytes() {
  std::array<bool, 256> out{};
  for (std::size_t i = 0x20; i < 0x80; ++i) out[i] = i != '"' && i != '\\';
  return out;
}
constexpr std::array<bool, 256> kPlain = plain_bytes();

class JsonReader {
 public:
  explicit JsonReader(std::string_view text) : begin_(text.data()), at_(begin_), end_(begin_ + text.size()) {}

  bool read(Node& root) {
    constexpr std::string_view kMark = "\xef\xbb\xbf";
    if (std::string_view(at_, left()).substr(0, kMark.size()) == kMark) at_ += kMark.size();
    pass_blanks();
    if (!value(root)) return false;
    pass_blanks();
    return at_ == end_ || unexpected();
  }

  std::string problem;
  const char* problem_at = nullptr;  // null: not a matter of one place

 private:
  const char* begin_;
  const char* at_;
  const char* end_;
  std::size_t depth_ = 0;
  std::string key_;

  [[nodiscard]] std::size_t left() const { return static_cast<std::size_t>(end_ - at_); }
  [[nodiscard]] bool is_at(char c) const { return at_ != end_ && *at_ == c; }

  void pass_blanks() {
    while (at_ != end_ && (*at_ == ' ' || *at_ == '\n' || *at_ == '\t' || *at_ == '\r')) ++at_;
  }

  bool fail(std::string what) {
    problem = std::move(what);
    return false;
  }
  bool broken(const char* where) {
    problem_at = where;
    return fail("a syntax error");
  }

  // At a token that does not belong here: its last letter is told, or within it where it is none itself.
  bool unexpected() {
    const bool opens = is_at('{') || is_at('[');
    const char* const from = at_;
    if (Node passed; !opens && !value(passed)) return false;
    return broken(at_ == from ? at_ : at_ - 1);
  }

  bool value(Node& out) {
    if (at_ == end_) return broken(at_);
    switch (*at_) {
      case '{':
        return table(out);
      case '[':
        return array(out);
      case '"':
        out.kind = Node::Kind::kText;
        return text(out.text);
      case 't':
        out = Node::make_boolean(true);
        return word("true");
      case 'f':
        out = Node::make_boolean(false);
        return word("false");
      case 'n':
        return word("null") && fail("null");
      default:
        return is_digit(*at_) || *at_ == '-' ? number(out) : broken(at_);
    }
  }

  bool word(std::string_view letters) {
    for (const char letter : letters) {
      if (!is_at(letter)) return broken(at_);
      ++at_;
    }
    return true;
  }

  bool enter() {
    ++at_;
    if (++depth_ > kMostDepth) return fail("more than 64 levels of nesting");
    pass_blanks();
    return true;
  }
  bool leave() {
    ++at_;
    --depth_;
    return true;
  }

  bool array(Node& out) {
    out.kind = Node::Kind::kArray;
    if (!enter()) return false;
    if (is_at(']')) return leave();
    while (true) {
      if (!value(out.items.emplace_back())) return false;
      pass_blanks();
      if (is_at(']')) return leave();
      if (!is_at(',')) return unexpected();
      ++at_;
      pass_blanks();
    }
  }

  bool table(Node& out) {
    constexpr std::size_t kSmall = 2;
    constexpr std::size_t kUsual = 12;
    out.kind = Node::Kind::kTable;
    if (!enter()) return false;
    if (is_at('}')) return leave();
    std::set<std::string, std::less<>> many;
    while (true) {
      if (!is_at('"')) return unexpected();
      if (out.entries.size() == kSmall) out.entries.reserve(kUsual);
      auto& [key, node] = out.entries.emplace_back();
      if (!text(key)) return false;
      if (!is_first(out, many)) return fail("the key " + quote(key) + " twice");
      pass_blanks();
      if (!is_at(':')) return unexpected();
      ++at_;
      pass_blanks();
      if (!value(node)) return false;
      pass_blanks();
      if (is_at('}')) return leave();
      if (!is_at(',')) return unexpected();
      ++at_;
      pass_blanks();
    }
  }

  // Whether the table's last key does not stand there before; many: its keys, once they are many.
  static bool is_first(const Node& table, std::set<std::string, std::less<>>& many) {
    const auto& entries = table.entries;
    const std::string& key = entries.back().first;
    if (entries.size() > kFewKeys) {
      if (many.empty()) {
        for (std::size_t i = 0; i + 1 < entries.size(); ++i) many.insert(entries[i].first);
      }
      return many.insert(key).second;
    }
    for (std::size_t i = 0; i + 1 < entries.size(); ++i) {
      if (entries[i].first == key) return false;
    }
    return true;
  }

  bool number(Node& out) {
    const char* const from = at_;
    const bool negative = *at_ == '-';
    if (negative) ++at_;
    if (at_ == end_ || !is_digit(*at_)) return broken(at_);
    if (*at_ == '0') {
      ++at_;
    } else {
      pass_digits();
    }
    bool whole = true;
    if (is_at('.')) {
      whole = false;
      ++at_;
      if (at_ == end_ || !is_digit(*at_)) return broken(at_);
      pass_digits();
    }
    if (is_at('e') || is_at('E')) {
      whole = false;
      ++at_;
      if (is_at('+') || is_at('-')) ++at_;
      if (at_ == end_ || !is_digit(*at_)) return broken(at_);
      pass_digits();
    }
    if (whole) {
      out.kind = Node::Kind::kInteger;
      if (std::from_chars(from, at_, out.integer).ec == std::errc()) return true;
      std::uint64_t large = 0;
      if (!negative && std::from_chars(from, at_, large).ec == std::errc()) return fail("a number that is too large");
    }
    out.kind = Node::Kind::kReal;
    out.real = std::strtod(std::string(from, at_).c_str(), nullptr);
    return std::isfinite(out.real) || broken(at_);
  }
  void pass_digits() {
    while (at_ != end_ && is_digit(*at_)) ++at_;
  }

  bool text(std::string& out) {
    ++at_;
    while (true) {
      const char* const from = at_;
      while (at_ != end_ && kPlain[static_cast<unsigned char>(*at_)]) ++at_;
      out.append(from, at_);
      if (at_ == end_) return broken(at_);
      if (*at_ == '"') {
        ++at_;
        return true;
      }
      if (*at_ == '\\' ? !escape(out) : !letter(out)) return false;
    }
  }

  // One letter of two bytes or more; well-formed as Unicode's table 3-7 has it.
  bool letter(std::string& out) {
    const char* const from = at_;
    const auto lead = static_cast<unsigned char>(*at_);
    const std::size_t more = lead < 0xC2 ? 0 : lead < 0xE0 ? 1 : lead < 0xF0 ? 2 : lead < 0xF5 ? 3 : 0;
    if (more == 0) return broken(at_);
    unsigned least = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
    unsigned most = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
    ++at_;
    for (std::size_t i = 0; i < more; ++i, ++at_) {
      if (at_ == end_) return broken(at_);
      const auto byte = static_cast<unsigned char>(*at_);
      if (byte < least || byte > most) return broken(at_);
      least = 0x80;
      most = 0xBF;
    }
    out.append(from, at_);
    return true;
  }

  bool escape(std::string& out) {
    static constexpr std::string_view kAfter = "\"\\/bfnrt";
    static constexpr std::string_view kMeant = "\"\\/\b\f\n\r\t";
    ++at_;
    if (at_ == end_) return broken(at_);
    const char c = *at_;
    if (c != 'u') {
      const std::size_t which = kAfter.find(c);
      if (which == std::string_view::npos) return broken(at_);
      out += kMeant[which];
      ++at_;
      return true;
    }
    char32_t point = 0;
    if (!four_digits(point)) return false;
    if (point >= 0xDC00 && point <= 0xDFFF) return broken(at_ - 1);
    if (point >= 0xD800 && point <= 0xDBFF) {
      char32_t low = 0;
      if (!is_at('\\')) return broken(at_);
      ++at_;
      if (!is_at('u')) return broken(at_);
      if (!four_digits(low)) return false;
      if (low < 0xDC00 || low > 0xDFFF) return broken(at_ - 1);
      point = kFirstBeyond16 + ((point - 0xD800) << 10) + (low - 0xDC00);
    }
    add_utf_8(out, point);
    return true;
  }

  // After the 'u'.
  bool four_digits(char32_t& out) {
    ++at_;
    for (int i = 0; i < 4; ++i, ++at_) {
      if (at_ == end_) return broken(at_);
      const char c = *at_;
      const int value = is_digit(c)              ? c - '0'
                        : (c >= 'a' && c <= 'f') ? c - 'a' + 10
                        : (c >= 'A' && c <= 'F') ? c - 'A' + 10
                                                 : -1;
      if (value < 0) return broken(at_);
      out = out << 4U | static_cast<char32_t>(value);
    }
    return true;
  }

  static void add_utf_8(std::string& out, char32_t point) {
    const auto add = [&](char32_t byte) { out += static_cast<char>(static_cast<unsigned char>(byte)); };
    const auto follow = [&](unsigned shift) { add(0x80 | ((point >> shift) & 0x3F)); };
    if (point < 0x80) {
      add(point);
    } else if (point < 0x800) {
      add(0xC0 | point >> 6);
      follow(0);
    } else if (point < kFirstBeyond16) {
      add(0xE0 | point >> 12);
      follow(6);
      follow(0);
    } else {
      add(0xF0 | point >> 18);
      follow(12);
      follow(6);
      follow(0);
    }
  }
};

// Line and column, from 1, of a letter of the text.
void set_place(Place& place, std::string_view text, const char* letter) {
  place.line = 1;
  place.column = 1;
  for (const char c : text.substr(0, static_cast<std::size_t>(letter - text.data()))) {
    if (c == '\n') {
      ++place.line;
      place.column = 1;
    } else {
      ++place.column;
    }
  }
}

}  // namespace

Result<Document> parse_json(std::string file, std::string_view text) {
  JsonReader reader(text);
  Document out{std::move(file), {}};
  const bool read = reader.read(out.root);
  if (read && out.root.kind == Node::Kind::kTable) return out;
  Place place{std::move(out.file), 0, 0, {}};
  if (reader.problem_at != nullptr) set_place(place, text, reader.problem_at);
  const std::string found = read ? "something other than an object" : reader.problem;
  return Fault{FaultCode::kSyntax, std::move(place), found, "a JSON object", {}};
}

}  // namespace lanework
