#include "app/read/files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <utility>

#include "core/catalogue/raised_limits.h"

namespace lanework::read {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kMostBytes = 16U << 20U;

// A file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() { close(); }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  [[nodiscard]] int number() const { return number_; }
  bool close() {
    const int closing = std::exchange(number_, -1);
    return closing < 0 || ::close(closing) == 0;
  }

 private:
  int number_;
};

// Where the user named a file, the fault stands there; else it stands at the file.
Fault unreadable(const std::string& path, const Place& from, const std::string& why) {
  if (from.file.empty()) {
    return Fault{FaultCode::kFileUnreadable, {path, 0, 0, {}}, why, "a file that can be read", {}};
  }
  return Fault{FaultCode::kFileUnreadable, from, quote(path) + ", " + why, "a file that can be read", {}};
}

std::string reason(int error) {
  switch (error) {
    case ENOENT:
    case ENOTDIR:
      return "no such file";
    case EACCES:
    case EPERM:
      return "a file that may not be read";
    default:
      return std::strerror(error);
  }
}

bool write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

// The name of the new file is on the disk only when its folder is.
bool flush_folder(const std::string& folder) {
  const Descriptor opened(::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  return opened.number() >= 0 && (::fsync(opened.number()) == 0 || errno == EINVAL);
}

void append(Faults& faults, const Faults& more) { faults.insert(faults.end(), more.begin(), more.end()); }

}  // namespace

std::optional<Fault> read_in_pieces(const std::string& path, const std::function<bool(std::string_view)>& take,
                                    const Place& from) {
  if (path.find('\0') != std::string::npos) return unreadable(path, from, "a name with a NUL");
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (file.number() < 0) return unreadable(path, from, reason(errno));
  struct stat about {};
  if (::fstat(file.number(), &about) != 0) return unreadable(path, from, reason(errno));
  if (S_ISDIR(about.st_mode)) return unreadable(path, from, "a folder");
  if (!S_ISREG(about.st_mode)) return unreadable(path, from, "not a plain file");
  std::array<char, 65536> block{};
  while (true) {
    const ssize_t count = ::read(file.number(), block.data(), block.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return unreadable(path, from, reason(errno));
    if (count == 0 || !take({block.data(), static_cast<std::size_t>(count)})) return {};
  }
}

Result<std::string> read_file(const std::string& path, const Place& from) {
  std::string bytes;
  const auto take = [&bytes](std::string_view piece) {
    bytes += piece;
    return bytes.size() <= kMostBytes;
  };
  if (std::optional<Fault> fault = read_in_pieces(path, take, from)) return std::move(*fault);
  if (bytes.size() > kMostBytes) return unreadable(path, from, "more than 16 MB");
  return bytes;
}

std::optional<Fault> write_file_atomically(const std::string& path, std::string_view bytes) {
  const auto cannot = [&path](const std::string& why) {
    return Fault{FaultCode::kCannotWrite, {path, 0, 0, {}}, why, "a place that can be written", {}};
  };
  if (fs::is_directory(fs::status(path))) return cannot("a folder");
  std::string temporary = path + ".XXXXXX";
  Descriptor file(::mkostemp(temporary.data(), O_CLOEXEC));
  if (file.number() < 0) return cannot(reason(errno));
  const mode_t hidden = ::umask(0);
  ::umask(hidden);
  const bool written = ::fchmod(file.number(), 0666 & ~hidden) == 0 && write_all(file.number(), bytes) &&
                       ::fsync(file.number()) == 0 && file.close() && ::rename(temporary.c_str(), path.c_str()) == 0;
  if (!written) {
    const std::string why = reason(errno);
    ::unlink(temporary.c_str());
    return cannot(why);
  }
  if (!flush_folder(fs::path(path).parent_path().string())) return cannot(reason(errno));
  return {};
}

Result<Document> read_toml_file(const std::string& path, const Place& from) {
  const Result<std::string> bytes = read_file(path, from);
  if (!bytes) return bytes.faults();
  return parse_toml(path, bytes.value());
}

std::vector<std::string> files_in(const std::string& folder, std::string_view ending) {
  std::vector<std::string> paths;
  std::error_code error;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error)) {
    const std::string name = entry->path().filename().string();
    const bool hidden = name.front() == '.';
    if (!hidden && entry->path().extension() == ending) paths.push_back(entry->path().string());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

Result<catalogue::CatalogueDocuments> read_catalogue_folders(const std::vector<std::string>& folders,
                                                             const Place& from) {
  catalogue::CatalogueDocuments documents;
  const std::array<std::pair<const char*, Document*>, 4> tables = {{{"families.toml", &documents.families},
                                                                    {"limits.toml", &documents.limits},
                                                                    {"gaits.toml", &documents.gaits},
                                                                    {"sources.toml", &documents.sources}}};
  Faults faults;
  for (std::size_t i = 0; i < folders.size(); ++i) {
    const fs::path folder(folders[i]);
    if (!fs::is_directory(fs::status(folder))) {
      Fault fault = unreadable(folders[i], i == 0 ? Place{} : from, "no such folder");
      fault.expected = "a folder of drills";
      faults.push_back(std::move(fault));
      continue;
    }
    for (const auto& [name, document] : tables) {
      const std::string path = (folder / name).string();
      if (i > 0 && !fs::exists(fs::status(path))) continue;
      Result<Document> table = read_toml_file(path);
      if (table && i > 0 && document == &documents.limits) {
        append(faults, catalogue::raised_limits(documents.limits, table.value()));
      }
      if (table) *document = std::move(table.value());
      if (!table) append(faults, table.faults());
    }
    std::vector<std::string> paths = files_in((folder / "drills").string(), ".toml");
    if (i > 0 && paths.empty()) paths = files_in(folder.string(), ".toml");
    for (const std::string& path : paths) {
      const auto is_table = [&path](const auto& table) { return fs::path(path).filename() == table.first; };
      if (std::any_of(tables.begin(), tables.end(), is_table)) continue;
      Result<Document> drill = read_toml_file(path);
      if (drill) documents.drills.push_back(std::move(drill.value()));
      if (!drill) append(faults, drill.faults());
    }
  }
  if (!faults.empty()) return faults;
  return documents;
}

}  // namespace lanework::read
