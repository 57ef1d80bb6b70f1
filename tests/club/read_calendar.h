// iCalendar as libical reads it, which did not write it, and what RFC 5545 asks of its lines.
#pragma once

#include <libical/ical.h>

#include <memory>
#include <string>
#include <vector>

namespace lanework::club::test {

struct Release {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, Release>;

struct ReadEvent {
  std::string uid;
  std::string stamp;
  std::string start;
  std::string end;
  bool floating = false;
  std::string summary;
  std::string location;
  std::string description;
  std::string status;
  int sequence = 0;
  std::string changed;
};

struct ReadCalendar {
  std::string name;
  std::string look_again;  // REFRESH-INTERVAL
  std::vector<ReadEvent> events;
  std::string broken;  // what libical could not make sense of
};

inline std::string or_empty(const char* text) { return text == nullptr ? "" : text; }

inline std::string errors_in(icalcomponent* component) {
  std::string out;
  for (icalproperty* each = icalcomponent_get_first_property(component, ICAL_XLICERROR_PROPERTY); each != nullptr;
       each = icalcomponent_get_next_property(component, ICAL_XLICERROR_PROPERTY)) {
    out += or_empty(icalproperty_get_xlicerror(each)) + "\n";
  }
  return out;
}

inline ReadCalendar read_back(const std::string& text) {
  ReadCalendar out;
  const Component calendar(icalparser_parse_string(text.c_str()));
  if (calendar == nullptr || icalcomponent_isa(calendar.get()) != ICAL_VCALENDAR_COMPONENT) {
    out.broken = "no VCALENDAR";
    return out;
  }
  out.broken += errors_in(calendar.get());
  if (icalproperty* name = icalcomponent_get_first_property(calendar.get(), ICAL_NAME_PROPERTY)) {
    out.name = or_empty(icalproperty_get_name(name));
  }
  if (icalproperty* again = icalcomponent_get_first_property(calendar.get(), ICAL_REFRESHINTERVAL_PROPERTY)) {
    out.look_again = icaldurationtype_as_ical_string(icalproperty_get_refreshinterval(again));
  }
  for (icalcomponent* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
       event != nullptr; event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
    out.broken += errors_in(event);
    ReadEvent read;
    read.uid = or_empty(icalcomponent_get_uid(event));
    read.stamp = icaltime_as_ical_string(icalcomponent_get_dtstamp(event));
    const icaltimetype start = icalcomponent_get_dtstart(event);
    read.start = icaltime_as_ical_string(start);
    read.end = icaltime_as_ical_string(icalcomponent_get_dtend(event));
    read.floating = icaltime_get_timezone(start) == nullptr && !icaltime_is_utc(start);
    read.summary = or_empty(icalcomponent_get_summary(event));
    read.location = or_empty(icalcomponent_get_location(event));
    read.description = or_empty(icalcomponent_get_description(event));
    if (icalproperty* status = icalcomponent_get_first_property(event, ICAL_STATUS_PROPERTY)) {
      read.status = or_empty(icalproperty_status_to_string(icalproperty_get_status(status)));
    }
    if (icalproperty* changed = icalcomponent_get_first_property(event, ICAL_LASTMODIFIED_PROPERTY)) {
      read.changed = icaltime_as_ical_string(icalproperty_get_lastmodified(changed));
    }
    read.sequence = icalcomponent_get_sequence(event);
    out.events.push_back(read);
  }
  icalrestriction_check(calendar.get());
  out.broken += errors_in(calendar.get());
  return out;
}

// Lines of RFC 5545, 3.1: CRLF, at most 75 octets, no character torn.
inline std::string fault_of_lines(const std::string& text) {
  if (!text.ends_with("\r\n")) return "no CRLF at the end";
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t to = text.find("\r\n", from);
    const std::string line = text.substr(from, to - from);
    if (line.size() > 75) return "a line of " + std::to_string(line.size()) + " octets: " + line;
    if (line.find_first_of("\r\n") != std::string::npos) return "a bare CR or LF in " + line;
    if (!line.empty() && (static_cast<unsigned char>(line[line[0] == ' ' ? 1 : 0]) & 0xC0) == 0x80) {
      return "a torn character in " + line;
    }
    from = to + 2;
  }
  return "";
}

}  // namespace lanework::club::test
