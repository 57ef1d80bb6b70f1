#include "core/care/environment/read_bands.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace lanework::care::environment {
namespace {

// What differs between the three files.
struct BandKind {
  const char* included;  // key of an end that belongs to the band
  const char* excluded;
  const char* included_words;
  const char* excluded_words;
  const char* beyond_words;        // after an end that belonged to the band before
  const char* beyond_or_at_words;  // after one that did not
  std::vector<BandUnit> units;
  bool colder_is_more;
  double least;
  double most;
};

const BandKind& heat_kind() {
  static const BandKind kind{
      "up_to", "below", "up to ", "below ", "above ", "from ", {BandUnit::kCelsius, BandUnit::kFahrenheit},
      false,   -50,     150};
  return kind;
}
const BandKind& cold_kind() {
  static const BandKind kind{
      "down_to", "above", "down to ", "above ", "below ", "from ", {BandUnit::kCelsius, BandUnit::kFahrenheit},
      true,      -100,    100};
  return kind;
}
const BandKind& air_kind() {
  static const BandKind kind{"up_to", "below", "up to ", "below ", "above ", "from ", {BandUnit::kIndex},
                             false,   0,       1000};
  return kind;
}

constexpr std::array<const char*, 3> kUnitKeys = {"celsius", "fahrenheit", "index"};

std::string end_text(const BandEnd& end, BandUnit unit, bool turned) {
  std::array<char, 32> text{};
  const double value = static_cast<double>(turned ? -end.thousandths : end.thousandths) / 1000;
  if (unit == BandUnit::kIndex) {
    std::snprintf(text.data(), text.size(), "%.0f", value);
    return text.data();
  }
  std::snprintf(text.data(), text.size(), "%.1f ", value);
  return std::string(text.data()) + unit_text(unit);
}

class BandsReader {
 public:
  BandsReader(const Document& document, const BandKind& kind, Faults& faults)
      : kind_(kind), root_(document.file, &document.root, "", faults) {}

  BandTables read() {
    const std::size_t before = root_.faults_so_far();
    BandTables out;
    out.default_region = root_.text("default_region");
    for (TableReader& table : root_.tables("table")) {
      BandTable read = read_table(table);
      check_regions(table, read, out);
      out.tables.push_back(std::move(read));
    }
    const bool sound = root_.faults_so_far() == before;
    if (sound && out.find(out.default_region) == nullptr)
      root_.fault(FaultCode::kUnknownName, "default_region", quote(out.default_region),
                  "a region of one of the tables");
    return out;
  }
  TableReader& root() { return root_; }

 private:
  const BandKind& kind_;
  TableReader root_;

  BandTable read_table(TableReader& table) {
    BandTable out;
    out.key = table.text("key");
    out.name = table.text("name");
    out.source = table.text("source");
    out.standing = read_standing(table);
    std::vector<std::string_view> units;
    for (const BandUnit unit : kind_.units) units.emplace_back(kUnitKeys.at(static_cast<std::size_t>(unit)));
    out.unit = kind_.units[static_cast<std::size_t>(table.word("unit", units))];
    out.colder_is_more = kind_.colder_is_more;
    out.regions = table.texts("regions");
    if (out.regions.empty()) table.fault(FaultCode::kMissing, "regions", "nothing", "at least one region");
    std::vector<TableReader> bands = table.tables("band");
    if (bands.size() < 2) table.fault(FaultCode::kMissing, "band", "fewer than two", "at least two bands");
    for (std::size_t i = 0; i < bands.size(); ++i) {
      Band band = read_band(bands[i], i + 1 == bands.size(), out);
      if (!out.bands.empty()) check_order(bands[i], out.bands.back(), band);
      check_columns(bands[i], band);
      out.bands.push_back(std::move(band));
    }
    table.finish();
    return out;
  }

  Band read_band(TableReader& table, bool last, BandTable& of) {
    Band band;
    band.end = read_end(table, last);
    band.limits = limits_words(of, band);
    band.words = table.text("words");
    band.own_judgement = table.text_or("own_judgement", "");
    band.usual = read_asked(table);
    TableReader second = table.table("unused_to_heat");
    band.unused_to_heat = second.present() ? read_asked(second) : band.usual;
    of.two_columns = of.two_columns || second.present();
    second.finish();
    table.finish();
    return band;
  }

  std::optional<BandEnd> read_end(TableReader& table, bool last) {
    const bool included = table.has(kind_.included);
    const bool excluded = table.has(kind_.excluded);
    const std::string keys = std::string(kind_.included) + " or " + kind_.excluded;
    const auto with = table.scaled_or(kind_.included, 1000, 0, kind_.least, kind_.most);
    const auto without = table.scaled_or(kind_.excluded, 1000, 0, kind_.least, kind_.most);
    if (included && excluded) table.fault(FaultCode::kContradiction, kind_.excluded, "both", keys);
    if (last && (included || excluded))
      table.fault(FaultCode::kContradiction, included ? kind_.included : kind_.excluded, "an end of the last band",
                  "none");
    if (!last && !included && !excluded) table.fault(FaultCode::kMissing, kind_.included, "nothing", keys);
    if (!included && !excluded) return {};
    const std::int64_t value = included ? with : without;
    return BandEnd{kind_.colder_is_more ? -value : value, included};
  }

  std::string limits_words(const BandTable& of, const Band& band) {
    std::string out;
    if (!of.bands.empty() && of.bands.back().end) {
      const BandEnd& before = *of.bands.back().end;
      out = (before.included ? kind_.beyond_words : kind_.beyond_or_at_words) +
            end_text(before, of.unit, kind_.colder_is_more);
      if (!band.end && !before.included) out += kind_.colder_is_more ? " down" : " up";
    }
    if (!band.end) return out;
    return out + (out.empty() ? "" : ", ") + (band.end->included ? kind_.included_words : kind_.excluded_words) +
           end_text(*band.end, of.unit, kind_.colder_is_more);
  }

  SessionChange read_asked(TableReader& table) {
    SessionChange out;
    if (table.boolean_or("no_session", false)) out.no_session = NoSession{};
    out.breaks = read_breaks(table);
    const auto minutes = table.integer_or("most_minutes", 0, 1, 600);
    if (minutes > 0) out.most_time = Seconds(minutes * 60);
    out.effort = static_cast<Effort>(table.word("effort", {"usual", "lower", "easy"}, 0));
    if (out.no_session && (out.breaks || out.most_time || out.effort != Effort::kUsual))
      table.fault(FaultCode::kContradiction, "no_session", "more asked of no session", "nothing else beside it");
    return out;
  }

  std::optional<Breaks> read_breaks(TableReader& table) {
    const auto an_hour = table.integer_or("breaks_an_hour", 0, 1, 20);
    const Seconds each(table.scaled_or("break_minutes", 60, 0, 1, 30));
    const bool both = table.has("breaks_an_hour") && table.has("break_minutes");
    if (!both && (table.has("breaks_an_hour") || table.has("break_minutes")))
      table.fault(FaultCode::kMissing, table.has("break_minutes") ? "breaks_an_hour" : "break_minutes", "nothing",
                  "how many breaks an hour, and how many minutes each");
    if (!both || an_hour == 0) return {};
    const Seconds stretch(3600 / an_hour - each.count);
    if (stretch.count > 0) return Breaks{stretch, each};
    table.fault(FaultCode::kContradiction, "break_minutes", "breaks that fill the hour", "some time between them");
    return {};
  }

  void check_order(TableReader& table, const Band& before, const Band& band) {
    const bool further = !before.end || !band.end || band.end->thousandths > before.end->thousandths;
    if (!further)
      table.fault(FaultCode::kContradiction, band.end->included ? kind_.included : kind_.excluded,
                  "no further than the band before", "bands in careful order");
    if (!at_least_as_careful(band.usual, before.usual) ||
        !at_least_as_careful(band.unused_to_heat, before.unused_to_heat))
      table.fault(FaultCode::kContradiction, "words", "a band that asks less than the one before", "at least as much");
  }

  static void check_columns(TableReader& table, const Band& band) {
    if (at_least_as_careful(band.unused_to_heat, band.usual)) return;
    table.fault(FaultCode::kContradiction, "unused_to_heat", "less than of the others", "at least as much");
  }

  static void check_regions(TableReader& table, const BandTable& read, const BandTables& before) {
    for (const std::string& region : read.regions) {
      if (before.find(region) != nullptr)
        table.fault(FaultCode::kDuplicate, "regions", quote(region), "a region of one table only");
    }
  }
};

}  // namespace

Standing read_standing(TableReader& table) {
  return static_cast<Standing>(table.word("standing", {"read", "read-second-hand", "unverified"}));
}

Result<EnvironmentTables> read_environment_tables(const EnvironmentDocuments& documents) {
  Faults faults;
  EnvironmentTables out;
  BandsReader heat(documents.heat, heat_kind(), faults);
  out.heat = heat.read();
  heat.root().finish();
  BandsReader cold(documents.cold, cold_kind(), faults);
  out.cold = cold.read();
  cold.root().finish();
  BandsReader air(documents.air, air_kind(), faults);
  out.air = air.read();
  out.fine_particles = read_fine_particles(air.root());
  air.root().finish();
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace lanework::care::environment
