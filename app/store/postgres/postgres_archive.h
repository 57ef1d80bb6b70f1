// One club of a PostgreSQL database as the source of a backup, and as what a backup is restored into.
#pragma once

#include <memory>
#include <string>

#include "app/store/archive/rows.h"

namespace lanework::store {

// One moment of that club, from now until it goes out of scope; others go on writing. Faults: no such club.
Result<std::unique_ptr<archive::Snapshot>> postgres_snapshot(const std::string& where, const std::string& club);

// All of it in one transaction, which ends with keep(). Faults: the club is there already and not empty.
Result<std::unique_ptr<archive::NewStore>> new_postgres_store(const std::string& where, const std::string& club);

}  // namespace lanework::store
