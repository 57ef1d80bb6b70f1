// Paper: the card of an evening, of a squad's week, and the slip with names; the pack for a coach's first evening; and
// the squad's calendar. Nothing but the slip names anybody or says anything of them; reading that is noted.
#include <algorithm>

#include "app/serve/routes/routes.h"
#include "app/serve/standing.h"

namespace lanework::serve {
namespace {

constexpr int kDaysOfWeek = 7;
constexpr std::size_t kIsoDate = 10;  // 2026-12-01

struct Evening {
  Date day;
  TimeOfDay start;
};

// '2026-12-01-1815'.
std::optional<Evening> evening_of(const std::string& text) {
  constexpr std::size_t kLength = kIsoDate + 5;
  if (text.size() != kLength || text[kIsoDate] != '-') return {};
  const auto day = parse_iso_date(text.substr(0, kIsoDate));
  const auto start = parse_time_of_day(text.substr(kIsoDate + 1, 2) + ":" + text.substr(kIsoDate + 3));
  if (!day || !start) return {};
  return Evening{*day, *start};
}

Response no_such_evening() { return error_answer(404, "not-found", "There is no such evening."); }

Response pages(Call& call, const PagesAsked& asked, const std::string& name) {
  if (!call.house.printed.pages) return no_folder();
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  std::vector<std::string> players;
  for (const store::ListedPlayer& player : club.value()->lists.players) {
    const auto& squads = player.squads;
    if (std::find(squads.begin(), squads.end(), asked.squad) != squads.end()) players.push_back(player.id);
  }
  auto entries = entries_about(call.room, call.house, players);
  if (!entries) return store_answer(entries.faults());
  const auto latest = call.room.queue->latest_plan(asked.squad);
  if (!latest) return store_answer(latest.faults());
  const ledger::State state = ledger::fold(std::move(entries).value(), call.house.kinds);
  auto made = call.house.printed.pages(asked, ledger::care_document(state, call.house.kinds),
                                       latest.value() ? latest.value()->text : std::string());
  if (!made) return folder_has_a_fault(call);
  if (!made.value().no_session.empty()) return error_answer(409, "nothing-fits", made.value().no_session);
  if (made.value().pdf.empty()) return no_such_evening();
  if (asked.with_names) {
    call.read_squad = asked.squad;
    call.read_people = static_cast<std::int64_t>(players.size());
  }
  return pdf_answer(std::move(made.value().pdf), name);
}

Response one_evening(Call& call, bool with_names) {
  const auto evening = evening_of(call.values[1]);
  if (!evening) return no_such_evening();
  const std::string& squad = call.values[0];
  return pages(call, {squad, evening->day, evening->day, evening->start, with_names},
               squad + "-" + call.values[1] + (with_names ? "-slip.pdf" : "-card.pdf"));
}

Response card(Call& call) { return one_evening(call, false); }
Response slip(Call& call) { return one_evening(call, true); }

Response cards_of_week(Call& call) {
  const auto monday = parse_iso_date(call.values[1]);
  if (!monday || weekday_name(*monday) != "Monday") {
    return error_answer(404, "not-found", "A week is named by its Monday, such as 2026-11-23.");
  }
  const Date sunday{monday->days_since_epoch + kDaysOfWeek - 1};
  const std::string& squad = call.values[0];
  return pages(call, {squad, *monday, sunday, {}, false}, squad + "-" + call.values[1] + "-cards.pdf");
}

Response no_such_squad() { return error_answer(404, "not-found", "There is nothing here for you."); }

Response clinic_pack(Call& call) {
  if (!call.house.printed.clinic_pack) return no_folder();
  auto made = call.house.printed.clinic_pack(call.values[0]);
  if (!made) return folder_has_a_fault(call);
  if (made.value().empty()) return no_such_squad();
  return pdf_answer(std::move(made).value(), call.values[0] + "-first-evening.pdf");
}

Response calendar(Call& call) {
  if (!call.house.printed.calendar) return no_folder();
  const std::string& squad = call.values[0];
  const auto latest = call.room.queue->latest_plan(squad);
  if (!latest) return store_answer(latest.faults());
  auto made =
      call.house.printed.calendar(squad, latest.value() ? latest.value()->text : std::string(), call.now.seconds);
  if (!made) return folder_has_a_fault(call);
  if (made.value().empty()) return no_such_squad();
  Response out;
  out.body = std::move(made).value();
  return out.with("Content-Type", "text/calendar; charset=utf-8")
      .with("Content-Disposition", "attachment; filename=\"" + squad + ".ics\"");
}

}  // namespace

const std::vector<NamedWork>& page_routes() {
  static const std::vector<NamedWork> kWorks = {{"card", card},
                                                {"slip", slip},
                                                {"cards-of-week", cards_of_week},
                                                {"clinic-pack", clinic_pack},
                                                {"calendar", calendar}};
  return kWorks;
}

}  // namespace lanework::serve
