// Goes through a backup from its header to its manifest, checks all of it, and hands the rows on.
#pragma once

#include "app/store/archive/inspector.h"
#include "app/store/archive/sealed_stream.h"

namespace lanework::store::archive {

// Takes what is read, as it comes; a fault ends the reading. What was taken counts only when all was read without one.
class RowTaker {
 public:
  virtual ~RowTaker() = default;
  virtual std::optional<Fault> header(const Header& header) = 0;
  virtual std::optional<Fault> table(const Table& table) = 0;
  virtual std::optional<Fault> row(const Cells& cells) = 0;  // of the last table
};

struct Contents {
  Header header;
  Manifest manifest;
  Findings findings;
};

// key: the store's. Faults: whatever is not as 'make_backup' writes it: a byte, a row too many or too few, a link, a
// head that is another than the manifest's, a witness under another key, something sealed that does not open.
Result<Contents> read_archive(OpeningReader& from, const Key& key, RowTaker& taker);

}  // namespace lanework::store::archive
