// A season written down in a test: two squads, four weeks, a few injuries.
#pragma once

#include <fstream>
#include <sstream>
#include <string>
#include <utility>

#include "core/records/season.h"
#include "core/records/terms.h"

namespace lanework::findings {

inline Date day(int month, int of_month) { return make_date(2026, month, of_month).value(); }

inline records::Terms record_terms() {
  const std::string path = LANEWORK_SOURCE_DIR "/catalogue/record_terms.toml";
  std::ifstream in(path);
  std::stringstream text;
  text << in.rdbuf();
  return records::read_terms(parse_toml(path, text.str()).value()).value();
}

inline records::SquadRecord squad(std::string id, std::string name, std::string age_band) {
  records::SquadRecord out;
  out.id = std::move(id);
  out.name = std::move(name);
  out.age_band = std::move(age_band);
  return out;
}

inline records::Exposure session(std::uint32_t squad, Date on, records::Setting setting, int hours,
                                 std::optional<records::WarmUp> warm_up) {
  records::Exposure out;
  out.squad = squad;
  out.date = on;
  out.setting = setting;
  out.hours = records::PlayerMinutes(60 * hours);
  out.warm_up = warm_up;
  return out;
}

inline records::InjuryRecord injury(std::uint32_t squad, Date on, std::optional<Date> returned) {
  records::InjuryRecord out;
  out.squad = squad;
  out.date = on;
  out.setting = records::Setting::kTraining;
  out.returned = returned;
  return out;
}

// 2026-03-02 is a Monday.
inline records::Season small_season() {
  using records::Setting;
  using records::WarmUp;
  records::Season season;
  season.period = {day(3, 2), day(3, 29), day(4, 12)};
  season.squads = {squad("u9-a", "", "U9"), squad("u13-b", "Thirteens", "U13"), squad("u13-c", "", "U13")};
  season.exposures = {session(0, day(3, 3), Setting::kTraining, 10, WarmUp::kMost),
                      session(0, day(3, 5), Setting::kTraining, 10, WarmUp::kHalf),
                      session(0, day(3, 7), Setting::kMatch, 5, std::nullopt),
                      session(0, day(3, 24), Setting::kTraining, 15, WarmUp::kNo),
                      session(1, day(3, 4), Setting::kTraining, 20, WarmUp::kFew),
                      session(1, day(3, 8), Setting::kMatch, 10, WarmUp::kMost)};
  season.exposures[0].left_out = {"side-plank", "squat"};
  season.exposures[1].left_out = {"squat"};
  season.exposures[1].needing_help = {"plant-and-cut"};
  season.injuries = {injury(0, day(3, 3), day(3, 10)), injury(1, day(3, 8), std::nullopt),
                     injury(1, day(3, 4), day(3, 5)), injury(1, day(3, 4), day(3, 9))};
  season.injuries[1].setting = Setting::kMatch;
  // One fall, two diagnoses.
  season.injuries[2].event = season.injuries[3].event = "fall";
  return season;
}

}  // namespace lanework::findings
