// Everything a squad file names (docs/formats/squad.md), read from disk: documents whose meaning the door
// reads, and the roster as players.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/read/read_roster.h"
#include "core/base/document.h"
#include "core/base/result.h"
#include "core/catalogue/read_catalogue.h"
#include "core/people/player.h"

namespace lanework::read {

struct EveningFiles {
  Document squad;  // without the keys that only say how the roster's file is read
  Document routine;
  Document strip;
  Document restrictions;  // an empty table where the squad file names none
  std::vector<people::Player> roster;
  catalogue::CatalogueDocuments catalogue;
};

// Flags of the command line in place of what the squad file names; paths from where the program was started.
struct EveningOverrides {
  std::optional<std::string> roster;
  std::optional<std::string> routine;  // the id of a shipped routine, or a file name ending in .toml
  std::optional<std::string> strip;
  std::optional<std::string> restrictions;
};

// shipped_catalogue: the folder of the shipped catalogue, with routines/. File names inside the squad file
// are relative to it and stay in its folder, the one above (the club's), or below. The evening's date, for ages, is the
// squad file's slot.date. A club's emphasis.toml (club_emphasis.h) is in the catalogue's families. All faults of all
// files are collected; those about a missing file stand at the line that names it.
Result<EveningFiles> read_evening_files(const std::string& squad_path, const std::string& shipped_catalogue,
                                        const EveningOverrides& overrides = {});

// A routine by id (in routines/ of one of the folders) or by file name; for commands without a squad file.
Result<Document> read_routine_file(const std::string& name, const std::vector<std::string>& catalogue_folders,
                                   const Place& from = {});

}  // namespace lanework::read
