// Whatever roster is written, in any encoding, separator, date style and habit of quoting, is read back
// equal; and whatever happens to the bytes, what comes back is players or faults that say where.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cstdlib>
#include <string>
#include <vector>

#include "app/read/read_roster.h"
#include "tests/read/encode_text.h"

namespace lanework::read {
namespace {

const Date kEvening = *make_date(2026, 11, 26);

enum class DateStyle { kIso, kDayFirst, kMonthFirst, kStops, kMonthName, kSerial };
enum class Mark { kNone, kMark };

struct Encoding {
  const char* icu;
  Mark mark;
  std::vector<std::string> names;  // of which a roster is made; empty: any letters
};

// Invented combinations of common names; each list uses letters that its code page alone can spell.
const std::vector<Encoding> kEncodings = {
    {"utf-8", Mark::kNone, {}},
    {"utf-8", Mark::kMark, {}},
    {"UTF-16LE", Mark::kMark, {}},
    {"UTF-16BE", Mark::kMark, {}},
    {"UTF-16LE", Mark::kNone, {}},
    {"UTF-16BE", Mark::kNone, {}},
    {"windows-1252", Mark::kNone, {"Jürgen", "Åse", "François", "Noël", "Muñoz", "Inês", "Conceição", "Groß", "Søren"}},
    {"windows-1250", Mark::kNone, {"Łukasz", "Woźniak", "Dvořák", "Šárka", "Szűcs", "Małgorzata", "Jiří", "Żak"}},
    {"windows-1251", Mark::kNone, {"Иван", "Щукина", "Юлия", "Ёлкин", "Пётр", "Жанна", "Цветков"}},
    {"windows-1253", Mark::kNone, {"Γιώργος", "Ελένη", "Παππάς", "Νικολάου", "Χρήστος", "Ζωή"}},
    {"windows-1254", Mark::kNone, {"Çağla", "Yıldız", "Şule", "Öztürk", "İpek", "Güneş", "Yağmur"}},
    {"windows-1255", Mark::kNone, {"שרה", "לוי", "דוד", "כהן", "נועה", "יעל"}},
};

struct Written {
  std::string bytes;
  std::vector<people::Player> players;
};

std::string two(int n) { return (n < 10 ? "0" : "") + std::to_string(n); }

std::string date_text(Date date, DateStyle style) {
  static const char* const kMonths[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                        "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const CivilDate c = civil(date);
  const std::string year = std::to_string(c.year);
  switch (style) {
    case DateStyle::kIso:
      return to_iso(date);
    case DateStyle::kDayFirst:
      return two(c.day) + "/" + two(c.month) + "/" + year;
    case DateStyle::kMonthFirst:
      return std::to_string(c.month) + "/" + std::to_string(c.day) + "/" + year;
    case DateStyle::kStops:
      return two(c.day) + "." + two(c.month) + "." + year;
    case DateStyle::kMonthName:
      return two(c.day) + "-" + kMonths[c.month - 1] + "-" + year.substr(2);
    case DateStyle::kSerial:
      return std::to_string(days_between(*make_date(1900, 1, 1), date) + 2);
  }
  return {};
}

std::string cell_text(const std::string& text, char separator, bool quote_all) {
  const bool must = text.find_first_of(std::string("\"\r\n") + separator) != std::string::npos;
  if (!must && !quote_all) return text;
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

std::string utf8_of(std::uint32_t c) {
  const auto byte = [](std::uint32_t value) { return static_cast<char>(static_cast<unsigned char>(value)); };
  if (c < 0x80) return {byte(c)};
  if (c < 0x800) return {byte(0xC0 | c >> 6), byte(0x80 | (c & 0x3F))};
  if (c < 0x10000) return {byte(0xE0 | c >> 12), byte(0x80 | (c >> 6 & 0x3F)), byte(0x80 | (c & 0x3F))};
  return {byte(0xF0 | c >> 18), byte(0x80 | (c >> 12 & 0x3F)), byte(0x80 | (c >> 6 & 0x3F)), byte(0x80 | (c & 0x3F))};
}

// Any letters of any script, and what a spreadsheet has to quote.
rc::Gen<std::string> any_name() {
  const auto letter = rc::gen::oneOf(
      rc::gen::inRange<std::uint32_t>('a', 'z' + 1), rc::gen::inRange<std::uint32_t>(0xC0, 0x180),
      rc::gen::inRange<std::uint32_t>(0x391, 0x3A2), rc::gen::inRange<std::uint32_t>(0x410, 0x450),
      rc::gen::inRange<std::uint32_t>(0x5D0, 0x5EB), rc::gen::inRange<std::uint32_t>(0x620, 0x64B),
      rc::gen::inRange<std::uint32_t>(0x905, 0x93A), rc::gen::inRange<std::uint32_t>(0x4E00, 0x9FA5),
      rc::gen::inRange<std::uint32_t>(0xAC00, 0xD7A4), rc::gen::inRange<std::uint32_t>(0x1F600, 0x1F640),
      rc::gen::elementOf(std::vector<std::uint32_t>{',', ';', '"', '=', '+', '@', '<', '&', '\'', '/', '-', 0x308}));
  return rc::gen::map(rc::gen::container<std::vector<std::uint32_t>>(letter), [](std::vector<std::uint32_t> letters) {
    if (letters.size() > 30) letters.resize(30);
    std::string name;
    for (const std::uint32_t c : letters) name += utf8_of(c);
    return name;
  });
}

std::string name_from(const Encoding& encoding, int position) {
  if (encoding.names.empty()) {
    // A number keeps names apart, and keeps them from being a sum's label.
    return "N" + std::to_string(position) + *any_name();
  }
  return *rc::gen::elementOf(encoding.names) + " " + *rc::gen::elementOf(encoding.names) + " " +
         std::string(1, static_cast<char>('A' + position));
}

std::vector<people::Player> some_players(const Encoding& encoding) {
  std::vector<people::Player> players;
  const int count = *rc::gen::inRange(6, 20);
  for (int i = 0; i < count; ++i) {
    people::Player player;
    player.id = "Q" + two(i + 1);
    player.name = name_from(encoding, i);
    // The first is born on a day that only one order can read.
    const int day = i == 0 ? 25 : *rc::gen::inRange(1, 29);
    player.birth = make_date(*rc::gen::inRange(2007, 2019), *rc::gen::inRange(1, 13), day);
    if (*rc::gen::arbitrary<bool>()) player.body_mass_grams = *rc::gen::inRange(200, 900) * 100;
    player.squads = *rc::gen::elementOf(std::vector<std::vector<std::string>>{{"U13"}, {"U13", "U14"}, {}});
    player.contact_ok = *rc::gen::arbitrary<bool>();
    if (*rc::gen::arbitrary<bool>()) player.shirt = std::to_string(*rc::gen::inRange(1, 99));
    if (*rc::gen::arbitrary<bool>()) player.size_group = *rc::gen::inRange(1, 10);
    players.push_back(std::move(player));
  }
  return players;
}

Written write_roster(const Encoding& encoding) {
  Written written;
  const char separator = *rc::gen::element(',', ';', '\t');
  const auto style = *rc::gen::element(DateStyle::kIso, DateStyle::kDayFirst, DateStyle::kMonthFirst, DateStyle::kStops,
                                       DateStyle::kMonthName, DateStyle::kSerial);
  const bool quote_all = *rc::gen::arbitrary<bool>();
  const bool titled = *rc::gen::arbitrary<bool>();
  const bool total = *rc::gen::arbitrary<bool>();
  const char decimal = *rc::gen::element(',', '.');
  const std::string end = *rc::gen::element<std::string>("\n", "\r\n", "\r");
  written.players = some_players(encoding);

  std::string text;
  int line = 1;
  const auto put = [&](const std::vector<std::string>& cells) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (i > 0) text += separator;
      text += cell_text(cells[i], separator, quote_all);
    }
    text += end;
    ++line;
  };
  if (titled) put({"Quillmere Juniors", "", "", ""});
  if (titled) put({"", "", "", "", "", "", "", "", ""});
  put({"ID", "Notes", "Player name", "DOB", "Weight (kg)", "Teams", "Contact OK", "Shirt no.", "Size group"});
  for (people::Player& player : written.players) {
    player.row = line;
    const bool two_lines = *rc::gen::arbitrary<bool>();
    std::string mass;
    if (player.body_mass_grams) {
      mass = std::to_string(*player.body_mass_grams / 1000) + decimal +
             std::to_string(*player.body_mass_grams % 1000 / 100);
    }
    std::string squads;
    for (const std::string& squad : player.squads) squads += (squads.empty() ? "" : "; ") + squad;
    put({player.id, two_lines ? "two" + end + "lines" : "", player.name, date_text(*player.birth, style), mass, squads,
         player.contact_ok ? "yes" : "no", player.shirt, player.size_group ? std::to_string(*player.size_group) : ""});
    line += two_lines ? 1 : 0;
  }
  if (total) put({"Total", "", "", std::to_string(written.players.size()), "", "", "", "", ""});

  const std::string mark = encoding.mark == Mark::kMark ? "\uFEFF" : "";
  written.bytes = encode(mark + text, encoding.icu);
  return written;
}

TEST(RosterProperties, WhatIsWrittenIsReadBack) {
  for (const Encoding& encoding : kEncodings) {
    const bool held = rc::check(std::string("a roster in ") + encoding.icu, [&] {
      const Written written = write_roster(encoding);
      const auto read = read_roster("roster.csv", written.bytes, kEvening);
      if (!read) RC_FAIL(to_line(read.faults().front()));
      RC_ASSERT(read.value().size() == written.players.size());
      for (std::size_t i = 0; i < written.players.size(); ++i) {
        const people::Player& wanted = written.players[i];
        const people::Player& got = read.value()[i];
        RC_ASSERT(got.id == wanted.id);
        RC_ASSERT(got.name == wanted.name);
        RC_ASSERT(got.birth == wanted.birth);
        RC_ASSERT(got.body_mass_grams == wanted.body_mass_grams);
        RC_ASSERT(got.squads == wanted.squads);
        RC_ASSERT(got.contact_ok == wanted.contact_ok);
        RC_ASSERT(got.shirt == wanted.shirt);
        RC_ASSERT(got.size_group == wanted.size_group);
        RC_ASSERT(got.row == wanted.row);
      }
    });
    EXPECT_TRUE(held) << encoding.icu;
  }
}

void damage(std::string& bytes) {
  if (bytes.empty()) return;
  const std::size_t at = *rc::gen::inRange<std::size_t>(0, bytes.size());
  const std::size_t length = *rc::gen::inRange<std::size_t>(0, 20);
  switch (*rc::gen::inRange(0, 6)) {
    case 0:
      bytes[at] = *rc::gen::arbitrary<char>();
      return;
    case 1:
      bytes.erase(at, length);
      return;
    case 2:
      bytes.insert(at, bytes.substr(at, length));
      return;
    case 3:
      bytes.resize(at);
      return;
    case 4:
      bytes.insert(at, *rc::gen::element<std::string>("\"", ";", ",", "\t", "\n", std::string(1, '\0'), "\xFF\xFE",
                                                      "99/99/9999", "1e9", "Name", "=1+1"));
      return;
    default:
      std::swap(bytes[at], bytes[bytes.size() - 1 - at]);
      return;
  }
}

TEST(RosterProperties, DamagedFilesGivePlayersOrFaultsWithAPlace) {
  const bool held = rc::check([] {
    std::string bytes = write_roster(*rc::gen::elementOf(kEncodings)).bytes;
    const int times = *rc::gen::inRange(1, 6);
    for (int i = 0; i < times; ++i) damage(bytes);
    const auto lines = 2 + std::count(bytes.begin(), bytes.end(), '\n') + std::count(bytes.begin(), bytes.end(), '\r');
    const auto read = read_roster("roster.csv", bytes, kEvening);
    if (read) {
      RC_ASSERT(read.value().size() >= 2U);
      return;
    }
    RC_ASSERT(!read.faults().empty() && read.faults().size() <= 51U);
    for (const Fault& fault : read.faults()) {
      RC_ASSERT(fault.place.file == "roster.csv");
      RC_ASSERT(!fault.found.empty() && !fault.expected.empty());
      RC_ASSERT(to_line(fault).find('\n') == std::string::npos);
      // What stands in a cell stands in a line of the file.
      RC_ASSERT(fault.place.field.empty() || fault.place.line >= 1);
      RC_ASSERT(fault.place.line <= lines);
    }
  });
  EXPECT_TRUE(held);
}

}  // namespace
}  // namespace lanework::read
