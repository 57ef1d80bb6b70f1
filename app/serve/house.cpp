#include "app/serve/house.h"

namespace lanework::serve {

Result<std::shared_ptr<const ClubLists>> House::club(Room& room) {
  const auto version = room.directory->version();
  if (!version) return version.faults();
  {
    const std::lock_guard<std::mutex> guard(lists_lock_);
    if (lists_ && lists_->version == version.value()) return lists_;
  }
  auto lists = room.directory->lists();
  if (!lists) return lists.faults();
  auto id = room.directory->ledger_id();
  if (!id) return id.faults();
  auto fresh = std::make_shared<ClubLists>();
  fresh->version = version.value();
  fresh->lists = std::move(lists).value();
  fresh->ledger_id = std::move(id).value();
  for (const store::ListedPlayer& player : fresh->lists.players) fresh->squad_of.emplace(player.id, player.squad);
  const std::lock_guard<std::mutex> guard(lists_lock_);
  lists_ = fresh;
  return std::shared_ptr<const ClubLists>(fresh);
}

}  // namespace lanework::serve
