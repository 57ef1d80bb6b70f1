// A backup of a store that goes on being written, and the way back. docs/model/custody.md says what is promised and how
// it is tested; docs/formats/backup.md what lies in the file.
#pragma once

#include <optional>
#include <string>

#include "app/store/archive/erasure_list.h"
#include "app/store/archive/read_archive.h"
#include "app/store/archive/rows.h"

namespace lanework::store::archive {

// Writes the file under another name, reads it back from there and checks all of it while its own key is still known,
// then gives it its name. made: the clock with its offset. Faults: something has that name; it cannot be written; the
// store cannot be read, or its books do not hold (then the backups before it are the ones to keep).
Result<Contents> make_backup(Snapshot& from, const Key& key, const PublicKey& to, const std::string& file,
                             const std::string& made);

struct Restored {
  Contents contents;
  ErasureList erased;  // whom the new store knows as erased: the list that goes with it
};

// Fills a new store with it and reads that back; the caller keeps it, or lets it go. erased: people whose keys never
// get to the new store, and who cannot be entered there again; empty: nobody but whom the backup knows as erased.
Result<Restored> restore_backup(const std::string& file, const Key& private_key, const Key& key,
                                const std::optional<ErasureList>& erased, NewStore& into);

}  // namespace lanework::store::archive
