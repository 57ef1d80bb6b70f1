#include "app/cli/serve/rooms_of_ledger.h"

#include "app/store/postgres/postgres_store.h"
#include "app/store/sqlite/sqlite_store.h"

namespace lanework::cli {
namespace {

Result<std::unique_ptr<store::Releases>> open_releases(const LedgerFlags& flags) {
  auto key = store::read_key_file(key_file(flags));
  if (!key) return key.faults();
  return flags.postgres.empty() ? store::open_sqlite_releases(store_file(flags), std::move(key).value())
                                : store::open_postgres_releases(flags.postgres, flags.club, std::move(key).value());
}

Result<std::unique_ptr<store::Past>> open_past(const LedgerFlags& flags) {
  auto key = store::read_key_file(key_file(flags));
  if (!key) return key.faults();
  return flags.postgres.empty() ? store::open_sqlite_past(store_file(flags), std::move(key).value())
                                : store::open_postgres_past(flags.postgres, flags.club, std::move(key).value());
}

Result<serve::Room> open_room(const LedgerFlags& flags) {
  constexpr int kParts = 4;
  std::vector<store::Key> keys;
  for (int i = 0; i < kParts; ++i) {
    auto key = store::read_key_file(key_file(flags));
    if (!key) return key.faults();
    keys.push_back(std::move(key).value());
  }
  const bool sqlite = flags.postgres.empty();
  const std::string file = store_file(flags);
  auto ledger = sqlite ? store::open_sqlite_store(file, std::move(keys[0]))
                       : store::open_postgres_store(flags.postgres, flags.club, std::move(keys[0]));
  if (!ledger) return ledger.faults();
  auto gate = sqlite ? store::open_sqlite_gate(file, std::move(keys[1]))
                     : store::open_postgres_gate(flags.postgres, flags.club, std::move(keys[1]));
  if (!gate) return gate.faults();
  auto directory = sqlite ? store::open_sqlite_directory(file, std::move(keys[2]))
                          : store::open_postgres_directory(flags.postgres, flags.club, std::move(keys[2]));
  if (!directory) return directory.faults();
  auto queue = sqlite ? store::open_sqlite_queue(file, std::move(keys[3]))
                      : store::open_postgres_queue(flags.postgres, flags.club, std::move(keys[3]));
  if (!queue) return queue.faults();
  return serve::Room{std::move(ledger).value(),
                     std::move(gate).value(),
                     std::move(directory).value(),
                     std::move(queue).value(),
                     [flags] { return open_releases(flags); },
                     [flags] { return open_past(flags); }};
}

}  // namespace

serve::OpenRoom rooms_of(const LedgerFlags& flags) {
  return [flags] { return open_room(flags); };
}

}  // namespace lanework::cli
