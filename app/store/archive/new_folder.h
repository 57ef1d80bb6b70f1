// A folder that is there whole or not at all: under a temporary name beside its own until it is kept, gone otherwise.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"

namespace lanework::store::archive {

class NewFolder {
 public:
  // Faults: something has that name, other than an empty folder; the folder above cannot be written.
  static Result<NewFolder> beside(const std::string& folder);
  // One that is never kept, where this machine keeps temporary files.
  static Result<NewFolder> scratch();
  NewFolder(NewFolder&& other) noexcept;
  NewFolder& operator=(NewFolder&&) = delete;
  NewFolder(const NewFolder&) = delete;
  NewFolder& operator=(const NewFolder&) = delete;
  ~NewFolder();

  [[nodiscard]] const std::string& now() const { return now_; }  // where its files go until it is kept
  std::optional<Fault> keep();                                   // names of its files are on the disk first

 private:
  NewFolder(std::string folder, std::string now);
  std::string folder_;
  std::string now_;  // empty: kept
};

}  // namespace lanework::store::archive
