#include "core/findings/reporting_items.h"

#include "core/base/date.h"

namespace lanework::findings {
namespace {

bool any_known(const SeasonFindings& found, const char* field) {
  for (const records::FieldKnown& known : found.completeness.fields)
    if (known.key == field) return known.known > 0;
  return false;
}

}  // namespace

std::vector<ReportingItem> reporting_items(const SeasonFindings& found) {
  const records::Completeness& c = found.completeness;
  const bool severity = found.whole.rows.front().injuries > 0;
  return {
      {"1.1", "sport, who the athletes are, level", false,
       "squads by age band and sex are told; sport and level of play are to be added by the club"},
      {"1.2", "how long they were observed", true, to_iso(found.period.first) + " to " + to_iso(found.period.last)},
      {"3.1", "registration of the study", false, "a club's own records are not registered"},
      {"3.2", "the purpose", true,
       "whether warm-ups are done, and whether weeks with more of them have fewer injuries"},
      {"4.1", "which health problems are recorded", true, "injuries; illness is not recorded here"},
      {"4.2", "how they are recorded", true, "by the club, one row a diagnosis (docs/formats/records.md)"},
      {"4.3", "the coding of diagnoses", true, "body region and tissue in the consensus' terms"},
      {"4.4", "how athletes are grouped", true, "by squad, age band, sex, training and match"},
      {"", "exposure, its unit, how it was measured", true,
       "player-hours: minutes times players there, in matches times players on the field; usual values are counted"},
      {"", "missing exposure and incomplete follow-up", true, "completeness stands first; open injuries are counted"},
      {"", "several injuries of one event, and of one player", true,
       "an event counts once; tables of regions and tissues count diagnoses; players' repeats are not modelled"},
      {"", "subsequent injuries", any_known(found, "recurrence"),
       any_known(found, "recurrence") ? "first, re-injury, exacerbation, local, new" : "not recorded"},
      {"", "severity and how time loss is counted", severity,
       severity ? "days lost by the consensus' rule, in its bands, with median" : "no injury"},
      {"", "rates with intervals and units", true, "per 1000 player-hours, exact limits"},
      {"", "burden with an interval", severity, severity ? "days lost per 1000 player-hours" : "no injury"},
      {"", "mode of onset, contact, region, tissue", any_known(found, "region"),
       any_known(found, "region") ? "a table each" : "not recorded"},
      {"", "athletes who joined or left", !c.fields.empty(),
       "hours are those of the players who were there; joining and leaving only mark doubtful rows"},
      {"", "limits of data quality", true, "questions about rows are counted; cautions stand in the summary"},
      {"", "privacy", true, "players are pseudonyms; the board's version withholds fewer than 5"},
  };
}

}  // namespace lanework::findings
