#include "app/cli/club_report.h"

#include <map>
#include <set>

#include "app/cli/columns.h"
#include "core/door/door.h"

namespace lanework::cli {
namespace {

struct Totals {
  std::size_t players = 0;
  std::size_t slots_a_week = 0;
  std::size_t matches = 0;
  std::size_t sessions = 0;
  std::map<std::string, std::size_t> missed;  // by reason
};

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

Totals totals_of(const ClubReport& report) {
  Totals totals;
  std::set<std::string> players;
  for (const club::ClubSquad& squad : report.club.squads) {
    for (const people::Player& player : squad.players) players.insert(player.id);
    totals.slots_a_week += squad.squad.weekly.slots.size();
    totals.matches += squad.squad.weekly.matches.size();
  }
  totals.players = players.size();
  for (const club::Calendar& calendar : report.allocation.calendars) {
    totals.sessions += calendar.slots.size();
    for (const club::MissedSlot& missed : calendar.missed) ++totals.missed[missed.why];
  }
  return totals;
}

std::string ages_of(const club::ClubSquad& squad, Date day) {
  std::optional<int> youngest;
  std::optional<int> oldest;
  for (const people::Player& player : squad.players) {
    const auto age = people::age_on(player, day);
    if (age && (!youngest || *age < *youngest)) youngest = age;
    if (age && (!oldest || *age > *oldest)) oldest = age;
  }
  if (!youngest) return "not known";
  return *youngest == *oldest ? std::to_string(*youngest) : std::to_string(*youngest) + "-" + std::to_string(*oldest);
}

std::string squads_text(const ClubReport& report) {
  const club::Club& club = report.club;
  std::vector<std::vector<std::string>> rows = {
      {"squad", "name", "players", "ages", "routine", "slots a week", "matches", "sessions"}};
  for (std::size_t i = 0; i < club.squads.size(); ++i) {
    const club::ClubSquad& squad = club.squads[i];
    rows.push_back({squad.id, squad.squad.name, std::to_string(squad.players.size()),
                    ages_of(squad, club.settings.block_from), squad.routine.id,
                    std::to_string(squad.squad.weekly.slots.size()), std::to_string(squad.squad.weekly.matches.size()),
                    std::to_string(report.allocation.calendars[i].slots.size())});
  }
  return in_columns(rows, "");
}

std::string where(const Place& place) {
  if (place.file.empty()) return "";
  std::string out = place.file + ":";
  if (place.line > 0) out += std::to_string(place.line) + ":";
  return out + " ";
}

}  // namespace

std::string club_text(const ClubReport& report) {
  const club::Settings& settings = report.club.settings;
  const Totals totals = totals_of(report);
  std::string out = settings.name + ", a block of " + std::to_string(settings.block_weeks) + " weeks from " +
                    to_words(settings.block_from) + "\n\n" + squads_text(report) + "\n";
  out += counted(report.club.squads.size(), "squad", "squads") + ", " + counted(totals.players, "player", "players") +
         ", " + counted(totals.slots_a_week, "slot", "slots") + " a week, " +
         counted(totals.matches, "match", "matches") + "; " + counted(totals.sessions, "session", "sessions") +
         " in the block.\n";
  for (const auto& [why, count] : totals.missed) {
    out += "Falls out: " + counted(count, "slot", "slots") + ", " + why + ".\n";
  }
  if (!report.found.shared.empty()) out += "In two squads, restrictions go along:\n";
  for (const club::SharedPlayer& shared : report.found.shared) {
    std::string squads;
    for (const std::string& squad : shared.squads) squads += (squads.empty() ? "" : ", ") + squad;
    out += "  " + shared.player + ": " + squads + "\n";
  }
  if (!report.found.remarks.empty()) out += "Remarks:\n";
  for (const club::Remark& remark : report.found.remarks) out += "  " + where(remark.place) + remark.sentence + "\n";
  return out;
}

Node club_node(const ClubReport& report, const Faults& faults) {
  const auto text = [](const std::string& value) { return Node::make_text(value); };
  const auto number = [](std::size_t value) { return Node::make_integer(static_cast<std::int64_t>(value)); };
  const club::Club& club = report.club;
  const Totals totals = totals_of(report);
  Node out = Node::make_table();
  out.set("answer", text("club-check"));
  out.set("version", Node::make_integer(1));
  out.set("club", text(club.settings.name));
  out.set("faults", *door::faults_node(faults).find("faults"));
  Node remarks = Node::make_array();
  for (const club::Remark& remark : report.found.remarks) {
    Node row = Node::make_table();
    row.set("file", text(remark.place.file));
    row.set("line", Node::make_integer(remark.place.line));
    row.set("sentence", text(remark.sentence));
    remarks.items.push_back(std::move(row));
  }
  out.set("remarks", std::move(remarks));
  Node squads = Node::make_array();
  for (std::size_t i = 0; i < club.squads.size(); ++i) {
    const club::ClubSquad& squad = club.squads[i];
    Node row = Node::make_table();
    row.set("id", text(squad.id));
    row.set("name", text(squad.squad.name));
    row.set("players", number(squad.players.size()));
    row.set("routine", text(squad.routine.id));
    row.set("slots_a_week", number(squad.squad.weekly.slots.size()));
    row.set("matches", number(squad.squad.weekly.matches.size()));
    const bool planned = i < report.allocation.calendars.size();
    row.set("sessions", number(planned ? report.allocation.calendars[i].slots.size() : 0));
    row.set("missed", number(planned ? report.allocation.calendars[i].missed.size() : 0));
    squads.items.push_back(std::move(row));
  }
  out.set("squads", std::move(squads));
  Node shared = Node::make_array();
  for (const club::SharedPlayer& player : report.found.shared) {
    Node row = Node::make_table();
    row.set("player", text(player.player));
    Node ids = Node::make_array();
    for (const std::string& squad : player.squads) ids.items.push_back(text(squad));
    row.set("squads", std::move(ids));
    shared.items.push_back(std::move(row));
  }
  out.set("in_two_squads", std::move(shared));
  Node sum = Node::make_table();
  sum.set("squads", number(club.squads.size()));
  sum.set("players", number(totals.players));
  sum.set("slots_a_week", number(totals.slots_a_week));
  sum.set("matches", number(totals.matches));
  sum.set("sessions", number(totals.sessions));
  out.set("totals", std::move(sum));
  return out;
}

}  // namespace lanework::cli
