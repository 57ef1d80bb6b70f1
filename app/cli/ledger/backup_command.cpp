#include <CLI/CLI.hpp>
#include <cstdio>
#include <filesystem>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/ledger/backup_words.h"
#include "app/cli/ledger/ledger_folder.h"
#include "app/store/archive/backup.h"
#include "app/store/archive/backup_notes.h"
#include "app/store/archive/new_folder.h"
#include "app/store/sqlite/sqlite_archive.h"

namespace lanework::cli {
namespace {

using namespace store::archive;  // NOLINT(google-build-using-namespace): every name here is of a backup

struct Flags {
  LedgerFlags ledger;
  std::string to;
  std::string public_key;
  std::string out;
  std::string file;
  std::string private_key;
  std::string made;
};

Fault missing(const char* flag, const char* expected) {
  return {FaultCode::kUsage, {"", 0, 0, flag}, "nothing", expected, "'lanework backup --help' shows all of them"};
}

// The backup is what counts: where it cannot be noted that is said, and no more.
void say_of_note(const std::optional<Fault>& fault) {
  if (fault)
    std::fprintf(stderr, "%s\nThe backup is as it should be; only this note is missing.\n", to_line(*fault).c_str());
}

int make(const Flags& flags) {
  if (flags.ledger.folder.empty()) return report({missing("--ledger", "the ledger's folder")});
  if (flags.to.empty()) return report({missing("--to", "the file to write")});
  if (flags.public_key.empty()) return report({missing("--for", "the public key of backups")});
  const auto to = read_public_key(flags.public_key);
  if (!to) return report(to.faults());
  const auto key = store::read_key_file(key_file(flags.ledger));
  if (!key) return report(key.faults());
  const auto snapshot = open_snapshot(flags.ledger);
  if (!snapshot) return report(snapshot.faults());
  const auto made = make_backup(*snapshot.value(), key.value(), to.value(), flags.to, stamp_now());
  if (!made) return report(made.faults());
  std::error_code ignored;
  std::printf(
      "%sWritten and read back: %s, %llu bytes. Only the private key opens it: 'lanework backup check', where "
      "that key is.\n",
      backup_words(made.value()).c_str(), flags.to.c_str(),
      static_cast<unsigned long long>(std::filesystem::file_size(flags.to, ignored)));
  say_of_note(note_backup(backup_notes_file(flags.ledger), made.value().header.made,
                          std::filesystem::path(flags.to).filename().string()));
  return kDone;
}

int make_keys(const Flags& flags) {
  if (const auto faults = make_backup_keys(flags.out)) return report(*faults);
  std::printf(
      "%s/backup.public: for 'lanework backup', on the machine with the ledger.\n"
      "%s/backup.private: opens every backup. Take it off this machine, to two places, away from the backups.\n",
      flags.out.c_str(), flags.out.c_str());
  return kDone;
}

// Restores it into a scratch store, and lets that go.
int check(const Flags& flags) {
  const auto private_key = read_private_key(flags.private_key);
  if (!private_key) return report(private_key.faults());
  const auto key = store::read_key_file(flags.ledger.key);
  if (!key) return report(key.faults());
  const auto scratch = NewFolder::scratch();
  if (!scratch) return report(scratch.faults());
  const auto into = store::new_sqlite_store(scratch.value().now());
  if (!into) return report(into.faults());
  const auto restored = restore_backup(flags.file, private_key.value(), key.value(), {}, *into.value());
  if (!restored) return report(restored.faults());
  std::printf("%sRestored into a scratch store and read back; the scratch is gone.\n",
              backup_words(restored.value().contents).c_str());
  const std::string& made = restored.value().contents.header.made;
  if (flags.ledger.folder.empty()) {
    std::printf("Where the ledger is, note it: 'lanework backup checked %s --ledger FOLDER'.\n", made.c_str());
  } else {
    say_of_note(note_checked(backup_notes_file(flags.ledger), made, stamp_now()));
  }
  return kDone;
}

// That it was checked elsewhere.
int note_that_checked(const Flags& flags) {
  if (const auto fault = note_checked(backup_notes_file(flags.ledger), flags.made, stamp_now()))
    return report({*fault});
  std::printf("Noted: the backup of %s was checked.\n", flags.made.c_str());
  return kDone;
}

}  // namespace

void add_backup_command(CLI::App& app, int& exit_status) {
  CLI::App* backup = app.add_subcommand("backup", "the ledger in one sealed file, while others go on writing");
  backup->require_subcommand(0, 1);
  const auto flags = std::make_shared<Flags>();
  add_ledger_place(*backup, flags->ledger, false);
  backup->add_option("--to", flags->to, "the file to write; nothing may have that name");
  backup->add_option("--for", flags->public_key, "the public key of backups (backup.public)");
  CLI::App* keys = backup->add_subcommand("keys", "make the pair of keys of backups");
  keys->add_option("--out", flags->out, "the folder for the two")->required();
  keys->callback([flags, &exit_status] { exit_status = make_keys(*flags); });
  CLI::App* checking = backup->add_subcommand("check", "restore a backup into a scratch store and look at all of it");
  checking->add_option("FILE", flags->file, "the backup")->required();
  checking->add_option("--private", flags->private_key, "the private key of backups (backup.private)")->required();
  checking->add_option("--key", flags->ledger.key, "the ledger's key")->required();
  checking->add_option("--ledger", flags->ledger.folder,
                       "the ledger's folder, where it is at hand: notes there that it was checked");
  checking->callback([flags, &exit_status] { exit_status = check(*flags); });
  CLI::App* checked = backup->add_subcommand("checked", "note that a backup was checked on another machine");
  checked->add_option("WHEN", flags->made, "when it was written, as 'backup check' prints it")->required();
  checked->add_option("--ledger", flags->ledger.folder, "the ledger's folder")->required();
  checked->callback([flags, &exit_status] { exit_status = note_that_checked(*flags); });
  backup->callback([backup, flags, &exit_status] {
    if (backup->get_subcommands().empty()) exit_status = make(*flags);
  });
}

}  // namespace lanework::cli
