#include "app/cli/care/care_tables.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <map>

#include "app/read/files.h"
#include "core/care/environment/read_bands.h"
#include "core/care/growth/growth_table.h"
#include "core/care/pain/read_pain_rule.h"
#include "core/care/return_to_sport/read_return_rules.h"
#include "core/care/screens/screen_tests.h"
#include "core/catalogue/named_sources.h"

namespace lanework::cli {
namespace {

constexpr std::array kTables = {"air_bands.toml", "cold_bands.toml",   "growth.toml", "heat_bands.toml",
                                "pain.toml",      "return_rules.toml", "screens.toml"};

class CareTables {
 public:
  CareTables(std::string folder, const std::vector<catalogue::Source>& sources)
      : folder_(std::move(folder)), sources_(sources) {}

  Result<std::size_t> check() {
    for (const char* name : kTables) open(name);
    find_unread_files();
    if (const Document* document = found("pain.toml")) keep(care::read_pain_rule(*document, sources_));
    if (const Document* document = found("return_rules.toml")) keep(care::read_return_rules(*document, sources_));
    if (const Document* document = found("growth.toml")) keep(care::growth::read_growth_table(*document));
    if (const Document* document = found("screens.toml")) keep(care::screens::read_screen_tests(*document));
    const Document* heat = found("heat_bands.toml");
    const Document* cold = found("cold_bands.toml");
    const Document* air = found("air_bands.toml");
    if (heat != nullptr && cold != nullptr && air != nullptr) {
      keep(care::environment::read_environment_tables({*heat, *cold, *air}));
    }
    // Those of pain and return see the sources themselves.
    for (const char* name : {"growth.toml", "screens.toml", "heat_bands.toml", "cold_bands.toml", "air_bands.toml"}) {
      if (const Document* document = found(name)) catalogue::check_named_sources(*document, sources_, faults_);
    }
    if (!faults_.empty()) return std::move(faults_);
    return kTables.size();
  }

 private:
  std::string folder_;
  const std::vector<catalogue::Source>& sources_;
  Faults faults_;
  std::map<std::string, Document> documents_;

  template <class T>
  void keep(const Result<T>& result) {
    if (!result) faults_.insert(faults_.end(), result.faults().begin(), result.faults().end());
  }

  void open(const char* name) {
    auto document = read::read_toml_file(folder_ + "/" + name);
    keep(document);
    if (document) documents_.emplace(name, std::move(document).value());
  }

  const Document* found(const char* name) const {
    const auto at = documents_.find(name);
    return at == documents_.end() ? nullptr : &at->second;
  }

  void find_unread_files() {
    std::string known;
    for (const char* name : kTables) known += (known.empty() ? "" : ", ") + std::string(name);
    for (const std::string& path : read::files_in(folder_, ".toml")) {
      const std::string name = std::filesystem::path(path).filename().string();
      if (std::find(kTables.begin(), kTables.end(), name) != kTables.end()) continue;
      faults_.push_back(
          {FaultCode::kUnknownName, {path, 0, 0, {}}, "a file that nothing reads", "one of " + known, {}});
    }
  }
};

}  // namespace

Result<std::size_t> check_care_tables(const std::string& catalogue_folder,
                                      const std::vector<catalogue::Source>& sources) {
  return CareTables((std::filesystem::path(catalogue_folder) / "care").string(), sources).check();
}

}  // namespace lanework::cli
