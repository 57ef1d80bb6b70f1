#include "app/store/postgres/migrate.h"

#include <string>

#include "app/store/postgres/migrations.h"

namespace lanework::store::postgres {
namespace {

// Any number that no other program takes: only one server steps at a time.
constexpr const char* kLock = "SELECT pg_advisory_xact_lock(7612390415)";

}  // namespace

const char* const kForm = R"sql(CREATE TABLE IF NOT EXISTS form (
  version integer NOT NULL -- public
))sql";

std::optional<Faults> migrate(Connection& connection) { return migrate_to(connection, kMigrationCount); }

std::optional<Faults> migrate_to(Connection& connection, int version) {
  Transaction transaction(connection);
  if (auto fault = transaction.begin()) return Faults{*fault};
  for (const char* statement : {kLock, kForm}) {
    if (auto fault = connection.run(statement)) return Faults{*fault};
  }
  const auto read = connection.ask("SELECT coalesce(max(version), 0)::bigint FROM form");
  if (!read) return read.faults();
  const auto has = static_cast<int>(read.value().integer(0, 0));
  if (has > kMigrationCount) {
    return Faults{{FaultCode::kContradiction,
                   {connection.name(), 0, 0, {}},
                   "version " + std::to_string(has),
                   "version " + std::to_string(kMigrationCount) + " or older",
                   "a newer Lanework wrote it"}};
  }
  for (int step = has; step < version; ++step) {
    if (auto fault = connection.run(kMigrations[step])) return Faults{*fault};
    const auto marked =
        connection.ask("INSERT INTO form (version) VALUES ($1::integer)", Parameters().integer(step + 1));
    if (!marked) return marked.faults();
  }
  if (auto fault = transaction.commit()) return Faults{*fault};
  return {};
}

std::optional<Faults> make_club(Connection& connection, const std::string& club) {
  const auto made =
      connection.ask("INSERT INTO club (club) VALUES ($1) ON CONFLICT DO NOTHING", Parameters().text(club));
  return made ? std::nullopt : std::optional<Faults>(made.faults());
}

}  // namespace lanework::store::postgres
