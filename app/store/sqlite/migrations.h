// The steps of the store's form, in order: the texts of migrations/*.sql, put into the program when it is built.
#pragma once

namespace lanework::store::sqlite {

extern const char* const kMigrations[];
extern const int kMigrationCount;

}  // namespace lanework::store::sqlite
