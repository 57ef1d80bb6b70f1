#include "app/read/club_care.h"

#include <filesystem>

#include "app/read/club_emphasis.h"
#include "app/read/files.h"
#include "app/read/named_files.h"

namespace lanework::read {

namespace {

ClubCare read(const Document& club, bool keys_too, Faults& faults) {
  ClubCare out;
  const Node* node = club.root.find("care");
  if (node == nullptr || node->kind != Node::Kind::kTable) return out;  // told where the settings are read
  TableReader table(club.file, node, "care", faults);
  const Document at{club.file, *node};
  const auto path = [&](std::string_view key) -> std::optional<std::string> {
    const std::string name = table.text_or(key, "");
    return name.empty() ? std::nullopt : path_inside(at, key, name, 0, faults);
  };
  out.entries = path("entries");
  out.return_rules = path("return_rules");
  out.region = table.text_or("region", "");
  out.entries_place = table.place("entries");
  out.return_rules_place = table.place("return_rules");
  out.region_place = table.place("region");
  if (keys_too) table.finish();
  return out;
}

}  // namespace

ClubCare club_care(const Document& club, Faults& faults) { return read(club, false, faults); }

Result<ClubCare> club_care_above(const std::string& squad_path) {
  const auto folder = club_folder_above(squad_path);
  if (!folder) return ClubCare{};
  const auto club = read_toml_file((std::filesystem::path(*folder) / "club.toml").string());
  if (!club) return club.faults();
  Faults faults;
  ClubCare out = read(club.value(), true, faults);
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace lanework::read
