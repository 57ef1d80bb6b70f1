#include "app/planning/club_documents.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <set>
#include <system_error>

#include "app/planning/club_lists.h"
#include "app/read/club_folder.h"
#include "app/read/files.h"
#include "app/store/sealing.h"

namespace lanework::planning {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kDigestDigits = 32;
constexpr std::size_t kMostPathBytes = 100;

const std::vector<std::string>& folders() {
  static const std::vector<std::string> kFolders = {"squads", "strips", "routines", "venues", "drills"};
  return kFolders;
}

// 'u13-kestrels': small letters, digits and dashes between them.
bool is_stem(const std::string& stem) {
  const auto good = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
  return !stem.empty() && stem.front() != '-' && stem.back() != '-' && std::all_of(stem.begin(), stem.end(), good);
}

bool ends_with(const std::string& text, const std::string& end) {
  return text.size() > end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

Fault cannot_write(const std::string& folder, const std::string& why) {
  return {FaultCode::kCannotWrite, {folder, 0, 0, {}}, why, "a folder that can be written", {}};
}

// One at a time, in this process and beside it.
class FolderLock {
 public:
  explicit FolderLock(const fs::path& beside)
      : file_(::open((beside.string() + ".lock").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600)) {
    held_ = file_ >= 0 && ::flock(file_, LOCK_EX) == 0;
  }
  ~FolderLock() {
    if (file_ >= 0) ::close(file_);
  }
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;
  [[nodiscard]] bool held() const { return held_; }

 private:
  int file_;
  bool held_ = false;
};

// The club as it is to be, beside the one that is there: what does not change is the same file.
class Staged {
 public:
  explicit Staged(const fs::path& club) : club_(club), path_(club.string() + ".XXXXXX") {
    if (::mkdtemp(path_.data()) == nullptr) path_.clear();
  }
  ~Staged() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove_all(path_, ignored);
  }
  Staged(const Staged&) = delete;
  Staged& operator=(const Staged&) = delete;
  [[nodiscard]] const std::string& path() const { return path_; }

  std::optional<Fault> fill() {
    if (path_.empty()) return cannot_write(club_.string(), "no folder can be made beside it");
    std::error_code error;
    if (!fs::exists(club_, error)) return {};
    for (fs::recursive_directory_iterator at(club_, error), end; !error && at != end; at.increment(error)) {
      const fs::path to = fs::path(path_) / at->path().lexically_relative(club_);
      if (at->is_directory(error)) {
        fs::create_directories(to, error);
      } else {
        fs::create_hard_link(at->path(), to, error);
      }
      if (error) break;
    }
    return error ? std::optional<Fault>(cannot_write(club_.string(), error.message())) : std::nullopt;
  }

  // Never through the link: the file that is there stays as it is.
  std::optional<Fault> apply(const DocumentChange& change) {
    const fs::path file = fs::path(path_) / change.path;
    std::error_code error;
    fs::remove(file, error);
    if (!change.text) return {};
    fs::create_directories(file.parent_path(), error);
    return read::write_file_atomically(file.string(), *change.text);
  }

  // In one step: whoever opens the club's folder finds the one or the other.
  std::optional<Fault> become_the_club() {
    std::error_code error;
    if (::chmod(path_.c_str(), 0755) != 0) return cannot_write(club_.string(), "its rights cannot be set");
    const bool there = fs::exists(club_, error);
    const unsigned how = there ? RENAME_EXCHANGE : RENAME_NOREPLACE;
    if (::renameat2(AT_FDCWD, path_.c_str(), AT_FDCWD, club_.c_str(), how) != 0) {
      return cannot_write(club_.string(), "it cannot be exchanged for another in one step");
    }
    if (!there) path_.clear();
    return {};
  }

 private:
  fs::path club_;
  std::string path_;
};

ClubDocument document_of(const std::string& path, const std::string& bytes) {
  ClubDocument out{path, digest_of_document(bytes), {}};
  if (!ends_with(path, ".toml") || path == "restrictions.toml") return out;  // those name children
  auto read = parse_toml(path, bytes);
  if (read) out.content = std::move(read.value().root);
  return out;
}

// Empty: it is not there.
Result<std::optional<ClubDocument>> document_at(const fs::path& club, const std::string& path) {
  std::error_code error;
  if (!fs::exists(club / path, error)) return std::optional<ClubDocument>();
  const auto bytes = read::read_file((club / path).string());
  if (!bytes) return bytes.faults();
  return std::optional<ClubDocument>(document_of(path, bytes.value()));
}

Faults faults_of_changes(const std::vector<DocumentChange>& changes) {
  Faults out;
  std::set<std::string> seen;
  if (changes.empty() || changes.size() > kMostChanges) {
    out.push_back({FaultCode::kOutOfRange,
                   {"", 0, 0, "changes"},
                   std::to_string(changes.size()) + " changes",
                   "1 to " + std::to_string(kMostChanges),
                   {}});
  }
  for (const DocumentChange& change : changes) {
    if (!is_club_path(change.path)) {
      out.push_back({FaultCode::kUnknownName,
                     {"", 0, 0, "path"},
                     quote(change.path),
                     "a document of the club, such as squads/u13-kestrels.toml",
                     {}});
    } else if (!seen.insert(change.path).second) {
      out.push_back({FaultCode::kDuplicate, {"", 0, 0, "path"}, quote(change.path), "each document once", {}});
    }
    if (change.text && change.text->size() > kMostDocumentBytes) {
      out.push_back({FaultCode::kOutOfRange,
                     {change.path, 0, 0, {}},
                     std::to_string(change.text->size()) + " bytes",
                     "at most " + std::to_string(kMostDocumentBytes),
                     {}});
    }
  }
  return out;
}

// As the lead knows the files: within the club's folder.
Faults within(Faults faults, const std::string& folder) {
  for (Fault& fault : faults) {
    std::string& file = fault.place.file;
    if (file.compare(0, folder.size() + 1, folder + "/") == 0) file.erase(0, folder.size() + 1);
  }
  return faults;
}

// Of the club's own drills, also where no squad has them yet.
Faults faults_of_own_drills(const std::string& club, const std::string& shipped) {
  if (read::files_in(club + "/drills", ".toml").empty()) return {};
  const auto documents = read::read_catalogue_folders({shipped, club});
  if (!documents) return documents.faults();
  const auto catalogue = catalogue::read_catalogue(documents.value());
  return catalogue ? Faults() : catalogue.faults();
}

// What is other than the changes think.
Result<std::vector<ClubDocument>> changed_meanwhile(const fs::path& club, const std::vector<DocumentChange>& changes) {
  std::vector<ClubDocument> out;
  for (const DocumentChange& change : changes) {
    auto there = document_at(club, change.path);
    if (!there) return there.faults();
    const std::string digest = there.value() ? there.value()->digest : std::string();
    if (digest == change.instead_of) continue;
    out.push_back(there.value() ? std::move(*there.value()) : ClubDocument{change.path, {}, {}});
  }
  return out;
}

// 'roster.csv', 'roster-2027.csv': beside club.toml.
bool is_roster_path(const std::string& path) {
  return path.size() <= kMostPathBytes && path.rfind("roster", 0) == 0 && ends_with(path, ".csv") &&
         is_stem(path.substr(0, path.size() - 4));
}

}  // namespace

std::string digest_of_document(const std::string& bytes) {
  std::string out;
  for (const char c : store::digest_of(bytes)) {
    std::array<char, 3> digits{};
    std::snprintf(digits.data(), digits.size(), "%02x", static_cast<unsigned>(static_cast<unsigned char>(c)));
    out += digits.data();
  }
  return out.substr(0, kDigestDigits);
}

Result<std::optional<Roster>> club_roster(const std::string& club, const std::string& name) {
  if (!is_roster_path(name) || !fs::exists(fs::path(club) / name)) return std::optional<Roster>();
  auto bytes = read::read_file((fs::path(club) / name).string());
  if (!bytes) return bytes.faults();
  std::string digest = digest_of_document(bytes.value());
  return std::optional<Roster>({name, std::move(digest), std::move(bytes).value()});
}

bool is_club_path(const std::string& path) {
  if (path.size() > kMostPathBytes) return false;
  const std::size_t slash = path.find('/');
  if (slash == std::string::npos) {
    const std::set<std::string> alone = {"club.toml", "coaches.toml", "emphasis.toml", "restrictions.toml"};
    return alone.count(path) > 0 || is_roster_path(path);
  }
  const std::string folder = path.substr(0, slash);
  const std::string name = path.substr(slash + 1);
  return std::find(folders().begin(), folders().end(), folder) != folders().end() && ends_with(name, ".toml") &&
         is_stem(name.substr(0, name.size() - 5));
}

Result<std::vector<ClubDocument>> club_documents(const std::string& club) {
  std::vector<std::string> paths;
  std::error_code error;
  if (!fs::exists(club, error)) return std::vector<ClubDocument>();
  for (fs::recursive_directory_iterator at(club, error), end; !error && at != end; at.increment(error)) {
    const std::string path = at->path().lexically_relative(club).generic_string();
    if (at->is_regular_file(error) && is_club_path(path)) paths.push_back(path);
  }
  if (error)
    return Fault{FaultCode::kFileUnreadable, {club, 0, 0, {}}, error.message(), "a folder that can be read", {}};
  std::sort(paths.begin(), paths.end());
  std::vector<ClubDocument> out;
  for (const std::string& path : paths) {
    auto document = document_at(club, path);
    if (!document) return document.faults();
    if (document.value()) out.push_back(std::move(*document.value()));
  }
  return out;
}

Result<ChangedClub> change_club(const PlanningFiles& files, const std::vector<DocumentChange>& changes) {
  if (Faults faults = faults_of_changes(changes); !faults.empty()) return faults;
  std::error_code error;
  const fs::path given = fs::path(files.club).lexically_normal();
  const fs::path club = fs::exists(given, error) ? fs::canonical(given, error) : fs::absolute(given, error);
  const FolderLock lock(club);
  if (!lock.held()) return cannot_write(club.string(), "nothing can be written beside it");
  ChangedClub out;
  auto meanwhile = changed_meanwhile(club, changes);
  if (!meanwhile) return meanwhile.faults();
  out.meanwhile = std::move(meanwhile).value();
  if (!out.meanwhile.empty()) return out;

  Staged staged(club);
  if (const auto fault = staged.fill()) return *fault;
  for (const DocumentChange& change : changes) {
    if (const auto fault = staged.apply(change)) return *fault;
  }
  const read::ClubFolder folder = read::read_club_folder(staged.path(), files.catalogue);
  if (!folder.faults.empty()) return within(folder.faults, staged.path());
  if (Faults faults = faults_of_own_drills(staged.path(), files.catalogue); !faults.empty()) {
    return within(std::move(faults), staged.path());
  }
  if (const auto fault = staged.become_the_club()) return *fault;
  out.lists = lists_of(folder.club);
  for (const DocumentChange& change : changes) {
    if (change.text) out.now.push_back(document_of(change.path, *change.text));
  }
  return out;
}

}  // namespace lanework::planning
