// Connections to the store for as many threads as ask at once: each takes a room for a request and gives it back.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <vector>

#include "app/store/directory.h"
#include "app/store/gate.h"
#include "app/store/past.h"
#include "app/store/queue.h"
#include "app/store/releases.h"
#include "app/store/store.h"

namespace lanework::serve {

// Rarely asked for: a connection of its own each time, so that no thread keeps one more.
using OpenReleases = std::function<Result<std::unique_ptr<store::Releases>>()>;
using OpenPast = std::function<Result<std::unique_ptr<store::Past>>()>;

struct Room {
  std::unique_ptr<store::Store> store;
  std::unique_ptr<store::Gate> gate;
  std::unique_ptr<store::Directory> directory;
  std::unique_ptr<store::Queue> queue;
  OpenReleases releases;
  OpenPast past;
};

using OpenRoom = std::function<Result<Room>()>;

class Rooms {
 public:
  explicit Rooms(OpenRoom open) : open_(std::move(open)) {}

  class Lease {
   public:
    Lease(Rooms& rooms, std::unique_ptr<Room> room) : rooms_(&rooms), room_(std::move(room)) {}
    Lease(Lease&&) noexcept = default;
    Lease& operator=(Lease&&) noexcept = default;
    Lease(const Lease&) = delete;
    Lease& operator=(const Lease&) = delete;
    ~Lease() {
      if (room_) rooms_->give_back(std::move(room_));
    }
    Room* operator->() const { return room_.get(); }
    Room& operator*() const { return *room_; }

   private:
    Rooms* rooms_;
    std::unique_ptr<Room> room_;
  };

  // Faults: the store cannot be opened.
  Result<std::unique_ptr<Lease>> take();

 private:
  OpenRoom open_;
  std::mutex lock_;
  std::vector<std::unique_ptr<Room>> free_;

  void give_back(std::unique_ptr<Room> room);
};

}  // namespace lanework::serve
