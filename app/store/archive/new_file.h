// Files that are there whole, on the disk, or not at all; and small ones that are read.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace lanework::store::archive {

// A file under a temporary name beside its own, mode 0600; gone again unless it is kept.
class NewFile {
 public:
  // Faults: something has that name already; the folder cannot be written.
  static Result<NewFile> beside(const std::string& file);
  NewFile(NewFile&& other) noexcept;
  NewFile& operator=(NewFile&&) = delete;
  NewFile(const NewFile&) = delete;
  NewFile& operator=(const NewFile&) = delete;
  ~NewFile();

  std::optional<Fault> write(std::string_view bytes);
  std::optional<Fault> flush();  // to the disk
  std::optional<Fault> keep();   // under its own name, and its folder on the disk
  [[nodiscard]] const std::string& temporary() const { return temporary_; }

 private:
  NewFile(std::string file, std::string temporary, int number);
  std::string file_;
  std::string temporary_;
  int number_;
};

// At most 16 MiB.
Result<std::string> read_small_file(const std::string& file);
// A fault where something has the name already.
std::optional<Fault> write_new_file(const std::string& file, std::string_view bytes, unsigned mode);
bool flush_folder_of(const std::string& file);
Fault cannot_write(const std::string& file, const std::string& why);

}  // namespace lanework::store::archive
