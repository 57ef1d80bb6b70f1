// The season's evidence for the lead: the report's page as data, from the ledger as it is now.
#include "app/serve/routes/routes.h"

namespace lanework::serve {
namespace {

constexpr int kMostDays = 3 * 366;

Response season(Call& call) {
  const auto from = parse_iso_date(call.values[0]);
  const auto to = parse_iso_date(call.values[1]);
  const bool sound = from && to && days_between(*from, *to) >= 0 && days_between(*from, *to) <= kMostDays;
  if (!sound || !call.house.season_report) {
    return error_answer(404, "not-found", "A season is its first and its last day, at most three years apart.");
  }
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  auto page = call.house.season_report(club.value()->lists.club, *from, *to);
  if (!page) return store_answer(page.faults());
  return json_answer(200, page.value());
}

}  // namespace

const std::vector<NamedWork>& season_routes() {
  static const std::vector<NamedWork> kWorks = {{"season", season}};
  return kWorks;
}

}  // namespace lanework::serve
