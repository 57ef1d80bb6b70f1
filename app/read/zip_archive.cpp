#include "app/read/zip_archive.h"

#include <archive.h>
#include <archive_entry.h>

#include <memory>

namespace lanework::read {
namespace {

struct EndArchive {
  void operator()(archive* one) const { archive_write_free(one); }
};
struct EndEntry {
  void operator()(archive_entry* one) const { archive_entry_free(one); }
};

la_ssize_t take(archive* /*from*/, void* into, const void* bytes, std::size_t size) {
  static_cast<std::string*>(into)->append(static_cast<const char*>(bytes), size);
  return static_cast<la_ssize_t>(size);
}

bool add(archive* to, const ArchivedFile& file) {
  constexpr unsigned kForItsOwner = 0600;
  const std::unique_ptr<archive_entry, EndEntry> entry(archive_entry_new());
  archive_entry_set_pathname_utf8(entry.get(), file.name.c_str());
  archive_entry_set_filetype(entry.get(), AE_IFREG);
  archive_entry_set_perm(entry.get(), kForItsOwner);
  archive_entry_set_size(entry.get(), static_cast<la_int64_t>(file.bytes.size()));
  return archive_write_header(to, entry.get()) == ARCHIVE_OK &&
         archive_write_data(to, file.bytes.data(), file.bytes.size()) == static_cast<la_ssize_t>(file.bytes.size());
}

}  // namespace

Result<std::string> zip_of(const std::vector<ArchivedFile>& files) {
  std::string out;
  const std::unique_ptr<archive, EndArchive> zip(archive_write_new());
  const auto fault = [&] {
    const char* why = archive_error_string(zip.get());
    return Fault{FaultCode::kCannotWrite, {"", 0, 0, {}}, why == nullptr ? "no archive" : why, "a ZIP of files", {}};
  };
  const bool open = archive_write_set_format_zip(zip.get()) == ARCHIVE_OK &&
                    archive_write_set_bytes_in_last_block(zip.get(), 1) == ARCHIVE_OK &&
                    archive_write_open(zip.get(), &out, nullptr, take, nullptr) == ARCHIVE_OK;
  if (!open) return fault();
  for (const ArchivedFile& file : files) {
    if (!add(zip.get(), file)) return fault();
  }
  if (archive_write_close(zip.get()) != ARCHIVE_OK) return fault();
  return out;
}

}  // namespace lanework::read
