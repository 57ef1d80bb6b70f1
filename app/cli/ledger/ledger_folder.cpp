#include "app/cli/ledger/ledger_folder.h"

#include <CLI/CLI.hpp>
#include <array>
#include <ctime>
#include <filesystem>

#include "app/cli/evening_flags.h"
#include "app/read/files.h"
#include "app/store/archive/new_file.h"
#include "app/store/postgres/postgres_archive.h"
#include "app/store/postgres/postgres_store.h"
#include "app/store/sqlite/sqlite_archive.h"
#include "app/store/sqlite/sqlite_store.h"

namespace lanework::cli {
namespace {

namespace fs = std::filesystem;

std::optional<Fault> no_ledger(const LedgerFlags& flags) {
  std::error_code ignored;
  if (!flags.postgres.empty() || fs::exists(store_file(flags), ignored)) return {};
  return Fault{FaultCode::kFileUnreadable,
               {flags.folder, 0, 0, {}},
               "no ledger.sqlite",
               "a ledger's folder",
               "'lanework ledger new' makes one"};
}

Result<std::unique_ptr<store::Store>> open_store(const LedgerFlags& flags, store::Key key) {
  if (flags.postgres.empty()) return store::open_sqlite_store(store_file(flags), std::move(key));
  return store::open_postgres_store(flags.postgres, flags.club, std::move(key));
}

}  // namespace

std::string store_file(const LedgerFlags& flags) { return (fs::path(flags.folder) / "ledger.sqlite").string(); }

std::string key_file(const LedgerFlags& flags) {
  return flags.key.empty() ? (fs::path(flags.folder) / "ledger.key").string() : flags.key;
}

std::string erased_file(const LedgerFlags& flags) {
  return flags.erased.empty() ? (fs::path(flags.folder) / "erased.list").string() : flags.erased;
}

std::string backup_notes_file(const LedgerFlags& flags) { return (fs::path(flags.folder) / "backups.list").string(); }

void add_ledger_flags(CLI::App& command, LedgerFlags& flags) {
  add_ledger_place(command, flags, true);
  command.add_option("--catalogue", flags.catalogue, "folder of the catalogue, if not the shipped one");
}

void add_ledger_place(CLI::App& command, LedgerFlags& flags, bool required) {
  command.add_option("--ledger", flags.folder, "the ledger's folder")->required(required);
  command.add_option("--key", flags.key, "the key's file, if it is not ledger.key in that folder");
  auto* club = command.add_option("--club", flags.club, "whose ledger, in a PostgreSQL database");
  command
      .add_option("--postgres", flags.postgres,
                  "where that database is: 'host=... dbname=...'; else the entries lie in the folder")
      ->needs(club);
}

Result<ledger::KindTable> read_kind_table(const std::string& catalogue_folder) {
  const auto document = read::read_toml_file((fs::path(catalogue_folder) / "ledger" / "kinds.toml").string());
  if (!document) return document.faults();
  return ledger::read_kinds(document.value());
}

Result<OpenLedger> open_ledger(const LedgerFlags& flags) {
  const auto catalogue = catalogue_folder(flags.catalogue);
  if (!catalogue) return catalogue.faults();
  auto kinds = read_kind_table(catalogue.value());
  if (!kinds) return kinds.faults();
  if (const auto fault = no_ledger(flags)) return *fault;
  auto key = store::read_key_file(key_file(flags));
  if (!key) return key.faults();
  auto opened = open_store(flags, std::move(key).value());
  if (!opened) return opened.faults();
  return OpenLedger{std::move(opened).value(), std::move(kinds).value()};
}

Result<std::unique_ptr<store::archive::Snapshot>> open_snapshot(const LedgerFlags& flags) {
  if (const auto fault = no_ledger(flags)) return *fault;
  return flags.postgres.empty() ? store::sqlite_snapshot(store_file(flags))
                                : store::postgres_snapshot(flags.postgres, flags.club);
}

std::optional<Faults> make_ledger(const LedgerFlags& flags) {
  std::error_code error;
  if (fs::exists(store_file(flags), error)) {
    return Faults{{FaultCode::kCannotWrite, {store_file(flags), 0, 0, {}}, "a ledger", "a folder without one", {}}};
  }
  fs::create_directories(flags.folder, error);
  if (error) {
    return Faults{
        {FaultCode::kCannotWrite, {flags.folder, 0, 0, {}}, error.message(), "a folder that can be made", {}}};
  }
  auto key = store::make_key_file(key_file(flags));
  if (!key) return key.faults();
  if (auto fault = store::archive::write_new_file(erased_file(flags), "", 0600)) return Faults{*fault};
  const auto opened = open_store(flags, std::move(key).value());
  if (!opened) return opened.faults();
  return {};
}

std::string stamp_now() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  std::array<char, 40> text{};
  std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M:%S%z", &local);
  std::string out = text.data();
  return out.insert(out.size() - 2, ":");  // +0100 to +01:00
}

}  // namespace lanework::cli
