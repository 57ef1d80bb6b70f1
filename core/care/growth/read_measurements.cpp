#include "core/care/growth/read_measurements.h"

#include <algorithm>
#include <map>

#include "core/care/growth/plausible.h"
#include "core/care/sheet/care_sheet.h"

namespace lanework::care::growth {
namespace {

enum Column : std::size_t { kPlayer, kDate, kHeight, kSitting, kMass };

// What is outside of these is no measure in any unit.
const NumberLimits kLength{0.3, 3000, "a length in cm, such as 158.2"};
const NumberLimits kMassLimits{1, 300'000, "a mass in kg, such as 47.5"};

Column column_of(MeasuredCell cell) {
  if (cell == MeasuredCell::kHeight) return kHeight;
  return cell == MeasuredCell::kMass ? kMass : kSitting;
}

struct PlacedMeasurement {
  BodyMeasurement measured;
  const people::SheetRow* row = nullptr;
};

class MeasurementReader {
 public:
  MeasurementReader(const people::Sheet& sheet, const std::vector<GrowthPerson>& people, const GrowthTable& table,
                    const people::TextForms& forms, Date day)
      : sheet_(sheet),
        people_(people),
        table_(table),
        day_(day),
        cells_(sheet, measurement_columns(), forms, faults_) {}

  Result<MeasuredPeople> read() {
    MeasuredPeople out;
    out.of.resize(people_.size());
    const std::vector<std::size_t> whose = rows_of_those_who_agreed(out.rows_not_read);
    const auto dates = cells_.dates(rows_, kDate, {*make_date(2000, 1, 1), day_}, true);
    std::vector<std::vector<PlacedMeasurement>> placed(people_.size());
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      const std::optional<BodyMeasurement> one = measurement(*rows_[i], dates[i], people_[whose[i]]);
      if (one) placed[whose[i]].push_back({*one, rows_[i]});
    }
    for (std::size_t p = 0; p < people_.size(); ++p) {
      put_in_order(placed[p]);
      for (const PlacedMeasurement& one : placed[p]) out.of[p].push_back(one.measured);
    }
    if (!faults_.empty()) return people::faults_by_line(sheet_, std::move(faults_), kMostCareFaults);
    return out;
  }

 private:
  const people::Sheet& sheet_;
  const std::vector<GrowthPerson>& people_;
  const GrowthTable& table_;
  const Date day_;
  Faults faults_;
  CareSheet cells_;
  std::vector<const people::SheetRow*> rows_;

  // Fills rows_; for each of them the position of the player.
  std::vector<std::size_t> rows_of_those_who_agreed(int& not_read) {
    std::map<std::string, std::size_t> place;
    for (std::size_t i = 0; i < people_.size(); ++i) {
      if (may_be_shown(people_[i].agreement, people_[i].born, day_)) place.emplace(people_[i].player, i);
    }
    std::vector<std::size_t> out;
    for (const people::SheetRow* row : cells_.rows()) {
      const std::string player = cells_.name(*row, kPlayer, "the id of a player");
      const auto found = place.find(player);
      if (found == place.end()) {
        ++not_read;
        continue;
      }
      rows_.push_back(row);
      out.push_back(found->second);
    }
    return out;
  }

  std::optional<BodyMeasurement> measurement(const people::SheetRow& row, std::optional<Date> date,
                                             const GrowthPerson& person) {
    const std::optional<double> height = cells_.number(row, kHeight, kLength);
    if (cells_.text(row, kHeight).empty()) cells_.fault(FaultCode::kMissing, row, kHeight, kLength.expected);
    BodyMeasurement out;
    out.sitting_height_cm = cells_.number(row, kSitting, kLength);
    out.mass_kg = cells_.number(row, kMass, kMassLimits);
    out.line = row.line;
    if (!height || !date) return {};
    out.date = *date;
    out.height_cm = *height;
    std::optional<int> age;
    if (person.born) age = age_in_years(*person.born, *date);
    const std::vector<Implausible> slips = implausible_in(table_, out, age);
    for (const Implausible& slip : slips) {
      cells_.fault(FaultCode::kOutOfRange, row, column_of(slip.cell), slip.expected, slip.hint);
    }
    if (!slips.empty()) return {};
    return out;
  }

  void put_in_order(std::vector<PlacedMeasurement>& of_one) {
    std::stable_sort(of_one.begin(), of_one.end(), [](const PlacedMeasurement& a, const PlacedMeasurement& b) {
      return a.measured.date < b.measured.date;
    });
    for (std::size_t i = 1; i < of_one.size(); ++i) {
      const BodyMeasurement& before = of_one[i - 1].measured;
      const PlacedMeasurement& after = of_one[i];
      if (before.date == after.measured.date) {
        cells_.fault(FaultCode::kDuplicate, *after.row, kDate,
                     "one row a player and day; line " + std::to_string(before.line) + " is of the same day",
                     "where two or three were taken, write their mean once");
        continue;
      }
      const std::optional<Implausible> slip = implausible_after(table_, before, after.measured);
      if (slip) cells_.fault(FaultCode::kContradiction, *after.row, column_of(slip->cell), slip->expected, slip->hint);
    }
  }
};

}  // namespace

const people::KnownColumns& measurement_columns() {
  static const people::KnownColumns kKnown = {{{"player", "player|player id|id|member no", true},
                                               {"date", "date|day|measured", true},
                                               {"height_cm", "height cm|height", true},
                                               {"sitting_height_cm", "sitting height cm|sitting height"},
                                               {"mass_kg", "mass kg|mass|weight kg"}},
                                              "docs/formats/growth.md",
                                              {}};
  return kKnown;
}

Result<MeasuredPeople> read_measurements(const people::Sheet& sheet, const std::vector<GrowthPerson>& people,
                                         const GrowthTable& table, const people::TextForms& forms, Date day) {
  return MeasurementReader(sheet, people, table, forms, day).read();
}

}  // namespace lanework::care::growth
