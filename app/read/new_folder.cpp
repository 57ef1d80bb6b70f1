#include "app/read/new_folder.h"

#include <sys/stat.h>

#include <cstdlib>
#include <filesystem>
#include <system_error>

#include "app/read/files.h"

namespace lanework::read {
namespace {

namespace fs = std::filesystem;

Fault cannot(const std::string& folder, const std::string& why, const std::string& expected) {
  return {FaultCode::kCannotWrite, {folder, 0, 0, {}}, why, expected, {}};
}

// Taken away again unless it has been renamed.
class TemporaryFolder {
 public:
  explicit TemporaryFolder(const std::string& beside) : path_(beside + ".XXXXXX") {
    if (::mkdtemp(path_.data()) == nullptr) path_.clear();
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  [[nodiscard]] const std::string& path() const { return path_; }
  // As open as a folder made by hand.
  bool become(const std::string& folder) {
    const mode_t hidden = ::umask(0);
    ::umask(hidden);
    std::error_code error;
    if (::chmod(path_.c_str(), 0777 & ~hidden) != 0) return false;
    fs::rename(path_, folder, error);
    if (error) return false;
    path_.clear();
    return true;
  }

 private:
  std::string path_;
};

}  // namespace

Faults write_folder_atomically(const std::string& folder, const std::map<std::string, std::string>& files,
                               const std::function<Faults(const std::string& temporary)>& judge) {
  std::string name = folder;
  while (name.size() > 1 && name.back() == '/') name.pop_back();
  std::error_code error;
  if (fs::exists(fs::symlink_status(name, error))) {
    return {cannot(name, "something that is there already", "a folder that does not exist yet")};
  }
  TemporaryFolder temporary(name);
  if (temporary.path().empty()) return {cannot(name, "no folder can be made there", "a place that can be written")};
  for (const auto& [file, bytes] : files) {
    const fs::path path = fs::path(temporary.path()) / file;
    fs::create_directories(path.parent_path(), error);
    if (error) return {cannot(name, error.message(), "a place that can be written")};
    if (const auto fault = write_file_atomically(path.string(), bytes)) return {*fault};
  }
  Faults faults = judge(temporary.path());
  if (!faults.empty()) return faults;
  if (!temporary.become(name)) return {cannot(name, "a folder that cannot be renamed", "a place that can be written")};
  return {};
}

}  // namespace lanework::read
