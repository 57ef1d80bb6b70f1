// The store's form by numbered steps, forward only, each in a transaction of its own.
#pragma once

#include <optional>

#include "app/store/sqlite/connection.h"

namespace lanework::store::sqlite {

// Steps that the file has not had yet. A fault where it has had more than we know: it is a newer version's, and is left
// as it is.
std::optional<Faults> migrate(Connection& connection);

int newest_version();

// Only up to a version; for tests of the way from every earlier one.
std::optional<Faults> migrate_to(Connection& connection, int version);

}  // namespace lanework::store::sqlite
