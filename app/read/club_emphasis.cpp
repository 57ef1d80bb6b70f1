#include "app/read/club_emphasis.h"

#include <filesystem>

#include "app/read/files.h"
#include "core/catalogue/emphasis.h"

namespace lanework::read {

namespace fs = std::filesystem;

std::optional<std::string> club_folder_above(const std::string& squad_path) {
  const fs::path above = (fs::path(squad_path).parent_path() / "..").lexically_normal();
  std::error_code ignored;
  if (!fs::exists(above / "club.toml", ignored)) return {};
  return above.string();
}

Faults put_club_emphasis(const std::string& club_folder, catalogue::CatalogueDocuments& catalogue) {
  const std::string path = (fs::path(club_folder) / "emphasis.toml").string();
  std::error_code ignored;
  if (!fs::exists(path, ignored)) return {};
  const Result<Document> emphasis = read_toml_file(path);
  if (!emphasis) return emphasis.faults();
  return catalogue::put_emphasis(emphasis.value(), catalogue.families);
}

}  // namespace lanework::read
