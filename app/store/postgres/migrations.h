// The steps of the database's form, in order: the texts of migrations/*.sql, put into the program when it is built.
#pragma once

namespace lanework::store::postgres {

extern const char* const kMigrations[];
extern const int kMigrationCount;

}  // namespace lanework::store::postgres
