#include "app/serve/house.h"

namespace lanework::serve {

House::House(ledger::KindTable kinds_of_entries, access::Matrix who_may, CareRules care_rules, StaticFiles web,
             KnownPasswords common_passwords)
    : kinds(std::move(kinds_of_entries)),
      matrix(std::move(who_may)),
      care(std::move(care_rules)),
      files(std::move(web)),
      known_passwords(std::move(common_passwords)) {}

Result<std::shared_ptr<const ClubLists>> House::club(Room& room) {
  const auto versions = room.directory->versions();
  if (!versions) return versions.faults();
  return club(room, versions.value().lists);
}

Result<std::shared_ptr<const ClubLists>> House::club(Room& room, std::int64_t version) {
  {
    const std::lock_guard<std::mutex> guard(lists_lock_);
    if (lists_ && lists_->version == version) return lists_;
  }
  auto lists = room.directory->lists();
  if (!lists) return lists.faults();
  auto id = room.directory->ledger_id();
  if (!id) return id.faults();
  auto fresh = std::make_shared<ClubLists>();
  fresh->version = version;
  fresh->lists = std::move(lists).value();
  fresh->ledger_id = std::move(id).value();
  for (const store::ListedPlayer& player : fresh->lists.players) fresh->squads_of.emplace(player.id, player.squads);
  const std::lock_guard<std::mutex> guard(lists_lock_);
  lists_ = fresh;
  return std::shared_ptr<const ClubLists>(fresh);
}

}  // namespace lanework::serve
