// A SQLite store in a folder of its own, gone at the end.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <memory>
#include <stdexcept>
#include <string>

#include "app/store/sqlite/sqlite_store.h"

namespace lanework::store::test {

class SqliteFile {
 public:
  SqliteFile() {
    std::string name = (std::filesystem::temp_directory_path() / "lanework-store-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for a store");
    folder_ = name;
    static_cast<void>(make_key_file(key_file()).value());
  }
  SqliteFile(const SqliteFile&) = delete;
  SqliteFile& operator=(const SqliteFile&) = delete;
  ~SqliteFile() { std::filesystem::remove_all(folder_); }

  [[nodiscard]] std::string file(const std::string& name = "ledger") const {
    return (folder_ / (name + ".sqlite")).string();
  }
  [[nodiscard]] std::string key_file() const { return (folder_ / "ledger.key").string(); }
  [[nodiscard]] std::unique_ptr<Store> open(const std::string& name = "ledger") const {
    auto store = open_sqlite_store(file(name), read_key_file(key_file()).value());
    if (!store) throw std::runtime_error(to_line(store.faults().front()));
    return std::move(store).value();
  }

 private:
  std::filesystem::path folder_;
};

}  // namespace lanework::store::test
