// An empty store behind which lies SQLite or PostgreSQL, to be opened as often as a test likes.
#pragma once

#include <memory>
#include <stdexcept>
#include <string>

#include "app/store/directory.h"
#include "app/store/gate.h"
#include "app/store/postgres/postgres_store.h"
#include "app/store/releases.h"
#include "tests/store/long_run.h"
#include "tests/store/private_cluster.h"
#include "tests/store/sqlite_file.h"

namespace lanework::store::test {

// For erasures whose list is not what a test is about.
inline const ErasureNote kNoNote = [](const std::string&, const std::string&) { return std::optional<Fault>(); };

class Backend {
 public:
  explicit Backend(const std::string& name) {
    if (name == "PostgreSQL") where_ = PrivateCluster::instance().new_database();
  }

  [[nodiscard]] std::unique_ptr<Store> open(const std::string& club = "quillmere") const {
    if (where_.empty()) return file_.open(club);
    auto store = open_postgres_store(where_, club, read_key_file(file_.key_file()).value());
    if (!store) throw std::runtime_error(to_line(store.faults().front()));
    return std::move(store).value();
  }
  [[nodiscard]] std::unique_ptr<Gate> open_gate(const std::string& club = "quillmere") const {
    Key key = read_key_file(file_.key_file()).value();
    auto gate = where_.empty() ? open_sqlite_gate(file_.file(club), std::move(key))
                               : open_postgres_gate(where_, club, std::move(key));
    if (!gate) throw std::runtime_error(to_line(gate.faults().front()));
    return std::move(gate).value();
  }
  [[nodiscard]] std::unique_ptr<Directory> open_directory(const std::string& club = "quillmere") const {
    Key key = read_key_file(file_.key_file()).value();
    auto directory = where_.empty() ? open_sqlite_directory(file_.file(club), std::move(key))
                                    : open_postgres_directory(where_, club, std::move(key));
    if (!directory) throw std::runtime_error(to_line(directory.faults().front()));
    return std::move(directory).value();
  }
  [[nodiscard]] std::unique_ptr<Releases> open_releases(const std::string& club = "quillmere") const {
    Key key = read_key_file(file_.key_file()).value();
    auto releases = where_.empty() ? open_sqlite_releases(file_.file(club), std::move(key))
                                   : open_postgres_releases(where_, club, std::move(key));
    if (!releases) throw std::runtime_error(to_line(releases.faults().front()));
    return std::move(releases).value();
  }
  [[nodiscard]] const std::string& where() const { return where_; }
  [[nodiscard]] const SqliteFile& file() const { return file_; }  // the key's folder, also where the rows lie elsewhere

 private:
  SqliteFile file_;
  std::string where_;  // of PostgreSQL
};

// Whether a property leaves this case of many to SQLite: a club on PostgreSQL costs many times what a file does, and
// the promises are the same, so a fifth of the cases are tried there, a twentieth of the many of the long run.
inline bool is_left_to_sqlite(int one_case, const Backend& backend) {
  return !backend.where().empty() && one_case % (is_long_run() ? 20 : 5) != 0;
}

}  // namespace lanework::store::test
