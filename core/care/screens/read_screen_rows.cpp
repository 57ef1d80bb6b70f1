#include "core/care/screens/read_screen_rows.h"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

#include "core/care/screens/screen_measures.h"
#include "core/care/sheet/care_sheet.h"

namespace lanework::care::screens {
namespace {

enum Column : std::size_t { kPlayer, kDate, kTest, kSide, kValue, kAngleAs };

using Key = std::tuple<std::string, std::size_t, Side, Date>;

class ScreenReader {
 public:
  ScreenReader(const people::Sheet& sheet, const ScreenTests& tests, const people::TextForms& forms, Date day)
      : sheet_(sheet), tests_(tests), cells_(sheet, screen_columns(), forms, faults_), day_(day) {
    for (const ScreenTest& test : tests.tests) keys_.push_back(test.key);
  }

  Result<std::vector<ScreenValue>> read() {
    const auto dates = cells_.dates(cells_.rows(), kDate, {*make_date(2000, 1, 1), day_}, true);
    for (std::size_t i = 0; i < cells_.rows().size(); ++i) take(*cells_.rows()[i], dates[i]);
    if (!faults_.empty()) return people::faults_by_line(sheet_, std::move(faults_), kMostCareFaults);
    std::vector<ScreenValue> out;
    for (const auto& [key, tries] : tries_) out.push_back(value_of(key, tries));
    return out;
  }

 private:
  const people::Sheet& sheet_;
  const ScreenTests& tests_;
  Faults faults_;
  CareSheet cells_;
  const Date day_;
  std::vector<std::string_view> keys_;
  std::map<Key, std::vector<double>> tries_;

  [[nodiscard]] ScreenValue value_of(const Key& key, const std::vector<double>& tries) const {
    ScreenValue out;
    std::tie(out.player, out.test, out.side, out.date) = key;
    double sum = 0;
    for (const double one : tries) sum += one;
    out.trials = static_cast<int>(tries.size());
    out.mean = sum / out.trials;
    const Wanted wanted = tests_.tests[out.test].wanted;
    out.best =
        *std::max_element(tries.begin(), tries.end(), [wanted](double a, double b) { return better(wanted, a, b); });
    return out;
  }

  std::optional<Side> side_of(const people::SheetRow& row, const ScreenTest& test) {
    const bool blank = cells_.text(row, kSide).empty();
    const std::size_t before = cells_.faults_so_far();
    const std::optional<std::size_t> side = cells_.word(row, kSide, {"left", "right", "both"});
    if (cells_.faults_so_far() != before) return {};
    const Side out = blank ? Side::kBoth : static_cast<Side>(*side);
    if (test.sides == (out != Side::kBoth)) return out;
    cells_.fault(blank ? FaultCode::kMissing : FaultCode::kContradiction, row, kSide,
                 test.sides ? "left or right: this test has sides" : "nothing: this test has no sides");
    return {};
  }

  std::optional<double> value_in(const people::SheetRow& row, const ScreenTest& test) {
    const std::string range = "from " + short_decimal(test.least) + " to " + short_decimal(test.most) + " " + test.unit;
    if (cells_.text(row, kValue).empty()) cells_.fault(FaultCode::kMissing, row, kValue, "a value " + range);
    const std::size_t before = cells_.faults_so_far();
    const std::optional<std::size_t> as = cells_.word(row, kAngleAs, {"flexion", "included"});
    if (cells_.faults_so_far() != before) return {};
    if (as && !test.knee_angle) {
      cells_.fault(FaultCode::kContradiction, row, kAngleAs, "nothing: this test is no angle of the knee");
      return {};
    }
    if (as != std::optional<std::size_t>(1))
      return cells_.number(row, kValue, {test.least, test.most, "a value " + range});
    const auto included = cells_.number(row, kValue,
                                        {included_from_flexion(test.most), included_from_flexion(test.least),
                                         "an included angle from " + short_decimal(included_from_flexion(test.most)) +
                                             " to " + short_decimal(included_from_flexion(test.least)) + " degrees"});
    if (!included) return {};
    return flexion_from_included(*included);
  }

  void take(const people::SheetRow& row, std::optional<Date> date) {
    const std::string player = cells_.name(row, kPlayer, "the id of a player");
    (void)cells_.name(row, kTest, "the key of a test");
    const std::optional<std::size_t> position = cells_.word(row, kTest, keys_);
    if (!position) return;
    const ScreenTest& test = tests_.tests[*position];
    const std::optional<Side> side = side_of(row, test);
    const std::optional<double> value = value_in(row, test);
    if (player.empty() || !date || !side || !value) return;
    tries_[{player, *position, *side, *date}].push_back(*value);
  }
};

}  // namespace

const people::KnownColumns& screen_columns() {
  static const people::KnownColumns kKnown = {{{"player", "player|player id|id|member no", true},
                                               {"date", "date|day", true},
                                               {"test", "test|screen", true},
                                               {"side", "side"},
                                               {"value", "value|result", true},
                                               {"angle_as", "angle as"}},
                                              "docs/formats/screens.md",
                                              {}};
  return kKnown;
}

Result<std::vector<ScreenValue>> read_screen_rows(const people::Sheet& sheet, const ScreenTests& tests,
                                                  const people::TextForms& forms, Date day) {
  return ScreenReader(sheet, tests, forms, day).read();
}

}  // namespace lanework::care::screens
