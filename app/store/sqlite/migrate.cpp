#include "app/store/sqlite/migrate.h"

#include <string>

#include "app/store/sqlite/migrations.h"

namespace lanework::store::sqlite {
namespace {

int version_of(Connection& connection) {
  Statement read(connection.database(), "PRAGMA user_version");
  return read.step() == Statement::Step::kRow ? static_cast<int>(read.integer(0)) : 0;
}

}  // namespace

int newest_version() { return kMigrationCount; }

std::optional<Faults> migrate(Connection& connection) { return migrate_to(connection, newest_version()); }

std::optional<Faults> migrate_to(Connection& connection, int version) {
  Transaction transaction(connection);
  // Under the writer's lock, so that two that start at once do not both step.
  if (auto fault = transaction.begin()) return Faults{*fault};
  const int has = version_of(connection);
  if (has > newest_version()) {
    return Faults{{FaultCode::kContradiction,
                   {connection.file(), 0, 0, {}},
                   "version " + std::to_string(has),
                   "version " + std::to_string(newest_version()) + " or older",
                   "a newer Lanework wrote it"}};
  }
  for (int step = has; step < version; ++step) {
    if (auto fault = connection.run(kMigrations[step])) return Faults{*fault};
    const std::string mark = "PRAGMA user_version=" + std::to_string(step + 1);
    if (auto fault = connection.run(mark.c_str())) return Faults{*fault};
  }
  if (auto fault = transaction.commit()) return Faults{*fault};
  return {};
}

}  // namespace lanework::store::sqlite
