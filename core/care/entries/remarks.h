// What the fold has to say of single entries: refused, sent twice, late, corrected. For the lead.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/care/entries/entry.h"

namespace lanework::care {

struct Remark {
  EntryId entry;
  std::string player;
  std::string words;
  bool operator==(const Remark&) const = default;
};

using Remarks = std::vector<Remark>;

inline void remark(Remarks& remarks, const Entry& entry, std::string words) {
  remarks.push_back({entry.id, entry.player, std::move(words)});
}

}  // namespace lanework::care
