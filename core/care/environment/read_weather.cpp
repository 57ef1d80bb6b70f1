#include "core/care/environment/read_weather.h"

#include <array>

namespace lanework::care::environment {
namespace {

constexpr const char* kMomentExpected = "a date and local time, without an offset, such as 2026-07-14T17:40:00";

// Limits in Celsius; the same in Fahrenheit for the other key.
struct TemperatureKey {
  const char* celsius;
  const char* fahrenheit;
  double least;
  double most;
};
constexpr TemperatureKey kAir{"air_celsius", "air_fahrenheit", -50, 60};
constexpr TemperatureKey kMeter{"wet_bulb_globe_celsius", "wet_bulb_globe_fahrenheit", -50, 60};
constexpr TemperatureKey kNaturalWetBulb{"natural_wet_bulb_celsius", "natural_wet_bulb_fahrenheit", -50, 60};
constexpr TemperatureKey kGlobe{"globe_celsius", "globe_fahrenheit", -50, 90};

struct WindKey {
  const char* key;
  double most;
};
constexpr std::array<WindKey, 3> kWinds = {
    {{"wind_metres_per_second", 60}, {"wind_kilometres_per_hour", 216}, {"wind_miles_per_hour", 134}}};

// Thousandths read and given back as a number; empty where the key is absent.
std::optional<double> number(TableReader& table, std::string_view key, double least, double most) {
  const std::int64_t thousandths = table.scaled_or(key, 1000, least, least, most);
  if (!table.has(key)) return {};
  return static_cast<double>(thousandths) / 1000;
}

std::optional<int> whole_number(TableReader& table, std::string_view key, int least, int most) {
  const auto value = static_cast<int>(table.integer_or(key, least, least, most));
  return table.has(key) ? std::optional<int>(value) : std::nullopt;
}

class WeatherReader {
 public:
  WeatherReader(const Document& document, const EnvironmentTables& tables)
      : tables_(tables), root_(document.file, &document.root, "", faults_) {}

  Result<Weather> read() {
    out_.measured_at = moment(root_, "measured_at", false);
    out_.region = region(root_, "region");
    out_.air = temperature(kAir);
    if (const auto percent = number(root_, "humidity_percent", 1, 100)) out_.humidity = RelativeHumidity{*percent};
    out_.wind = wind();
    if (root_.has("sun")) out_.sun = static_cast<Sun>(root_.word("sun", {"full", "cloud", "none"}));
    out_.indoor = root_.boolean_or("indoor", false);
    out_.wet = root_.boolean_or("wet", false);
    out_.acclimatised_days = whole_number(root_, "acclimatised_days", 0, 365);
    out_.youngest_age = whole_number(root_, "youngest_age", 3, 99);
    read_wet_bulb_globe();
    read_air();
    for (TableReader& event : root_.tables("lightning")) read_lightning(event);
    root_.finish();
    if (!faults_.empty()) return faults_;
    return out_;
  }

 private:
  const EnvironmentTables& tables_;
  Faults faults_;
  TableReader root_;
  Weather out_;

  std::optional<Moment> moment(TableReader& table, std::string_view key, bool up) {
    if (!table.has(key)) return {};
    const std::string text = table.text_or(key, "");
    const auto found = parse_moment(text, up);
    if (!found && !text.empty()) table.fault(FaultCode::kBadDate, key, quote(text), kMomentExpected);
    return found;
  }

  std::string region(TableReader& table, std::string_view key) {
    std::string name = table.text_or(key, "");
    std::string known;
    for (const BandTables* file : {&tables_.heat, &tables_.cold, &tables_.air}) {
      for (const BandTable& one : file->tables) {
        for (const std::string& of : one.regions) {
          if (of == name) return name;
          known += (known.empty() ? "" : ", ") + of;
        }
      }
    }
    if (!name.empty()) table.fault(FaultCode::kUnknownName, key, quote(name), "one of " + known);
    return {};
  }

  std::optional<Celsius> temperature(const TemperatureKey& key) {
    const auto celsius = number(root_, key.celsius, key.least, key.most);
    const auto fahrenheit =
        number(root_, key.fahrenheit, to_fahrenheit({key.least}).degrees, to_fahrenheit({key.most}).degrees);
    if (celsius && fahrenheit)
      root_.fault(FaultCode::kContradiction, key.fahrenheit, std::string("it and ") + key.celsius, "one of the two");
    if (celsius) return Celsius{*celsius};
    if (fahrenheit) return to_celsius({*fahrenheit});
    return {};
  }

  std::optional<MetresPerSecond> wind() {
    std::optional<MetresPerSecond> out;
    for (std::size_t i = 0; i < kWinds.size(); ++i) {
      const auto speed = number(root_, kWinds.at(i).key, 0, kWinds.at(i).most);
      if (!speed) continue;
      if (out) root_.fault(FaultCode::kContradiction, kWinds.at(i).key, "wind in two units", "wind in one unit");
      out = i == 0   ? MetresPerSecond{*speed}
            : i == 1 ? to_metres_per_second(KilometresPerHour{*speed})
                     : to_metres_per_second(MilesPerHour{*speed});
    }
    return out;
  }

  void read_wet_bulb_globe() {
    const auto shown = temperature(kMeter);
    const auto error = number(root_, "wet_bulb_globe_error_celsius", 0, 5);
    const auto natural = temperature(kNaturalWetBulb);
    const auto globe = temperature(kGlobe);
    if (shown && (natural || globe)) {
      root_.fault(FaultCode::kContradiction, present(kMeter), "a meter's reading and thermometers", "one of the two");
    } else if (shown) {
      keep(MeasuredWetBulbGlobe::of_meter(*shown, error ? Celsius{*error} : kMeterError, out_.air), kMeter);
    } else if (natural && globe) {
      keep_thermometers(*natural, *globe);
    } else if (natural || globe) {
      root_.fault(FaultCode::kMissing, natural ? kGlobe.celsius : kNaturalWetBulb.celsius, "nothing",
                  "wet bulb and globe together");
    }
  }

  void keep_thermometers(Celsius natural, Celsius globe) {
    if (out_.indoor) {
      keep(MeasuredWetBulbGlobe::indoors(natural, globe, out_.air), kNaturalWetBulb);
    } else if (out_.air) {
      keep(MeasuredWetBulbGlobe::outdoors(natural, globe, *out_.air), kNaturalWetBulb);
    } else {
      root_.fault(FaultCode::kMissing, kAir.celsius, "nothing", "the air beside wet bulb and globe");
    }
  }

  [[nodiscard]] const char* present(const TemperatureKey& key) const {
    return root_.has(key.fahrenheit) ? key.fahrenheit : key.celsius;
  }

  // Said at the line of the key whatever thermometer it is about.
  void keep(Result<MeasuredWetBulbGlobe> made, const TemperatureKey& key) {
    if (made) {
      out_.wet_bulb_globe = made.value();
      return;
    }
    for (Fault fault : made.faults()) {
      const bool about_globe = fault.place.field == "globe";
      fault.place = root_.place(present(about_globe ? kGlobe : key));
      faults_.push_back(std::move(fault));
    }
  }

  void read_air() {
    TableReader air = root_.table("air_quality");
    if (air.present()) {
      out_.air_measured_at = moment(air, "measured_at", false);
      out_.air_guide = air_guide(air);
      out_.air_quality_index = number(air, "index", 0, 1000);
      if (const auto particles = number(air, "fine_particles_micrograms_per_cubic_metre", 0, 2000))
        out_.fine_particles = MicrogramsPerCubicMetre{*particles};
      if (out_.air_quality_index && out_.fine_particles)
        air.fault(FaultCode::kContradiction, "index", "an index and fine particles", "one of the two");
      if (!out_.air_quality_index && !out_.fine_particles)
        air.fault(FaultCode::kMissing, "index", "nothing", "an index, or fine particles");
    }
    air.finish();
  }

  std::string air_guide(TableReader& air) {
    std::string name = air.text_or("guide", "");
    if (name.empty() || tables_.air.find(name) != nullptr) return name;
    std::string known;
    for (const BandTable& table : tables_.air.tables)
      for (const std::string& of : table.regions) known += (known.empty() ? "" : ", ") + of;
    air.fault(FaultCode::kUnknownName, "guide", quote(name), "one of " + known);
    return {};
  }

  void read_lightning(TableReader& table) {
    LightningEvent event;
    event.sign = static_cast<LightningSign>(table.word("sign", {"flash", "thunder", "flash-to-thunder"}));
    const auto at = lightning_moment(table);
    if (at) event.at = *at;
    const auto seconds = whole_number(table, "seconds", 0, kLongestThunderCountSeconds);
    const bool counted = event.sign == LightningSign::kFlashToThunder;
    if (seconds && !counted)
      table.fault(FaultCode::kContradiction, "seconds", "seconds of a single sign", "sign = \"flash-to-thunder\"");
    if (!seconds && counted) table.fault(FaultCode::kMissing, "seconds", "nothing", "seconds from flash to thunder");
    if (seconds) event.flash_to_thunder = Seconds(*seconds);
    table.finish();
    if (at) out_.lightning = told(out_.lightning, event);
  }

  // Seconds past the minute count as the next one: the wait never ends early.
  std::optional<Moment> lightning_moment(TableReader& table) {
    if (!table.has("at")) {
      table.fault(FaultCode::kMissing, "at", "nothing", kMomentExpected);
      (void)table.text_or("at", "");
      return {};
    }
    const std::string text = table.text_or("at", "");
    if (const auto moment = parse_moment(text, true)) return moment;
    const auto time = parse_time_of_day(text);
    if (time && out_.measured_at) {
      const bool has_seconds = text.size() == 8 && text.substr(6) != "00";
      return plus_minutes(nearest(*time, *out_.measured_at), has_seconds ? 1 : 0);
    }
    if (!text.empty())
      table.fault(FaultCode::kBadDate, "at", quote(text),
                  std::string(kMomentExpected) + (time ? ", or measured_at to tell its day" : ""));
    return {};
  }
};

std::optional<Moment> latest_known(const Weather& weather) {
  if (weather.measured_at) return weather.measured_at;
  if (weather.air_measured_at) return weather.air_measured_at;
  if (weather.lightning.last) return weather.lightning.last->at;
  return {};
}

}  // namespace

Result<Weather> read_weather(const Document& document, const EnvironmentTables& tables) {
  return WeatherReader(document, tables).read();
}

Result<Moment> moment_asked(const std::string& text, const Weather& weather) {
  const Place place{"", 0, 0, "--at"};
  std::optional<Moment> asked = parse_moment(text);
  const std::optional<Moment> known = latest_known(weather);
  if (const auto time = parse_time_of_day(text); !asked && time)
    asked = known ? nearest(*time, *known) : moment_of(Date{}, *time);
  if (!asked) return Fault{FaultCode::kBadDate, place, quote(text), "a time such as 18:00 or 2026-07-14T18:00", {}};
  for (const auto& measured : {weather.measured_at, weather.air_measured_at}) {
    if (measured && *measured > *asked)
      return Fault{FaultCode::kContradiction,
                   place,
                   quote(text),
                   "a time not before what was measured at " + to_iso(*measured),
                   {}};
  }
  return *asked;
}

}  // namespace lanework::care::environment
