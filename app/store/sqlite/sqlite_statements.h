// Statements on the club's SQLite file, each prepared once; the gate stands on them.
#pragma once

#include <memory>
#include <string>

#include "app/store/statements.h"

namespace lanework::store {

// Opens or makes the file and brings its form up to date.
Result<std::unique_ptr<Statements>> open_sqlite_statements(const std::string& file);

}  // namespace lanework::store
