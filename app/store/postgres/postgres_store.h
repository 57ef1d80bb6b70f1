// The store in a PostgreSQL database that many clubs share; several servers may have it open at once.
#pragma once

#include <memory>
#include <string>

#include "app/store/sealing.h"
#include "app/store/store.h"

namespace lanework::store {

// where: a connection string or URI of PostgreSQL's own; club: whose ledger. Brings the database's form up to date, one
// server at a time, and makes the club's row where there is none.
Result<std::unique_ptr<Store>> open_postgres_store(const std::string& where, const std::string& club, Key key);

}  // namespace lanework::store
