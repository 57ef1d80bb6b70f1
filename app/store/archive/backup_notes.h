// What was noted about backups, beside the ledger that they are of: when the last was written and when one was last
// checked. A note for whoever runs the club; no restore goes by it. A line of JSON each, docs/formats/backup.md.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"

namespace lanework::store::archive {

// Times with their offset; empty: nobody noted it.
struct BackupsNoted {
  std::string last;     // when the newest was written
  std::string file;     // its name, without the folder
  std::string checked;  // when one was last checked
  std::string of;       // when that one was written
};

// Lines that are none are passed over; where there is no such file nothing was noted.
BackupsNoted read_backup_notes(const std::string& notes);

// made: when the backup was written, as its header says; file: its name.
std::optional<Fault> note_backup(const std::string& notes, const std::string& made, const std::string& file);

// Faults: no backup written at that time is noted there; it cannot be written.
std::optional<Fault> note_checked(const std::string& notes, const std::string& made, const std::string& when);

}  // namespace lanework::store::archive
