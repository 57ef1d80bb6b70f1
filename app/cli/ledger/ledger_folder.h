// A ledger as the command line knows it: a folder with ledger.key, unless that is named elsewhere, ledger.sqlite,
// unless the entries lie in a PostgreSQL database, erased.list, the list of the erased,
// and backups.list, what was noted about backups.
#pragma once

#include <memory>
#include <string>

#include "app/store/archive/rows.h"
#include "app/store/store.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct LedgerFlags {
  std::string folder;
  std::string key;        // the key's file, where it does not lie beside
  std::string postgres;   // a connection string, where the entries lie in a database
  std::string club;       // whose, in that database
  std::string catalogue;  // a folder in place of the shipped one
  std::string erased;     // the list's file, where it does not lie in the folder
};

void add_ledger_flags(CLI::App& command, LedgerFlags& flags);
// Without the catalogue: for what does not read entries.
void add_ledger_place(CLI::App& command, LedgerFlags& flags, bool required);

std::string key_file(const LedgerFlags& flags);
std::string erased_file(const LedgerFlags& flags);
// What was noted about backups; always in the folder.
std::string backup_notes_file(const LedgerFlags& flags);

// Where they lie.
std::string store_file(const LedgerFlags& flags);

// catalogue/ledger/kinds.toml of that folder.
Result<ledger::KindTable> read_kind_table(const std::string& catalogue_folder);

struct OpenLedger {
  std::unique_ptr<store::Store> store;
  ledger::KindTable kinds;
};
// Faults: no such ledger (make one with 'ledger new'), the key, the store, the kinds.
Result<OpenLedger> open_ledger(const LedgerFlags& flags);

// One moment of it. Faults: no such ledger, the store.
Result<std::unique_ptr<store::archive::Snapshot>> open_snapshot(const LedgerFlags& flags);

// Makes the folder, the key, an empty list of the erased and the empty store; a fault where there is one.
std::optional<Faults> make_ledger(const LedgerFlags& flags);

// '2026-11-26T18:05:00+01:00': now, by this machine's clock and zone.
std::string stamp_now();

}  // namespace lanework::cli
