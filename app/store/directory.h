// The club's lists as the server needs them to know who may see whom: squads, and who is of which. Names are sealed
// under each person's own key, as what is entered about them is; a person who was erased is on no list any more.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "app/store/sealing.h"
#include "core/base/result.h"

namespace lanework::store {

struct ListedSquad {
  std::string id;
  std::string name;
  bool operator==(const ListedSquad&) const = default;
};

struct ListedPlayer {
  std::string id;
  std::vector<std::string> squads;  // a player may be in two
  std::string name;
  std::string age_group;  // 'under 13'; a birth date is not kept here
  bool operator==(const ListedPlayer&) const = default;
};

struct Lists {
  std::string club;                   // its name
  std::vector<ListedSquad> squads;    // by id
  std::vector<ListedPlayer> players;  // by id
  bool operator==(const Lists&) const = default;
};

// What was read is as it was then as long as these are.
struct Versions {
  std::int64_t lists = 0;  // grows with every change of the lists, also by an erasure; 0: never kept
  std::int64_t people =
      0;  // grows with every change of an account, of its squads, or of a device, but for when it was seen
  bool operator==(const Versions&) const = default;
};

class Directory {
 public:
  virtual ~Directory() = default;
  virtual Result<Versions> versions() = 0;
  virtual Result<Lists> lists() = 0;
  // In place of what was there. Players who were erased are left out; how many.
  virtual Result<std::int64_t> keep(const Lists& lists, const std::string& when) = 0;
  // Off the lists at once; false where nobody of that id is on them.
  virtual Result<bool> forget(const std::string& player) = 0;
  // Of the database: another one, or one that was restored, has another. 32 hexadecimal digits.
  virtual Result<std::string> ledger_id() = 0;
};

Result<std::unique_ptr<Directory>> open_sqlite_directory(const std::string& file, Key key);
Result<std::unique_ptr<Directory>> open_postgres_directory(const std::string& where, const std::string& club, Key key);

}  // namespace lanework::store
