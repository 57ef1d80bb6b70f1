#include <CLI/CLI.hpp>
#include <cstdio>
#include <filesystem>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/ledger/backup_words.h"
#include "app/cli/ledger/ledger_folder.h"
#include "app/store/archive/backup.h"
#include "app/store/archive/new_file.h"
#include "app/store/archive/new_folder.h"
#include "app/store/postgres/postgres_archive.h"
#include "app/store/sqlite/sqlite_archive.h"

namespace lanework::cli {
namespace {

using namespace store::archive;  // NOLINT(google-build-using-namespace): every name here is of a backup

struct Flags {
  LedgerFlags ledger;
  std::string file;
  std::string private_key;
  std::string erased;
};

Result<std::optional<ErasureList>> read_erased(const std::string& erased) {
  if (erased == "none") return std::optional<ErasureList>();
  auto list = read_erasure_list(erased);
  if (list) return std::optional<ErasureList>(std::move(list).value());
  Faults faults = list.faults();
  if (faults.front().hint.empty()) faults.front().hint = "'--erased none' says that nobody was ever erased";
  return faults;
}

int restore(const Flags& flags) {
  const auto erased = read_erased(flags.erased);
  if (!erased) return report(erased.faults());
  const auto private_key = read_private_key(flags.private_key);
  if (!private_key) return report(private_key.faults());
  const auto key = store::read_key_file(flags.ledger.key);
  if (!key) return report(key.faults());
  auto folder = NewFolder::beside(flags.ledger.folder);
  if (!folder) return report(folder.faults());
  const std::string& now = folder.value().now();
  auto into = flags.ledger.postgres.empty() ? store::new_sqlite_store(now)
                                            : store::new_postgres_store(flags.ledger.postgres, flags.ledger.club);
  if (!into) return report(into.faults());
  const auto restored = restore_backup(flags.file, private_key.value(), key.value(), erased.value(), *into.value());
  if (!restored) return report(restored.faults());
  const std::string list = (std::filesystem::path(now) / "erased.list").string();
  if (auto fault = write_new_file(list, erasure_list_text(restored.value().erased), 0600)) return report({*fault});
  if (auto fault = into.value()->keep()) return report({*fault});
  if (auto fault = folder.value().keep()) return report({*fault});
  const std::size_t erased_people = restored.value().erased.people.size();
  std::printf(
      "%sRestored: %s. %zu %s erased there and %s so.\n"
      "Its key stays where it is: %s. Phones that were told of later entries have to send them again.\n",
      backup_words(restored.value().contents).c_str(), flags.ledger.folder.c_str(), erased_people,
      erased_people == 1 ? "person is" : "people are", erased_people == 1 ? "stays" : "stay", flags.ledger.key.c_str());
  return kDone;
}

}  // namespace

void add_restore_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("restore", "a ledger from a backup, without the people who were erased since");
  const auto flags = std::make_shared<Flags>();
  command->add_option("FILE", flags->file, "the backup")->required();
  command->add_option("--private", flags->private_key, "the private key of backups (backup.private)")->required();
  command
      ->add_option("--erased", flags->erased,
                   "the list of the erased (erased.list of the ledger that was lost), or 'none'")
      ->required();
  add_ledger_place(*command, flags->ledger, true);
  command->get_option("--key")->required();
  command->callback([flags, &exit_status] { exit_status = restore(*flags); });
}

}  // namespace lanework::cli
