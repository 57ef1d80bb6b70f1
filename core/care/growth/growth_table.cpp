#include "core/care/growth/growth_table.h"

#include <algorithm>
#include <cmath>

namespace lanework::care::growth {
namespace {

constexpr std::int64_t kTenths = 10;
constexpr std::int64_t kThousandths = 1000;
constexpr std::int64_t kMillionths = 1'000'000;

class TableFileReader {
 public:
  explicit TableFileReader(const Document& document) : root_(document.file, &document.root, {}, faults_) {}

  Result<GrowthTable> read() {
    out_.sources = sources(root_);
    read_measuring();
    read_effect();
    for (TableReader& row : root_.tables("plausible")) read_plausible(row);
    read_adult_height();
    for (TableReader& row : root_.tables("bands")) read_bands(row);
    require(!out_.plausible.empty(), "plausible");
    require(!out_.bands.empty(), "bands");
    root_.finish();
    if (!faults_.empty()) return std::move(faults_);
    return std::move(out_);
  }

 private:
  Faults faults_;
  TableReader root_;
  GrowthTable out_;

  void require(bool there, const char* key) {
    if (!there) root_.fault(FaultCode::kMissing, key, "no row", "at least one table");
  }

  static std::vector<std::string> sources(TableReader& table) {
    std::vector<std::string> out = table.texts("sources");
    if (out.empty()) table.fault(FaultCode::kMissing, "sources", "nothing", "at least one key of sources.toml");
    return out;
  }

  static double real(TableReader& table, std::string_view key, double least, double most) {
    return static_cast<double>(table.scaled(key, kThousandths, least, most)) / static_cast<double>(kThousandths);
  }

  static ValueRange range(TableReader& table, std::string_view key, double least, double most) {
    const std::vector<std::int64_t> two = table.scaled_list(key, 2, kThousandths, least, most);
    const ValueRange out{static_cast<double>(two[0]) / static_cast<double>(kThousandths),
                         static_cast<double>(two[1]) / static_cast<double>(kThousandths)};
    if (out.least > out.most) {
      table.fault(FaultCode::kContradiction, key, "the larger first", "the least, then the most");
    }
    return out;
  }

  void read_measuring() {
    TableReader table = table_of("measuring");
    out_.least_days_between = static_cast<int>(table.integer("least_days_between", 80, 365));
    out_.most_days_between = static_cast<int>(table.integer("most_days_between", 180, 1000));
    out_.old_after_days = static_cast<int>(table.integer("old_after_days", 90, 1000));
    out_.measuring_error_cm = real(table, "measuring_error_cm", 0.1, 2);
    out_.slow_below_cm_a_year = real(table, "slow_below_cm_a_year", 0.1, 20);
    out_.fast_from_cm_a_year = real(table, "fast_from_cm_a_year", 0.1, 20);
    if (out_.fast_from_cm_a_year <= out_.slow_below_cm_a_year) {
      table.fault(FaultCode::kContradiction, "fast_from_cm_a_year", "no more than slow", "more than slow_below");
    }
    out_.most_cm_a_year = real(table, "most_cm_a_year", 10, 40);
    out_.sitting_share = range(table, "sitting_share", 0.3, 0.8);
    out_.parent_cm = range(table, "parent_cm", 100, 250);
    (void)sources(table);
    table.finish();
  }

  TableReader table_of(const char* key) {
    if (!root_.has(key)) root_.fault(FaultCode::kMissing, key, "nothing", "a table");
    return root_.table(key);
  }

  void read_effect() {
    TableReader table = table_of("effect");
    out_.contacts_percent = static_cast<int>(table.integer("contacts_percent", 0, 100));
    (void)sources(table);
    table.finish();
  }

  void read_plausible(TableReader& table) {
    PlausibleRow row;
    row.age = static_cast<int>(table.integer("age", 3, 25));
    row.height_cm = range(table, "height_cm", 60, 250);
    row.mass_kg = range(table, "mass_kg", 5, 250);
    table.finish();
    if (!out_.plausible.empty() && row.age != out_.plausible.back().age + 1) {
      table.fault(FaultCode::kContradiction, "age", std::to_string(row.age),
                  std::to_string(out_.plausible.back().age + 1) + ": ages ascend by a year");
    }
    out_.plausible.push_back(row);
  }

  static AdultHeightCoefficients coefficients(TableReader& table, std::string_view key) {
    const std::vector<std::int64_t> four = table.scaled_list(key, 4, kMillionths, -20, 20);
    const auto real_of = [&](std::size_t i) { return static_cast<double>(four[i]) / static_cast<double>(kMillionths); };
    return {real_of(0), real_of(1), real_of(2), real_of(3)};
  }

  void read_adult_height() {
    TableReader table = table_of("adult_height");
    out_.adult_error_boys_cm = real(table, "error_boys_cm", 1, 15);
    out_.adult_error_girls_cm = real(table, "error_girls_cm", 1, 15);
    (void)sources(table);
    for (TableReader& row : table.tables("row")) {
      AdultHeightRow one;
      const std::int64_t tenths = row.scaled("age", kTenths, 4, 17.5);
      one.age = static_cast<double>(tenths) / static_cast<double>(kTenths);
      one.boys = coefficients(row, "boys");
      one.girls = coefficients(row, "girls");
      row.finish();
      if (!out_.adult_height.empty() && std::lround(out_.adult_height.back().age * 10) + 5 != tenths) {
        row.fault(FaultCode::kContradiction, "age", "an age that does not follow the one before",
                  "ages that ascend by half a year");
      }
      out_.adult_height.push_back(one);
    }
    if (out_.adult_height.size() < 2) table.fault(FaultCode::kMissing, "row", "too few rows", "at least two rows");
    table.finish();
  }

  void read_bands(TableReader& table) {
    HeightBands bands;
    bands.key = table.text("key");
    bands.words = table.text("words");
    bands.unverified = table.boolean_or("unverified", false);
    bands.sources = sources(table);
    for (TableReader& row : table.tables("band")) {
      HeightBand band;
      band.from_percent = real(row, "from_percent", 0, 100);
      band.name = row.text("name");
      row.finish();
      const bool ascends =
          bands.bands.empty() ? band.from_percent == 0 : band.from_percent > bands.bands.back().from_percent;
      if (!ascends) row.fault(FaultCode::kContradiction, "from_percent", "no rise", "0 first, then rising");
      bands.bands.push_back(band);
    }
    if (bands.bands.empty()) table.fault(FaultCode::kMissing, "band", "no row", "at least one band");
    table.finish();
    out_.bands.push_back(std::move(bands));
  }
};

}  // namespace

Result<GrowthTable> read_growth_table(const Document& document) { return TableFileReader(document).read(); }

const PlausibleRow& plausible_at(const GrowthTable& table, int age) {
  const int first = table.plausible.front().age;
  const int row = std::clamp(age, first, table.plausible.back().age);
  return table.plausible[static_cast<std::size_t>(row - first)];
}

}  // namespace lanework::care::growth
