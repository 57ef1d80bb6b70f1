#include "app/cli/care/weather_nodes.h"

#include <utility>

namespace lanework::cli {
namespace {

using namespace care::environment;

Node text(const std::string& value) { return Node::make_text(value); }

void set_moment(Node& node, const std::string& key, Moment moment, const AskedAt& at) {
  node.set(key, text(at.day_known ? to_iso(moment) : to_text(time_of_day_of(moment))));
}

const char* effort_key(Effort effort) {
  return effort == Effort::kUsual ? "usual" : effort == Effort::kLower ? "lower" : "easy";
}

Node reason_node(const Reason& reason) {
  Node out = Node::make_table();
  out.set("topic", text(topic_word(reason.topic)));
  out.set("words", text(reason.words));
  out.set("source", text(reason.source));
  out.set("unverified", Node::make_boolean(reason.unverified));
  if (reason.minutes_old) out.set("minutes_old", Node::make_integer(*reason.minutes_old));
  return out;
}

Node change_node(const SessionChange& change, const AskedAt& at) {
  Node out = Node::make_table();
  out.set("no_session", Node::make_boolean(change.no_session.has_value()));
  if (change.no_session && change.no_session->until) set_moment(out, "until", *change.no_session->until, at);
  if (change.breaks) {
    Node breaks = Node::make_table();
    breaks.set("longest_stretch_seconds", Node::make_integer(change.breaks->longest_stretch.count));
    breaks.set("each_seconds", Node::make_integer(change.breaks->each.count));
    out.set("breaks", std::move(breaks));
  }
  if (change.most_time) out.set("most_seconds", Node::make_integer(change.most_time->count));
  out.set("effort", text(effort_key(change.effort)));
  out.set("words", text(to_words(change, at.now)));
  Node reasons = Node::make_array();
  for (const Reason& reason : change.reasons) reasons.items.push_back(reason_node(reason));
  out.set("reasons", std::move(reasons));
  return out;
}

const char* standing_key(Standing standing) {
  return standing == Standing::kRead             ? "read"
         : standing == Standing::kReadSecondHand ? "read-second-hand"
                                                 : "unverified";
}

Node table_node(const BandTable& table) {
  Node out = Node::make_table();
  out.set("key", text(table.key));
  out.set("name", text(table.name));
  out.set("source", text(table.source));
  out.set("standing", text(standing_key(table.standing)));
  return out;
}

Node topic_node(Topic topic, const std::string& headline, const SessionChange& change, const AskedAt& at) {
  Node out = Node::make_table();
  out.set("topic", text(topic_word(topic)));
  out.set("headline", text(headline));
  out.set("change", change_node(change, at));
  return out;
}

const char* method_key(const HeatVerdict& verdict) {
  if (verdict.estimated) return verdict.estimated->how() == EstimatedHow::kSimplified ? "simplified" : "without-sun";
  switch (verdict.measured->how()) {
    case MeasuredHow::kMeter:
      return "meter";
    case MeasuredHow::kThermometersOutdoors:
      return "thermometers-outdoors";
    case MeasuredHow::kThermometersIndoors:
      break;
  }
  return "thermometers-indoors";
}

const char* state_key(LightningState state) {
  switch (state) {
    case LightningState::kGoInNow:
      return "go-in-now";
    case LightningState::kStayIn:
      return "stay-in";
    case LightningState::kMayGoOut:
      return "may-go-out";
    case LightningState::kNothingTold:
      break;
  }
  return "nothing-told";
}

}  // namespace

Node band_node(const BandVerdict& verdict, const std::string& headline, const AskedAt& at) {
  Node out = topic_node(verdict.topic, headline, verdict.change, at);
  out.set("judged", Node::make_boolean(verdict.judged));
  out.set("number", text(verdict.number));
  Node cautions = Node::make_array();
  for (const std::string& caution : verdict.cautions) cautions.items.push_back(text(caution));
  out.set("cautions", std::move(cautions));
  if (verdict.table == nullptr) return out;
  const Band& band = verdict.table->bands[verdict.band];
  out.set("band", text(band.limits));
  out.set("band_words", text(band.words));
  if (!band.own_judgement.empty()) out.set("own_judgement", text(band.own_judgement));
  out.set("table", table_node(*verdict.table));
  return out;
}

Node lightning_node(const LightningVerdict& verdict, const std::string& headline, const AskedAt& at) {
  Node out = topic_node(Topic::kLightning, headline, verdict.change, at);
  out.set("state", text(state_key(verdict.state)));
  if (verdict.last) set_moment(out, "last", verdict.last->at, at);
  if (verdict.until) set_moment(out, "no_earlier_than", *verdict.until, at);
  if (verdict.last && verdict.last->flash_to_thunder)
    out.set("distance_metres", Node::make_integer(distance_of(*verdict.last->flash_to_thunder).count));
  return out;
}

void add_heat(Node& node, const HeatVerdict& verdict) {
  if (verdict.verdict.judged) node.set("unused_to_heat", Node::make_boolean(verdict.verdict.unused_to_heat));
  node.set("allowed_as_usual", Node::make_boolean(verdict.allowed_as_usual));
  if (verdict.measured || verdict.estimated) {
    Node globe = Node::make_table();
    const Celsius value = verdict.measured ? verdict.measured->value() : verdict.estimated->value();
    const Celsius error = verdict.measured ? verdict.measured->error() : verdict.estimated->error();
    globe.set("celsius", Node::make_real(value.degrees));
    globe.set("error_celsius", Node::make_real(error.degrees));
    globe.set("measured", Node::make_boolean(verdict.measured.has_value()));
    globe.set("method", text(method_key(verdict)));
    node.set("wet_bulb_globe", std::move(globe));
  }
  if (!verdict.heat_index) return;
  Node index = Node::make_table();
  index.set("fahrenheit", Node::make_real(verdict.heat_index->value.degrees));
  index.set("on_chart", Node::make_boolean(verdict.heat_index->on_chart));
  node.set("heat_index", std::move(index));
}

void add_cold(Node& node, const ColdVerdict& verdict) {
  if (!verdict.felt) return;
  const bool celsius = verdict.verdict.table->unit == BandUnit::kCelsius;
  node.set(celsius ? "felt_celsius" : "felt_fahrenheit", Node::make_real(*verdict.felt));
  node.set("by_wind_chill", Node::make_boolean(verdict.by_wind_chill));
}

void add_air(Node& node, const AirVerdict& verdict) {
  if (!verdict.index) return;
  node.set("index", Node::make_real(*verdict.index));
  node.set("beyond_scale", Node::make_boolean(verdict.beyond_scale));
}

Node answer_node(const std::vector<Node>& topics, const SessionChange& change, const AskedAt& at) {
  Node out = Node::make_table();
  out.set("answer", text("weather"));
  out.set("version", Node::make_integer(1));
  if (at.day_known) out.set("at", text(to_iso(at.now)));
  out.set("change", change_node(change, at));
  Node list = Node::make_array();
  list.items = topics;
  out.set("topics", std::move(list));
  out.set("local_rules", text("Local rules and licensed practice come first."));
  return out;
}

}  // namespace lanework::cli
