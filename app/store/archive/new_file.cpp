#include "app/store/archive/new_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <utility>

namespace lanework::store::archive {
namespace {

namespace fs = std::filesystem;

bool write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

Fault taken(const std::string& file) {
  return {FaultCode::kCannotWrite, {file, 0, 0, {}}, "something of that name", "a name that nothing has yet", {}};
}

}  // namespace

Fault cannot_write(const std::string& file, const std::string& why) {
  return {FaultCode::kCannotWrite, {file, 0, 0, {}}, why, "a place that can be written, with room", {}};
}

bool flush_folder_of(const std::string& file) {
  const fs::path folder = fs::path(file).parent_path();
  const int opened = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  const bool flushed = opened >= 0 && (::fsync(opened) == 0 || errno == EINVAL);
  if (opened >= 0) ::close(opened);
  return flushed;
}

NewFile::NewFile(std::string file, std::string temporary, int number)
    : file_(std::move(file)), temporary_(std::move(temporary)), number_(number) {}

NewFile::NewFile(NewFile&& other) noexcept
    : file_(std::move(other.file_)),
      temporary_(std::move(other.temporary_)),
      number_(std::exchange(other.number_, -1)) {
  other.temporary_.clear();
}

NewFile::~NewFile() {
  if (number_ >= 0) ::close(number_);
  if (!temporary_.empty()) ::unlink(temporary_.c_str());
}

Result<NewFile> NewFile::beside(const std::string& file) {
  std::error_code ignored;
  if (fs::exists(fs::symlink_status(file, ignored))) return taken(file);
  std::string temporary = file + ".XXXXXX";
  const int number = ::mkostemp(temporary.data(), O_CLOEXEC);
  if (number < 0) return cannot_write(file, std::strerror(errno));
  return NewFile(file, std::move(temporary), number);
}

std::optional<Fault> NewFile::write(std::string_view bytes) {
  if (write_all(number_, bytes)) return {};
  return cannot_write(file_, std::strerror(errno));
}

std::optional<Fault> NewFile::flush() {
  if (::fsync(number_) == 0) return {};
  return cannot_write(file_, std::strerror(errno));
}

std::optional<Fault> NewFile::keep() {
  std::error_code ignored;
  if (fs::exists(fs::symlink_status(file_, ignored))) return taken(file_);
  if (::rename(temporary_.c_str(), file_.c_str()) != 0) return cannot_write(file_, std::strerror(errno));
  temporary_.clear();
  if (!flush_folder_of(file_)) return cannot_write(file_, std::strerror(errno));
  return {};
}

Result<std::string> read_small_file(const std::string& file) {
  constexpr std::size_t kMost = 16U << 20U;
  const auto cannot = [&](const char* why) {
    return Fault{FaultCode::kFileUnreadable, {file, 0, 0, {}}, why, "a file that can be read", {}};
  };
  const int number = ::open(file.c_str(), O_RDONLY | O_CLOEXEC);
  if (number < 0) return cannot(std::strerror(errno));
  std::string out;
  std::array<char, 4096> block{};
  ssize_t count = 1;
  while (count > 0 && out.size() <= kMost) {
    count = ::read(number, block.data(), block.size());
    if (count > 0) out.append(block.data(), static_cast<std::size_t>(count));
  }
  const int error = errno;
  ::close(number);
  if (count < 0) return cannot(std::strerror(error));
  if (out.size() > kMost) return cannot("more than 16 MB");
  return out;
}

std::optional<Fault> write_new_file(const std::string& file, std::string_view bytes, unsigned mode) {
  const int number = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
  if (number < 0) return errno == EEXIST ? taken(file) : cannot_write(file, std::strerror(errno));
  const bool kept = write_all(number, bytes) && ::fsync(number) == 0;
  const int error = errno;
  ::close(number);
  if (kept && flush_folder_of(file)) return {};
  ::unlink(file.c_str());
  return cannot_write(file, std::strerror(error));
}

}  // namespace lanework::store::archive
