// What the shipped drills are called in Spanish, by their ids (web/shared/words/catalogue_es.json, as the screens have
// it).
#pragma once

#include <map>
#include <string>

namespace lanework::cli {

const std::map<std::string, std::string>& spanish_drill_names();

}  // namespace lanework::cli
