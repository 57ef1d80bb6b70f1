// Files in and out. Reading takes whole files; writing leaves either the old file or the whole new one.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::read {

// The bytes of a regular file of at most 16 MB. Faults name the path; 'from' is where the user named it
// (a key of the squad file), when that is not the command line.
Result<std::string> read_file(const std::string& path, const Place& from = {});

// A regular file of any length, piece by piece, until 'take' says that it has had enough.
std::optional<Fault> read_in_pieces(const std::string& path, const std::function<bool(std::string_view)>& take,
                                    const Place& from = {});

// Writes beside the path under a temporary name, flushes to the disk and renames. Empty when it is done;
// after a fault the path holds what it held before.
std::optional<Fault> write_file_atomically(const std::string& path, std::string_view bytes);

// One TOML file to its document.
Result<Document> read_toml_file(const std::string& path, const Place& from = {});

// The files with this ending in a folder, by name; an absent folder has none.
std::vector<std::string> files_in(const std::string& folder, std::string_view ending);

// A catalogue from its folders, drills by file name. The first folder holds everything (drills/, families.toml,
// limits.toml, gaits.toml, sources.toml). Later ones add drills, from drills/ or from the folder itself, and a
// table of theirs takes the place of the first folder's; limits that allow more than those before them are faults.
// Every unreadable or broken file is a fault.
Result<catalogue::CatalogueDocuments> read_catalogue_folders(const std::vector<std::string>& folders,
                                                             const Place& from = {});

}  // namespace lanework::read
