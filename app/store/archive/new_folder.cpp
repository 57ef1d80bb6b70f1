#include "app/store/archive/new_folder.h"

#include <stdlib.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <utility>

#include "app/store/archive/new_file.h"

namespace lanework::store::archive {
namespace {

namespace fs = std::filesystem;

}  // namespace

NewFolder::NewFolder(std::string folder, std::string now) : folder_(std::move(folder)), now_(std::move(now)) {}

NewFolder::NewFolder(NewFolder&& other) noexcept : folder_(std::move(other.folder_)), now_(std::move(other.now_)) {
  other.now_.clear();
}

NewFolder::~NewFolder() {
  std::error_code ignored;
  if (!now_.empty()) fs::remove_all(now_, ignored);
}

Result<NewFolder> NewFolder::beside(const std::string& folder) {
  fs::path path = fs::path(folder).lexically_normal();
  if (!path.has_filename()) path = path.parent_path();  // 'books/' is 'books'
  std::error_code error;
  const bool there = fs::exists(fs::symlink_status(path, error));
  if (there && !(fs::is_directory(path, error) && fs::is_empty(path, error))) {
    return Fault{
        FaultCode::kCannotWrite, {folder, 0, 0, {}}, "a place where something is", "a new or empty folder", {}};
  }
  std::string now = path.string() + ".restoring-XXXXXX";
  if (::mkdtemp(now.data()) == nullptr) return cannot_write(folder, std::strerror(errno));
  return NewFolder(path.string(), std::move(now));
}

Result<NewFolder> NewFolder::scratch() {
  std::error_code error;
  std::string now = (fs::temp_directory_path(error) / "lanework-check-XXXXXX").string();
  if (error || ::mkdtemp(now.data()) == nullptr) return cannot_write(now, std::strerror(errno));
  return NewFolder({}, std::move(now));
}

std::optional<Fault> NewFolder::keep() {
  const bool kept = flush_folder_of((fs::path(now_) / "file").string()) && ::rename(now_.c_str(), folder_.c_str()) == 0;
  if (!kept) return cannot_write(folder_, std::strerror(errno));
  now_.clear();
  if (!flush_folder_of(folder_)) return cannot_write(folder_, std::strerror(errno));
  return {};
}

}  // namespace lanework::store::archive
