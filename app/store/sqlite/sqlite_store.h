// The store in one SQLite file on this machine's disk.
#pragma once

#include <memory>
#include <string>

#include "app/store/sealing.h"
#include "app/store/store.h"

namespace lanework::store {

// Opens or makes the file and brings its form up to date. key: the store's own, under which the keys of people are
// kept; with another one what is about people is a fault to read, and damaged in the audit.
Result<std::unique_ptr<Store>> open_sqlite_store(const std::string& file, Key key);

}  // namespace lanework::store
