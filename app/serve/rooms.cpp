#include "app/serve/rooms.h"

namespace lanework::serve {

Result<std::unique_ptr<Rooms::Lease>> Rooms::take() {
  {
    const std::lock_guard<std::mutex> guard(lock_);
    if (!free_.empty()) {
      std::unique_ptr<Room> room = std::move(free_.back());
      free_.pop_back();
      return std::make_unique<Lease>(*this, std::move(room));
    }
  }
  auto opened = open_();
  if (!opened) return opened.faults();
  return std::make_unique<Lease>(*this, std::make_unique<Room>(std::move(opened).value()));
}

void Rooms::give_back(std::unique_ptr<Room> room) {
  const std::lock_guard<std::mutex> guard(lock_);
  free_.push_back(std::move(room));
}

}  // namespace lanework::serve
