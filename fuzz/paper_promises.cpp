#include <set>
#include <string>

#include "core/care/incident/read_incident.h"
#include "core/care/venue/missing.h"
#include "core/care/venue/read_venue.h"
#include "fuzz/care_promises.h"
#include "fuzz/toml_input.h"

namespace lanework::fuzz {
namespace {

Date day() { return *make_date(2026, 11, 26); }

// Bytes: at most four a letter.
void promise_short(const std::string& text, std::size_t most_letters) {
  promise_one_line(text, "a text is one line");
  promise(text.size() <= most_letters * 4, "a text is no longer than may be");
}

void promise_short(const std::vector<std::string>& texts) {
  promise(texts.size() <= care::kMostIncidentItems, "a list is no longer than may be");
  for (const std::string& text : texts) promise_short(text, care::kMostIncidentLine);
}

}  // namespace

void check_venue(const Document& document) {
  const auto read = care::read_venue(document);
  if (!read) return promise_placed_faults(read.faults());
  const care::VenuePlan& plan = read.value();
  promise(!plan.name.empty(), "a venue has a name");
  for (const std::string* text : {&plan.name, &plan.address, &plan.map, &plan.way_in, &plan.emergency_number,
                                  &plan.phone, &plan.defibrillator, &plan.first_aid_bag, &plan.stays_with_player,
                                  &plan.calls, &plan.meets_ambulance, &plan.minds_others, &plan.responsible}) {
    promise_short(*text, care::kMostVenueLetters);
  }
  std::set<std::string> missing;
  for (const care::MissingItem& item : care::missing_on(plan, day())) {
    promise(!item.words.empty() && missing.insert(item.words).second, "what lacks is told, and once");
  }
  const bool reachable = !plan.emergency_number.empty() && !plan.address.empty() && !plan.way_in.empty();
  promise(reachable || !missing.empty(), "a plan without number, address or way in is not complete");
  promise(plan.last_rehearsal || !missing.empty(), "a plan that was never rehearsed is not complete");
}

void check_incident(const Document& document) {
  const auto read = care::read_incident(document, day());
  if (!read) {
    promise_placed_faults(read.faults());
    for (const Fault& fault : read.faults()) {
      const bool a_key = fault.code == FaultCode::kUnknownKey;
      promise(a_key || fault.found.find('\'') == std::string::npos, "no fault shows what was told");
    }
    return;
  }
  const care::Incident& incident = read.value();
  promise(!incident.player.empty() && incident.date <= day(), "somebody was hurt, and not tomorrow");
  promise(!incident.reported_on || *incident.reported_on >= incident.date, "it was reported after it happened");
  promise_short(incident.what_happened, care::kMostIncidentLetters);
  promise_short(incident.place, care::kMostIncidentLine);
  promise_short(incident.reported_by, care::kMostIncidentLine);
  promise_short(incident.signs);
  promise_short(incident.done);
  std::vector<std::string> told;
  for (const care::ToldPerson& one : incident.told) {
    promise(!one.who.empty(), "somebody was told");
    promise_short(one.by, care::kMostIncidentLine);
    told.push_back(one.who);
  }
  promise_short(told);
}

}  // namespace lanework::fuzz
