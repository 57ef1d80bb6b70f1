// The database's form by numbered steps, forward only, all in one transaction, one server at a time.
#pragma once

#include <optional>
#include <string>

#include "app/store/postgres/connection.h"

namespace lanework::store::postgres {

// A fault where the database has had more steps than we know: it is a newer version's, and is left as it is.
std::optional<Faults> migrate(Connection& connection);

// Only up to a version; for tests of the way from every earlier one.
std::optional<Faults> migrate_to(Connection& connection, int version);

// Where it is kept which steps were taken; there before the first.
extern const char* const kForm;

// The club's row, where there is none yet.
std::optional<Faults> make_club(Connection& connection, const std::string& club);

}  // namespace lanework::store::postgres
