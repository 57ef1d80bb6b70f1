#include "tests/store/failing_vfs.h"

#include <sqlite3.h>

#include <algorithm>
#include <cstring>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace lanework::store::test {
namespace {

FailingVfs* active = nullptr;

// SQLite's room for an open file: ours, and behind it the machine's.
struct OpenFile {
  sqlite3_file base;
  FailingVfs::Image* image;  // null: of no lasting file
  sqlite3_file* real;
};

OpenFile& ours(sqlite3_file* file) { return *reinterpret_cast<OpenFile*>(file); }
sqlite3_file* real(sqlite3_file* file) { return ours(file).real; }
sqlite3_vfs* machine(sqlite3_vfs* vfs) { return static_cast<sqlite3_vfs*>(vfs->pAppData); }

bool is_short() { return active->how() == FailingVfs::How::kShort; }

int close_file(sqlite3_file* file) {
  return real(file)->pMethods == nullptr ? SQLITE_OK : real(file)->pMethods->xClose(real(file));
}

int read_file(sqlite3_file* file, void* into, int count, sqlite3_int64 at) {
  if (active->fails_now()) {
    std::memset(into, 0, static_cast<std::size_t>(count));
    return is_short() ? SQLITE_IOERR_SHORT_READ : SQLITE_IOERR_READ;
  }
  return real(file)->pMethods->xRead(real(file), into, count, at);
}

int write_file(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 at) {
  const FailingVfs::Change change{FailingVfs::Change::Kind::kWrite, static_cast<std::size_t>(at),
                                  std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(count))};
  const bool was_on = !active->failed();
  if (active->fails_now()) {
    // Half of it is on its way.
    if (was_on) active->change(ours(file).image, change);
    if (was_on && active->how() != FailingVfs::How::kOff) {
      real(file)->pMethods->xWrite(real(file), bytes, count / 2, at);
    }
    return is_short() ? SQLITE_FULL : SQLITE_IOERR_WRITE;
  }
  active->change(ours(file).image, change);
  return real(file)->pMethods->xWrite(real(file), bytes, count, at);
}

int cut_file(sqlite3_file* file, sqlite3_int64 length) {
  if (active->fails_now()) return SQLITE_IOERR_TRUNCATE;
  active->change(ours(file).image, {FailingVfs::Change::Kind::kCut, static_cast<std::size_t>(length), {}});
  return real(file)->pMethods->xTruncate(real(file), length);
}

int flush_file(sqlite3_file* file, int flags) {
  if (active->fails_now()) return SQLITE_IOERR_FSYNC;
  active->flushed(ours(file).image);
  // The test is about what is asked to be flushed; the machine's own disk need not be waited for.
  static_cast<void>(flags);
  return SQLITE_OK;
}

int size_of_file(sqlite3_file* file, sqlite3_int64* size) { return real(file)->pMethods->xFileSize(real(file), size); }
int lock_file(sqlite3_file* file, int level) { return real(file)->pMethods->xLock(real(file), level); }
int unlock_file(sqlite3_file* file, int level) { return real(file)->pMethods->xUnlock(real(file), level); }
int is_reserved(sqlite3_file* file, int* out) { return real(file)->pMethods->xCheckReservedLock(real(file), out); }
int control_file(sqlite3_file* file, int what, void* with) {
  return real(file)->pMethods->xFileControl(real(file), what, with);
}
int sector_size(sqlite3_file* file) { return real(file)->pMethods->xSectorSize(real(file)); }
int traits(sqlite3_file* file) { return real(file)->pMethods->xDeviceCharacteristics(real(file)); }
int map_shared(sqlite3_file* file, int region, int size, int extend, void volatile** out) {
  return real(file)->pMethods->xShmMap(real(file), region, size, extend, out);
}
int lock_shared(sqlite3_file* file, int offset, int count, int flags) {
  return real(file)->pMethods->xShmLock(real(file), offset, count, flags);
}
void barrier(sqlite3_file* file) { real(file)->pMethods->xShmBarrier(real(file)); }
int unmap_shared(sqlite3_file* file, int remove) { return real(file)->pMethods->xShmUnmap(real(file), remove); }

const sqlite3_io_methods kMethods = {
    2,           close_file,  read_file,    write_file,   cut_file,    flush_file, size_of_file,
    lock_file,   unlock_file, is_reserved,  control_file, sector_size, traits,     map_shared,
    lock_shared, barrier,     unmap_shared, nullptr,      nullptr};

int open_file(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* out_flags) {
  OpenFile& opened = ours(file);
  opened.base.pMethods = nullptr;
  opened.image = nullptr;
  opened.real = reinterpret_cast<sqlite3_file*>(reinterpret_cast<char*>(file) + sizeof(OpenFile));
  opened.real->pMethods = nullptr;
  if (active->fails_now()) return SQLITE_CANTOPEN;
  if (name != nullptr && (flags & (SQLITE_OPEN_MAIN_DB | SQLITE_OPEN_WAL | SQLITE_OPEN_MAIN_JOURNAL)) != 0) {
    opened.image = active->image_of(name);
  }
  const int code = machine(vfs)->xOpen(machine(vfs), name, opened.real, flags, out_flags);
  if (code == SQLITE_OK || opened.real->pMethods != nullptr) opened.base.pMethods = &kMethods;
  return code;
}

int delete_file(sqlite3_vfs* vfs, const char* name, int flush_folder) {
  if (active->fails_now()) return SQLITE_IOERR_DELETE;
  FailingVfs::Image* image = active->image_of(name);
  active->change(image, {FailingVfs::Change::Kind::kRemove, 0, {}});
  if (flush_folder != 0) active->flushed(image);
  return machine(vfs)->xDelete(machine(vfs), name, 0);
}

sqlite3_vfs layer;

void apply(std::optional<std::string>& content, const FailingVfs::Change& change, std::size_t from, std::size_t to) {
  if (!content) content = std::string();
  if (content->size() < change.at + to) content->resize(change.at + to, '\0');
  content->replace(change.at + from, to - from, change.bytes, from, to - from);
}

void apply(std::optional<std::string>& content, const FailingVfs::Change& change) {
  switch (change.kind) {
    case FailingVfs::Change::Kind::kWrite:
      return apply(content, change, 0, change.bytes.size());
    case FailingVfs::Change::Kind::kCut:
      if (content) content->resize(change.at, '\0');
      return;
    case FailingVfs::Change::Kind::kRemove:
      content.reset();
      return;
  }
}

}  // namespace

FailingVfs::FailingVfs() {
  if (active != nullptr) throw std::logic_error("one at a time");
  active = this;
  sqlite3_vfs* found = sqlite3_vfs_find(nullptr);
  layer = *found;
  layer.zName = "lanework-failing";
  layer.pAppData = found;
  layer.pNext = nullptr;
  layer.szOsFile = static_cast<int>(sizeof(OpenFile)) + found->szOsFile;
  layer.xOpen = open_file;
  layer.xDelete = delete_file;
  sqlite3_vfs_register(&layer, 1);
}

FailingVfs::~FailingVfs() {
  sqlite3_vfs_unregister(&layer);
  sqlite3_vfs_register(static_cast<sqlite3_vfs*>(layer.pAppData), 1);
  active = nullptr;
}

void FailingVfs::fail(int nth, How how, bool from_there_on) {
  calls_ = 0;
  failed_ = false;
  fail_at_ = nth;
  how_ = how;
  from_there_on_ = from_there_on || how == How::kOff;
}

void FailingVfs::stop() { fail_at_ = 0; }

bool FailingVfs::fails_now() {
  ++calls_;
  if (fail_at_ == 0 || calls_ < fail_at_ || (calls_ > fail_at_ && !from_there_on_)) return false;
  failed_ = true;
  return true;
}

FailingVfs::Image* FailingVfs::image_of(const std::string& path) {
  const auto found = images_.find(path);
  if (found != images_.end()) return &found->second;
  Image& image = images_[path];
  std::ifstream in(path, std::ios::binary);
  std::ostringstream bytes;
  if (in) {
    bytes << in.rdbuf();
    image.flushed = bytes.str();
  }
  return &image;
}

void FailingVfs::change(Image* image, Change change) const {
  if (image != nullptr) image->later.push_back(std::move(change));
}

// SQLite flushes the folder, too, when it flushes a file that it made.
void FailingVfs::flushed(Image* image) const {
  if (image == nullptr) return;
  for (const Change& change : image->later) apply(image->flushed, change);
  if (!image->flushed && (image->later.empty() || image->later.back().kind != Change::Kind::kRemove)) {
    image->flushed = std::string();
  }
  image->later.clear();
}

std::map<std::string, std::string> FailingVfs::survivors(std::mt19937& random) const {
  std::map<std::string, std::string> out;
  const std::size_t sector = random() % 2 == 0 ? 512 : 4096;
  const auto share = random() % 5;  // of four: none of what was not flushed, ... all of it
  const auto survives = [&] { return random() % 4 < share; };
  for (const auto& [path, image] : images_) {
    std::optional<std::string> content = image.flushed;
    for (const Change& change : image.later) {
      if (change.kind == Change::Kind::kRemove) {
        if (!survives()) break;  // the old file is still there, and whatever was made anew is not
        content.reset();
        continue;
      }
      if (change.kind == Change::Kind::kCut) {
        if (survives()) apply(content, change);
        continue;
      }
      for (std::size_t from = 0; from < change.bytes.size();) {
        const std::size_t to = std::min(change.bytes.size(), from + sector - (change.at + from) % sector);
        if (survives()) apply(content, change, from, to);
        from = to;
      }
    }
    if (content) out[path] = *content;
  }
  return out;
}

}  // namespace lanework::store::test
