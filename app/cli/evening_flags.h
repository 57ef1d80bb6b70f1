// The flags every evening command shares, and the evening they make together with the squad's files.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/cli/evening_care.h"
#include "core/base/result.h"
#include "core/door/evening_request.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct EveningFlags {
  std::string squad;
  std::string catalogue;  // folder of the shipped catalogue; found beside the program when empty
  std::optional<double> minutes;
  std::optional<int> turnout;
  std::optional<int> late;
  std::optional<int> days_to_match;
  std::optional<double> lane_length_metres;
  std::optional<int> lanes;
  std::optional<int> balls;
  std::optional<int> cones;
  std::vector<std::string> surface;
  std::optional<std::string> roster;
  std::optional<std::string> routine;
  std::optional<std::string> strip;
  std::optional<std::string> restrictions;
  CareFlags care;
  std::vector<std::string> pins;
  std::vector<std::string> bans;
  bool free_composition = false;
};

void add_evening_flags(CLI::App& command, EveningFlags& flags);

// Reads the files, folds the flags into their documents.
Result<door::EveningDocuments> load_evening(const EveningFlags& flags);

// The folder of the shipped catalogue: as stated, or 'catalogue' in a folder at or above the program's.
Result<std::string> catalogue_folder(const std::string& stated);

}  // namespace lanework::cli
