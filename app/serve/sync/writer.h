// One thread that writes: batches that wait are taken in together, in one transaction (group commit), and each is
// answered only when that transaction is on the disk. So many senders share one wait for the disk.
#pragma once

#include <atomic>
#include <condition_variable>
#include <cstdint>
#include <deque>
#include <future>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

#include "app/serve/rooms.h"

namespace lanework::serve::sync {

class Writer {
 public:
  // most: batches in one transaction.
  Writer(OpenRoom open, const ledger::KindTable& kinds, std::size_t most = 64);
  Writer(const Writer&) = delete;
  Writer& operator=(const Writer&) = delete;
  ~Writer();  // takes in what waits, then ends

  // Waits until the batch is on the disk; a fault: nothing of it is.
  Result<std::vector<store::EntryVerdict>> take_in(store::Batch batch);
  [[nodiscard]] std::int64_t transactions() const { return transactions_; }  // so far

 private:
  struct Job {
    store::Batch batch;
    std::promise<Result<std::vector<store::EntryVerdict>>> done;
  };

  OpenRoom open_;
  const ledger::KindTable& kinds_;
  std::size_t most_;
  std::mutex lock_;
  std::condition_variable came_;
  std::deque<Job> waiting_;
  bool ending_ = false;
  std::atomic<std::int64_t> transactions_{0};
  std::thread thread_;

  void run();
  void take_in_together(std::vector<Job>& jobs, store::Store& store);
};

}  // namespace lanework::serve::sync
