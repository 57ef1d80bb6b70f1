#include "app/read/decode_text.h"

#include <unicode/normalizer2.h>
#include <unicode/translit.h>
#include <unicode/unistr.h>
#include <unicode/utf16.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <array>
#include <memory>

#include "app/read/code_pages.h"

namespace lanework::read {
namespace {

struct NamedEncoding {
  std::string_view name;
  const char* icu;
};
constexpr std::array<NamedEncoding, 20> kNamed = {{
    {"utf-8", "utf-8"},
    {"utf-16le", "UTF-16LE"},
    {"utf-16be", "UTF-16BE"},
    {"windows-874", "windows-874"},
    {"windows-1250", "windows-1250"},
    {"windows-1251", "windows-1251"},
    {"windows-1252", "windows-1252"},
    {"windows-1253", "windows-1253"},
    {"windows-1254", "windows-1254"},
    {"windows-1255", "windows-1255"},
    {"windows-1256", "windows-1256"},
    {"windows-1257", "windows-1257"},
    {"windows-1258", "windows-1258"},
    {"macintosh", "macintosh"},
    {"iso-8859-2", "iso-8859-2"},
    {"koi8-r", "koi8-r"},
    {"shift_jis", "windows-31j"},
    {"gb18030", "gb18030"},
    {"euc-kr", "windows-949"},
    {"big5", "windows-950"},
}};

constexpr const char* kHalfWritten = "the file may be half-written";

Fault not_text(const std::string& file, int line, std::string found, std::string expected, std::string hint = {}) {
  return Fault{FaultCode::kNotText, {file, line, 0, {}}, std::move(found), std::move(expected), std::move(hint)};
}

bool starts_with(std::string_view bytes, std::string_view start) { return bytes.substr(0, start.size()) == start; }

int line_at(std::string_view bytes, std::size_t position) {
  return 1 + static_cast<int>(std::count(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(position), '\n'));
}

// What a file that is no text at all begins with.
struct Signature {
  std::string_view start;
  const char* words;
};
constexpr std::array<Signature, 6> kSignatures = {{
    {"PK\x03\x04", "a workbook or another zip archive"},
    {"\xD0\xCF\x11\xE0", "an old binary workbook"},
    {"%PDF", "a PDF"},
    {"\x89PNG", "a picture"},
    {"\xFF\xD8\xFF", "a picture"},
    {"\x1F\x8B", "a compressed file"},
}};

std::vector<char16_t> units_of(std::string_view bytes, bool big_endian) {
  std::vector<char16_t> units;
  units.reserve(bytes.size() / 2);
  for (std::size_t i = 0; i + 1 < bytes.size(); i += 2) {
    const auto first = static_cast<unsigned char>(bytes[i]);
    const auto second = static_cast<unsigned char>(bytes[i + 1]);
    units.push_back(static_cast<char16_t>(big_endian ? first << 8 | second : second << 8 | first));
  }
  return units;
}

Result<DecodedText> decode_utf16(const std::string& file, std::string_view bytes, bool big_endian) {
  const std::vector<char16_t> units = units_of(bytes, big_endian);
  DecodedText out{{}, big_endian ? "utf-16be" : "utf-16le"};
  int line = 1;
  const auto count = static_cast<std::int32_t>(units.size());
  for (std::int32_t i = 0; i < count;) {
    UChar32 c = 0;
    U16_NEXT(units.data(), i, count, c);
    if (U_IS_SURROGATE(c)) {
      return not_text(file, line, "half a UTF-16 character", "whole UTF-16 characters", kHalfWritten);
    }
    if (c == '\n') ++line;
    std::array<char, 4> utf8{};
    std::int32_t length = 0;
    U8_APPEND_UNSAFE(utf8.data(), length, c);
    out.text.append(utf8.data(), static_cast<std::size_t>(length));
  }
  if (bytes.size() % 2 != 0) {
    return not_text(file, line, "half a UTF-16 character at the end", "whole UTF-16 characters", kHalfWritten);
  }
  return out;
}

// UTF-16 without a mark has a NUL in every other byte of its digits and separators. Which half they stand
// in tells the byte order; text of one line or more always has some.
std::optional<bool> unmarked_utf16_is_big_endian(std::string_view bytes) {
  std::size_t plain_big = 0;
  std::size_t plain_little = 0;
  for (std::size_t i = 0; i + 1 < bytes.size(); i += 2) {
    const auto plain = [](char high, char low) { return high == 0 && low != 0 && (low & 0x80) == 0; };
    plain_big += plain(bytes[i], bytes[i + 1]) ? 1 : 0;
    plain_little += plain(bytes[i + 1], bytes[i]) ? 1 : 0;
  }
  const std::size_t most = std::max(plain_big, plain_little);
  // A stray NUL in other text makes few such pairs.
  if (most == 0 || most * 10 < bytes.size() / 2) return {};
  return plain_big > plain_little;
}

struct Utf8Check {
  bool valid = true;
  std::size_t bad_at = 0;   // the first byte that is not UTF-8
  int good = 0;             // characters of more than one byte
  int bad = 0;              // bytes that fit nowhere
  bool cut_at_end = false;  // the only fault is a last character that is not whole
};

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"  // inside the macro, on purpose
UChar32 next_utf8(std::string_view bytes, std::int32_t& at) {
  UChar32 c = 0;
  U8_NEXT(bytes.data(), at, static_cast<std::int32_t>(bytes.size()), c);
  return c;
}
#pragma GCC diagnostic pop

Utf8Check check_utf8(std::string_view bytes) {
  Utf8Check check;
  const auto count = static_cast<std::int32_t>(bytes.size());
  for (std::int32_t i = 0; i < count;) {
    const std::int32_t start = i;
    const UChar32 c = next_utf8(bytes, i);
    if (c >= 0x80) ++check.good;
    if (c >= 0) continue;
    if (check.bad == 0) check.bad_at = static_cast<std::size_t>(start);
    ++check.bad;
    const auto lead = static_cast<unsigned char>(bytes[static_cast<std::size_t>(start)]);
    check.cut_at_end =
        check.bad == 1 && i == count && U8_IS_LEAD(lead) && count - start < 1 + U8_COUNT_TRAIL_BYTES(lead);
  }
  check.valid = check.bad == 0;
  return check;
}

Fault broken_utf8(const std::string& file, std::string_view bytes, const Utf8Check& check) {
  const int line = line_at(bytes, check.bad_at);
  if (check.cut_at_end) {
    return not_text(file, line, "half a UTF-8 character at the end", "whole UTF-8 characters", kHalfWritten);
  }
  return not_text(file, line, "a byte that is not UTF-8", "UTF-8 throughout", "save it again as CSV UTF-8");
}

Result<DecodedText> decode_code_page(const std::string& file, std::string_view bytes) {
  const Fault unknown = not_text(file, 0, "bytes of no encoding we know", "text", "save it again as CSV UTF-8");
  const CodePage* page = likeliest_code_page(bytes);
  if (page == nullptr) return unknown;
  const std::optional<std::string> text = to_utf8(bytes, page->encoding);
  if (!text) return unknown;
  for (const NamedEncoding& named : kNamed) {
    if (std::string_view(named.icu) == page->encoding) return DecodedText{*text, std::string(named.name)};
  }
  return unknown;
}

Result<DecodedText> decode_stated(const std::string& file, std::string_view bytes, const std::string& stated) {
  const auto named =
      std::find_if(kNamed.begin(), kNamed.end(), [&](const NamedEncoding& n) { return n.name == stated; });
  if (named == kNamed.end()) {
    return Fault{
        FaultCode::kUnknownName, {file, 0, 0, {}}, "encoding " + quote(stated), "a name such as windows-1250", {}};
  }
  if (stated == "utf-8") {
    const Utf8Check check = check_utf8(bytes);
    if (!check.valid) return broken_utf8(file, bytes, check);
    return DecodedText{std::string(bytes), stated};
  }
  if (stated == "utf-16le" || stated == "utf-16be") return decode_utf16(file, bytes, stated == "utf-16be");
  const std::optional<std::string> text = to_utf8(bytes, named->icu);
  if (!text) return not_text(file, 0, "bytes that are not " + stated, "text in the encoding that is stated");
  return DecodedText{*text, stated};
}

Result<DecodedText> decode_unstated(const std::string& file, std::string_view bytes) {
  if (const auto big_endian = unmarked_utf16_is_big_endian(bytes)) return decode_utf16(file, bytes, *big_endian);
  const Utf8Check check = check_utf8(bytes);
  if (check.valid) return DecodedText{std::string(bytes), "utf-8"};
  // One byte in five of another kind is a code page; a slip in UTF-8 stays UTF-8.
  if (check.good > 0 && (check.cut_at_end || check.good > 4 * check.bad)) return broken_utf8(file, bytes, check);
  return decode_code_page(file, bytes);
}

// Control characters are in no spreadsheet's text; they would reach pages and terminals.
std::optional<Fault> find_control(const std::string& file, std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == 0) return not_text(file, line_at(text, i), "a NUL byte", "text");
    if ((c > 0 && c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f' && c != '\v') || c == 0x7F) {
      return not_text(file, line_at(text, i), "a control character", "text");
    }
  }
  return {};
}

icu::UnicodeString unicode(std::string_view text) {
  return icu::UnicodeString::fromUTF8(icu::StringPiece(text.data(), static_cast<int32_t>(text.size())));
}

// Without accents and in small letters; made once, since its rules are compiled.
const icu::Transliterator& plain_letters() {
  static const std::unique_ptr<const icu::Transliterator> made = [] {
    UErrorCode status = U_ZERO_ERROR;
    UParseError where;
    return std::unique_ptr<const icu::Transliterator>(icu::Transliterator::createFromRules(
        "plain", ":: NFKD; :: [:Mn:] Remove; :: NFC; :: Latin-ASCII; :: Lower;", UTRANS_FORWARD, where, status));
  }();
  return *made;
}

}  // namespace

const std::vector<std::string_view>& encoding_names() {
  static const std::vector<std::string_view> names = [] {
    std::vector<std::string_view> made;
    made.reserve(kNamed.size());
    for (const NamedEncoding& named : kNamed) made.push_back(named.name);
    return made;
  }();
  return names;
}

Result<DecodedText> decode_text(const std::string& file, std::string_view bytes, const std::string& stated) {
  if (bytes.empty()) return Fault{FaultCode::kMissing, {file, 0, 0, {}}, "an empty file", "text", {}};
  for (const Signature& signature : kSignatures) {
    if (starts_with(bytes, signature.start)) {
      return not_text(file, 0, signature.words, "text", "save the sheet as CSV first");
    }
  }
  Result<DecodedText> decoded = [&]() -> Result<DecodedText> {
    if (starts_with(bytes, "\xEF\xBB\xBF")) return decode_stated(file, bytes.substr(3), "utf-8");
    if (starts_with(bytes, "\xFF\xFE")) return decode_utf16(file, bytes.substr(2), false);
    if (starts_with(bytes, "\xFE\xFF")) return decode_utf16(file, bytes.substr(2), true);
    return stated.empty() ? decode_unstated(file, bytes) : decode_stated(file, bytes, stated);
  }();
  if (!decoded) return decoded;
  if (std::optional<Fault> control = find_control(file, decoded.value().text)) return *control;
  return decoded;
}

people::TextForms unicode_text_forms() {
  people::TextForms forms;
  forms.same = [](std::string_view text) {
    UErrorCode status = U_ZERO_ERROR;
    std::string out;
    icu::Normalizer2::getNFKCCasefoldInstance(status)->normalize(unicode(text), status).toUTF8String(out);
    return out;
  };
  forms.loose = [](std::string_view text) {
    std::string out(text);
    if (const auto foreign = [](char c) { return (c & 0x80) != 0; }; std::none_of(text.begin(), text.end(), foreign)) {
      const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
      std::transform(out.begin(), out.end(), out.begin(), lower);
      return out;
    }
    icu::UnicodeString form = unicode(text);
    plain_letters().transliterate(form);
    out.clear();
    form.toUTF8String(out);
    return out;
  };
  return forms;
}

}  // namespace lanework::read
