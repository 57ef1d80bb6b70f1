#include "app/cli/care/weather_answer.h"

#include <cstdio>

#include "app/cli/care/weather_nodes.h"
#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "core/care/environment/degrees_text.h"

namespace lanework::cli {
namespace {

using namespace care::environment;

constexpr const char* kWhoDecides =
    "The adult in charge on the spot decides; this holds back, it never allows against what is seen there.\n"
    "Local rules and licensed practice come first.\n";

std::string capital(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

std::string change_words(const SessionChange& change, const AskedAt& at) { return to_words(change, at.now); }

std::string unverified_words(const SessionChange& change) {
  for (const Reason& reason : change.reasons)
    if (reason.unverified && change.changes()) return " This rests on values that are unverified.";
  return "";
}

std::string not_judged_words(Topic topic) {
  return topic == Topic::kAir ? "not known, no change." : "not judged, no change.";
}

TopicAnswer band_answer(const BandVerdict& verdict, const AskedAt& at) {
  TopicAnswer out;
  const std::string topic = capital(topic_word(verdict.topic));
  out.headline = topic + ": " +
                 (verdict.judged ? change_words(verdict.change, at) + "." + unverified_words(verdict.change)
                                 : not_judged_words(verdict.topic));
  out.rows.push_back({"because", verdict.number});
  const Reason& reason = verdict.change.reasons.front();
  if (verdict.judged && reason.minutes_old) out.rows.push_back({"age", age_words({reason.minutes_old})});
  for (const std::string& caution : verdict.cautions) out.rows.push_back({"careful", caution});
  out.node = band_node(verdict, out.headline, at);
  if (verdict.table == nullptr) return out;
  const BandTable& table = *verdict.table;
  const Band& band = table.bands[verdict.band];
  out.rows.push_back({"band", band.limits + ": " + band.words});
  if (!band.own_judgement.empty()) out.rows.push_back({"", "own judgement: " + band.own_judgement});
  out.rows.push_back({"table", table.name + " (" + table.source + ", " + standing_words(table.standing) + ")"});
  return out;
}

std::string heat_index_words(const HeatIndex& index) {
  return to_text(index.value) + " (" + to_text(to_celsius(index.value)) +
         ") in the shade with light wind; full sun can add 15 °F (8 °C)" +
         (index.on_chart ? "" : "; outside the printed chart, not to be relied on");
}

std::string lightning_headline(const LightningVerdict& verdict, const AskedAt& at) {
  const std::string until = verdict.until ? to_words(*verdict.until, at.now) : "";
  switch (verdict.state) {
    case LightningState::kGoInNow:
      return "Lightning: everybody goes in now; out no earlier than " + until + ".";
    case LightningState::kStayIn:
      return "Lightning: stay in, out no earlier than " + until + "; whoever is still outside goes in now.";
    case LightningState::kMayGoOut:
      return "Lightning: out no earlier than " + until +
             ", which has come; only if nothing new is seen or heard. A blue sky is no all clear.";
    case LightningState::kNothingTold:
      break;
  }
  return "Lightning: nothing told, which is no all clear; whoever hears thunder or sees a flash calls all in at once.";
}

std::string rows_text(const TopicAnswer& topic) { return in_columns(topic.rows, "  "); }

int exit_status_of(const SessionChange& change) { return change.no_session ? kAnswerIsNo : kDone; }

void print(const std::string& text) { std::fputs(text.c_str(), stdout); }

}  // namespace

TopicAnswer heat_answer(const HeatVerdict& verdict, const AskedAt& at) {
  TopicAnswer out = band_answer(verdict.verdict, at);
  if (verdict.verdict.judged && !verdict.verdict.change.changes())
    out.headline = verdict.allowed_as_usual ? "Heat: as usual by this reading."
                                            : "Heat: no change. An estimate never allows: where it matters, measure.";
  if (verdict.heat_index && verdict.heat_index->form != HeatIndexForm::kSimple)
    out.rows.push_back({"heat index", heat_index_words(*verdict.heat_index)});
  out.node.set("headline", Node::make_text(out.headline));
  add_heat(out.node, verdict);
  return out;
}

TopicAnswer cold_answer(const ColdVerdict& verdict, const AskedAt& at) {
  TopicAnswer out = band_answer(verdict.verdict, at);
  add_cold(out.node, verdict);
  return out;
}

TopicAnswer air_answer(const AirVerdict& verdict, const AskedAt& at) {
  TopicAnswer out = band_answer(verdict.verdict, at);
  add_air(out.node, verdict);
  return out;
}

TopicAnswer lightning_answer(const LightningVerdict& verdict, const AskedAt& at) {
  TopicAnswer out;
  out.headline = lightning_headline(verdict, at);
  const Reason& reason = verdict.change.reasons.front();
  out.rows.push_back({"because", reason.words + " (" + reason.source + ")"});
  if (verdict.last && verdict.last->flash_to_thunder) {
    out.rows.push_back(
        {"distance",
         "about " + with_one_decimal(static_cast<double>(distance_of(*verdict.last->flash_to_thunder).count) / 1000) +
             " km by a count of " + std::to_string(verdict.last->flash_to_thunder->count) +
             " seconds; thunder that is heard means going in, however long the count"});
  }
  out.rows.push_back({"shelter", shelter_words()});
  out.node = lightning_node(verdict, out.headline, at);
  return out;
}

int show_topic(const TopicAnswer& topic, const SessionChange& change, const AskedAt& at, bool json) {
  if (json) {
    print(to_json(answer_node({topic.node}, change, at), 2) + "\n");
  } else {
    print(topic.headline + "\n\n" + rows_text(topic) + "\n" + kWhoDecides);
  }
  return exit_status_of(change);
}

int show_weather(const std::vector<TopicAnswer>& topics, const SessionChange& change, const AskedAt& at, bool json) {
  std::vector<Node> nodes;
  std::string text = "At " + to_text(time_of_day_of(at.now)) +
                     (at.day_known ? " on " + lanework::to_words(date_of(at.now)) : "") + ": " +
                     change_words(change, at) + "." + unverified_words(change) + "\n";
  for (const TopicAnswer& topic : topics) {
    nodes.push_back(topic.node);
    text += "\n" + topic.headline + "\n" + rows_text(topic);
  }
  print(json ? to_json(answer_node(nodes, change, at), 2) + "\n" : text + "\n" + kWhoDecides);
  return exit_status_of(change);
}

}  // namespace lanework::cli
