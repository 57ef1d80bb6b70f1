#include "app/cli/ledger/what_remains.h"

#include <algorithm>

namespace lanework::cli {
namespace {

bool names(const Node& node, const std::string& player) {
  if (node.kind == Node::Kind::kText) return node.text == player;
  return std::any_of(node.items.begin(), node.items.end(), [&](const Node& one) { return names(one, player); }) ||
         std::any_of(node.entries.begin(), node.entries.end(),
                     [&](const auto& one) { return one.first == player || names(one.second, player); });
}

std::string counted(std::int64_t count, const char* one, const char* many) {
  return std::to_string(count) + (count == 1 ? one : many);
}

}  // namespace

Result<WhatRemains> what_will_remain(const OpenLedger& open, const std::string& player) {
  constexpr std::size_t kAtOnce = 10'000;
  const auto about = open.store->entries_about(player, open.kinds);
  if (!about) return about.faults();
  WhatRemains out{static_cast<std::int64_t>(about.value().size()), 0};
  for (std::int64_t after = 0;;) {
    const auto some = open.store->entries_after(after, kAtOnce, open.kinds);
    if (!some) return some.faults();
    if (some.value().empty()) return out;
    after = some.value().back().receipt;
    out.evenings += std::count_if(some.value().begin(), some.value().end(), [&](const ledger::Received& one) {
      return one.entry.whole.find("player") == nullptr && names(one.entry.whole, player);
    });
  }
}

std::string what_remains_words(const WhatRemains& remains, const std::string& player) {
  return "What remains, and tells nobody who it was:\n"
         "    " +
         counted(remains.sealed, " entry", " entries") +
         " about the player that nothing opens any more; a server, or 'lanework retain', empties them\n"
         "    the id " +
         player + " in " + counted(remains.evenings, " entry about an evening", " entries about evenings") +
         " (who was there), until those go by their time\n"
         "    in the book of reads, that somebody read about one unknown person\n"
         "    backups from before, until they are deleted: whoever has one and both keys can still read it\n";
}

}  // namespace lanework::cli
