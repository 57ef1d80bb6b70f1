#include "core/care/growth/read_growth_people.h"

#include <algorithm>
#include <set>

#include "core/care/sheet/care_sheet.h"
#include "core/people/roster_dates.h"

namespace lanework::care::growth {
namespace {

enum Column : std::size_t { kPlayer, kBorn, kSex, kMother, kFather, kConsent, kAssent, kWithdrawn };

// A consent dated for later is read, and gives nothing yet.
constexpr int kDaysAhead = 3660;

Date first_of(int year) { return *make_date(year, 1, 1); }

DateLimits births(Date day) {
  const CivilDate today = civil(day);
  return {first_of(today.year - people::kOldestPlayer - 1), day};
}

void read_measures(CareSheet& sheet, const people::SheetRow& row, const GrowthTable& table, GrowthPerson& person) {
  const std::optional<std::size_t> sex = sheet.word(row, kSex, {"boy", "girl", "m", "f", "male", "female"});
  if (sex) person.sex = *sex % 2 == 0 ? Sex::kBoy : Sex::kGirl;
  const NumberLimits parents{table.parent_cm.least, table.parent_cm.most,
                             "a parent's height from " + short_decimal(table.parent_cm.least) + " to " +
                                 short_decimal(table.parent_cm.most) + " cm"};
  person.mother_cm = sheet.number(row, kMother, parents);
  person.father_cm = sheet.number(row, kFather, parents);
}

}  // namespace

const people::KnownColumns& growth_people_columns() {
  static const people::KnownColumns kKnown = {{{"player", "player|player id|id|member no", true},
                                               {"born", "born|birth|birth date|date of birth|dob"},
                                               {"sex", "sex"},
                                               {"mother_cm", "mother cm|mother|mother height cm"},
                                               {"father_cm", "father cm|father|father height cm"},
                                               {"consent", "consent|guardian consent|consent of the guardian", true},
                                               {"assent", "assent|child assent|assent of the child", true},
                                               {"withdrawn", "withdrawn|taken back"}},
                                              "docs/formats/growth.md",
                                              {}};
  return kKnown;
}

Result<std::vector<GrowthPerson>> read_growth_people(const people::Sheet& sheet, const GrowthTable& table,
                                                     const people::TextForms& forms, Date day) {
  Faults faults;
  CareSheet cells(sheet, growth_people_columns(), forms, faults);
  const DateLimits any_day{first_of(2000), Date{day.days_since_epoch + kDaysAhead}};
  const auto born = cells.dates(cells.rows(), kBorn, births(day), false);
  const auto consent = cells.dates(cells.rows(), kConsent, any_day, false);
  const auto assent = cells.dates(cells.rows(), kAssent, any_day, false);
  const auto withdrawn = cells.dates(cells.rows(), kWithdrawn, any_day, false);
  std::vector<GrowthPerson> out;
  std::set<std::string> seen;
  for (std::size_t i = 0; i < cells.rows().size(); ++i) {
    const people::SheetRow& row = *cells.rows()[i];
    GrowthPerson person;
    person.player = cells.name(row, kPlayer, "the id of a player");
    person.line = row.line;
    person.born = born[i];
    person.agreement = {consent[i], assent[i], withdrawn[i]};
    if (!person.player.empty() && !seen.insert(person.player).second) {
      cells.fault(FaultCode::kDuplicate, row, kPlayer, "each player once");
    }
    if (may_be_shown(person.agreement, person.born, day)) read_measures(cells, row, table, person);
    out.push_back(std::move(person));
  }
  if (!faults.empty()) return people::faults_by_line(sheet, std::move(faults), kMostCareFaults);
  return out;
}

}  // namespace lanework::care::growth
