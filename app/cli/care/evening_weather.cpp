#include "app/cli/care/evening_weather.h"

#include <algorithm>

#include "app/cli/care/weather_flags.h"
#include "app/cli/document_edits.h"
#include "app/read/files.h"
#include "core/care/entries/restrictions_document.h"
#include "core/care/environment/weather_verdict.h"

namespace lanework::cli {
namespace {

namespace environment = care::environment;

Node minutes_node(Seconds seconds) { return Node::make_real(static_cast<double>(seconds.count) / 60); }

bool is_region(const environment::EnvironmentTables& tables, const std::string& name) {
  const auto has = [&](const environment::BandTables& topic) { return topic.find(name) != nullptr; };
  return has(tables.heat) || has(tables.cold) || has(tables.air);
}

std::string regions_of(const environment::EnvironmentTables& tables) {
  std::string out;
  for (const environment::BandTables* topic : {&tables.heat, &tables.cold, &tables.air}) {
    for (const environment::BandTable& table : topic->tables) {
      for (const std::string& region : table.regions) {
        if ((", " + out + ",").find(", " + region + ",") == std::string::npos)
          out += (out.empty() ? "" : ", ") + region;
      }
    }
  }
  return out;
}

}  // namespace

Result<EveningWeather> read_evening_weather(const std::string& file, const std::string& catalogue,
                                            const StatedRegion& region) {
  auto tables = read_environment_files(catalogue);
  if (!tables) return tables.faults();
  if (!region.name.empty() && !is_region(tables.value(), region.name)) {
    return Fault{FaultCode::kUnknownName, region.from, quote(region.name), "one of " + regions_of(tables.value()), {}};
  }
  const auto document = read::read_toml_file(file);
  if (!document) return document.faults();
  auto weather = environment::read_weather(document.value(), tables.value());
  if (!weather) return weather.faults();
  EveningWeather out{std::move(tables).value(), std::move(weather).value()};
  if (out.weather.region.empty()) out.weather.region = region.name;
  return out;
}

Result<environment::EveningChange> weather_change(const EveningWeather& weather, const SlotAsked& slot) {
  environment::Weather judged = weather.weather;
  if (slot.youngest) judged.youngest_age = std::min(*slot.youngest, judged.youngest_age.value_or(*slot.youngest));
  const auto asked = environment::moment_asked(slot.now.empty() ? environment::to_iso(slot.start) : slot.now, judged);
  if (!asked) return asked.faults();
  const auto verdict = environment::judge_weather(judged, weather.tables, asked.value());
  return environment::evening_change(verdict, slot.start, slot.length);
}

void fold_change(const environment::EveningChange& change, const std::string& squad_name, Document& squad,
                 Node& restrictions) {
  const auto tonight = [&](const char* key, Node value) { set_in(squad.root, "tonight", key, std::move(value)); };
  if (!change.remarks.empty()) {
    Node list = Node::make_array();
    for (const std::string& remark : change.remarks) list.items.push_back(Node::make_text(remark));
    tonight("remarks", std::move(list));
  }
  if (!change.no_session.empty()) {
    tonight("no_session", Node::make_text(change.no_session));
    return;
  }
  if (change.remarks.empty()) return;
  const std::string start = to_text(environment::time_of_day_of(change.start));
  set_in(squad.root, "slot", "start", Node::make_text(start + ":00"));
  set_in(squad.root, "slot", "minutes", minutes_node(change.length));
  if (change.breaks > 0) {
    tonight("breaks", Node::make_integer(change.breaks));
    tonight("break_minutes", minutes_node(change.break_each));
    tonight("break_why", Node::make_text(change.break_why));
  }
  if (!change.whole_squad) return;
  people::Restriction row = *change.whole_squad;
  row.squad = squad_name;
  const Node made = care::restrictions_document({{row, {}, false, {}}}, {});
  add_to(restrictions, "restriction", made.find("restriction")->items.front());
}

void put_change(const environment::EveningChange& change, session::Evening& evening) {
  evening.remarks.insert(evening.remarks.end(), change.remarks.begin(), change.remarks.end());
  evening.no_session = change.no_session;
  if (!change.no_session.empty()) return;
  evening.start = environment::time_of_day_of(change.start);
  evening.slot = change.length;
  if (change.breaks > 0) evening.breaks = {change.breaks, change.break_each, change.break_why};
  if (change.whole_squad) evening.restrictions.push_back(*change.whole_squad);
}

}  // namespace lanework::cli
