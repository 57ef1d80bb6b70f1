#include "app/draw/stop_groups.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <optional>
#include <string_view>

namespace lanework::draw {
namespace {

constexpr std::array<const char*, 8> kAreas = {
    "In any drill", "Head", "Shoulder or arm",         "Back or side", "Hip or groin",
    "Thigh",        "Knee", "Lower leg, ankle or foot"};
constexpr std::size_t kAnywhere = 0;

struct Place {
  std::string_view words;
  std::size_t area;  // of kAreas
};
constexpr std::array<Place, 26> kPlaces = {{
    {"head", 1},
    {"shoulder", 2},
    {"elbow", 2},
    {"wrist", 2},
    {"arm", 2},
    {"hand", 2},
    {"back", 3},
    {"low back", 3},
    {"side", 3},
    {"ribs", 3},
    {"hip", 4},
    {"front of the hip", 4},
    {"groin", 4},
    {"thigh", 5},
    {"back of the thigh", 5},
    {"front of the thigh", 5},
    {"hamstring", 5},
    {"knee", 6},
    {"kneecap", 6},
    {"kneecaps", 6},
    {"shin", 7},
    {"calf", 7},
    {"heel", 7},
    {"heel cord", 7},
    {"ankle", 7},
    {"foot", 7},
}};

std::optional<std::size_t> area_of(std::string_view place) {
  const auto* found =
      std::find_if(kPlaces.begin(), kPlaces.end(), [&](const Place& known) { return known.words == place; });
  if (found == kPlaces.end()) return std::nullopt;
  return found->area;
}

// 'knee, ankle or groin' in its parts; empty unless every part is a known place.
std::vector<std::string> places_in(std::string list) {
  for (std::size_t at = list.find(" or "); at != std::string::npos; at = list.find(" or ")) list.replace(at, 4, ", ");
  std::vector<std::string> places;
  for (std::size_t from = 0; from <= list.size();) {
    const std::size_t to = std::min(list.find(", ", from), list.size());
    places.push_back(list.substr(from, to - from));
    if (!area_of(places.back())) return {};
    from = to + 2;
  }
  return places;
}

std::string joined(const std::vector<std::string>& places) {
  std::string text;
  for (std::size_t at = 0; at < places.size(); ++at) {
    if (at > 0) text += at + 1 == places.size() ? " or " : ", ";
    text += places[at];
  }
  return text;
}

// What is said of places: 'sharp pain in the' before them, or 'gives way' after them.
struct Sign {
  std::string before;
  std::vector<std::string> places;
  std::string after;
  [[nodiscard]] std::string words() const { return before + joined(places) + after; }
};

constexpr std::string_view kGivesWay = " gives way";
const std::string kPain = "pain in the ";
const std::string kSharpPain = "sharp pain in the ";

// 'X-ray' keeps its capital.
std::string without_capital(std::string line) {
  const auto small = [](char letter) { return letter == ' ' || (letter >= 'a' && letter <= 'z'); };
  if (line.size() > 1 && line[0] >= 'A' && line[0] <= 'Z' && small(line[1])) {
    line[0] = static_cast<char>(line[0] - 'A' + 'a');
  }
  return line;
}

// The line as something said of places; without places when it is worded in another way.
Sign parsed(const std::string& line) {
  if (line.ends_with(kGivesWay)) {
    std::string list = line.substr(0, line.size() - kGivesWay.size());
    if (list.starts_with("the ")) list.erase(0, 4);
    std::vector<std::string> places = places_in(list);
    if (!places.empty()) return {"the ", std::move(places), std::string(kGivesWay)};
  }
  constexpr std::string_view kThe = " the ";
  for (std::size_t at = line.find(kThe); at != std::string::npos; at = line.find(kThe, at + 1)) {
    std::vector<std::string> places = places_in(line.substr(at + kThe.size()));
    if (!places.empty()) return {line.substr(0, at + kThe.size()), std::move(places), ""};
  }
  return {line, {}, ""};
}

// The one area that a line names in words of its own; anywhere when there is none or more than one.
std::size_t only_area(const std::string& line) {
  std::size_t area = kAnywhere;
  std::string word;
  for (const char letter : line + " ") {
    if (std::isalpha(static_cast<unsigned char>(letter)) != 0) {
      word += letter;
      continue;
    }
    const std::optional<std::size_t> named = area_of(word);
    word.clear();
    if (!named) continue;
    if (area != kAnywhere && area != *named) return kAnywhere;
    area = *named;
  }
  return area;
}

using Signs = std::vector<Sign>;

// 'back' covers 'low back', and itself.
bool covers(const std::string& wide, const std::string& narrow) {
  return narrow == wide || narrow.ends_with(" " + wide);
}

void add(Signs& signs, const Sign& sign) {
  const auto same = std::find_if(signs.begin(), signs.end(), [&](const Sign& known) {
    return known.before == sign.before && known.after == sign.after && known.places.empty() == sign.places.empty();
  });
  if (same == signs.end()) {
    signs.push_back(sign);
    return;
  }
  for (const std::string& place : sign.places) {
    if (std::any_of(same->places.begin(), same->places.end(),
                    [&](const std::string& known) { return covers(known, place); })) {
      continue;
    }
    std::erase_if(same->places, [&](const std::string& known) { return covers(place, known); });
    same->places.push_back(place);
  }
}

// The safer line holds: where any pain stops a drill, sharp pain does.
void drop_covered(Signs& signs) {
  const auto any = std::find_if(signs.begin(), signs.end(), [](const Sign& sign) { return sign.before == kPain; });
  const auto sharp =
      std::find_if(signs.begin(), signs.end(), [](const Sign& sign) { return sign.before == kSharpPain; });
  if (any == signs.end() || sharp == signs.end()) return;
  std::erase_if(sharp->places, [&](const std::string& place) {
    return std::any_of(any->places.begin(), any->places.end(),
                       [&](const std::string& wide) { return covers(wide, place); });
  });
  if (sharp->places.empty()) signs.erase(sharp);
}

}  // namespace

std::vector<StopGroup> stop_groups(const std::vector<std::string>& lines) {
  std::array<Signs, kAreas.size()> areas;
  for (const std::string& written : lines) {
    const std::string line = without_capital(written);
    const Sign sign = parsed(line);
    if (sign.places.empty()) add(areas[only_area(line)], sign);
    for (const std::string& place : sign.places) add(areas[*area_of(place)], {sign.before, {place}, sign.after});
  }
  std::vector<StopGroup> groups;
  for (std::size_t area = 0; area < kAreas.size(); ++area) {
    drop_covered(areas[area]);
    if (areas[area].empty()) continue;
    StopGroup group{kAreas[area], {}};
    for (const Sign& sign : areas[area]) group.signs.push_back(sign.words());
    groups.push_back(std::move(group));
  }
  return groups;
}

}  // namespace lanework::draw
