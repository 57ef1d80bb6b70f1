#include "core/club/icalendar.h"

#include <algorithm>

#include "core/club/icalendar_lines.h"

namespace lanework::club {
namespace {

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

std::string place_of(const PlannedSlot& slot) {
  if (slot.elsewhere) return "away";
  return slot.lanes.empty() ? slot.strip.name : slot.strip.name + ", " + lanes_in_words(slot.lanes);
}

SquadEvents events_of(const Club& club, const ClubSquad& squad, const Calendar& calendar, const DrillLines& drills) {
  SquadEvents out{club.settings.name, squad.id, squad.squad.name, {}};
  for (const PlannedSlot& slot : calendar.slots) {
    CalendarEvent event{slot.date, slot.start, slot.length, summary_of(squad, slot), {}, {}};
    event.location = place_of(slot);
    const auto known = drills.find({slot.date, slot.start});
    if (known != drills.end()) {
      for (const std::string& line : known->second) event.description += line + "\n";
    }
    out.events.push_back(std::move(event));
  }
  return out;
}

std::string uid_of(const SquadEvents& squad, const CalendarEvent& event) {
  return squad.squad + "-" + calendar_time(event.date, event.start.minutes) + "@" + calendar_owner(squad.club) +
         ".lanework";
}

std::string to_icalendar(const SquadEvents& squad, const std::string& stamp) {
  std::string out;
  const auto line = [&](const std::string& name, const std::string& value) {
    out += calendar_line(name + ":" + value);
  };
  const auto text = [&](const std::string& name, std::string value) {
    while (!value.empty() && value.back() == '\n') value.pop_back();
    if (!value.empty()) line(name, calendar_text(value));
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
    line("DTSTART", calendar_time(event.date, start));
    line("DTEND", calendar_time(event.date, start + minutes));
    text("SUMMARY", event.summary);
    text("LOCATION", event.location);
    text("DESCRIPTION", event.description);
    line("END", "VEVENT");
  }
  line("END", "VCALENDAR");
  return out;
}

}  // namespace lanework::club
