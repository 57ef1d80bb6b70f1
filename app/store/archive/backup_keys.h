// The pair of keys of backups: whoever has the public one can write a backup, only the private one opens it. The
// private one has no place on the machine that writes backups. X25519, libsodium's.
#pragma once

#include <array>
#include <cstdint>
#include <string>

#include "app/store/sealing.h"
#include "core/base/result.h"

namespace lanework::store::archive {

using PublicKey = std::array<std::uint8_t, 32>;

// Files of one line that say what they are, so that neither is taken for the other nor for the store's own key. Faults:
// not there, of another content; the private one also where others may read it.
Result<PublicKey> read_public_key(const std::string& file);
Result<Key> read_private_key(const std::string& file);

// Makes the folder where there is none, and in it backup.public and backup.private (mode 0400); a fault where either is
// there already.
std::optional<Faults> make_backup_keys(const std::string& folder);

PublicKey public_of(const Key& private_key);

}  // namespace lanework::store::archive
