#include "app/store/archive/backup_keys.h"

#include <sodium.h>
#include <sys/stat.h>

#include <algorithm>
#include <filesystem>

#include "app/store/archive/new_file.h"
#include "app/store/archive/records.h"

namespace lanework::store::archive {
namespace {

namespace fs = std::filesystem;

const std::string kPublic = "lanework backup public key 1 ";
const std::string kPrivate = "lanework backup private key 1 ";

Fault cannot_read(const std::string& file, std::string found, std::string expected) {
  return {FaultCode::kFileUnreadable, {file, 0, 0, {}}, std::move(found), std::move(expected), {}};
}

// The 32 bytes behind the words.
Result<std::string> key_bytes(const std::string& file, const std::string& words, const std::string& expected) {
  auto text = read_small_file(file);
  if (!text) return text.faults();
  std::string line = std::move(text).value();
  if (!line.empty() && line.back() == '\n') line.pop_back();
  const bool named = line.rfind(words, 0) == 0;
  auto bytes = named ? bytes_of_hex(line.substr(words.size())) : std::nullopt;
  sodium_memzero(line.data(), line.size());
  if (!bytes || bytes->size() != kKeyBytes) return cannot_read(file, "a file of another content", expected);
  return std::move(*bytes);
}

}  // namespace

Result<PublicKey> read_public_key(const std::string& file) {
  const auto bytes = key_bytes(file, kPublic, "the public key of backups: backup.public of 'lanework backup keys'");
  if (!bytes) return bytes.faults();
  PublicKey out{};
  std::copy(bytes.value().begin(), bytes.value().end(), out.begin());
  return out;
}

Result<Key> read_private_key(const std::string& file) {
  const std::string expected = "the private key of backups, mode 0400: backup.private of 'lanework backup keys'";
  auto bytes = key_bytes(file, kPrivate, expected);
  if (!bytes) return bytes.faults();
  struct stat state {};
  if (::stat(file.c_str(), &state) != 0 || (state.st_mode & 077U) != 0) {
    return cannot_read(file, "a file that others may read", expected);
  }
  auto key = Key::of(bytes.value());
  sodium_memzero(bytes.value().data(), bytes.value().size());
  return std::move(*key);
}

std::optional<Faults> make_backup_keys(const std::string& folder) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) {
    return Faults{{FaultCode::kCannotWrite, {folder, 0, 0, {}}, error.message(), "a folder that can be made", {}}};
  }
  const Key key = Key::made();
  const PublicKey open = public_of(key);
  std::string secret = kPrivate + hex_of(bytes_text(key)) + "\n";
  const std::string private_file = (fs::path(folder) / "backup.private").string();
  auto fault = write_new_file(private_file, secret, 0400);
  sodium_memzero(secret.data(), secret.size());
  if (fault) return Faults{*fault};
  fault = write_new_file((fs::path(folder) / "backup.public").string(),
                         kPublic + hex_of({open.begin(), open.end()}) + "\n", 0444);
  if (!fault) return {};
  fs::remove(private_file, error);
  return Faults{*fault};
}

PublicKey public_of(const Key& private_key) {
  PublicKey out{};
  crypto_scalarmult_base(out.data(), private_key.bytes().data());
  return out;
}

}  // namespace lanework::store::archive
