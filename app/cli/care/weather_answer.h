// What the weather's commands say, in words first and as JSON: one block a topic, then who decides.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/environment/weather_verdict.h"

namespace lanework::cli {

struct TopicAnswer {
  std::string headline;                        // 'Heat: no session.'
  std::vector<std::vector<std::string>> rows;  // heading, sentence
  Node node;
};

// seen_from: the moment asked about, for times; without known days only times of day are written.
struct AskedAt {
  care::environment::Moment now;
  bool day_known = false;
};

TopicAnswer heat_answer(const care::environment::HeatVerdict& verdict, const AskedAt& at);
TopicAnswer cold_answer(const care::environment::ColdVerdict& verdict, const AskedAt& at);
TopicAnswer lightning_answer(const care::environment::LightningVerdict& verdict, const AskedAt& at);
TopicAnswer air_answer(const care::environment::AirVerdict& verdict, const AskedAt& at);

// Prints one topic, or several with the change of all of them first. Exit status 1 where there is no session.
int show_topic(const TopicAnswer& topic, const care::environment::SessionChange& change, const AskedAt& at, bool json);
int show_weather(const std::vector<TopicAnswer>& topics, const care::environment::SessionChange& change,
                 const AskedAt& at, bool json);

}  // namespace lanework::cli
