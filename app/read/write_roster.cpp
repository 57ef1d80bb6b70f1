#include "app/read/write_roster.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <functional>

namespace lanework::read {
namespace {

std::string cell(const std::string& text) {
  if (text.find_first_of(",\"\r\n;\t") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

std::string squads_of(const people::Player& player) {
  std::string out;
  for (const std::string& squad : player.squads) out += (out.empty() ? "" : "/") + squad;
  return out;
}

std::string kilograms(int grams) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%d.%03d", grams / 1000, grams % 1000);
  return text.data();
}

std::string number(const std::optional<int>& value) { return value ? std::to_string(*value) : std::string(); }

struct Column {
  const char* heading;
  std::function<std::string(const people::Player&)> text;
};

const std::vector<Column>& columns() {
  using people::Player;
  static const std::vector<Column> kColumns = {
      {"Member No", [](const Player& p) { return p.id; }},
      {"Player", [](const Player& p) { return p.name; }},
      {"Date of birth", [](const Player& p) { return p.birth ? to_iso(*p.birth) : std::string(); }},
      {"Age", [](const Player& p) { return p.birth ? std::string() : number(p.stated_age); }},
      {"Squad", squads_of},
      {"Shirt No", [](const Player& p) { return p.shirt; }},
      {"Size group", [](const Player& p) { return number(p.size_group); }},
      {"Body mass (kg)",
       [](const Player& p) { return p.body_mass_grams ? kilograms(*p.body_mass_grams) : std::string(); }},
      {"Contact OK", [](const Player& p) { return std::string(p.contact_ok ? "yes" : "no"); }}};
  return kColumns;
}

}  // namespace

std::string roster_text(const std::vector<people::Player>& players) {
  std::vector<const Column*> used;
  for (const Column& column : columns()) {
    const auto has = [&](const people::Player& player) { return !column.text(player).empty(); };
    if (std::any_of(players.begin(), players.end(), has)) used.push_back(&column);
  }
  std::string out;
  for (const Column* column : used) out += (column == used.front() ? "" : ",") + std::string(column->heading);
  out += "\n";
  for (const people::Player& player : players) {
    for (const Column* column : used) out += (column == used.front() ? "" : ",") + cell(column->text(player));
    out += "\n";
  }
  return out;
}

}  // namespace lanework::read
