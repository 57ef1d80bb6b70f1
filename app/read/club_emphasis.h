// emphasis.toml of a club's folder (docs/formats/club.md): weights of families that the lead has accepted for a season.
// It is there, or it is not; nothing names it.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::read {

// The club's folder that a squad file lies in: the one above its own, where that has a club.toml.
std::optional<std::string> club_folder_above(const std::string& squad_path);

// Puts the club's emphasis, where it has one, into the families of a catalogue.
Faults put_club_emphasis(const std::string& club_folder, catalogue::CatalogueDocuments& catalogue);

}  // namespace lanework::read
