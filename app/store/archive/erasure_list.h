// The list of erased people: a file apart from the backups, which a restore goes by, so that nobody comes back from a
// backup that is older than the erasure. A line a person: the tag under the store's key, when, and a check of the line.
// docs/formats/backup.md.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "core/base/result.h"

namespace lanework::store::archive {

struct ErasureList {
  std::map<std::string, std::string> people;  // when, by tag (16 bytes)
};

// Faults: not there; a line that is none, or was changed.
Result<ErasureList> read_erasure_list(const std::string& file);

// All its lines.
std::string erasure_list_text(const ErasureList& list);

// One more line, on the disk when this returns; makes the file where there is none. What a power cut left of a line
// that was never finished is taken off first: nobody was erased by it.
std::optional<Fault> add_to_erasure_list(const std::string& file, const std::string& tag, const std::string& when);

}  // namespace lanework::store::archive
