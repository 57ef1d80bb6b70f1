// The shipped catalogue as documents, read from the source tree.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::catalogue::test {

inline Document read_toml(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + path.string());
  const std::string text((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  Result<Document> document = parse_toml(path.filename().string(), text);
  if (!document.ok()) throw std::runtime_error(to_line(document.faults().front()));
  return std::move(document).value();
}

inline std::filesystem::path shipped_folder() { return std::filesystem::path(LANEWORK_SOURCE_DIR) / "catalogue"; }

// By file name, so that every run sees the same order.
inline std::vector<Document> read_folder(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".toml") paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  std::vector<Document> out;
  for (const auto& path : paths) out.push_back(read_toml(path));
  return out;
}

inline const CatalogueDocuments& shipped_documents() {
  static const CatalogueDocuments kDocuments = [] {
    const std::filesystem::path folder = shipped_folder();
    return CatalogueDocuments{read_folder(folder / "drills"), read_toml(folder / "families.toml"),
                              read_toml(folder / "limits.toml"), read_toml(folder / "gaits.toml"),
                              read_toml(folder / "sources.toml")};
  }();
  return kDocuments;
}

inline std::string all_lines(const Faults& faults) {
  std::string out;
  for (const Fault& fault : faults) out += to_line(fault) + "\n";
  return out;
}

inline const Catalogue& shipped_catalogue() {
  static const Catalogue kCatalogue = [] {
    Result<Catalogue> catalogue = read_catalogue(shipped_documents());
    if (!catalogue.ok()) throw std::runtime_error(all_lines(catalogue.faults()));
    return std::move(catalogue).value();
  }();
  return kCatalogue;
}

}  // namespace lanework::catalogue::test
