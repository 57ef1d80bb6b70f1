// The weather's verdicts as JSON (schema/weather-answer.schema.json).
#pragma once

#include <string>
#include <vector>

#include "app/cli/care/weather_answer.h"
#include "core/base/document.h"

namespace lanework::cli {

Node band_node(const care::environment::BandVerdict& verdict, const std::string& headline, const AskedAt& at);
Node lightning_node(const care::environment::LightningVerdict& verdict, const std::string& headline, const AskedAt& at);
// What one topic has besides.
void add_heat(Node& node, const care::environment::HeatVerdict& verdict);
void add_cold(Node& node, const care::environment::ColdVerdict& verdict);
void add_air(Node& node, const care::environment::AirVerdict& verdict);

Node answer_node(const std::vector<Node>& topics, const care::environment::SessionChange& change, const AskedAt& at);

}  // namespace lanework::cli
