// The weather of an evening read from its file, judged, and folded into what the evening is made of: the documents of
// one squad's evening, or the evening of a club's calendar.
#pragma once

#include <optional>
#include <string>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/environment/evening_change.h"
#include "core/care/environment/read_weather.h"
#include "core/door/evening_request.h"

namespace lanework::cli {

// Whose tables hold where the weather's file says nothing of it; empty: the tables' default.
struct StatedRegion {
  std::string name;
  Place from;
};

struct EveningWeather {
  care::environment::EnvironmentTables tables;
  care::environment::Weather weather;
};
Result<EveningWeather> read_evening_weather(const std::string& file, const std::string& catalogue,
                                            const StatedRegion& region);

// Of one slot. now: empty for its start. youngest: of the squad; the file may state somebody younger.
struct SlotAsked {
  std::string now;
  care::environment::Moment start;
  Seconds length;
  std::optional<int> youngest;
};
Result<care::environment::EveningChange> weather_change(const EveningWeather& weather, const SlotAsked& slot);

// restrictions: of the evening; where less effort is asked they get a row for the squad of that name.
void fold_change(const care::environment::EveningChange& change, const std::string& squad_name, Document& squad,
                 Node& restrictions);
void put_change(const care::environment::EveningChange& change, session::Evening& evening);

}  // namespace lanework::cli
