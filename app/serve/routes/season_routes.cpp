// The season's evidence for the lead, from the ledger as it is now: the report's page as data, and the sheets to take
// away.
#include "app/serve/routes/routes.h"

namespace lanework::serve {
namespace {

constexpr int kMostDays = 3 * 366;

struct Period {
  Date from;
  Date to;
};

// Of the path's two places; faults: what is no day, the wrong way round, or too long.
Result<Period> period_of(const Call& call) {
  const auto from = parse_iso_date(call.values[0]);
  const auto to = parse_iso_date(call.values[1]);
  Faults faults;
  const auto say = [&](FaultCode code, const char* field, std::string found, std::string expected) {
    faults.push_back({code, {"", 0, 0, field}, std::move(found), std::move(expected), {}});
  };
  if (!from) say(FaultCode::kBadDate, "from", quote(call.values[0]), "a day such as 2026-08-31");
  if (!to) say(FaultCode::kBadDate, "to", quote(call.values[1]), "a day such as 2027-06-14");
  if (!faults.empty()) return faults;
  if (days_between(*from, *to) < 0) {
    say(FaultCode::kContradiction, "to", to_iso(*to), "a day not before " + to_iso(*from));
  } else if (days_between(*from, *to) > kMostDays) {
    say(FaultCode::kOutOfRange, "to", to_iso(*to), "a day at most three years after " + to_iso(*from));
  }
  if (!faults.empty()) return faults;
  return Period{*from, *to};
}

// What the store holds, and what day it is: the calendar counts up to today.
Result<std::string> state_of(const Call& call) {
  const auto receipt = call.room.store->latest_receipt();
  if (!receipt) return receipt.faults();
  const auto versions = call.room.directory->versions();
  if (!versions) return versions.faults();
  const auto gone = call.room.store->gone();
  if (!gone) return gone.faults();
  return "receipt " + std::to_string(receipt.value()) + ", lists " + std::to_string(versions.value().lists) +
         ", without " + gone.value().evenings_before + ", " + to_iso(call.now.day);
}

Response no_records() { return error_answer(404, "not-found", "There is nothing here for you."); }

// 'language=es', or nothing: English.
Result<Language> language_of(const Call& call) {
  constexpr std::string_view kName = "language=";
  const std::string& query = call.request.query;
  if (query.empty()) return Language::kEnglish;
  if (query.starts_with(kName)) {
    if (const auto language = language_with_tag(std::string_view(query).substr(kName.size()))) return *language;
  }
  return Fault{FaultCode::kUnknownName, {"", 0, 0, "language"}, quote(query), "language=en or language=es", {}};
}

Response season(Call& call) {
  const auto period = period_of(call);
  if (!period) return fault_answer(period.faults());
  const auto language = language_of(call);
  if (!language) return fault_answer(language.faults());
  if (!call.house.season_report) return no_records();
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  const auto state = state_of(call);
  if (!state) return store_answer(state.faults());
  auto page = call.house.season_report(
      {club.value()->lists.club, period.value().from, period.value().to, language.value()}, state.value());
  return page ? text_answer(std::move(page).value()) : store_answer(page.faults());
}

Response export_season(Call& call) {
  const auto period = period_of(call);
  if (!period) return fault_answer(period.faults());
  if (!call.house.season_export) return no_records();
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  auto taken = call.house.season_export(club.value()->lists.club, period.value().from, period.value().to);
  if (!taken) return store_answer(taken.faults());
  call.read_people = taken.value().people;
  Response out;
  out.body = std::move(taken.value().zip);
  out.with("Content-Type", "application/zip");
  return out.with("Content-Disposition", "attachment; filename=\"season-" + to_iso(period.value().from) + "-" +
                                             to_iso(period.value().to) + ".zip\"");
}

}  // namespace

const std::vector<NamedWork>& season_routes() {
  static const std::vector<NamedWork> kWorks = {{"season", season}, {"export-season", export_season}};
  return kWorks;
}

}  // namespace lanework::serve
