#include "tests/people/shipped_catalogue.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "core/catalogue/read_catalogue.h"

namespace lanework::people {
namespace {

Document read(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  auto document = parse_toml(path.filename().string(), text.str());
  if (!document) throw std::runtime_error(to_line(document.faults().front()));
  return std::move(document).value();
}

catalogue::Catalogue read_shipped() {
  const std::filesystem::path folder = std::filesystem::path(LANEWORK_SOURCE_DIR) / "catalogue";
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder / "drills")) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  catalogue::CatalogueDocuments documents;
  for (const auto& file : files) documents.drills.push_back(read(file));
  documents.families = read(folder / "families.toml");
  documents.limits = read(folder / "limits.toml");
  documents.gaits = read(folder / "gaits.toml");
  documents.sources = read(folder / "sources.toml");
  auto catalogue = catalogue::read_catalogue(documents);
  if (!catalogue) throw std::runtime_error(to_line(catalogue.faults().front()));
  return std::move(catalogue).value();
}

}  // namespace

const catalogue::Catalogue& shipped_catalogue() {
  static const catalogue::Catalogue kCatalogue = read_shipped();
  return kCatalogue;
}

}  // namespace lanework::people
