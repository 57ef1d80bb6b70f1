// What the board was given, as it was given: never changed, never deleted. What was counted for it is sealed under the
// store's key, and bound to what was shown.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "app/store/sealing.h"
#include "core/base/result.h"

namespace lanework::store {

struct KeptRelease {
  std::int64_t number = 0;  // from 1 without gaps
  std::string shown;        // JSON
  std::string counted;      // JSON, for the audit alone
  bool operator==(const KeptRelease&) const = default;
};

class Releases {
 public:
  virtual ~Releases() = default;
  // By number. A fault, too: what was shown is not what was kept.
  virtual Result<std::vector<KeptRelease>> all() = 0;
  // False where the number is not the next: another one was kept meanwhile.
  virtual Result<bool> keep(const KeptRelease& release) = 0;
};

Result<std::unique_ptr<Releases>> open_sqlite_releases(const std::string& file, Key key);
Result<std::unique_ptr<Releases>> open_postgres_releases(const std::string& where, const std::string& club, Key key);

}  // namespace lanework::store
