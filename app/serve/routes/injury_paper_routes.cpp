// The report of an incident and the letter to a clinician, filled from what the lead tells and what the ledger has.
// They name a child: reading is noted, and where the record is closed for want of consent there is no such injury.
#include <algorithm>

#include "app/serve/routes/routes.h"
#include "app/serve/standing.h"
#include "core/care/incident/read_incident.h"
#include "core/ledger/consent.h"

namespace lanework::serve {
namespace {

constexpr const char* kKnownBefore = "known_before";
constexpr const char* kPaper = "paper";

// The body, with whom and when it is about still open; empty: faults.
std::optional<PaperAsked> read_asked(const Call& call, Faults& faults) {
  PaperAsked out;
  TableReader reader = call.reader(faults);
  out.known_before = reader.boolean_or(kKnownBefore, true);
  out.letter_paper = reader.word(kPaper, {"a4", "letter"}, 0) == 1;
  Document told{"", Node::make_table()};
  for (const auto& [key, value] : call.body.entries) {
    if (key == "player" || key == "date") {
      reader.fault(FaultCode::kUnknownKey, key, quote(key), "nothing: the ledger has it");
    } else if (key != kKnownBefore && key != kPaper) {
      told.root.set(key, value);
    }
  }
  // So that everything of the body can be told before anybody is looked for.
  told.root.set("player", Node::make_text("nobody"));
  told.root.set("date", Node::make_text("1990-01-01"));
  auto incident = care::read_incident(told, call.now.day);
  if (!incident) faults.insert(faults.end(), incident.faults().begin(), incident.faults().end());
  if (!faults.empty()) return {};
  out.incident = std::move(incident).value();
  return out;
}

struct Found {
  ledger::Injury injury;
  const store::ListedPlayer* player = nullptr;
  Node care;
};

// Empty: there is no such injury, or nobody may see that there is.
Result<std::optional<Found>> find_injury(Call& call, const store::Lists& lists) {
  const auto id = ledger::parse_entry_id(call.values[0]);
  if (!id) return std::optional<Found>();
  std::vector<std::string> players;
  for (const store::ListedPlayer& player : lists.players) players.push_back(player.id);
  auto entries = entries_about(call.room, call.house, players);
  if (!entries) return entries.faults();
  ledger::State state = ledger::fold(std::move(entries).value(), call.house.kinds);
  ledger::close_records(state, call.house.kinds);
  const auto found = state.injuries.find(*id);
  if (found == state.injuries.end()) return std::optional<Found>();
  const auto player = std::find_if(lists.players.begin(), lists.players.end(),
                                   [&](const auto& one) { return one.id == found->second.player; });
  if (player == lists.players.end()) return std::optional<Found>();
  std::erase_if(state.care, [&](const ledger::Received& one) {
    const Node* about = one.entry.whole.find("player");
    return about == nullptr || about->text != player->id;
  });
  return std::optional<Found>(Found{found->second, &*player, ledger::care_document(state, call.house.kinds)});
}

Response paper(Call& call, PaperAsked::Which which, const char* name) {
  Faults faults;
  auto asked = read_asked(call, faults);
  if (!asked) return fault_answer(faults);
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  const store::Lists& lists = club.value()->lists;
  const auto found = find_injury(call, lists);
  if (!found) return store_answer(found.faults());
  const auto day = found.value() ? parse_iso_date(found.value()->injury.day) : std::nullopt;
  if (!day || !call.house.injury_paper) return error_answer(404, "not-found", "There is nothing here for you.");
  const auto& reported_on = asked->incident.reported_on;
  if (reported_on && *reported_on < *day) {
    return fault_answer({{FaultCode::kContradiction,
                          {"", 0, 0, "reported_on"},
                          to_iso(*reported_on),
                          "a day not before the injury, " + to_iso(*day),
                          {}}});
  }
  asked->which = which;
  asked->incident.player = found.value()->player->id;
  asked->incident.date = *day;
  asked->care = found.value()->care;
  asked->club = lists.club;
  asked->squad = found.value()->injury.squad;
  const auto squad =
      std::find_if(lists.squads.begin(), lists.squads.end(), [&](const auto& one) { return one.id == asked->squad; });
  asked->squad_name = squad == lists.squads.end() ? asked->squad : squad->name;
  asked->player_name = found.value()->player->name;
  auto pdf = call.house.injury_paper(*asked);
  if (!pdf) return fault_answer(pdf.faults());
  call.read_player = asked->incident.player;
  call.read_people = 1;
  return pdf_answer(std::move(pdf).value(), name);
}

Response incident(Call& call) { return paper(call, PaperAsked::Which::kIncident, "incident.pdf"); }
Response referral(Call& call) { return paper(call, PaperAsked::Which::kReferral, "referral.pdf"); }

}  // namespace

const std::vector<NamedWork>& injury_paper_routes() {
  static const std::vector<NamedWork> kWorks = {{"incident-report", incident}, {"referral-letter", referral}};
  return kWorks;
}

}  // namespace lanework::serve
