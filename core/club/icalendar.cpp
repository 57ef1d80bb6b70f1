#include "core/club/icalendar.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>
#include <string_view>

namespace lanework::club {
namespace {

constexpr std::size_t kMostOctets = 75;  // of a line, RFC 5545, 3.1
constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

// Octets of the character that starts there by its first octet and those after it; 0 where it is no UTF-8.
std::size_t character_at(std::string_view text, std::size_t at) {
  const auto octet = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : static_cast<unsigned char>(0);
  };
  const unsigned char first = octet(at);
  if (first < 0x80) return 1;
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || at + length > text.size()) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((octet(at + i) & 0xC0) != 0x80) return 0;
  }
  const unsigned char second = octet(at + 1);
  const bool too_long = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
  const bool outside = (first == 0xED && second > 0x9F) || (first == 0xF4 && second > 0x8F);
  return too_long || outside ? 0 : length;
}

// TEXT of RFC 5545, 3.3.11.
std::string escaped(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = character_at(text, at);
    if (length != 1) {
      out += length == 0 ? kReplacement : text.substr(at, length);
      at += std::max<std::size_t>(length, 1);
      continue;
    }
    const char c = text[at++];
    if (c == '\\' || c == ';' || c == ',') {
      out += {'\\', c};
    } else if (c == '\n') {
      out += "\\n";
    } else if (c == '\r') {
      if (at >= text.size() || text[at] != '\n') out += "\\n";
    } else if (c == '\t' || (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F)) {
      out += c;
    }
  }
  return out;
}

// REQUIRES: valid UTF-8.
std::string folded(std::string_view line) {
  std::string out;
  std::size_t octets = 0;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t length = std::max<std::size_t>(character_at(line, at), 1);
    if (octets + length > kMostOctets) {
      out += "\r\n ";
      octets = 1;
    }
    out += line.substr(at, length);
    octets += length;
    at += length;
  }
  return out + "\r\n";
}

std::string date_time(Date date, int minutes) {
  constexpr int kMinutesADay = 24 * 60;
  const CivilDate day = civil(Date{date.days_since_epoch + minutes / kMinutesADay});
  const int rest = minutes % kMinutesADay;
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%04d%02d%02dT%02d%02d00", day.year, day.month, day.day, rest / 60,
                rest % 60);
  return text.data();
}

// FNV-1a, 64 bits: tells clubs apart, nothing secret.
std::string digest(std::string_view text) {
  std::uint64_t hash = 0xCBF29CE484222325ULL;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3ULL;
  }
  std::array<char, 32> hex{};
  std::snprintf(hex.data(), hex.size(), "%016llx", static_cast<unsigned long long>(hash));
  return hex.data();
}

std::string lanes_in_words(const std::vector<int>& lanes) {
  std::string out;
  for (std::size_t i = 0; i < lanes.size(); ++i) {
    const bool last = i + 1 == lanes.size();
    out += (i == 0 ? "" : last ? " and " : ", ") + std::to_string(lanes[i]);
  }
  return (lanes.size() == 1 ? "lane " : "lanes ") + out;
}

const session::Match* match_on(const ClubSquad& squad, Date day) {
  const auto& matches = squad.squad.weekly.matches;
  const auto at =
      std::find_if(matches.begin(), matches.end(), [&](const session::Match& match) { return match.date == day; });
  return at == matches.end() ? nullptr : &*at;
}

std::string summary_of(const ClubSquad& squad, const PlannedSlot& slot) {
  if (!slot.match_day) return squad.squad.name + ": warm-up";
  const session::Match* match = match_on(squad, slot.date);
  const std::string against = match == nullptr || match->opponent.empty() ? "" : " against " + match->opponent;
  return squad.squad.name + ": warm-up before the match" + against;
}

}  // namespace

SquadEvents events_of(const Club& club, const ClubSquad& squad, const Calendar& calendar, const DrillLines& drills) {
  SquadEvents out{club.settings.name, squad.id, squad.squad.name, {}};
  for (const PlannedSlot& slot : calendar.slots) {
    CalendarEvent event{slot.date, slot.start, slot.length, summary_of(squad, slot), {}, {}};
    event.location = slot.elsewhere ? "away" : slot.strip.name;
    if (!slot.elsewhere && !slot.lanes.empty()) event.location += ", " + lanes_in_words(slot.lanes);
    const auto known = drills.find({slot.date, slot.start});
    if (known != drills.end()) {
      for (const std::string& line : known->second) event.description += line + "\n";
    }
    out.events.push_back(std::move(event));
  }
  return out;
}

std::string uid_of(const SquadEvents& squad, const CalendarEvent& event) {
  return squad.squad + "-" + date_time(event.date, event.start.minutes) + "@" + digest(squad.club) + ".lanework";
}

std::string to_icalendar(const SquadEvents& squad, const std::string& stamp) {
  std::string out;
  const auto line = [&](const std::string& name, const std::string& value) { out += folded(name + ":" + value); };
  const auto text = [&](const std::string& name, std::string value) {
    while (!value.empty() && value.back() == '\n') value.pop_back();
    if (!value.empty()) line(name, escaped(value));
  };
  line("BEGIN", "VCALENDAR");
  line("VERSION", "2.0");
  line("PRODID", "-//Lanework//Block of sessions//EN");
  line("CALSCALE", "GREGORIAN");
  text("NAME", squad.name);
  text("X-WR-CALNAME", squad.name);
  for (const CalendarEvent& event : squad.events) {
    const int start = event.start.minutes;
    const int minutes = static_cast<int>((event.length.count + 59) / 60);
    line("BEGIN", "VEVENT");
    text("UID", uid_of(squad, event));
    line("DTSTAMP", stamp);
    line("DTSTART", date_time(event.date, start));
    line("DTEND", date_time(event.date, start + minutes));
    text("SUMMARY", event.summary);
    text("LOCATION", event.location);
    text("DESCRIPTION", event.description);
    line("END", "VEVENT");
  }
  line("END", "VCALENDAR");
  return out;
}

}  // namespace lanework::club
