// What was said of a squad's evenings, as it is kept between one look and the next.
#include <limits>
#include <utility>

#include "core/club/followed_calendar.h"

namespace lanework::club {
namespace {

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
constexpr int kMostMinutes = 24 * 60;

Node node_of(const FollowedEvening& evening) {
  Node out = Node::make_table();
  out.set("day", Node::make_text(to_iso(evening.date)));
  out.set("number", Node::make_integer(evening.number));
  out.set("start", Node::make_integer(evening.start.minutes));
  out.set("minutes", Node::make_integer(evening.minutes));
  out.set("before_match", Node::make_boolean(evening.before_match));
  out.set("place", Node::make_text(evening.place));
  out.set("revision", Node::make_integer(evening.revision));
  out.set("changed", Node::make_integer(evening.changed));
  out.set("called_off", Node::make_boolean(evening.called_off));
  return out;
}

FollowedEvening evening_in(TableReader& reader) {
  FollowedEvening out;
  out.date = reader.date("day").value_or(Date{});
  out.number = static_cast<int>(reader.integer("number", 1, kMostMinutes));
  out.start = TimeOfDay{static_cast<int>(reader.integer("start", 0, kMostMinutes - 1))};
  out.minutes = static_cast<int>(reader.integer("minutes", 0, kMostMinutes));
  out.before_match = reader.boolean_or("before_match", false);
  out.place = reader.text_or("place", "");
  out.revision = reader.integer("revision", 0, kMost);
  out.changed = reader.integer("changed", 0, kMost);
  out.called_off = reader.boolean_or("called_off", false);
  reader.finish();
  return out;
}

}  // namespace

std::string to_kept_text(const std::vector<FollowedEvening>& evenings) {
  Node list = Node::make_array();
  for (const FollowedEvening& evening : evenings) list.items.push_back(node_of(evening));
  Node out = Node::make_table();
  out.set("evenings", std::move(list));
  return to_json(out);
}

std::vector<FollowedEvening> read_kept_text(std::string_view text) {
  if (text.empty()) return {};
  const auto document = parse_json("what was said", text);
  if (!document) return {};
  Faults faults;
  TableReader reader("what was said", &document.value().root, "", faults);
  std::vector<FollowedEvening> out;
  for (TableReader& one : reader.tables("evenings")) out.push_back(evening_in(one));
  return faults.empty() ? std::move(out) : std::vector<FollowedEvening>();
}

}  // namespace lanework::club
