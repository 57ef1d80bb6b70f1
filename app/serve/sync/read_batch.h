// A batch as a device sends it, and what stands against each of its entries beyond what its kind says: another squad's,
// nobody of the club's, a clock that is far off. Kept aside, with the reason; never lost.
#pragma once

#include <string>
#include <vector>

#include "app/serve/now.h"
#include "app/store/store.h"
#include "core/access/viewer.h"

namespace lanework::serve::sync {

inline constexpr std::size_t kMostEntries = 500;
inline constexpr std::int64_t kMostAheadSeconds = 300;  // of the server's clock
inline constexpr std::int64_t kMostBehindDays = 14;     // without the lead

struct ReadBatch {
  store::Batch batch;
  std::vector<std::size_t> read;    // positions in what was sent of batch.entries
  std::vector<std::size_t> unread;  // of batch.unread
  std::vector<std::string> whys;    // of these
};

// list: what was sent as 'entries'.
ReadBatch read_batch(std::vector<Node> list, const store::Sender& sender, const access::Viewer& viewer,
                     const access::SquadsOfPlayer& players, const ledger::KindTable& kinds, const Now& now);

// Empty: nothing against it.
std::string why_aside(const ledger::Entry& entry, const access::Viewer& viewer, const access::SquadsOfPlayer& players,
                      const ledger::KindTable& kinds, const Now& now);

}  // namespace lanework::serve::sync
