#include "core/club/coaches.h"

#include <algorithm>
#include <array>
#include <set>

namespace lanework::club {
namespace {

void read_squads(TableReader& table, const std::vector<std::string>& squads, Coach& coach) {
  for (const std::string& id : table.texts("squads")) {
    if (std::find(squads.begin(), squads.end(), id) == squads.end()) {
      table.fault(FaultCode::kUnknownName, "squads", quote(id), "the name of a file in squads/ without its ending");
    } else if (std::find(coach.squads.begin(), coach.squads.end(), id) != coach.squads.end()) {
      table.fault(FaultCode::kDuplicate, "squads", quote(id) + " twice", "each squad once");
    } else {
      coach.squads.push_back(id);
    }
  }
}

void read_taught(TableReader& table, Coach& coach) {
  const auto date = table.date("date");
  if (!date && !table.has("date")) {
    table.fault(FaultCode::kMissing, "date", "nothing", "a date such as 2026-11-14");
  }
  Taught taught;
  taught.by = table.text("by");
  taught.what = table.text("what");
  table.finish();
  if (!date) return;
  taught.date = *date;
  coach.taught.push_back(std::move(taught));
}

}  // namespace

std::vector<Coach> read_coaches(const Document& document, const std::vector<std::string>& squads, Faults& faults) {
  TableReader root(document.file, &document.root, "", faults);
  std::vector<Coach> coaches;
  std::set<std::string> ids;
  for (TableReader& table : root.tables("coach")) {
    Coach coach;
    coach.id = table.text("id");
    coach.place = table.place("id");
    if (!coach.id.empty() && !ids.insert(coach.id).second) {
      table.fault(FaultCode::kDuplicate, "id", "coach " + quote(coach.id) + " twice", "each id once");
    }
    if (!table.has("squads")) table.fault(FaultCode::kMissing, "squads", "nothing", "a list of squads, empty for none");
    read_squads(table, squads, coach);
    for (TableReader& taught : table.tables("taught")) read_taught(taught, coach);
    table.finish();
    std::stable_sort(coach.taught.begin(), coach.taught.end(),
                     [](const Taught& a, const Taught& b) { return a.date < b.date; });
    coaches.push_back(std::move(coach));
  }
  root.finish();
  return coaches;
}

std::vector<const Coach*> coaches_of(const std::vector<Coach>& coaches, const std::string& squad) {
  std::vector<const Coach*> out;
  for (const Coach& coach : coaches) {
    if (std::find(coach.squads.begin(), coach.squads.end(), squad) != coach.squads.end()) out.push_back(&coach);
  }
  return out;
}

std::string taught_in_words(const Coach& coach) {
  if (coach.taught.empty()) return "not yet taught";
  const Taught& last = coach.taught.back();
  constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const CivilDate day = civil(last.date);
  return "taught " + std::to_string(day.day) + " " + kMonths[static_cast<std::size_t>(day.month - 1)] + " " +
         std::to_string(day.year) + " by " + last.by + " (" + last.what + ")";
}

}  // namespace lanework::club
