// A SQLite file as the source of a backup, and as what a backup is restored into.
#pragma once

#include <memory>
#include <string>

#include "app/store/archive/rows.h"

namespace lanework::store {

// One moment of the file, from now until it goes out of scope; others go on writing. The file's form stays as it is.
Result<std::unique_ptr<archive::Snapshot>> sqlite_snapshot(const std::string& file);

// A file ledger.sqlite in a folder that the caller keeps or removes. Kept, it is one file, with no log beside it.
Result<std::unique_ptr<archive::NewStore>> new_sqlite_store(const std::string& folder);

}  // namespace lanework::store
